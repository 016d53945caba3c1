// SHA-256, the hash of the record: the same in the program and on the tablet.
//
// Source   FIPS 180-4, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2 [NIST-FIPS-180-4].
// Checked  sha256_test.cc: the published examples, and lengths round every edge of a block against
//          Python's hashlib; app/store/ed25519_test.cc: random lengths against libsodium.
#pragma once

#include <string_view>

#include "record/bytes.h"
#include "record/sha256_blocks.h"

namespace steamworthy::record {

/// The hash of all the bytes.
Hash sha256(std::string_view bytes);

/// The hash of bytes that come in pieces.
class Sha256 {
 public:
  Sha256();
  void add(std::string_view bytes);
  /// Closes the message; the object may not be used after it.
  Hash finish();

 private:
  Sha256State state_;
  std::array<std::uint8_t, 64> waiting_;
  std::size_t waiting_size_ = 0;
  std::uint64_t length_ = 0;
};

}  // namespace steamworthy::record
