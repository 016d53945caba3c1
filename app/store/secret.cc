#include "store/secret.h"

#include <sodium.h>

#include <array>

#include "base/error.h"
#include "record/sha256.h"

namespace steamworthy::store {
namespace {

void start_sodium() {
  if (sodium_init() < 0) {
    throw StoreError("store.no_signatures", "the library for secrets could not be started");
  }
}

}  // namespace

std::string hash_secret(std::string_view secret, const SecretCost& cost) {
  start_sodium();
  std::array<char, crypto_pwhash_STRBYTES> hash{};
  if (crypto_pwhash_str_alg(hash.data(), secret.data(), secret.size(), cost.passes,
                            cost.memory_bytes, crypto_pwhash_ALG_ARGON2ID13) != 0) {
    throw StoreError("store.no_memory", "there is not the memory to hash a secret (64 MiB)");
  }
  return hash.data();
}

bool is_secret(std::string_view secret, const std::string& hash) {
  start_sodium();
  return crypto_pwhash_str_verify(hash.c_str(), secret.data(), secret.size()) == 0;
}

std::string new_token(Surroundings& surroundings) {
  record::Hash token;
  surroundings.random(token.bytes);
  return hex(token);
}

record::Hash hash_token(std::string_view token) {
  return record::sha256("steamworthy token 1\n" + std::string(token));
}

std::string new_code(Surroundings& surroundings) {
  constexpr std::string_view letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";  // no I, L, O, U
  static_assert(letters.size() == 32);
  std::array<std::uint8_t, 8> random{};
  surroundings.random(random);
  std::string code;
  for (const std::uint8_t byte : random) code += letters[byte % letters.size()];
  return code;
}

}  // namespace steamworthy::store
