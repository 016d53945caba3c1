#include "fitup/opening.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "numerics/math.h"

namespace steamworthy::fitup {
namespace {

using numerics::pi;

/// Turns the long axis to lie along `x` and back.
struct Frame {
  Plane along;  ///< of the long axis
  Plane across;

  explicit Frame(double long_axis)
      : along(direction_of(bearing_of_clock(long_axis))), across{-along.up, along.right} {}
  Plane out(double x, double y) const { return x * along + y * across; }
};

Plane unit(Plane v) { return (1.0 / size(v)) * v; }

}  // namespace

double size(Plane shift) { return numerics::hypot(shift.right, shift.up); }

double bearing(Plane direction) {
  const double angle = numerics::atan2(direction.right, direction.up);
  return angle < 0.0 ? angle + 2.0 * pi : angle;
}

Plane direction_of(double bearing) { return {numerics::sin(bearing), numerics::cos(bearing)}; }

double bearing_of_clock(double clock) { return clock >= 12.0 ? 0.0 : clock * (pi / 6.0); }

std::string_view word_of_bearing(double bearing) {
  static constexpr std::array<std::string_view, 8> words = {
      "top", "top_right", "right", "lower_right", "bottom", "lower_left", "left", "top_left"};
  const double eighth = std::floor(bearing / (pi / 4.0) + 0.5);
  return words[static_cast<std::size_t>(std::clamp(eighth, 0.0, 8.0)) % words.size()];
}

Plane normal_at(const Outline& outline, double bearing) {
  const Plane towards = direction_of(bearing);
  const double width = outline.opening.width.si();
  const double height = outline.opening.height.si();
  const Frame frame(outline.long_axis);
  const double x = dot(towards, frame.along);
  const double y = dot(towards, frame.across);
  switch (outline.opening.shape) {
    case boiler::OpeningShape::Circle:
      return towards;
    case boiler::OpeningShape::Oval:
      return unit(frame.out(x / (width * width), y / (height * height)));
    case boiler::OpeningShape::Oblong:
      break;
  }
  const double straight = 0.5 * (width - height);
  const double radius = 0.5 * height;
  if (radius * std::fabs(x) <= straight * std::fabs(y)) return frame.out(0.0, y < 0.0 ? -1.0 : 1.0);
  const double side = x < 0.0 ? -1.0 : 1.0;
  const double reach =
      straight * std::fabs(x) + std::sqrt(radius * radius - straight * straight * y * y);
  return unit(frame.out(reach * x - side * straight, reach * y));
}

}  // namespace steamworthy::fitup
