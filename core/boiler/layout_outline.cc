// Outlines of parts as lines of a view.
#include <algorithm>
#include <cmath>

#include "boiler/solid.h"
#include "numerics/math.h"

namespace steamworthy::boiler::detail {
namespace {

constexpr double pi = 3.14159265358979323846;

DrawnLine circle(Spot centre, double radius) {
  DrawnLine round{{}, true};
  constexpr int corners = 48;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * pi * i / corners;
    round.points.push_back({centre.across + radius * numerics::cos(angle),
                            centre.level + radius * numerics::sin(angle)});
  }
  return round;
}

DrawnLine box(double left, double bottom, double right, double top) {
  return {{{left, bottom}, {right, bottom}, {right, top}, {left, top}}, true};
}

/// A cylinder with its heads along a slanting axis; `s` runs along it from the first end.
DrawnLine capsule(Spot middle, double along_across, double along_level, double length,
                  double radius, const double (&depth)[2]) {
  DrawnLine line{{}, true};
  const auto put = [&](double s, double t) {
    line.points.push_back({middle.across + s * along_across - t * along_level,
                           middle.level + s * along_level + t * along_across});
  };
  constexpr int steps = 12;
  for (int i = 0; i <= steps; ++i) {  // second end, from below to above
    const double angle = -pi / 2.0 + pi * i / steps;
    put(length / 2.0 + depth[1] * numerics::cos(angle), radius * numerics::sin(angle));
  }
  for (int i = 0; i <= steps; ++i) {  // first end, from above to below
    const double angle = pi / 2.0 + pi * i / steps;
    put(-length / 2.0 + depth[0] * numerics::cos(angle), radius * numerics::sin(angle));
  }
  return line;
}

/// Furnaces and fire tubes. Across the shell their places are not described: each row is spread
/// evenly to both sides of the middle, clear of what is there already.
void draw_inside(const FiretubeShell& shell, const Solid& solid, View view, DrawnPart& part) {
  const double middle = middle_of(view, solid);
  const double radius = shell.inner_diameter.si() / 2.0;
  if (lengthwise(view, solid)) {
    const double left = middle - shell.length.si() / 2.0, right = middle + shell.length.si() / 2.0;
    for (const Inside& inside : shell.inside) {
      const double long_ = inside.length ? inside.length->si() : shell.length.si();
      // What is shorter than the shell begins at the front plate; a chamber ends the furnace.
      double from = direction(view, solid) > 0.0 ? left : right - long_;
      if (inside.kind == InsideKind::ReversalChamber) {
        for (const Inside& other : shell.inside) {
          if (other.kind != InsideKind::Furnace || !other.length) continue;
          from = direction(view, solid) > 0.0 ? left + other.length->si()
                                              : right - other.length->si() - long_;
        }
      }
      const double low = inside.bottom_level.si(), high = inside.top_level.si();
      if (inside.kind != InsideKind::FireTubes) {
        part.thin.push_back(box(from, low, from + long_, high));
        continue;
      }
      const double half = inside.outer_diameter.si() / 2.0;
      for (int row = 0; row < inside.rows; ++row) {
        const double share = inside.rows > 1 ? row / (inside.rows - 1.0) : 0.5;
        const double level = low + half + share * (high - low - 2.0 * half);
        part.thin.push_back({{{from, level}, {from + long_, level}}, false});
      }
    }
    return;
  }
  struct Taken {
    double across, level, radius;
  };
  std::vector<Taken> taken;
  for (const Inside& inside : shell.inside) {
    const double r = inside.outer_diameter.si() / 2.0;
    const double low = inside.bottom_level.si() + r, high = inside.top_level.si() - r;
    const int rows = std::max(1, inside.rows);
    if (inside.kind == InsideKind::ReversalChamber) continue;  // behind the furnace
    for (int row = 0; row < rows; ++row) {
      const double level = rows > 1 ? low + (high - low) * row / (rows - 1.0) : (low + high) / 2.0;
      int wanted = inside.count / rows + (row < inside.count % rows ? 1 : 0);
      const double pitch = 2.0 * r * (inside.kind == InsideKind::Furnace ? 1.15 : 1.35);
      const bool odd = wanted % 2 == 1;
      for (int k = 0; wanted > 0 && k < 200; ++k) {
        const double off = odd ? k * pitch : (k + 0.5) * pitch;
        for (const double sign : {-1.0, 1.0}) {
          if (wanted == 0 || (odd && k == 0 && sign > 0.0)) continue;
          const double u = sign * off, v = level - shell.centre_level.si();
          if (numerics::hypot(u, v) + r > radius) continue;
          const bool free = std::none_of(taken.begin(), taken.end(), [&](const Taken& other) {
            return numerics::hypot(other.across - u, other.level - level) <
                   0.98 * (other.radius + r);
          });
          if (!free) continue;
          taken.push_back({u, level, r});
          part.thin.push_back(circle({middle + u, level}, r));
          --wanted;
        }
      }
    }
  }
}

}  // namespace

DrawnPart outline_of(const Solid& solid, View view) {
  DrawnPart part{solid.part->tag, {}, {}, {}, solid.assumed};
  const double u = middle_of(view, solid), r = solid.diameter / 2.0;
  const bool square = std::holds_alternative<SquareHeader>(solid.part->shape);
  part.label = {u, solid.level};
  if (solid.upright) {
    part.outline.push_back(capsule({u, solid.level}, 0.0, 1.0, solid.length, r, solid.depth));
  } else if (lengthwise(view, solid)) {
    const double slope = solid.length > 0.0 ? solid.rise / solid.length : 0.0;
    const double flat = std::sqrt(std::max(0.0, 1.0 - slope * slope));
    const double way = direction(view, solid);
    if (square) {
      const double half = solid.length / 2.0 + solid.depth[0];
      part.outline.push_back(box(u - half, solid.level - r, u + half, solid.level + r));
    } else {
      part.outline.push_back(
          capsule({u, solid.level}, way * flat, slope, solid.length, r, solid.depth));
      if (solid.depth[0] + solid.depth[1] > 0.0) {
        for (const double s : {-solid.length / 2.0, solid.length / 2.0}) {
          const Spot on{u + s * way * flat, solid.level + s * slope};
          part.thin.push_back({{{on.across + r * slope, on.level - r * flat},
                                {on.across - r * slope, on.level + r * flat}},
                               false});
        }
      }
    }
  } else if (square) {
    part.outline.push_back(box(u - r, solid.level - r, u + r, solid.level + r));
  } else if (solid.rise != 0.0) {
    part.outline.push_back(circle({u, solid.level - solid.rise / 2.0}, r));
    part.outline.push_back(circle({u, solid.level + solid.rise / 2.0}, r));
  } else {
    part.outline.push_back(circle({u, solid.level}, r));
    part.thin.push_back(circle({u, solid.level}, inner_diameter(*solid.part).si() / 2.0));
  }
  if (const auto* shell = std::get_if<FiretubeShell>(&solid.part->shape))
    draw_inside(*shell, solid, view, part);
  return part;
}

}  // namespace steamworthy::boiler::detail
