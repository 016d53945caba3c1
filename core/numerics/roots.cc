#include "numerics/roots.h"

#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <utility>

#include "base/error.h"

namespace steamworthy::numerics {
namespace {

/// The secant or inverse quadratic step from b, as a fraction p/q.
std::pair<double, double> proposed_step(double a, double fa, double b, double fb, double c,
                                        double fc) {
  const double s = fb / fa;
  double p = 0.0;
  double q = 0.0;
  if (a == c) {
    p = (c - b) * s;
    q = 1.0 - s;
  } else {
    const double r = fb / fc;
    const double t = fa / fc;
    p = s * ((c - b) * t * (t - r) - (b - a) * (r - 1.0));
    q = (t - 1.0) * (r - 1.0) * (s - 1.0);
  }
  return p > 0.0 ? std::pair{p, -q} : std::pair{-p, q};
}

}  // namespace

// b is the best guess, a the one before, c the other end of the bracket.
Root find_root(const std::function<double(double)>& f, double low, double high,
               RootOptions options) {
  double a = low;
  double b = high;
  double fa = f(a);
  double fb = f(b);
  if (fa == 0.0) return {a, fa, 0, true};
  if (fb == 0.0) return {b, fb, 0, true};
  if (!((fa < 0.0 && fb > 0.0) || (fa > 0.0 && fb < 0.0))) {
    throw OutOfRange("numerics.not_bracketed",
                     fmt::format("{} at {} and {} at {} do not have opposite signs", fa, a, fb, b));
  }
  double c = a;
  double fc = fa;
  double step = b - a;
  double step_before = step;
  for (int n = 1; n <= options.most_steps; ++n) {
    if (std::fabs(fc) < std::fabs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const double tolerance =
        2.0 * std::numeric_limits<double>::epsilon() * std::fabs(b) + 0.5 * options.tolerance;
    const double half = 0.5 * (c - b);
    if (fb == 0.0 || std::fabs(half) <= tolerance) return {b, fb, n, true};
    if (std::fabs(step_before) < tolerance || std::fabs(fa) <= std::fabs(fb)) {
      step = half;
      step_before = half;
    } else {
      const auto [p, q] = proposed_step(a, fa, b, fb, c, fc);
      if (2.0 * p < 3.0 * half * q - std::fabs(tolerance * q) &&
          p < std::fabs(0.5 * step_before * q)) {
        step_before = step;
        step = p / q;
      } else {
        step = half;
        step_before = half;
      }
    }
    a = b;
    fa = fb;
    b += std::fabs(step) > tolerance ? step : (half > 0.0 ? tolerance : -tolerance);
    fb = f(b);
    if (fb != fb) {
      throw OutOfRange("numerics.not_bracketed", fmt::format("the value at {} is not a number", b));
    }
    if ((fb > 0.0) == (fc > 0.0)) {
      c = a;
      fc = fa;
      step = b - a;
      step_before = step;
    }
  }
  return {b, fb, options.most_steps, false};
}

}  // namespace steamworthy::numerics
