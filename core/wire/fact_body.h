// Bodies of facts as JSON.
//
// A body is one JSON object; every key that is a number ends in its unit (docs/formats/facts.md).
// In the record the bytes of a body are kept as first made and never written again; this room only
// reads them, and makes the bytes of a new one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "facts/fact.h"

namespace steamworthy::wire {

/// What was read of a body. With problems `body` is facts::Unread, and holds the text verbatim.
struct ReadBody {
  facts::Body body;
  facts::Beside beside;
  std::vector<Problem> problems;
};

/// Whether keys that the kind has not are faults: they are for what somebody enters now; in the
/// record they are not, since a body may have grown in a later program.
enum class UnknownKeys { Refuse, Allow };

/// Reads a body; all its faults at once.
///
/// Codes  facts.unknown_kind, facts.bad_version, facts.bad_body (in Unread::why), and those of
///        read_json() and of a description's fields: wire.missing, wire.wrong_type, ...
ReadBody read_body(std::string_view kind, int version, std::string_view json, UnknownKeys unknown,
                   const std::string& file = "");

/// The bytes of a body, on one line, keys in the order of the table. An unread body comes back as
/// it was. Throws OutOfRange "wire.not_finite" for a NaN or an infinity.
std::string body_json(const facts::Body& body, const facts::Beside& beside = {});

}  // namespace steamworthy::wire
