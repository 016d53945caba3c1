#include "boiler/part.h"

#include <cmath>

#include "boiler/closure.h"

namespace steamworthy::boiler {
namespace {

using units::Length;
using units::Level;

constexpr double pi = 3.14159265358979323846;

/// Depth of a head inside, from the tangent line to the crown.
///
///   torispherical: h = L - sqrt((L - r)^2 - (R - r)^2)
///   L crown radius, r knuckle radius, R inner radius of the cylinder
double depth(const Head& head, double inner_radius) {
  switch (head.kind) {
    case HeadKind::Flat:
      return 0.0;
    case HeadKind::Hemispherical:
      return inner_radius;
    case HeadKind::Elliptical:
      return inner_radius / head.ratio;
    case HeadKind::Torispherical: {
      const double crown = head.crown_radius.value_or(Length{}).si();
      const double knuckle = head.knuckle_radius.value_or(Length{}).si();
      const double across = inner_radius - knuckle;
      return crown - std::sqrt((crown - knuckle) * (crown - knuckle) - across * across);
    }
  }
  return 0.0;
}

/// How far the water of a cylinder reaches below (`end` 0) and above (`end` 1)
/// the middle of its axis.
double reach(const Cylinder& cylinder, std::size_t end) {
  const double radius = 0.5 * cylinder.inner_diameter.si();
  if (cylinder.axis == Axis::Horizontal) return radius;
  const double length = cylinder.length.si();
  const double sine =
      cylinder.axis == Axis::Vertical ? 1.0 : std::fabs(cylinder.rise.si()) / length;
  const double cosine = std::sqrt(std::fmax(0.0, 1.0 - sine * sine));
  const double edge = 0.5 * length * sine + radius * cosine;
  if (cylinder.heads.size() != 2) return edge;
  const Head& head = cylinder.heads[end];
  const double bulge = depth(head, radius);
  if (head.kind == HeadKind::Flat) return edge;
  // An ellipsoid of half-axes (bulge, radius) reaches sqrt((h s)^2 + (r c)^2)
  // from its centre on the tangent plane.
  return 0.5 * length * sine +
         std::sqrt(bulge * sine * bulge * sine + radius * cosine * radius * cosine);
}

}  // namespace

Length inner_diameter(const Part& part) {
  struct Visit {
    Length operator()(const Cylinder& s) const { return s.inner_diameter; }
    Length operator()(const SquareHeader& s) const { return s.inner_width; }
    Length operator()(const Tubes& s) const { return s.outer_diameter - 2.0 * s.wall; }
    Length operator()(const FiretubeShell& s) const { return s.inner_diameter; }
  };
  return std::visit(Visit{}, part.shape);
}

Length nominal_wall(const Part& part) {
  return std::visit([](const auto& shape) { return shape.wall; }, part.shape);
}

Length outer_diameter(const Part& part) {
  if (const auto* tubes = std::get_if<Tubes>(&part.shape)) return tubes->outer_diameter;
  return inner_diameter(part) + 2.0 * nominal_wall(part);
}

Length wall_in_use(const Part& part) { return part.measured_wall.value_or(nominal_wall(part)); }

Length length(const Part& part) {
  return std::visit([](const auto& shape) { return shape.length; }, part.shape);
}

Level lowest(const Part& part) {
  struct Visit {
    Level operator()(const Cylinder& s) const {
      return s.centre_level - Length::from_si(reach(s, 0));
    }
    Level operator()(const SquareHeader& s) const { return s.centre_level - 0.5 * s.inner_width; }
    Level operator()(const Tubes& s) const { return s.bottom_level; }
    Level operator()(const FiretubeShell& s) const {
      return s.centre_level - 0.5 * s.inner_diameter;
    }
  };
  return std::visit(Visit{}, part.shape);
}

Level highest(const Part& part) {
  struct Visit {
    Level operator()(const Cylinder& s) const {
      return s.centre_level + Length::from_si(reach(s, 1));
    }
    Level operator()(const SquareHeader& s) const { return s.centre_level + 0.5 * s.inner_width; }
    Level operator()(const Tubes& s) const { return s.top_level; }
    Level operator()(const FiretubeShell& s) const {
      return s.centre_level + 0.5 * s.inner_diameter;
    }
  };
  return std::visit(Visit{}, part.shape);
}

Level middle(const Part& part) { return lowest(part) + 0.5 * (highest(part) - lowest(part)); }

units::Area area(const Opening& opening) {
  if (opening.shape == OpeningShape::Oblong) {
    return opening.height * (opening.width - opening.height) +
           0.25 * pi * (opening.height * opening.height);
  }
  return 0.25 * pi * (opening.width * opening.height);
}

}  // namespace steamworthy::boiler
