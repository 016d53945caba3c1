#include "record/sha256.h"

namespace steamworthy::record {

// Section 4.2.2, as printed.
// clang-format off
const std::array<std::uint32_t, 64> sha256_constants = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};
// clang-format on

namespace {

// clang-format off
// Section 5.3.3.
constexpr std::array<std::uint32_t, 8> H0 = {
    0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
// clang-format on

// Section 4.1.2.
std::uint32_t ROTR(std::uint32_t x, int n) { return (x >> n) | (x << (32 - n)); }
std::uint32_t Ch(std::uint32_t x, std::uint32_t y, std::uint32_t z) { return (x & y) ^ (~x & z); }
std::uint32_t Maj(std::uint32_t x, std::uint32_t y, std::uint32_t z) {
  return (x & y) ^ (x & z) ^ (y & z);
}
std::uint32_t Sigma0(std::uint32_t x) { return ROTR(x, 2) ^ ROTR(x, 13) ^ ROTR(x, 22); }
std::uint32_t Sigma1(std::uint32_t x) { return ROTR(x, 6) ^ ROTR(x, 11) ^ ROTR(x, 25); }
std::uint32_t sigma0(std::uint32_t x) { return ROTR(x, 7) ^ ROTR(x, 18) ^ (x >> 3); }
std::uint32_t sigma1(std::uint32_t x) { return ROTR(x, 17) ^ ROTR(x, 19) ^ (x >> 10); }

// Section 6.2.2.
void plain_block(Sha256State& state, const std::uint8_t* data) {
  std::uint32_t W[64];
  for (int t = 0; t < 16; ++t) {
    W[t] = static_cast<std::uint32_t>(data[4 * t]) << 24 |
           static_cast<std::uint32_t>(data[4 * t + 1]) << 16 |
           static_cast<std::uint32_t>(data[4 * t + 2]) << 8 | data[4 * t + 3];
  }
  for (int t = 16; t < 64; ++t) {
    W[t] = sigma1(W[t - 2]) + W[t - 7] + sigma0(W[t - 15]) + W[t - 16];
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (int t = 0; t < 64; ++t) {
    const std::uint32_t T1 =
        h + Sigma1(e) + Ch(e, f, g) + sha256_constants[static_cast<std::size_t>(t)] + W[t];
    const std::uint32_t T2 = Sigma0(a) + Maj(a, b, c);
    h = g;
    g = f;
    f = e;
    e = d + T1;
    d = c;
    c = b;
    b = a;
    a = T1 + T2;
  }
  const std::uint32_t sum[8] = {a, b, c, d, e, f, g, h};
  for (std::size_t i = 0; i < 8; ++i) state[i] += sum[i];
}

void take_blocks(Sha256State& state, const std::uint8_t* data, std::size_t count) {
  if (!sha256_blocks_by_processor(state, data, count)) sha256_blocks_plain(state, data, count);
}

}  // namespace

void sha256_blocks_plain(Sha256State& state, const std::uint8_t* data, std::size_t count) {
  for (; count > 0; --count, data += 64) plain_block(state, data);
}

Sha256::Sha256() : state_(H0), waiting_{} {}

void Sha256::add(std::string_view bytes) {
  const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
  std::size_t left = bytes.size();
  length_ += left;
  if (waiting_size_ > 0) {
    const std::size_t take = left < 64 - waiting_size_ ? left : 64 - waiting_size_;
    if (take > 0) std::memcpy(waiting_.data() + waiting_size_, data, take);
    waiting_size_ += take;
    data += take;
    left -= take;
    if (waiting_size_ < 64) return;
    take_blocks(state_, waiting_.data(), 1);
    waiting_size_ = 0;
  }
  take_blocks(state_, data, left / 64);
  data += left / 64 * 64;
  left %= 64;
  if (left > 0) std::memcpy(waiting_.data(), data, left);
  waiting_size_ = left;
}

// Section 5.1.1: a one bit, zeros, and the length in bits in the last eight bytes of a block.
Hash Sha256::finish() {
  const std::uint64_t bits = length_ * 8;
  waiting_[waiting_size_++] = 0x80;
  if (waiting_size_ > 56) {
    std::memset(waiting_.data() + waiting_size_, 0, 64 - waiting_size_);
    take_blocks(state_, waiting_.data(), 1);
    waiting_size_ = 0;
  }
  std::memset(waiting_.data() + waiting_size_, 0, 56 - waiting_size_);
  for (int i = 0; i < 8; ++i) {
    waiting_[static_cast<std::size_t>(56 + i)] = static_cast<std::uint8_t>(bits >> (56 - 8 * i));
  }
  take_blocks(state_, waiting_.data(), 1);
  Hash hash;
  for (std::size_t i = 0; i < 32; ++i) {
    hash.bytes[i] = static_cast<std::uint8_t>(state_[i / 4] >> (24 - 8 * (i % 4)));
  }
  return hash;
}

Hash sha256(std::string_view bytes) {
  Sha256 hash;
  hash.add(bytes);
  return hash.finish();
}

}  // namespace steamworthy::record
