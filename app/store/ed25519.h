// Ed25519 by libsodium: the signatures of the record.
//
// Source   RFC 8032, section 5.1 [IETF-RFC-8032].
// Checked  ed25519_test.cc: its test vectors, and those of tests/record_vectors.
#pragma once

#include <memory>

#include "record/keys.h"
#include "store/surroundings.h"

namespace steamworthy::store {

/// What a private key is made from; whoever has it can sign as the device.
using Seed = record::Fixed<struct SeedTag, 32>;

class Ed25519Signer : public record::Signer {
 public:
  explicit Ed25519Signer(const Seed& seed);
  ~Ed25519Signer() override;
  Ed25519Signer(const Ed25519Signer&) = delete;
  Ed25519Signer& operator=(const Ed25519Signer&) = delete;

  const record::PublicKey& public_key() const override { return public_key_; }
  record::Signature sign(std::string_view bytes) override;

 private:
  record::PublicKey public_key_;
  std::array<std::uint8_t, 64> private_key_;
};

class Ed25519Verifier : public record::Verifier {
 public:
  Ed25519Verifier();
  bool verify(const record::PublicKey& key, std::string_view bytes,
              const record::Signature& signature) const override;
};

Seed new_seed(Surroundings& surroundings);

}  // namespace steamworthy::store
