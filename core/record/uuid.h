// Names that no two devices give twice: UUID version 7, made from a time and random bytes that the
// caller brings.
//
// Source   RFC 9562, sections 4, 5.7 and 6.2 method 2 [IETF-RFC-9562].
// Checked  uuid_test.cc: the example of its appendix A.6.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "record/bytes.h"

namespace steamworthy::record {

using RandomForUuid = std::array<std::uint8_t, 10>;

/// The version 7 UUID of a time (milliseconds since 1970, UTC, its low 48 bits) and random bytes.
Uuid uuid7(std::int64_t unix_ms, const RandomForUuid& random);

/// The next one after `previous`, which it is always greater than: as uuid7() if that is greater,
/// otherwise `previous` with its random part counted up by one, its time too if the part is full.
Uuid uuid7_after(const Uuid& previous, std::int64_t unix_ms, const RandomForUuid& random);

/// "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"
std::string text(const Uuid& uuid);

/// Reads that form, capitals or not; nothing if it is not of that form.
std::optional<Uuid> read_uuid(std::string_view text);

/// Whether version and variant are those of version 7.
bool is_uuid7(const Uuid& uuid);

}  // namespace steamworthy::record
