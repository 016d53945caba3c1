// Checks store/ed25519.h, and that libsodium hashes as record/sha256.h does.
//
// Source: RFC 8032, section 7.1, TEST 2 and TEST 3 (as quoted in a public page of test vectors),
// and the signatures of tests/record_vectors, made by python3-cryptography.
#include "store/ed25519.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <sodium.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "record/sha256.h"

namespace steamworthy::store {
namespace {

struct Row {
  const char* seed;
  const char* key;
  std::string message;
  const char* signature;
};

const Row rfc_8032_section_7_1[] = {
    {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
     "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "\x72",
     "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
     "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"},
    {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
     "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "\xaf\x82",
     "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
     "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"}};

TEST(Ed25519, SignsAsItsStandardSays) {
  const Ed25519Verifier verifier;
  for (const Row& row : rfc_8032_section_7_1) {
    Ed25519Signer signer(*record::from_hex<Seed>(row.seed));
    EXPECT_EQ(record::hex(signer.public_key()), row.key);
    const record::Signature signature = signer.sign(row.message);
    EXPECT_EQ(record::hex(signature), row.signature);
    EXPECT_TRUE(verifier.verify(signer.public_key(), row.message, signature));
    EXPECT_FALSE(verifier.verify(signer.public_key(), row.message + "x", signature));
  }
}

TEST(Ed25519, TakesTheSignaturesOfTheVectorsAndNoneOfAnother) {
  std::ifstream file(STEAMWORTHY_SOURCE_DIR "/tests/record_vectors/facts.json");
  const auto facts = nlohmann::json::parse(file)["facts"];
  ASSERT_GE(facts.size(), 5u);
  const Ed25519Verifier verifier;
  for (const auto& row : facts) {
    const std::string digits = row["bytes"];
    std::string bytes(digits.size() / 2, '\0');
    ASSERT_TRUE(
        record::read_hex(digits, reinterpret_cast<std::uint8_t*>(bytes.data()), bytes.size()));
    const auto key = *record::from_hex<record::PublicKey>(row["public_key"].get<std::string>());
    auto signature = *record::from_hex<record::Signature>(row["signature"].get<std::string>());
    EXPECT_TRUE(verifier.verify(key, bytes, signature));
    signature.bytes[10] ^= 1;
    EXPECT_FALSE(verifier.verify(key, bytes, signature));
  }
}

RC_GTEST_PROP(Sha256, IsThatOfLibsodium, (const std::string& bytes)) {
  record::Hash theirs;
  crypto_hash_sha256(theirs.bytes.data(), reinterpret_cast<const unsigned char*>(bytes.data()),
                     bytes.size());
  RC_ASSERT(record::sha256(bytes) == theirs);
}

}  // namespace
}  // namespace steamworthy::store
