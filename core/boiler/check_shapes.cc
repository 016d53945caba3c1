// Shapes: can a part of these sizes be?
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "boiler/check.h"
#include "boiler/content.h"
#include "boiler/faults.h"
#include "vessel/shapes.h"

namespace steamworthy::boiler {
namespace {

using units::Kind;
using units::Length;
using units::Level;

constexpr double slack = 1e-3;  // metres: drawings round to the millimetre

void check_walls(const std::string& field, Length wall, const std::optional<Length>& measured,
                 Faults& faults) {
  faults.between(field + ".wall", wall, Kind::Size, 0.3e-3, 0.5);
  faults.between(field + ".measured_wall", measured, Kind::Size, 0.1e-3, 0.5);
  if (measured && *measured > 2.0 * wall) {
    faults.add("boiler.impossible", field + ".measured_wall", shown_size(*measured),
               fmt::format("at most twice the wall as drawn, {}", shown_size(wall)),
               "is more than twice the wall as drawn");
  }
}

void check_bore(const std::string& field, Length inner, Length wall, const char* key,
                Faults& faults) {
  if (inner.si() <= 0.0) {
    const Length outer = inner + 2.0 * wall;
    faults.add("boiler.impossible", fmt::format("{}.{}", field, key), shown_size(outer),
               fmt::format("more than two walls, {}", shown_size(2.0 * wall)),
               "leaves no bore between the walls");
    return;
  }
  faults.between(fmt::format("{}.{}", field, key), inner, Kind::Size, 3e-3, 15.0);
}

void check_head(const std::string& field, const Head& head, Length inner, Faults& faults) {
  check_walls(field, head.wall, head.measured_wall, faults);
  const Length radius = 0.5 * inner;
  if (head.kind == HeadKind::Elliptical && (head.ratio < 1.0 || head.ratio > 10.0)) {
    faults.add("boiler.impossible", field + ".ratio", fmt::format("{}", head.ratio),
               "1 to 10: radius over depth, 2 for a usual head", "is no ellipse of a head");
  }
  if (head.kind != HeadKind::Torispherical) return;
  const Length crown = head.crown_radius.value_or(Length{});
  const Length knuckle = head.knuckle_radius.value_or(Length{});
  if (!head.crown_radius || crown < radius) {
    faults.add(head.crown_radius ? "boiler.impossible" : "boiler.missing", field + ".crown_radius",
               head.crown_radius ? shown_size(crown) : "",
               fmt::format("at least the inner radius of the cylinder, {}", shown_size(radius)),
               head.crown_radius ? "is less than the radius of the cylinder" : "is missing");
  }
  if (!head.knuckle_radius || knuckle.si() <= 0.0 || knuckle > radius) {
    faults.add(head.knuckle_radius ? "boiler.impossible" : "boiler.missing",
               field + ".knuckle_radius", head.knuckle_radius ? shown_size(knuckle) : "",
               fmt::format("more than nothing, at most the inner radius of the cylinder, {}",
                           shown_size(radius)),
               head.knuckle_radius ? "does not fit the cylinder" : "is missing");
  }
}

void check(const Part& part, const Cylinder& shape, const std::string& field, Faults& faults) {
  check_walls(field, shape.wall, part.measured_wall, faults);
  check_bore(field, shape.inner_diameter, shape.wall, "inner_diameter", faults);
  faults.between(field + ".length", shape.length, Kind::Distance, 0.01, 200.0);
  faults.level(field + ".level", shape.centre_level);
  if (shape.axis == Axis::Inclined && (shape.rise.si() <= 0.0 || shape.rise > shape.length)) {
    faults.add("boiler.impossible", field + ".rise", shown_distance(shape.rise),
               fmt::format("above 0, at most the length, {}", shown_distance(shape.length)),
               "cannot be the rise of this part");
  }
  for (std::size_t i = 0; i < shape.heads.size(); ++i) {
    const bool same = shape.heads.size() == 2 && shape.heads[0] == shape.heads[1];
    if (same && i == 1) break;
    const char* key = same ? "heads" : i == 0 ? "first_head" : "second_head";
    check_head(fmt::format("{}.{}", field, key), shape.heads[i], shape.inner_diameter, faults);
  }
}

void check(const Part& part, const SquareHeader& shape, const std::string& field, Faults& faults) {
  check_walls(field, shape.wall, part.measured_wall, faults);
  check_bore(field, shape.inner_width, shape.wall, "inner_width", faults);
  faults.between(field + ".length", shape.length, Kind::Distance, 0.01, 200.0);
  faults.level(field + ".level", shape.centre_level);
  if (shape.corner_radius.si() < 0.0 || shape.corner_radius > 0.5 * shape.inner_width) {
    faults.add("boiler.impossible", field + ".corner_radius", shown_size(shape.corner_radius),
               fmt::format("at most half the inner width, {}", shown_size(0.5 * shape.inner_width)),
               "does not fit the header");
  }
}

void check(const Part& part, const Tubes& shape, const std::string& field, Faults& faults) {
  check_walls(field, shape.wall, part.measured_wall, faults);
  check_bore(field, inner_diameter(part), shape.wall, "outer_diameter", faults);
  faults.between(field + ".length", shape.length, Kind::Distance, 0.01, 1000.0);
  faults.level(field + ".bottom_level", shape.bottom_level);
  faults.level(field + ".top_level", shape.top_level);
  const Length height = shape.top_level - shape.bottom_level;
  if (height.si() <= 0.0) {
    faults.add("boiler.impossible", field + ".top_level", shown_level(shape.top_level),
               fmt::format("above the bottom level, {}", shown_level(shape.bottom_level)),
               "is not above the bottom level");
  } else {
    const double legs = shape.run == Run::Straight ? 1.0 : 2.0;
    if (shape.length.si() + slack < legs * height.si()) {
      faults.add("boiler.impossible", field + ".length", shown_distance(shape.length),
                 fmt::format("at least {}", shown_distance(legs * height)),
                 legs > 1.0 ? "is too short for a loop between the two levels"
                            : "is too short to reach from the bottom level to the top level");
    }
  }
  if (shape.plugged == unread || part.count == unread) return;
  if (shape.plugged < 0 || shape.plugged > part.count) {
    faults.add("boiler.impossible", field + ".plugged", fmt::format("{}", shape.plugged),
               fmt::format("0 to {}, the number of tubes", part.count),
               "is not among the tubes of this part");
  }
}

void check_inside(const FiretubeShell& shell, const Inside& inside, const std::string& field,
                  Faults& faults) {
  check_walls(field, inside.wall, inside.measured_wall, faults);
  check_bore(field, inside.outer_diameter - 2.0 * inside.wall, inside.wall, "outer_diameter",
             faults);
  faults.between(field + ".count", inside.count, 1, 20000);
  const Level bottom = shell.centre_level - 0.5 * shell.inner_diameter;
  const Level top = shell.centre_level + 0.5 * shell.inner_diameter;
  if (inside.bottom_level.si() < bottom.si() - slack) {
    faults.add("boiler.outside_part", field + ".bottom_level", shown_level(inside.bottom_level),
               fmt::format("{} to {}", shown_level(bottom), shown_level(top)),
               "lies below the shell");
  }
  if (inside.top_level.si() > top.si() + slack) {
    faults.add("boiler.outside_part", field + ".top_level", shown_level(inside.top_level),
               fmt::format("{} to {}", shown_level(bottom), shown_level(top)),
               "lies above the shell");
  }
  const Length height = inside.top_level - inside.bottom_level;
  if (height.si() < inside.outer_diameter.si() - slack) {
    faults.add("boiler.impossible", field + ".top_level", shown_level(inside.top_level),
               fmt::format("at least {}", shown_level(inside.bottom_level + inside.outer_diameter)),
               "leaves less height than one tube has");
  }
  if (inside.length && *inside.length > shell.length) {
    faults.add("boiler.does_not_fit", field + ".length", shown_distance(*inside.length),
               fmt::format("at most the shell's, {}", shown_distance(shell.length)),
               "is longer than the shell");
  }
  if (inside.rows == unread || inside.count == unread) return;
  if (inside.rows < 1 || inside.rows > std::max(1, inside.count)) {
    faults.add("boiler.impossible", field + ".rows", fmt::format("{}", inside.rows),
               fmt::format("1 to {}, the number of tubes", inside.count),
               "cannot be the number of rows");
  } else if (inside.rows > 1 &&
             height.si() + slack < static_cast<double>(inside.rows) * inside.outer_diameter.si()) {
    faults.add("boiler.does_not_fit", field + ".rows", fmt::format("{}", inside.rows),
               fmt::format("rows of {} within {}", shown_size(inside.outer_diameter),
                           shown_distance(height)),
               "are more rows than fit between the two levels");
  }
}

void check(const Part& part, const FiretubeShell& shape, const std::string& field, Faults& faults) {
  check_walls(field, shape.wall, part.measured_wall, faults);
  check_bore(field, shape.inner_diameter, shape.wall, "inner_diameter", faults);
  faults.between(field + ".length", shape.length, Kind::Distance, 0.1, 50.0);
  faults.between(field + ".plate_wall", shape.plate_wall, Kind::Size, 1e-3, 0.2);
  faults.level(field + ".level", shape.centre_level);
  double taken = 0.0;
  for (const Inside& inside : shape.inside) {
    check_inside(shape, inside, fmt::format("{}.inside[{}]", field, inside.tag), faults);
    const double d = inside.outer_diameter.si();
    taken += std::max(0, inside.count) * d * d * inside.length.value_or(shape.length).si();
  }
  const double d = shape.inner_diameter.si();
  if (taken >= d * d * shape.length.si()) {
    faults.add("boiler.does_not_fit", field + ".inside", "",
               "furnaces and tubes that leave room for water",
               "what stands in the shell takes more room than it has");
  }
}

double or_zero(const std::optional<Length>& length) { return length.value_or(Length{}).si(); }

/// Sums that are not finite if any of a shape's sizes is not.
double sum(const vessel::Cylinder& s) {
  return s.inner_diameter.si() + s.length.si() + s.middle.si() + s.slope_rad + or_zero(s.wall);
}
double sum(const vessel::Head& s) {
  return s.inner_diameter.si() + s.centre.si() + s.slope_rad + or_zero(s.wall);
}
double sum(const vessel::SquareHeader& s) {
  return s.inner_width.si() + s.corner_radius.si() + s.length.si() + s.middle.si() +
         or_zero(s.wall);
}
double sum(const vessel::TubeBank& s) {
  return s.outer_diameter.si() + s.wall.si() + s.length.si() + s.bottom.si() + s.top.si();
}
double sum(const vessel::FiretubeShell& s) {
  double result = s.inner_diameter.si() + s.length.si() + s.centre.si() + or_zero(s.wall);
  for (const vessel::FlueRow& row : s.rows) {
    if (row.tubes < 1) return std::numeric_limits<double>::quiet_NaN();
    result += row.outer_diameter.si() + row.wall.si() + row.level.si() + or_zero(row.length);
  }
  return result;
}

/// Were all sizes read? What was not has been reported.
bool is_read(const vessel::Body& body) {
  return std::visit([](const auto& shape) { return std::isfinite(sum(shape)); }, body.shape);
}

}  // namespace

void check_shape(const Part& part, const std::string& field, Faults& faults) {
  std::vector<Problem> own;
  Faults mine(own);
  std::visit([&](const auto& shape) { check(part, shape, field, mine); }, part.shape);
  for (Problem& problem : own) {
    faults.add(problem.code, problem.field, problem.found, problem.accepted, problem.message);
  }
  if (!own.empty() || part.count < 1) return;
  // Whatever else the formulas of `vessel` could not take.
  for (const vessel::Body& body : bodies(part)) {
    if (!is_read(body)) continue;
    for (const Problem& problem : vessel::faults(body)) {
      faults.add("boiler.impossible", field, problem.found, problem.accepted,
                 fmt::format("{} {}", problem.field, problem.message));
    }
  }
}

}  // namespace steamworthy::boiler
