// The bits of a double, and exact sums and products: what math.h is built from.
#pragma once

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>

namespace steamworthy::numerics::detail {

inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
inline constexpr double infinity = std::numeric_limits<double>::infinity();

inline std::uint64_t bits_of(double x) {
  std::uint64_t bits = 0;
  std::memcpy(&bits, &x, sizeof bits);
  return bits;
}

inline double from_bits(std::uint64_t bits) {
  double x = 0.0;
  std::memcpy(&x, &bits, sizeof x);
  return x;
}

/// Sign, exponent and the first 20 bits of the fraction, as FDLIBM compares them.
inline std::uint32_t high_word(double x) { return static_cast<std::uint32_t>(bits_of(x) >> 32); }
inline std::uint32_t high_word_of_magnitude(double x) { return high_word(x) & 0x7fffffffU; }

/// x with its lower 32 bits of fraction cleared: its square is exact.
inline double without_low_word(double x) { return from_bits(bits_of(x) & 0xffffffff00000000U); }

inline bool is_negative(double x) { return (bits_of(x) >> 63) != 0; }
inline double with_sign_of(double magnitude, double sign) {
  return is_negative(sign) ? -std::fabs(magnitude) : std::fabs(magnitude);
}

/// 2^n for -1022 <= n <= 1023.
inline double two_to(int n) { return from_bits(static_cast<std::uint64_t>(n + 1023) << 52); }

/// The whole number nearest to x, |x| < 2^51; halves go to the even one.
inline double nearest_whole(double x) {
  constexpr double shift = 0x1.8p52;
  return (x + shift) - shift;
}

/// An unevaluated sum hi + lo with |lo| at most half a last place of hi.
struct DoubleDouble {
  double hi = 0.0;
  double lo = 0.0;
};

/// a + b exactly (Knuth).
inline DoubleDouble exact_sum(double a, double b) {
  const double sum = a + b;
  const double b_part = sum - a;
  return {sum, (a - (sum - b_part)) + (b - b_part)};
}

/// a + b exactly when |a| >= |b| (Dekker).
inline DoubleDouble exact_ordered_sum(double a, double b) {
  const double sum = a + b;
  return {sum, b - (sum - a)};
}

/// a * b exactly (Veltkamp and Dekker), while nothing over- or underflows.
inline DoubleDouble exact_product(double a, double b) {
  constexpr double split = 0x1p27 + 1.0;
  const double a_wide = a * split;
  const double a_hi = a_wide - (a_wide - a);
  const double a_lo = a - a_hi;
  const double b_wide = b * split;
  const double b_hi = b_wide - (b_wide - b);
  const double b_lo = b - b_hi;
  const double product = a * b;
  return {product, ((a_hi * b_hi - product) + a_hi * b_lo + a_lo * b_hi) + a_lo * b_lo};
}

inline DoubleDouble operator+(DoubleDouble a, DoubleDouble b) {
  const DoubleDouble sum = exact_sum(a.hi, b.hi);
  return exact_ordered_sum(sum.hi, sum.lo + (a.lo + b.lo));
}

inline DoubleDouble operator*(DoubleDouble a, DoubleDouble b) {
  const DoubleDouble product = exact_product(a.hi, b.hi);
  return exact_ordered_sum(product.hi, product.lo + (a.hi * b.lo + a.lo * b.hi));
}

/// Natural logarithm of a positive, finite x to about 2^-64. (exponential.cc)
DoubleDouble log_to_double_double(double x);
/// exp(x.hi + x.lo), without a care for NaN. (exponential.cc)
double exp_of_double_double(DoubleDouble x);

}  // namespace steamworthy::numerics::detail
