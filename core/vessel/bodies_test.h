// Bodies for the tests of this room: made at random, and an integrator that shares nothing with it.
#pragma once

#include <rapidcheck.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <string>

#include "units/makers.h"
#include "vessel/shapes.h"

namespace steamworthy::vessel::testing {

inline constexpr double pi = std::numbers::pi;

/// Adaptive Simpson's rule with the standard library's functions.
inline double integral(const std::function<double(double)>& f, double a, double b,
                       double tolerance = 1e-11) {
  struct Rule {
    const std::function<double(double)>& f;
    double step(double x0, double f0, double x1, double f1, double x2, double f2, double whole,
                double tol, int depth) const {
      const double xa = 0.5 * (x0 + x1), xb = 0.5 * (x1 + x2);
      const double fa = f(xa), fb = f(xb);
      const double left = (x1 - x0) / 6.0 * (f0 + 4.0 * fa + f1);
      const double right = (x2 - x1) / 6.0 * (f1 + 4.0 * fb + f2);
      const double change = left + right - whole;
      if (depth <= 0 || std::fabs(change) < 15.0 * tol) return left + right + change / 15.0;
      return step(x0, f0, xa, fa, x1, f1, left, 0.5 * tol, depth - 1) +
             step(x1, f1, xb, fb, x2, f2, right, 0.5 * tol, depth - 1);
    }
  };
  const int panels = 512;
  double sum = 0.0;
  for (int i = 0; i < panels; ++i) {
    const double x0 = a + (b - a) * i / panels;
    const double x2 = a + (b - a) * (i + 1) / panels;
    const double x1 = 0.5 * (x0 + x2);
    const double f0 = f(x0), f1 = f(x1), f2 = f(x2);
    sum += Rule{f}.step(x0, f0, x1, f1, x2, f2, (x2 - x0) / 6.0 * (f0 + 4.0 * f1 + f2),
                        tolerance / panels, 40);
  }
  return sum;
}

/// Part of a disc of radius r below height u, by the angle that the water line spans.
inline double disc_below(double r, double u) {
  if (!(r > 0.0) || u <= -r) return 0.0;
  if (u >= r) return pi * r * r;
  const double theta = 2.0 * std::atan2(std::sqrt(r * r - u * u), -u);
  return 0.5 * r * r * (theta - std::sin(theta));
}

// Numbers and bodies at random.
inline double between(double low, double high) {
  return low + (high - low) * (*rc::gen::inRange(0, 1000001)) / 1e6;
}
inline units::Length length(double low, double high) { return units::metres(between(low, high)); }

/// Often lying, standing or nearly so, where the formulas change.
inline double any_slope(bool downward = false) {
  const double steep =
      *rc::gen::element(0.0, 1e-7, 1e-4, 2e-3, 0.3, 0.8, 1.5, pi / 2.0 - 1e-5, pi / 2.0);
  return downward && *rc::gen::arbitrary<bool>() ? -steep : steep;
}

inline Cylinder any_cylinder() {
  Cylinder c;
  c.inner_diameter = length(0.05, 3.0);
  c.wall = length(0.002, 0.1);
  c.length = length(0.2, 12.0);
  c.middle = units::level_metres(between(-3.0, 15.0));
  c.slope_rad = any_slope();
  return c;
}
inline Head any_head() {
  Head h;
  h.inner_diameter = length(0.1, 3.0);
  h.wall = length(0.002, 0.1);
  h.centre = units::level_metres(between(-3.0, 15.0));
  h.slope_rad = any_slope(true);
  const units::Length r = h.inner_diameter / 2.0;
  switch (*rc::gen::inRange(0, 3)) {
    case 0:
      h.form = Ellipsoidal{between(0.7, 4.0)};
      break;
    case 1:
      h.form = Torispherical{r * between(1.0, 2.5), r * between(0.05, 0.7)};
      break;
    default:
      h.form = Hemispherical{};
  }
  return h;
}
inline SquareHeader any_header() {
  SquareHeader h;
  h.inner_width = length(0.05, 0.5);
  h.inner_height = length(0.05, 0.5);
  h.corner_radius = std::min(h.inner_width, h.inner_height) * between(0.0, 0.5);
  h.wall = length(0.005, 0.05);
  h.length = length(0.2, 6.0);
  h.middle = units::level_metres(between(0.0, 10.0));
  h.slope_rad = any_slope();
  return h;
}
inline TubeBank any_bank() {
  TubeBank b;
  b.tubes = *rc::gen::inRange(1, 900);
  b.outer_diameter = length(0.02, 0.2);
  b.wall = b.outer_diameter * between(0.02, 0.3);
  b.length = length(0.5, 30.0);
  b.bottom = units::level_metres(between(0.0, 5.0));
  b.top = b.bottom + length(0.1, 9.0);
  return b;
}
inline FiretubeShell any_shell() {
  FiretubeShell s;
  s.inner_diameter = length(1.5, 3.0);
  s.wall = length(0.008, 0.03);
  s.length = length(2.0, 7.0);
  s.centre = units::level_metres(between(1.0, 4.0));
  const units::Length R = s.inner_diameter / 2.0;
  s.rows.push_back({1, R * between(0.4, 0.7), length(0.008, 0.02), s.centre - R * between(0.1, 0.5),
                    std::nullopt, true, true});
  const int rows = *rc::gen::inRange(0, 6);
  for (int i = 0; i < rows; ++i) {
    s.rows.push_back({*rc::gen::inRange(1, 20), length(0.04, 0.09), length(0.002, 0.005),
                      s.centre + R * between(-0.8, 0.8), std::nullopt, false, true});
  }
  if (*rc::gen::arbitrary<bool>()) s.rows[0].length = s.length * between(0.5, 1.0);
  return s;
}
inline Body any_body() {
  Body body;
  body.count = *rc::gen::inRange(1, 4);
  switch (*rc::gen::inRange(0, 6)) {
    case 0:
      body.shape = any_cylinder();
      break;
    case 1:
    case 2:
      body.shape = any_head();
      break;
    case 3:
      body.shape = any_header();
      break;
    case 4:
      body.shape = any_bank();
      break;
    default:
      body.shape = any_shell();
  }
  return body;
}

}  // namespace steamworthy::vessel::testing
