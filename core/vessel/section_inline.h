// Bodies of the templates of section.h.
#pragma once

#include <array>

#include "numerics/math.h"
#include "vessel/section.h"

namespace steamworthy::vessel::detail {

// Abscissae above zero and weights of the rule with 32 points, from numpy's leggauss(32).
struct GaussPoint {
  double x;
  double w;
};
inline constexpr std::array<GaussPoint, 16> gauss_points = {
    {{0.04830766568773831, 0.09654008851472781},
     {0.1444719615827965, 0.09563872007927483},
     {0.23928736225213706, 0.09384439908080457},
     {0.33186860228212767, 0.09117387869576386},
     {0.42135127613063533, 0.08765209300440391},
     {0.5068999089322294, 0.08331192422694685},
     {0.5877157572407623, 0.07819389578707031},
     {0.6630442669302152, 0.07234579410884845},
     {0.7321821187402897, 0.06582222277636175},
     {0.7944837959679424, 0.058684093478535704},
     {0.84936761373257, 0.050998059262376244},
     {0.8963211557660522, 0.042835898022226426},
     {0.9349060759377397, 0.034273862913021626},
     {0.9647622555875064, 0.025392065309262427},
     {0.9856115115452684, 0.016274394730905965},
     {0.9972638618494816, 0.007018610009469298}}};

template <class F>
double gauss(F f, double a, double b) {
  const double middle = 0.5 * (a + b);
  const double half = 0.5 * (b - a);
  double sum = 0.0;
  for (const GaussPoint& point : gauss_points) {
    sum += point.w * (f(middle - half * point.x) + f(middle + half * point.x));
  }
  return half * sum;
}

template <class F>
double gauss_soft_ends(F f, double a, double b) {
  const double middle = 0.5 * (a + b);
  const double half = 0.5 * (b - a);
  return gauss(
      [&](double phi) { return f(middle - half * numerics::cos(phi)) * half * numerics::sin(phi); },
      0.0, pi);
}

// Where along the axis the section is cut: below `full` all under, above `none` all dry.
struct CutRange {
  double full;
  double none;
};
inline CutRange cut_range(double half_height, double length, Slope slope, double z) {
  return {clamp((z - half_height * slope.c) / slope.s, -length / 2.0, length / 2.0),
          clamp((z + half_height * slope.c) / slope.s, -length / 2.0, length / 2.0)};
}

// Below this change of u over the section's height along the axis, the closed form loses more
// digits (1e-16 over this) than the quadrature errs.
inline constexpr double nearly_lying = 1e-3;

template <class Section>
double prism_below(const Section& section, double length, Slope slope, double z) {
  if (slope.s == 0.0) return length * section.below(z);
  if (slope.c == 0.0) return section.area() * clamp(z + length / 2.0, 0.0, length);
  const auto [full, none] = cut_range(section.half_height(), length, slope, z);
  const auto u = [&](double x) { return (z - x * slope.s) / slope.c; };
  double cut = 0.0;
  if (none > full) {
    const bool lying =
        (none - full) * slope.s < nearly_lying * 2.0 * section.half_height() * slope.c;
    cut = lying ? gauss([&](double x) { return section.below(u(x)); }, full, none)
                : slope.c / slope.s *
                      (section.below_integral(u(full)) - section.below_integral(u(none)));
  }
  return section.area() * (full + length / 2.0) + cut;
}

template <class Section>
double prism_surface(const Section& section, double length, Slope slope, double z) {
  if (slope.s == 0.0) return length * section.chord(z);
  if (slope.c == 0.0) return z > -length / 2.0 && z < length / 2.0 ? section.area() : 0.0;
  const auto [full, none] = cut_range(section.half_height(), length, slope, z);
  if (!(none > full)) return 0.0;
  const auto u = [&](double x) { return (z - x * slope.s) / slope.c; };
  const bool lying = (none - full) * slope.s < nearly_lying * 2.0 * section.half_height() * slope.c;
  if (lying) return gauss([&](double x) { return section.chord(u(x)); }, full, none) / slope.c;
  return (section.below(u(full)) - section.below(u(none))) / slope.s;
}

}  // namespace steamworthy::vessel::detail
