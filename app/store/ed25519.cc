#include "store/ed25519.h"

#include <sodium.h>

#include "base/error.h"

namespace steamworthy::store {
namespace {

const unsigned char* octets(std::string_view bytes) {
  return reinterpret_cast<const unsigned char*>(bytes.data());
}

void start_sodium() {
  // Returns 1 where it was started before.
  if (sodium_init() < 0) {
    throw StoreError("store.no_signatures", "the library for signatures could not be started");
  }
}

}  // namespace

Ed25519Signer::Ed25519Signer(const Seed& seed) : private_key_{} {
  start_sodium();
  crypto_sign_seed_keypair(public_key_.bytes.data(), private_key_.data(), seed.bytes.data());
}

Ed25519Signer::~Ed25519Signer() { sodium_memzero(private_key_.data(), private_key_.size()); }

record::Signature Ed25519Signer::sign(std::string_view bytes) {
  record::Signature signature;
  crypto_sign_detached(signature.bytes.data(), nullptr, octets(bytes), bytes.size(),
                       private_key_.data());
  return signature;
}

Ed25519Verifier::Ed25519Verifier() { start_sodium(); }

bool Ed25519Verifier::verify(const record::PublicKey& key, std::string_view bytes,
                             const record::Signature& signature) const {
  return crypto_sign_verify_detached(signature.bytes.data(), octets(bytes), bytes.size(),
                                     key.bytes.data()) == 0;
}

Seed new_seed(Surroundings& surroundings) {
  Seed seed;
  surroundings.random(seed.bytes);
  return seed;
}

}  // namespace steamworthy::store
