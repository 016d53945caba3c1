// Elementary functions with the same bits on every machine.
//
// The functions of <cmath> differ in their last bit between the C library of a
// server and that of WebAssembly (and, by the processor's fused multiply-add,
// between two servers): measured, about one std::log in ten thousand. A tablet
// without signal must compute the same figure as the office. So core calls these
// instead. They use nothing but IEEE + - * / and square root, and the bits of a
// double, each of which gives one and the same result everywhere.
//
// Sources
//   exp, log, pow, log10, hypot: our own, in double-double where it matters.
//   sin, cos, tan, asin, acos, atan, cbrt, erf, erfc, expm1, log1p: the
//   polynomials of FDLIBM [FDLIBM-5.3]. normal_quantile: [AS-241].
//   docs/methods/math.md tells how each is done.
//
// Errors
//   As in <cmath>: outside the domain the result is NaN, beyond the largest
//   double it is infinite, and nothing throws. NaN in, NaN out.
//
// Accuracy
//   In units of the last place (ulp), the largest error that math_test.cc admits
//   against 80-bit arithmetic on dense random arguments; a correctly rounded
//   function has 0.5.
#pragma once

namespace steamworthy::numerics {

inline constexpr double pi = 3.14159265358979323846;

/// e to the power x. Accuracy 0.8 ulp.
double exp(double x);
/// exp(x) - 1, exact to the last digits for small x too. Accuracy 1 ulp.
double expm1(double x);
/// Natural logarithm. -inf at 0, NaN below. Accuracy 0.6 ulp.
double log(double x);
/// log(1 + x), exact to the last digits for small x too. Accuracy 1 ulp.
double log1p(double x);
/// Logarithm to base 10. Accuracy 0.6 ulp; exact for powers of ten.
double log10(double x);

/// x to the power y, with the special cases of IEEE 754 (x^0 = 1 even for NaN,
/// a negative x only with an integer y). Accuracy 0.8 ulp.
double pow(double x, double y);
/// x to an integer power by repeated multiplication: for the polynomials of
/// published formulations. Accuracy about |n|/2 ulp.
double power(double x, int n);

/// Square root of x^2 + y^2 without overflow on the way. Accuracy 0.6 ulp.
double hypot(double x, double y);
/// Cube root, of negative numbers too. Accuracy 0.7 ulp.
double cbrt(double x);

/// Sine, cosine, tangent of an angle in radians, of any size. Accuracy 1 ulp.
double sin(double radians);
double cos(double radians);
double tan(double radians);

/// Arc sine, in [-pi/2, pi/2]; NaN unless |x| <= 1. Accuracy 1 ulp.
double asin(double x);
/// Arc cosine, in [0, pi]; NaN unless |x| <= 1. Accuracy 1 ulp.
double acos(double x);
/// Arc tangent, in [-pi/2, pi/2]. Accuracy 1 ulp.
double atan(double x);
/// Angle of the point (x, y), in [-pi, pi], with the signed zeros of <cmath>.
/// Accuracy 2 ulp.
double atan2(double y, double x);

/// Error function 2/sqrt(pi) * integral of exp(-t^2) from 0 to x. Accuracy 1 ulp.
double erf(double x);
/// 1 - erf(x), exact to the last digits where it is tiny. Accuracy 2 ulp.
double erfc(double x);

/// Probability that a standard normal variable is below z. Accuracy 3 ulp.
double normal_cdf(double z);
/// The z whose normal_cdf is p; -inf at 0, +inf at 1, NaN outside. Relative
/// accuracy 2e-15. [AS-241]
double normal_quantile(double p);

}  // namespace steamworthy::numerics
