// Taking a part apart into the simple bodies of `vessel`.
#include <algorithm>
#include <cmath>

#include "boiler/content.h"
#include "numerics/math.h"

namespace steamworthy::boiler {
namespace {

using units::Length;
using units::Level;

constexpr double quarter_turn_rad = 1.57079632679489661923;

double slope_rad(const Cylinder& cylinder) {
  switch (cylinder.axis) {
    case Axis::Horizontal:
      return 0.0;
    case Axis::Vertical:
      return quarter_turn_rad;
    case Axis::Inclined:
      return numerics::asin(std::fabs(cylinder.rise.si()) / cylinder.length.si());
  }
  return 0.0;
}

vessel::HeadForm form(const Head& head) {
  switch (head.kind) {
    case HeadKind::Elliptical:
      return vessel::Ellipsoidal{head.ratio};
    case HeadKind::Torispherical:
      return vessel::Torispherical{head.crown_radius.value_or(Length{}),
                                   head.knuckle_radius.value_or(Length{})};
    case HeadKind::Hemispherical:
      return vessel::Hemispherical{};
    case HeadKind::Flat:
      break;
  }
  return vessel::Flat{head.stayed ? vessel::PlateEdge::Stayed : vessel::PlateEdge::Clamped};
}

void add(std::vector<vessel::Body>& into, const Cylinder& shape, int count) {
  const double slope = slope_rad(shape);
  into.push_back({vessel::Cylinder{shape.inner_diameter, shape.wall, shape.length,
                                   shape.centre_level, slope, vessel::Ends::Closed},
                  count});
  if (shape.heads.size() != 2) return;
  // Equal heads of a lying drum are one body, so that their sum keeps its digits.
  if (slope == 0.0 && shape.heads[0] == shape.heads[1]) {
    into.push_back({vessel::Head{form(shape.heads[0]), shape.inner_diameter, shape.heads[0].wall,
                                 shape.centre_level, 0.0},
                    2 * count});
    return;
  }
  const Length half_rise = 0.5 * numerics::sin(slope) * shape.length;
  const bool first_is_lower = shape.rise.si() >= 0.0;
  const Head& lower = shape.heads[first_is_lower ? 0 : 1];
  const Head& upper = shape.heads[first_is_lower ? 1 : 0];
  into.push_back({vessel::Head{form(lower), shape.inner_diameter, lower.wall,
                               shape.centre_level - half_rise, -slope},
                  count});
  into.push_back({vessel::Head{form(upper), shape.inner_diameter, upper.wall,
                               shape.centre_level + half_rise, slope},
                  count});
}

void add(std::vector<vessel::Body>& into, const SquareHeader& shape, int count) {
  into.push_back({vessel::SquareHeader{shape.inner_width, shape.inner_width, shape.corner_radius,
                                       shape.wall, shape.length, shape.centre_level, 0.0},
                  count});
}

void add(std::vector<vessel::Body>& into, const Tubes& shape, int count) {
  if (count <= shape.plugged) return;
  into.push_back(
      {vessel::TubeBank{count - shape.plugged, shape.outer_diameter, shape.wall, shape.length,
                        shape.bottom_level, shape.top_level, vessel::Ends::Closed},
       1});
}

/// The rows of one bundle: evenly spaced between its levels, the tubes shared out
/// as evenly as they go, lower rows first.
void add_rows(std::vector<vessel::FlueRow>& into, const Inside& inside) {
  const int rows = std::max(1, inside.rows);
  const Level lowest = inside.bottom_level + 0.5 * inside.outer_diameter;
  const Level highest = inside.top_level - 0.5 * inside.outer_diameter;
  for (int row = 0; row < rows; ++row) {
    vessel::FlueRow flue;
    flue.tubes = inside.count / rows + (row < inside.count % rows ? 1 : 0);
    if (flue.tubes == 0) continue;
    flue.outer_diameter = inside.outer_diameter;
    flue.wall = inside.wall;
    flue.level = rows == 1 ? lowest + 0.5 * (highest - lowest)
                           : lowest + (static_cast<double>(row) / (rows - 1)) * (highest - lowest);
    flue.length = inside.length;
    flue.furnace = inside.kind != InsideKind::FireTubes;
    flue.takes_axial_load = !inside.corrugated;
    into.push_back(flue);
  }
}

void add(std::vector<vessel::Body>& into, const FiretubeShell& shape, int count) {
  vessel::FiretubeShell shell{
      shape.inner_diameter, shape.wall, shape.length, shape.centre_level, {}};
  for (const Inside& inside : shape.inside) add_rows(shell.rows, inside);
  into.push_back({std::move(shell), count});
}

}  // namespace

std::vector<vessel::Body> bodies(const Part& part) {
  std::vector<vessel::Body> result;
  std::visit([&](const auto& shape) { add(result, shape, part.count); }, part.shape);
  return result;
}

}  // namespace steamworthy::boiler
