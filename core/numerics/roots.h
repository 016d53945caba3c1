// Roots of a function of one variable, by bracketing.
#pragma once

#include <functional>

namespace steamworthy::numerics {

struct RootOptions {
  double tolerance = 0.0;  ///< absolute, on x; 0 asks for the last digit
  int most_steps = 200;
};

/// How a search ended. Use `x` only where `converged`.
struct Root {
  double x = 0.0;
  double value = 0.0;  ///< f(x)
  int steps = 0;
  bool converged = false;
};

/// A place between low and high where f changes sign.
///
///   Brent's method: secant or inverse quadratic steps while they shrink the
///   bracket fast enough, halving otherwise.
///
/// Range     f continuous, f(low) and f(high) of opposite sign or one of them 0.
/// Accuracy  the bracket is no wider than 4 eps |x| + tolerance.
/// Throws    OutOfRange "numerics.not_bracketed" if both ends have one sign or
///           a value is not a number.
/// Source    [Brent-1973], chapter 4.
/// Checked   roots_test.cc: roots known in closed form.
Root find_root(const std::function<double(double)>& f, double low, double high,
               RootOptions options = {});

}  // namespace steamworthy::numerics
