// asin, acos, atan, atan2, cbrt, expm1, log1p after FDLIBM.
//
// The polynomials and the steps of their evaluation are those of FDLIBM and of
// its FreeBSD descendant [FDLIBM-5.3], which ask that this notice be kept:
//   Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
//   Permission to use, copy, modify, and distribute this software is freely
//   granted, provided that this notice is preserved.
#include <array>

#include "numerics/bits.h"
#include "numerics/math.h"

namespace steamworthy::numerics {
namespace {

using namespace detail;

constexpr double half_pi = 1.57079632679489655800e+00;
constexpr double half_pi_rest = 6.12323399573676603587e-17;

/// (asin(x) - x)/x with z = x^2 <= 1/4.
double arc_sine_kernel(double z) {
  constexpr double pS0 = 1.66666666666666657415e-01;
  constexpr double pS1 = -3.25565818622400915405e-01;
  constexpr double pS2 = 2.01212532134862925881e-01;
  constexpr double pS3 = -4.00555345006794114027e-02;
  constexpr double pS4 = 7.91534994289814532176e-04;
  constexpr double pS5 = 3.47933107596021167570e-05;
  constexpr double qS1 = -2.40339491173441421878e+00;
  constexpr double qS2 = 2.02094576023350569471e+00;
  constexpr double qS3 = -6.88283971605453293030e-01;
  constexpr double qS4 = 7.70381505559019352791e-02;
  const double p = z * (pS0 + z * (pS1 + z * (pS2 + z * (pS3 + z * (pS4 + z * pS5)))));
  const double q = 1.0 + z * (qS1 + z * (qS2 + z * (qS3 + z * qS4)));
  return p / q;
}

}  // namespace

double asin(double x) {
  const double magnitude = std::fabs(x);
  if (!(magnitude <= 1.0)) return not_a_number;
  if (magnitude == 1.0) return with_sign_of(half_pi, x);
  if (magnitude < 0x1p-26) return x;
  if (magnitude < 0.5) return x + x * arc_sine_kernel(x * x);
  const double z = (1.0 - magnitude) * 0.5;
  const double s = std::sqrt(z);
  const double r = arc_sine_kernel(z);
  if (magnitude >= 0.975) return with_sign_of(half_pi - (2.0 * (s + s * r) - half_pi_rest), x);
  const double f = without_low_word(s);
  const double c = (z - f * f) / (s + f);
  return with_sign_of(
      0.5 * half_pi - (2.0 * s * r - (half_pi_rest - 2.0 * c) - (0.5 * half_pi - 2.0 * f)), x);
}

double acos(double x) {
  const double magnitude = std::fabs(x);
  if (!(magnitude <= 1.0)) return not_a_number;
  if (magnitude == 1.0) return x > 0.0 ? 0.0 : 2.0 * half_pi;
  if (magnitude < 0x1p-57) return half_pi;
  if (magnitude < 0.5) return half_pi - (x - (half_pi_rest - x * arc_sine_kernel(x * x)));
  const double z = (1.0 - magnitude) * 0.5;
  const double s = std::sqrt(z);
  if (x < 0.0) return 2.0 * (half_pi - (s + (arc_sine_kernel(z) * s - half_pi_rest)));
  const double f = without_low_word(s);
  const double c = (z - f * f) / (s + f);
  return 2.0 * (f + (arc_sine_kernel(z) * s + c));
}

double atan(double x) {
  // Around 0, 1/2, 1, 3/2 and infinity: the arc of that place, and its rest.
  constexpr std::array<double, 4> place = {4.63647609000806093515e-01, 7.85398163397448278999e-01,
                                           9.82793723247329054082e-01, half_pi};
  constexpr std::array<double, 4> place_rest = {2.26987774529616870924e-17,
                                                3.06161699786838301793e-17,
                                                1.39033110312309984516e-17, half_pi_rest};
  constexpr std::array<double, 11> aT = {
      3.33333333333329318027e-01,  -1.99999999998764832476e-01, 1.42857142725034663711e-01,
      -1.11111104054623557880e-01, 9.09088713343650656196e-02,  -7.69187620504482999495e-02,
      6.66107313738753120669e-02,  -5.83357013379057348645e-02, 4.97687799461593236017e-02,
      -3.65315727442169155270e-02, 1.62858201153657823623e-02};
  if (x != x) return not_a_number;
  const double magnitude = std::fabs(x);
  if (magnitude < 0x1p-27) return x;
  if (magnitude >= 0x1p66) return with_sign_of(half_pi, x);
  std::size_t near = 0;
  double t = x;
  const bool is_small = magnitude < 0.4375;
  if (!is_small) {
    if (magnitude < 0.6875) {
      near = 0;
      t = (2.0 * magnitude - 1.0) / (2.0 + magnitude);
    } else if (magnitude < 1.1875) {
      near = 1;
      t = (magnitude - 1.0) / (magnitude + 1.0);
    } else if (magnitude < 2.4375) {
      near = 2;
      t = (magnitude - 1.5) / (1.0 + 1.5 * magnitude);
    } else {
      near = 3;
      t = -1.0 / magnitude;
    }
  }
  const double z = t * t;
  const double w = z * z;
  const double even =
      z * (aT[0] + w * (aT[2] + w * (aT[4] + w * (aT[6] + w * (aT[8] + w * aT[10])))));
  const double odd = w * (aT[1] + w * (aT[3] + w * (aT[5] + w * (aT[7] + w * aT[9]))));
  if (is_small) return x - x * (even + odd);
  return with_sign_of(place[near] - ((t * (even + odd) - place_rest[near]) - t), x);
}

double atan2(double y, double x) {
  if (x != x || y != y) return not_a_number;
  const bool left = is_negative(x);
  const double whole = 2.0 * half_pi;
  const double whole_rest = 2.0 * half_pi_rest;
  if (y == 0.0) return left ? with_sign_of(whole, y) : y;
  if (x == 0.0) return with_sign_of(half_pi, y);
  if (std::fabs(x) == infinity) {
    if (std::fabs(y) == infinity) {
      return with_sign_of(left ? 3.0 * (whole / 4.0) : whole / 4.0, y);
    }
    return with_sign_of(left ? whole : 0.0, y);
  }
  if (std::fabs(y) == infinity) return with_sign_of(half_pi, y);
  if (std::fabs(y) * 0x1p-64 > std::fabs(x)) return with_sign_of(half_pi, y);
  const double angle = atan(std::fabs(y / x));
  if (!left) return with_sign_of(angle, y);
  return with_sign_of(whole - (angle - whole_rest), y);
}

double cbrt(double x) {
  // 1/cbrt(r) near 1 to 2^-23.5.
  constexpr double P0 = 1.87595182427177009643;
  constexpr double P1 = -1.88497979543377169875;
  constexpr double P2 = 1.621429720105354466140;
  constexpr double P3 = -0.758397934778766047437;
  constexpr double P4 = 0.145996192886612446982;
  if (x != x) return not_a_number;
  const double magnitude = std::fabs(x);
  if (magnitude == 0.0 || magnitude == infinity) return x;
  if (magnitude < 0x1p-1022) return cbrt(x * 0x1p54) * 0x1p-18;
  // A third of the exponent and fraction is a cube root to 5 bits.
  double t = from_bits(static_cast<std::uint64_t>(high_word(magnitude) / 3U + 715094163U) << 32U);
  double r = (t * t) * (t / magnitude);
  t = t * ((P0 + r * (P1 + r * P2)) + ((r * r) * r) * (P3 + r * P4));
  // Rounded to 23 bits, so that its square is exact; then one step of Newton's method.
  t = from_bits((bits_of(t) + 0x80000000U) & 0xffffffffc0000000U);
  r = magnitude / (t * t);
  return with_sign_of(t + t * ((r - t) / (t + t + r)), x);
}

double expm1(double x) {
  constexpr double ln2_hi = 6.93147180369123816490e-01;
  constexpr double ln2_lo = 1.90821492927058770002e-10;
  constexpr double Q1 = -3.33333333333331316428e-02;
  constexpr double Q2 = 1.58730158725481460165e-03;
  constexpr double Q3 = -7.93650757867487942473e-05;
  constexpr double Q4 = 4.00821782732936239552e-06;
  constexpr double Q5 = -2.01099218183624371326e-07;
  if (x != x) return not_a_number;
  if (x > 0x1.62e42fefa39efp+9) return infinity;
  if (x < -40.0) return -1.0;
  if (x > 40.0) return exp(x);  // the 1 is below half a last place
  if (std::fabs(x) < 0x1p-54) return x;
  const double k = std::fabs(x) > 0.5 * ln2_hi ? nearest_whole(x * 1.44269504088896338700) : 0.0;
  const double hi = x - k * ln2_hi;
  const double lo = k * ln2_lo;
  const double r = hi - lo;
  const double c = (hi - r) - lo;
  // exp(r) - 1 = r - (r e - r^2/2), see s_expm1.c.
  const double half = 0.5 * r;
  const double half_square = r * half;
  const double polynomial =
      1.0 +
      half_square *
          (Q1 + half_square * (Q2 + half_square * (Q3 + half_square * (Q4 + half_square * Q5))));
  const double t = 3.0 - polynomial * half;
  const double e = half_square * ((polynomial - t) / (6.0 - r * t));
  if (k == 0.0) return r - (r * e - half_square);
  const double correction = (r * (e - c) - c) - half_square;
  if (k == -1.0) return 0.5 * (r - correction) - 0.5;
  if (k == 1.0) {
    if (r < -0.25) return -2.0 * (correction - (r + 0.5));
    return 1.0 + 2.0 * (r - correction);
  }
  const int n = static_cast<int>(k);
  if (n < 0 || n > 56) return (r - correction + 1.0) * two_to(n) - 1.0;
  if (n < 20) return (r - correction + (1.0 - two_to(-n))) * two_to(n);
  return (r - (correction + two_to(-n)) + 1.0) * two_to(n);
}

double log1p(double x) {
  if (x != x || x < -1.0) return not_a_number;
  if (x == -1.0) return -infinity;
  if (x == infinity) return infinity;
  if (std::fabs(x) < 0x1p-53) return x;
  // log(u + c) = log u + c/u, with u + c = 1 + x exactly.
  const DoubleDouble sum = exact_sum(1.0, x);
  const DoubleDouble logarithm = log_to_double_double(sum.hi);
  return logarithm.hi + (logarithm.lo + sum.lo / sum.hi);
}

}  // namespace steamworthy::numerics
