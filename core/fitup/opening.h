// Outline of an opening: where a place on the clock lies, and which way the edge faces there.
//
// A closure is faced from outside. Bearings turn clockwise from the top: 12 o'clock is 0, 3 o'clock
// a quarter turn. Directions are (to the right, upwards).
#pragma once

#include <string_view>

#include "boiler/closure.h"

namespace steamworthy::fitup {

/// Plain numbers: of a direction, or millimetres of a shift.
struct Plane {
  double right = 0.0;
  double up = 0.0;

  friend constexpr Plane operator+(Plane a, Plane b) { return {a.right + b.right, a.up + b.up}; }
  friend constexpr Plane operator-(Plane a) { return {-a.right, -a.up}; }
  friend constexpr Plane operator*(double k, Plane a) { return {k * a.right, k * a.up}; }
  friend constexpr double dot(Plane a, Plane b) { return a.right * b.right + a.up * b.up; }
};

double size(Plane shift);
/// In radians, clockwise from the top, 0 to 2 pi.
double bearing(Plane direction);
Plane direction_of(double bearing);

/// A place on the clock as a bearing: 12 -> 0, 3 -> pi/2. Range: 0 <= clock <= 12.
double bearing_of_clock(double clock);

/// "top", "top_right", "right", "lower_right", "bottom", "lower_left", "left", "top_left": the
/// nearest of the eight.
std::string_view word_of_bearing(double bearing);

/// The hole, and how it lies.
struct Outline {
  boiler::Opening opening;
  double long_axis = 3.0;  ///< o'clock to which the greater width points: 3 lying, 12 standing
};

/// Outward normal of the edge at the point seen from the middle under a bearing.
///
///   circle  the bearing itself
///   oval    n ~ (X / a^2, Y / b^2) at the point (X, Y) of the ellipse, X along the long axis
///   oblong  square to the straight sides; at the half-round ends away from their centres
///
/// Range    width >= height > 0 (a circle: equal).
/// Checked  fitup_test.cc: axes, a circle written as an oval, normals square to the edge.
Plane normal_at(const Outline& outline, double bearing);

}  // namespace steamworthy::fitup
