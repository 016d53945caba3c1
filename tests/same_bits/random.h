// Random inputs that are the same everywhere: splitmix64, written out.
#pragma once

#include <cstdint>
#include <cstring>
#include <string_view>

namespace steamworthy::same_bits {

/// Each function's inputs follow from its name alone, so that adding one moves no other.
class Random {
 public:
  explicit Random(std::string_view seed) {
    for (const char c : seed) state_ = (state_ ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  }

  std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31);
  }

  double uniform(double low, double high) {
    return low + (high - low) * (static_cast<double>(next() >> 11) * 0x1p-53);
  }

  /// Any positive, finite double, subnormal ones too, all exponents alike.
  double positive() {
    std::uint64_t bits = next() >> 1;
    if ((bits >> 52) == 0x7ff) bits &= 0x000fffffffffffffU;
    double x = 0.0;
    std::memcpy(&x, &bits, sizeof x);
    return x;
  }

 private:
  std::uint64_t state_ = 0xcbf29ce484222325U;
};

}  // namespace steamworthy::same_bits
