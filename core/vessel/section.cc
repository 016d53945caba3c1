#include "vessel/section.h"

#include <cmath>

#include "numerics/math.h"

namespace steamworthy::vessel::detail {

double clamp(double value, double low, double high) {
  return value < low ? low : (value > high ? high : value);
}

Slope slope_of(double slope_rad) {
  constexpr double upright = 1e-9;  // within this of upright a body stands: 1 nm in a metre
  if (slope_rad == 0.0) return {0.0, 1.0};
  if (slope_rad > pi / 2.0 - upright) return {1.0, 0.0};
  if (slope_rad < -pi / 2.0 + upright) return {-1.0, 0.0};
  return {numerics::sin(slope_rad), numerics::cos(slope_rad)};
}

double Disc::below(double u) const {
  if (u <= -r) return 0.0;
  if (u >= r) return area();
  // acos(-u/r) from the same root as the chord: rounding of u/r would show as its square root
  const double root = std::sqrt((r - u) * (r + u));
  return r * r * numerics::atan2(root, -u) + u * root;
}

double Disc::chord(double u) const {
  return u <= -r || u >= r ? 0.0 : 2.0 * std::sqrt((r - u) * (r + u));
}

double Disc::below_integral(double u) const {
  if (u <= -r) return 0.0;
  if (u >= r) return pi * r * r * u;
  const double root = std::sqrt((r - u) * (r + u));
  return r * r * (u * numerics::atan2(root, -u) + root) - root * root * root / 3.0;
}

double RoundedBox::below(double u) const {
  if (u > 0.0) return u >= h / 2.0 ? area() : area() - below(-u);
  const double v = u + h / 2.0 - r;  // above the centres of the lower corners
  if (v <= -r) return 0.0;
  if (v < 0.0) return (w - 2.0 * r) * (v + r) + Disc{r}.below(v);
  return (w - 2.0 * r) * r + pi * r * r / 2.0 + w * v;
}

double RoundedBox::chord(double u) const {
  const double v = h / 2.0 - r - std::fabs(u);
  if (v <= -r) return 0.0;
  return v < 0.0 ? w - 2.0 * r + Disc{r}.chord(v) : w;
}

double RoundedBox::below_integral(double u) const {
  if (u > 0.0) return area() * u + below_integral(-u);
  const double v = u + h / 2.0 - r;
  if (v <= -r) return 0.0;
  if (v < 0.0) return (w - 2.0 * r) * (v + r) * (v + r) / 2.0 + Disc{r}.below_integral(v);
  return (w - 2.0 * r) * r * r / 2.0 + 2.0 * r * r * r / 3.0 +
         ((w - 2.0 * r) * r + pi * r * r / 2.0) * v + w * v * v / 2.0;
}

}  // namespace steamworthy::vessel::detail
