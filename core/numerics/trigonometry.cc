// sin, cos, tan: reduction to |r| <= pi/4, then the polynomials of FDLIBM.
//
// The polynomials and the steps of their evaluation are those of FDLIBM [FDLIBM-5.3]
// (k_sin.c, k_cos.c, k_tan.c), which asks that this notice be kept:
//   Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
//   Permission to use, copy, modify, and distribute this software is freely
//   granted, provided that this notice is preserved.
// The reduction is our own: docs/methods/math.md.
#include <array>

#include "numerics/bits.h"
#include "numerics/math.h"

namespace steamworthy::numerics {
namespace {

using namespace detail;

constexpr double quarter_pi = 0x1.921fb54442d18p-1;
constexpr DoubleDouble half_pi{0x1.921fb54442d18p+0, 0x1.1a62633145c07p-54};

// 2/pi, 1248 bits after the point, as 64 zero bits and then the bits. [computed with exact
// integers from Machin's formula for pi]
// clang-format off
constexpr std::array<std::uint32_t, 41> two_over_pi_bits = {
    0x00000000, 0x00000000,
    0xa2f9836e, 0x4e441529, 0xfc2757d1, 0xf534ddc0, 0xdb629599, 0x3c439041, 0xfe5163ab, 0xdebbc561,
    0xb7246e3a, 0x424dd2e0, 0x06492eea, 0x09d1921c, 0xfe1deb1c, 0xb129a73e, 0xe88235f5, 0x2ebb4484,
    0xe99c7026, 0xb45f7e41, 0x3991d639, 0x835339f4, 0x9c845f8b, 0xbdf9283b, 0x1ff897ff, 0xde05980f,
    0xef2f118b, 0x5a0a6d1f, 0x6d367ecf, 0x27cb09b7, 0x4f463f66, 0x9e5fea2d, 0x7527bac7, 0xebe5f17b,
    0x3d0739f7, 0x8a5292ea, 0x6bfb5fb1, 0x1f8d5d08, 0x56033046, 0xfc7b6bab, 0xf0cfbc20};
// clang-format on

/// x = (quadrant + 4 n) pi/2 + rest, |rest| <= pi/4.
struct Reduced {
  unsigned quadrant = 0;
  DoubleDouble rest;
};

/// For |x| < 2^20: x - k pi/2 with pi/2 in four parts, k times the first three exact.
Reduced reduce_by_subtraction(double x) {
  constexpr double part_1 = 0x1.921fb54400000p+0;
  constexpr double part_2 = 0x1.0b4611a600000p-34;
  constexpr double part_3 = 0x1.3198a2e000000p-69;
  constexpr double part_4 = 0x1.b839a252049c1p-104;
  const double k = nearest_whole(x * 0x1.45f306dc9c883p-1);
  DoubleDouble rest = exact_sum(x - k * part_1, -(k * part_2));
  rest = rest + DoubleDouble{-(k * part_3), -(k * part_4)};
  const auto whole = static_cast<std::int64_t>(k);
  return {static_cast<unsigned>(whole & 3), rest};
}

using Words = std::array<std::uint32_t, 6>;  // 192 bits, the first word the highest

/// The 192 bits of 2/pi that begin `start` bits after the beginning of the table.
Words window(unsigned start) {
  Words bits{};
  for (unsigned i = 0; i < bits.size(); ++i) {
    const std::uint64_t pair =
        (static_cast<std::uint64_t>(two_over_pi_bits[start / 32 + i]) << 32) |
        two_over_pi_bits[start / 32 + i + 1];
    bits[i] = static_cast<std::uint32_t>(pair >> (32 - start % 32));
  }
  return bits;
}

/// bits * factor modulo 2^192.
Words multiplied(const Words& bits, std::uint32_t factor) {
  Words result{};
  std::uint64_t carry = 0;
  for (std::size_t i = bits.size(); i-- > 0;) {
    const std::uint64_t product = static_cast<std::uint64_t>(bits[i]) * factor + carry;
    result[i] = static_cast<std::uint32_t>(product);
    carry = product >> 32;
  }
  return result;
}

/// For large |x| = m 2^e (Payne and Hanek): of m 2/pi 2^e only the bits below 4 matter, so the
/// product is taken with the 192 bits of 2/pi that begin there.
Reduced reduce_by_bits(double magnitude) {
  const std::uint64_t bits = bits_of(magnitude);
  const int exponent = static_cast<int>(bits >> 52) - 1075;
  const std::uint64_t m = (bits & 0x000fffffffffffffU) | 0x0010000000000000U;
  // The bit of weight 2^-i stands at 63 + i; the first that counts has i = exponent - 1.
  const Words part = window(static_cast<unsigned>(exponent + 62));
  const Words low = multiplied(part, static_cast<std::uint32_t>(m));
  const Words high = multiplied(part, static_cast<std::uint32_t>(m >> 32));
  Words product{};
  std::uint64_t carry = 0;
  for (std::size_t i = product.size(); i-- > 0;) {
    const std::uint64_t shifted = i + 1 < high.size() ? high[i + 1] : 0;
    const std::uint64_t sum = low[i] + shifted + carry;
    product[i] = static_cast<std::uint32_t>(sum);
    carry = sum >> 32;
  }
  unsigned quadrant = product[0] >> 30;
  product[0] &= 0x3fffffffU;  // what is left is a fraction of 2^190
  const bool above_half = (product[0] & 0x20000000U) != 0;
  if (above_half) {  // take the fraction from the next quadrant downwards
    ++quadrant;
    for (std::uint32_t& word : product) word = ~word;
    product[0] &= 0x3fffffffU;
  }
  DoubleDouble fraction;
  double weight = 0x1p-30;
  for (const std::uint32_t word : product) {
    fraction = fraction + DoubleDouble{static_cast<double>(word) * weight, 0.0};
    weight *= 0x1p-32;
  }
  if (above_half) fraction = {-fraction.hi, -fraction.lo};
  return {quadrant & 3U, fraction * half_pi};
}

Reduced reduce(double x) {
  const double magnitude = std::fabs(x);
  if (magnitude <= quarter_pi) return {0, {x, 0.0}};
  if (magnitude < 0x1p20) return reduce_by_subtraction(x);
  Reduced result = reduce_by_bits(magnitude);
  if (x < 0.0) {
    result.quadrant = (4U - result.quadrant) & 3U;
    result.rest = {-result.rest.hi, -result.rest.lo};
  }
  return result;
}

double sine_kernel(DoubleDouble r) {
  constexpr double S1 = -1.66666666666666324348e-01;
  constexpr double S2 = 8.33333333332248946124e-03;
  constexpr double S3 = -1.98412698298579493134e-04;
  constexpr double S4 = 2.75573137070700676789e-06;
  constexpr double S5 = -2.50507602534068634195e-08;
  constexpr double S6 = 1.58969099521155010221e-10;
  const double x = r.hi;
  const double y = r.lo;
  if (std::fabs(x) < 0x1p-26) return y == 0.0 ? x : x + y;  // keeps the sign of -0
  const double z = x * x;
  const double w = z * z;
  const double polynomial = S2 + z * (S3 + z * S4) + z * w * (S5 + z * S6);
  const double v = z * x;
  return x - ((z * (0.5 * y - v * polynomial) - y) - v * S1);
}

double cosine_kernel(DoubleDouble r) {
  constexpr double C1 = 4.16666666666666019037e-02;
  constexpr double C2 = -1.38888888888741095749e-03;
  constexpr double C3 = 2.48015872894767294178e-05;
  constexpr double C4 = -2.75573143513906633035e-07;
  constexpr double C5 = 2.08757232129817482790e-09;
  constexpr double C6 = -1.13596475577881948265e-11;
  const double z = r.hi * r.hi;
  const double w = z * z;
  const double polynomial = z * (C1 + z * (C2 + z * C3)) + w * w * (C4 + z * (C5 + z * C6));
  const double half_z = 0.5 * z;
  const double head = 1.0 - half_z;
  return head + (((1.0 - head) - half_z) + (z * polynomial - r.hi * r.lo));
}

/// tan(r), or -1/tan(r) where `inverse`.
double tangent_kernel(DoubleDouble r, bool inverse) {
  constexpr std::array<double, 13> T = {
      3.33333333333334091986e-01, 1.33333333333201242699e-01, 5.39682539762260521377e-02,
      2.18694882948595424599e-02, 8.86323982359930005737e-03, 3.59207910759131235356e-03,
      1.45620945432529025516e-03, 5.88041240820264096874e-04, 2.46463134818469906812e-04,
      7.81794442939557092300e-05, 7.14072491382608190305e-05, -1.85586374855275456654e-05,
      2.59073051863633712884e-05};
  constexpr double quarter_pi_rest = 3.06161699786838301793e-17;
  double x = r.hi;
  double y = r.lo;
  if (std::fabs(x) < 0x1p-27) {
    if (inverse) return -1.0 / (x + y);
    return y == 0.0 ? x : x + y;  // keeps the sign of -0
  }
  const bool negative = x < 0.0;
  const bool near_quarter = std::fabs(x) >= 0.6744;
  if (near_quarter) {  // tan(pi/4 - u) = 1 - 2 (tan u - tan^2 u / (1 + tan u))
    if (negative) {
      x = -x;
      y = -y;
    }
    x = (quarter_pi - x) + (quarter_pi_rest - y);
    y = 0.0;
  }
  const double z = x * x;
  const double w = z * z;
  const double odd = T[1] + w * (T[3] + w * (T[5] + w * (T[7] + w * (T[9] + w * T[11]))));
  const double even = z * (T[2] + w * (T[4] + w * (T[6] + w * (T[8] + w * (T[10] + w * T[12])))));
  const double cube = z * x;
  const double rest = y + z * (cube * (odd + even) + y) + cube * T[0];
  const double tangent = x + rest;
  if (near_quarter) {
    const double one = inverse ? -1.0 : 1.0;
    const double result = one - 2.0 * (x + (rest - tangent * tangent / (tangent + one)));
    return negative ? -result : result;
  }
  if (!inverse) return tangent;
  // -1/(x + rest) with the rounding errors of the division taken back.
  const double head = without_low_word(tangent);
  const double tail = rest - (head - x);
  const double quotient = -1.0 / tangent;
  const double quotient_head = without_low_word(quotient);
  return quotient_head + quotient * (1.0 + quotient_head * head + quotient_head * tail);
}

bool has_no_angle(double x) { return x != x || std::fabs(x) == infinity; }

}  // namespace

double sin(double radians) {
  if (has_no_angle(radians)) return not_a_number;
  const Reduced reduced = reduce(radians);
  const double value =
      (reduced.quadrant & 1U) != 0 ? cosine_kernel(reduced.rest) : sine_kernel(reduced.rest);
  return (reduced.quadrant & 2U) != 0 ? -value : value;
}

double cos(double radians) {
  if (has_no_angle(radians)) return not_a_number;
  const Reduced reduced = reduce(radians);
  const double value =
      (reduced.quadrant & 1U) != 0 ? -sine_kernel(reduced.rest) : cosine_kernel(reduced.rest);
  return (reduced.quadrant & 2U) != 0 ? -value : value;
}

double tan(double radians) {
  if (has_no_angle(radians)) return not_a_number;
  const Reduced reduced = reduce(radians);
  return tangent_kernel(reduced.rest, (reduced.quadrant & 1U) != 0);
}

}  // namespace steamworthy::numerics
