// Checks record/sha256.h.
//
// Sources: the examples "abc" and of two blocks that NIST publishes with FIPS 180-4, and a million
// times "a", all three from memory and equal to Python 3.11's hashlib, which is also where the
// lengths round the edges of a block are from (hashlib.sha256(b"x" * n)).
#include "record/sha256.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace steamworthy::record {
namespace {

TEST(Sha256, GivesThePublishedExamples) {
  EXPECT_EQ(hex(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(hex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(hex(sha256(std::string(1000000, 'a'))),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  EXPECT_EQ(hex(sha256("")), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(Sha256, AgreesWithHashlibRoundTheEdgesOfABlock) {
  struct Row {
    std::size_t length;
    const char* hash;
  };
  const Row rows[] = {{1, "2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881"},
                      {55, "d5e285683cd4efc02d021a5c62014694958901005d6f71e89e0989fac77e4072"},
                      {56, "04c26261370ee7541549d16dee320c723e3fd14671e66a099afe0a377c16888e"},
                      {57, "ae14a2563ccf969d99aca69ce6bb74981f734bbf9f655f73b8f06db68cab5217"},
                      {63, "75220b47218278e656f2013bb8f0c455a25eaf01e86c64924e9d48d89776d6f2"},
                      {64, "7ce100971f64e7001e8fe5a51973ecdfe1ced42befe7ee8d5fd6219506b5393c"},
                      {65, "9537c5fdf120482f7d58d25e9ed583f52c02b4e304ea814db1633ad565aed7e9"},
                      {119, "000b48d4edf0fa7bee3c6236ecd2785baa5db4eeb8bb54341b029e0d9fa5fb0c"},
                      {120, "13f05a0b594787f5ecd315edc96141bd3243203d1b7d4f0836f37308b276ba98"},
                      {128, "24da1b81d0b16df6428eee73c69fcb2a93c76bc6df706f0c6670fe6bfe800464"},
                      {1000, "44f8354494a5ba03ba1792a8d3e9c534c47a9181980fde7a3f44b06ef2ae7c7f"}};
  for (const Row& row : rows) EXPECT_EQ(hex(sha256(std::string(row.length, 'x'))), row.hash);
}

RC_GTEST_PROP(Sha256, DoesNotCareInWhichPiecesTheBytesCome,
              (const std::vector<std::string>& pieces)) {
  Sha256 hash;
  std::string whole;
  for (const std::string& piece : pieces) {
    hash.add(piece);
    whole += piece;
  }
  RC_ASSERT(hash.finish() == sha256(whole));
}

RC_GTEST_PROP(Sha256, IsTheSameWithTheProcessorsInstructionsAndWithout,
              (std::array<std::uint32_t, 8> start)) {
  const auto bytes =
      *rc::gen::container<std::vector<std::uint8_t>>(64 * 5, rc::gen::arbitrary<std::uint8_t>());
  Sha256State by_processor = start;
  if (!sha256_blocks_by_processor(by_processor, bytes.data(), 5)) return;  // it has none
  Sha256State plain = start;
  sha256_blocks_plain(plain, bytes.data(), 5);
  RC_ASSERT(plain == by_processor);
}

TEST(Sha256, GivesThePublishedExampleWithoutTheProcessorsInstructions) {
  // "abc", padded by hand to one block; a Sha256State begins as section 5.3.3 says.
  std::array<std::uint8_t, 64> block{'a', 'b', 'c', 0x80};
  block[63] = 24;
  Sha256State state = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                       0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  sha256_blocks_plain(state, block.data(), 1);
  EXPECT_EQ(state[0], 0xba7816bfu);
  EXPECT_EQ(state[7], 0xf20015adu);
}

}  // namespace
}  // namespace steamworthy::record
