// erf, erfc after FDLIBM; the normal distribution and its quantile.
//
// The rational approximations of erf are those of FDLIBM (s_erf.c) [FDLIBM-5.3],
// which asks that this notice be kept:
//   Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
//   Permission to use, copy, modify, and distribute this software is freely
//   granted, provided that this notice is preserved.
#include <array>

#include "numerics/bits.h"
#include "numerics/math.h"

namespace steamworthy::numerics {
namespace {

using namespace detail;

template <std::size_t N>
double polynomial(const std::array<double, N>& coefficients, double x) {
  double sum = 0.0;
  for (std::size_t i = N; i-- > 0;) sum = sum * x + coefficients[i];
  return sum;
}

// clang-format off
constexpr double erx = 8.45062911510467529297e-01;
// (erf(x) - x)/x for |x| < 0.84375, in x^2
constexpr std::array<double, 5> pp = {
    1.28379167095512558561e-01, -3.25042107247001499370e-01, -2.84817495755985104766e-02,
    -5.77027029648944159157e-03, -2.37630166566501626084e-05};
constexpr std::array<double, 6> qq = {
    1.0, 3.97917223959155352819e-01, 6.50222499887672944485e-02, 5.08130628187576562776e-03,
    1.32494738004321644526e-04, -3.96022827877536812320e-06};
// erf(x) - erx for 0.84375 <= |x| < 1.25, in |x| - 1
constexpr std::array<double, 7> pa = {
    -2.36211856075265944077e-03, 4.14856118683748331666e-01, -3.72207876035701323847e-01,
    3.18346619901161753674e-01, -1.10894694282396677476e-01, 3.54783043256182359371e-02,
    -2.16637559486879084300e-03};
constexpr std::array<double, 7> qa = {
    1.0, 1.06420880400844228286e-01, 5.40397917702171048937e-01, 7.18286544141962662868e-02,
    1.26171219808761642112e-01, 1.36370839120290507362e-02, 1.19844998467991074170e-02};
// log(x erfc(x)) + x^2 + 0.5625 for 1.25 <= x < 1/0.35, in 1/x^2
constexpr std::array<double, 8> ra = {
    -9.86494403484714822705e-03, -6.93858572707181764372e-01, -1.05586262253232909814e+01,
    -6.23753324503260060396e+01, -1.62396669462573470355e+02, -1.84605092906711035994e+02,
    -8.12874355063065934246e+01, -9.81432934416914548592e+00};
constexpr std::array<double, 9> sa = {
    1.0, 1.96512716674392571292e+01, 1.37657754143519042600e+02, 4.34565877475229228821e+02,
    6.45387271733267880336e+02, 4.29008140027567833386e+02, 1.08635005541779435134e+02,
    6.57024977031928170135e+00, -6.04244152148580987438e-02};
// the same for 1/0.35 <= x < 28
constexpr std::array<double, 7> rb = {
    -9.86494292470009928597e-03, -7.99283237680523006574e-01, -1.77579549177547519889e+01,
    -1.60636384855821916062e+02, -6.37566443368389627722e+02, -1.02509513161107724954e+03,
    -4.83519191608651397019e+02};
constexpr std::array<double, 8> sb = {
    1.0, 3.03380607434824582924e+01, 3.25792512996573918826e+02, 1.53672958608443695994e+03,
    3.19985821950859553908e+03, 2.55305040643316442583e+03, 4.74528541206955367215e+02,
    -2.24409524465858183362e+01};
// clang-format on

/// (erf(x) - x)/x for |x| < 0.84375.
double error_function_near_zero(double x) {
  const double z = x * x;
  return polynomial(pp, z) / polynomial(qq, z);
}

/// erfc(x) for 0.84375 <= x < 28.
double complement_of_positive(double x) {
  if (x < 1.25) return 1.0 - erx - polynomial(pa, x - 1.0) / polynomial(qa, x - 1.0);
  const double s = 1.0 / (x * x);
  const double ratio = x < 1.0 / 0.35 ? polynomial(ra, s) / polynomial(sa, s)
                                      : polynomial(rb, s) / polynomial(sb, s);
  const DoubleDouble square = exact_product(x, x);
  const DoubleDouble exponent = exact_sum(-square.hi, ratio - 0.5625);
  return exp_of_double_double({exponent.hi, exponent.lo - square.lo}) / x;
}

}  // namespace

double erf(double x) {
  if (x != x) return not_a_number;
  const double magnitude = std::fabs(x);
  if (magnitude < 0x1p-28) {
    // 2/sqrt(pi) - 1; scaled so that the product of a tiny x keeps its digits
    constexpr double efx8 = 1.02703333676410069053e+00;
    return 0.125 * (8.0 * x + efx8 * x);
  }
  if (magnitude < 0.84375) return x + x * error_function_near_zero(x);
  if (magnitude < 1.25) {
    const double s = magnitude - 1.0;
    return with_sign_of(erx + polynomial(pa, s) / polynomial(qa, s), x);
  }
  return with_sign_of(magnitude < 6.0 ? 1.0 - complement_of_positive(magnitude) : 1.0, x);
}

double erfc(double x) {
  if (x != x) return not_a_number;
  const double magnitude = std::fabs(x);
  if (magnitude < 0x1p-56) return 1.0 - x;
  if (magnitude < 0.84375) {
    const double y = error_function_near_zero(x);
    if (x < 0.25) return 1.0 - (x + x * y);
    if (x < 0.5) return 0.5 - (x - 0.5 + x * y);
    return (1.0 - x) - x * y;  // the first difference is exact
  }
  if (magnitude < 28.0) {
    return x < 0.0 ? 2.0 - complement_of_positive(magnitude) : complement_of_positive(magnitude);
  }
  return x < 0.0 ? 2.0 : 0.0;
}

// Phi(z) = erfc(-z/sqrt 2)/2. In the tail a rounding of the argument is magnified by its square, so
// the argument's rest is taken back by erfc'(t) = -2/sqrt(pi) exp(-t^2).
double normal_cdf(double z) {
  constexpr double root_half = 0x1.6a09e667f3bcdp-1;
  constexpr double root_half_rest = -0x1.bdd3413b26456p-55;
  constexpr double two_over_root_pi = 0x1.20dd750429b6dp+0;
  if (z != z) return not_a_number;
  if (z < -38.6) return 0.0;  // below the smallest double
  if (z > 9.0) return 1.0;    // nearer to 1 than to the double before it
  const DoubleDouble product = exact_product(-z, root_half);
  const double rest = product.lo - z * root_half_rest;
  const double t = product.hi;
  return 0.5 * (erfc(t) - two_over_root_pi * exp(-t * t) * rest);
}

// Algorithm AS 241, routine PPND16 [AS-241]: rational approximations in three ranges.
double normal_quantile(double p) {
  // clang-format off
  constexpr std::array<double, 8> a = {
      3.3871328727963666080e0, 1.3314166789178437745e+2, 1.9715909503065514427e+3,
      1.3731693765509461125e+4, 4.5921953931549871457e+4, 6.7265770927008700853e+4,
      3.3430575583588128105e+4, 2.5090809287301226727e+3};
  constexpr std::array<double, 8> b = {
      1.0, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
      2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4,
      5.2264952788528545610e+3};
  constexpr std::array<double, 8> c = {
      1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
      3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
      2.27238449892691845833e-2, 7.74545014278341407640e-4};
  constexpr std::array<double, 8> d = {
      1.0, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
      1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
      1.05075007164441684324e-9};
  constexpr std::array<double, 8> e = {
      6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
      2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
      2.71155556874348757815e-5, 2.01033439929228813265e-7};
  constexpr std::array<double, 8> f = {
      1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
      7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
      2.04426310338993978564e-15};
  // clang-format on
  if (!(p >= 0.0 && p <= 1.0)) return not_a_number;
  if (p == 0.0) return -infinity;
  if (p == 1.0) return infinity;
  const double q = p - 0.5;
  if (std::fabs(q) <= 0.425) {
    const double r = 0.180625 - q * q;
    return q * polynomial(a, r) / polynomial(b, r);
  }
  double r = std::sqrt(-log(q < 0.0 ? p : 1.0 - p));
  if (r <= 5.0) {
    r -= 1.6;
    return with_sign_of(polynomial(c, r) / polynomial(d, r), q);
  }
  r -= 5.0;
  return with_sign_of(polynomial(e, r) / polynomial(f, r), q);
}

}  // namespace steamworthy::numerics
