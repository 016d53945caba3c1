// Keys: the two things that this room does not do itself. app/store does them with a library; the
// tablet with the browser's.
#pragma once

#include <string_view>

#include "record/bytes.h"

namespace steamworthy::record {

/// Whoever holds a device's private key. Ed25519 as of RFC 8032, over the bytes themselves.
class Signer {
 public:
  virtual ~Signer() = default;
  virtual const PublicKey& public_key() const = 0;
  virtual Signature sign(std::string_view bytes) = 0;
};

class Verifier {
 public:
  virtual ~Verifier() = default;
  virtual bool verify(const PublicKey& key, std::string_view bytes,
                      const Signature& signature) const = 0;
};

}  // namespace steamworthy::record
