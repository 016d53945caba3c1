// exp, log, log10, pow, power: our own, on the exact sums and products of bits.h.
//
// Every coefficient is a plain rational (1/n!, 2/(2n+1)), so that there is no
// table to trust; docs/methods/math.md bounds the errors.
#include <array>

#include "numerics/bits.h"
#include "numerics/math.h"

namespace steamworthy::numerics {
namespace detail {
namespace {

// ln 2 in three parts; the first has 32 bits, so that k * ln2_1 is exact.
constexpr double ln2_1 = 0x1.62e42feep-1;
constexpr double ln2_2 = 0x1.a39ef35793c76p-33;
constexpr double ln2_3 = 0x1.cc01f97b57a08p-87;
constexpr double one_over_ln2 = 0x1.71547652b82fep+0;

// 1/ln 10 and 2/3 as double-doubles.
constexpr DoubleDouble one_over_ln10{0x1.bcb7b1526e50ep-2, 0x1.95355baaafad3p-57};
constexpr DoubleDouble two_thirds{0x1.5555555555555p-1, 0x1.5555555555555p-55};

// 1/13! ... 1/3!, and 2/29, 2/27 ... 2/5.
constexpr std::array<double, 11> exp_tail = {
    1.0 / 6227020800.0, 1.0 / 479001600.0, 1.0 / 39916800.0, 1.0 / 3628800.0,
    1.0 / 362880.0,     1.0 / 40320.0,     1.0 / 5040.0,     1.0 / 720.0,
    1.0 / 120.0,        1.0 / 24.0,        1.0 / 6.0};
constexpr std::array<double, 13> log_tail = {
    2.0 / 29.0, 2.0 / 27.0, 2.0 / 25.0, 2.0 / 23.0, 2.0 / 21.0, 2.0 / 19.0, 2.0 / 17.0,
    2.0 / 15.0, 2.0 / 13.0, 2.0 / 11.0, 2.0 / 9.0,  2.0 / 7.0,  2.0 / 5.0};

constexpr double largest_exponent = 709.782712893384;     // exp of more overflows
constexpr double smallest_exponent = -745.1332191019412;  // exp of less is zero

/// mantissa * 2^k with a single rounding, mantissa near 1, k >= -1080.
double scaled(double mantissa, int k) {
  if (k > 1023) return mantissa * two_to(k - 1) * 2.0;
  if (k >= -1021) return mantissa * two_to(k);
  return mantissa * two_to(k + 60) * 0x1p-60;
}

}  // namespace

// exp(x) = 2^k exp(r), r = x - k ln 2, |r| <= 0.35, by its Taylor sum to r^13.
double exp_of_double_double(DoubleDouble x) {
  if (x.hi > largest_exponent + 1.0) return infinity;
  if (x.hi < smallest_exponent - 1.0) return 0.0;
  const double k = nearest_whole(x.hi * one_over_ln2);
  const DoubleDouble second = exact_product(k, ln2_2);
  const DoubleDouble difference = exact_sum(x.hi - k * ln2_1, -second.hi);
  const DoubleDouble reduced =
      exact_ordered_sum(difference.hi, difference.lo + ((x.lo - second.lo) - k * ln2_3));
  const double r = reduced.hi;

  double tail = 0.0;
  for (const double coefficient : exp_tail) tail = tail * r + coefficient;
  // exp(r) = 1 + r + r^2/2 + r^3 tail; the first three terms with their rest.
  const DoubleDouble square = exact_product(r, r);
  const DoubleDouble one_and_r = exact_ordered_sum(1.0, r);
  const DoubleDouble head = exact_ordered_sum(one_and_r.hi, 0.5 * square.hi);
  const double rest =
      one_and_r.lo + head.lo + 0.5 * square.lo + (square.hi * r * tail + reduced.lo * (1.0 + r));
  return scaled(head.hi + rest, static_cast<int>(k));
}

// log(2^k m) = k ln 2 + 2 s + 2 s^3/3 + 2 s^5/5 + ...,  s = (m - 1)/(m + 1),
// sqrt(1/2) <= m < sqrt(2), |s| <= 0.1716.
DoubleDouble log_to_double_double(double x) {
  int k = 0;
  if (x < 0x1p-1022) {
    x *= 0x1p54;
    k = -54;
  }
  const std::uint64_t bits = bits_of(x);
  k += static_cast<int>(bits >> 52) - 1023;
  double m = from_bits((bits & 0x000fffffffffffffU) | 0x3ff0000000000000U);
  if (m > 0x1.6a09e667f3bcdp+0) {
    m *= 0.5;
    ++k;
  }
  const double numerator = m - 1.0;  // exact
  const DoubleDouble denominator = exact_sum(m, 1.0);
  const double s_hi = numerator / denominator.hi;
  const DoubleDouble back = exact_product(s_hi, denominator.hi);
  const double s_lo = (((numerator - back.hi) - back.lo) - s_hi * denominator.lo) / denominator.hi;
  const DoubleDouble s = exact_ordered_sum(s_hi, s_lo);
  const DoubleDouble square = s * s;

  const double z = square.hi;
  double tail = 0.0;
  for (const double coefficient : log_tail) tail = tail * z + coefficient;
  const DoubleDouble series =
      DoubleDouble{2.0 * s.hi, 2.0 * s.lo} + s * square * (two_thirds + exact_product(z, tail));
  if (k == 0) return series;
  const double whole = static_cast<double>(k);
  const DoubleDouble second = exact_product(whole, ln2_2);
  const DoubleDouble k_ln2 =
      exact_ordered_sum(whole * ln2_1, second.hi) + DoubleDouble{second.lo, whole * ln2_3};
  return k_ln2 + series;
}

}  // namespace detail

using namespace detail;

double exp(double x) {
  if (x != x) return not_a_number;
  if (x > largest_exponent) return infinity;
  if (x < smallest_exponent) return 0.0;
  return exp_of_double_double({x, 0.0});
}

double log(double x) {
  if (x != x || x < 0.0) return not_a_number;
  if (x == 0.0) return -infinity;
  if (x == infinity) return infinity;
  const DoubleDouble result = log_to_double_double(x);
  return result.hi + result.lo;
}

double log10(double x) {
  if (x != x || x < 0.0) return not_a_number;
  if (x == 0.0) return -infinity;
  if (x == infinity) return infinity;
  const DoubleDouble result = log_to_double_double(x) * one_over_ln10;
  return result.hi + result.lo;
}

namespace {

enum class Parity { NotWhole, Odd, Even };

Parity parity(double y) {
  const double magnitude = std::fabs(y);
  if (magnitude >= 0x1p53) return Parity::Even;
  if (std::floor(magnitude) != magnitude) return Parity::NotWhole;
  return std::floor(magnitude / 2.0) * 2.0 == magnitude ? Parity::Even : Parity::Odd;
}

/// |x|^y where x is 0 or infinite, or y is infinite; neither is NaN, y is not 0.
double pow_at_the_ends(double magnitude, double y) {
  if (std::fabs(y) == infinity) {
    if (magnitude == 1.0) return 1.0;
    return (magnitude > 1.0) == (y > 0.0) ? infinity : 0.0;
  }
  return (magnitude == 0.0) == (y > 0.0) ? 0.0 : infinity;
}

double pow_of_positive(double x, double y) {
  const DoubleDouble logarithm = log_to_double_double(x);
  // |log x| >= 2^-53 or 0, so that a y beyond 2^65 over- or underflows anyway.
  if (std::fabs(y) > 0x1p65) {
    if (logarithm.hi == 0.0) return 1.0;
    return (logarithm.hi > 0.0) == (y > 0.0) ? infinity : 0.0;
  }
  if (std::fabs(y) < 0x1p-64) return 1.0;
  const DoubleDouble product = exact_product(logarithm.hi, y);
  return exp_of_double_double(exact_ordered_sum(product.hi, product.lo + logarithm.lo * y));
}

}  // namespace

double pow(double x, double y) {
  if (y == 0.0 || x == 1.0) return 1.0;
  if (x != x || y != y) return not_a_number;
  const double magnitude = std::fabs(x);
  const bool odd = is_negative(x) && parity(y) == Parity::Odd;
  if (magnitude == 0.0 || magnitude == infinity || std::fabs(y) == infinity) {
    const double result = pow_at_the_ends(magnitude, y);
    return odd ? -result : result;
  }
  if (x < 0.0 && parity(y) == Parity::NotWhole) return not_a_number;
  const double result = pow_of_positive(magnitude, y);
  return odd ? -result : result;
}

double power(double x, int n) {
  double result = 1.0;
  double factor = x;
  for (unsigned left = n < 0 ? 0U - static_cast<unsigned>(n) : static_cast<unsigned>(n); left != 0;
       left >>= 1U) {
    if ((left & 1U) != 0) result *= factor;
    factor *= factor;
  }
  return n < 0 ? 1.0 / result : result;
}

double hypot(double x, double y) {
  double a = std::fabs(x);
  double b = std::fabs(y);
  if (a == infinity || b == infinity) return infinity;
  if (x != x || y != y) return not_a_number;
  if (a < b) {
    const double other = a;
    a = b;
    b = other;
  }
  if (b == 0.0 || a * 0x1p-60 > b) return a + b;
  double scale = 1.0;
  if (a > 0x1p500) {
    scale = 0x1p600;
  } else if (b < 0x1p-450) {
    scale = 0x1p-600;
  }
  a /= scale;
  b /= scale;
  const DoubleDouble sum = exact_product(a, a) + exact_product(b, b);
  const double root = std::sqrt(sum.hi);
  const DoubleDouble back = exact_product(root, root);
  return scale * (root + ((sum.hi - back.hi) - back.lo + sum.lo) / (2.0 * root));
}

}  // namespace steamworthy::numerics
