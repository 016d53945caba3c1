// Secrets of people: PINs, badges and passphrases, kept as Argon2id hashes, and random tokens.
//
// Source   RFC 9106 [IETF-RFC-9106], by libsodium; 64 MiB and two passes.
#pragma once

#include <string>
#include <string_view>

#include "record/bytes.h"
#include "store/surroundings.h"

namespace steamworthy::store {

/// How dear one trial is.
struct SecretCost {
  std::size_t memory_bytes = std::size_t{64} << 20;
  unsigned passes = 2;
};

/// The text that is kept of a secret; it holds salt and cost. Takes about 70 ms and 64 MiB.
/// Throws   StoreError "store.no_memory" where there is no such memory.
std::string hash_secret(std::string_view secret, const SecretCost& cost = {});

/// Whether it is the secret of that hash. Takes as long as hash_secret().
bool is_secret(std::string_view secret, const std::string& hash);

/// A token of 32 bytes that nobody can foresee, as 64 hexadecimal digits.
std::string new_token(Surroundings& surroundings);

/// What is kept of a token.
record::Hash hash_token(std::string_view token);

/// Eight letters and digits that are hard to mistake for each other: 40 bits.
std::string new_code(Surroundings& surroundings);

}  // namespace steamworthy::store
