// Where each piece of a boiler stands in plan, stated or assumed.
#include <algorithm>
#include <cmath>

#include "boiler/solid.h"

namespace steamworthy::boiler::detail {
namespace {

/// How far a head reaches beyond its tangent line, over the metal.
double head_depth(const Head& head, double outer_radius) {
  switch (head.kind) {
    case HeadKind::Flat:
      return head.wall.si();
    case HeadKind::Elliptical:
      return outer_radius / std::max(head.ratio, 1.0);
    case HeadKind::Hemispherical:
      return outer_radius;
    case HeadKind::Torispherical: {
      // Crown and knuckle touch: (R_c - h)^2 + (R - r_k)^2 = (R_c - r_k)^2.
      const double crown = head.crown_radius ? head.crown_radius->si() : 2.0 * outer_radius;
      const double knuckle = head.knuckle_radius ? head.knuckle_radius->si() : 0.2 * outer_radius;
      const double a = crown - knuckle, b = outer_radius - knuckle;
      return a > b ? crown - std::sqrt(a * a - b * b) : outer_radius / 2.0;
    }
  }
  return 0.0;
}

Solid solid_of(const Part& part) {
  Solid solid{.part = &part};
  solid.diameter = outer_diameter(part).si();
  solid.length = length(part).si();
  solid.level = middle(part).si();
  if (const auto* cylinder = std::get_if<Cylinder>(&part.shape)) {
    solid.level = cylinder->centre_level.si();
    solid.upright = cylinder->axis == Axis::Vertical;
    if (cylinder->axis == Axis::Inclined) solid.rise = cylinder->rise.si();
    for (std::size_t i = 0; i < cylinder->heads.size() && i < 2; ++i)
      solid.depth[i] = head_depth(cylinder->heads[i], solid.diameter / 2.0);
  } else if (const auto* header = std::get_if<SquareHeader>(&part.shape)) {
    solid.level = header->centre_level.si();
    solid.depth[0] = solid.depth[1] = header->wall.si();
  } else if (const auto* shell = std::get_if<FiretubeShell>(&part.shape)) {
    solid.level = shell->centre_level.si();
    solid.depth[0] = solid.depth[1] = shell->plate_wall.si();
  } else if (const auto* tubes = std::get_if<Tubes>(&part.shape)) {
    solid.length = tubes->top_level.si() - tubes->bottom_level.si();
  }
  return solid;
}

const Solid* solid_of_tag(const std::vector<Solid>& solids, const std::string& tag) {
  for (const Solid& solid : solids) {
    if (!solid.is_bank() && solid.part->tag == tag) return &solid;
  }
  return nullptr;
}

/// A bank of unknown place stands between the parts at its ends.
void place_between(Solid& bank, const std::vector<Solid>& solids) {
  const auto& tubes = std::get<Tubes>(bank.part->shape);
  int known = 0;
  for (const std::string& tag : {tubes.from, tubes.to}) {
    const Solid* end = solid_of_tag(solids, tag);
    if (end == nullptr) continue;
    bank.x = (bank.x * known + end->x) / (known + 1);
    bank.y = (bank.y * known + end->y) / (known + 1);
    if (known == 0 || end->diameter < 0.4) bank.across = end->across;
    ++known;
  }
}

}  // namespace

std::vector<Solid> place_all(const Boiler& boiler) {
  std::vector<Solid> solids;
  for (const Part& part : boiler.parts) {
    const Solid one = solid_of(part);
    const int copies = one.is_bank() ? 1 : std::max(1, std::min(part.count, 200));
    for (int i = 0; i < copies; ++i) {
      Solid copy = one;
      const double step = part.place && part.place->spacing.si() > 0.0 ? part.place->spacing.si()
                                                                       : 1.6 * copy.diameter;
      const double aside = (i - (copies - 1) / 2.0) * step;
      copy.assumed = !part.place || (copies > 1 && part.place->spacing.si() <= 0.0);
      if (part.place) {
        copy.across = part.place->across;
        copy.x = part.place->x.si() + (copy.across && !copy.upright ? 0.0 : aside);
        copy.y = part.place->y.si() + (copy.across && !copy.upright ? aside : 0.0);
      } else {
        copy.y = aside;
      }
      solids.push_back(copy);
    }
  }
  // Parts of unknown place: beside each other, clear of what stands at the same height.
  double right = 0.0;
  bool any = false;
  for (const Solid& solid : solids) {
    if (!solid.part->place) continue;
    const double half = solid.across && !solid.is_bank() ? solid.length / 2.0 : solid.diameter;
    right = any ? std::max(right, solid.x + half) : solid.x + half;
    any = true;
  }
  std::vector<const Solid*> put;
  for (Solid& solid : solids) {
    if (solid.part->place || solid.is_bank()) continue;
    const double half = solid.upright
                            ? solid.diameter / 2.0
                            : solid.length / 2.0 + std::max(solid.depth[0], solid.depth[1]);
    const double tall = solid.upright ? solid.length / 2.0 : solid.diameter / 2.0;
    double x = any ? right + 0.5 + half : 0.0;
    for (const Solid* other : put) {
      if (other->part == solid.part) {
        x = other->x;
        break;
      }
      const double other_tall = other->upright ? other->length / 2.0 : other->diameter / 2.0;
      if (std::abs(other->level - solid.level) > tall + other_tall + 0.1) continue;
      const double other_half = other->upright ? other->diameter / 2.0 : other->length / 2.0 + 0.3;
      x = std::max(x, other->x + other_half + 0.3 + half);
    }
    solid.x = x;
    put.push_back(&solid);
  }
  for (Solid& solid : solids) {
    if (!solid.part->place && solid.is_bank()) place_between(solid, solids);
  }
  return solids;
}

double across_of(View view, double x, double y) {
  switch (view) {
    case View::Front:
      return x;
    case View::Right:
      return y;
    case View::Rear:
      return -x;
    case View::Left:
      return -y;
  }
  return x;
}

bool lengthwise(View view, const Solid& solid) {
  return solid.across == (view == View::Front || view == View::Rear);
}

double middle_of(View view, const Solid& solid) { return across_of(view, solid.x, solid.y); }

double direction(View view, const Solid&) {
  return view == View::Front || view == View::Right ? 1.0 : -1.0;
}

View home_view(const std::vector<Solid>& solids, const Solid& solid) {
  double low = 0.0, high = 0.0;
  bool any = false;
  for (const Solid& other : solids) {
    if (other.is_bank()) continue;
    const double here = solid.across ? other.y : other.x;
    low = any ? std::min(low, here) : here;
    high = any ? std::max(high, here) : here;
    any = true;
  }
  const double middle = (low + high) / 2.0;
  if (solid.across) return solid.y <= middle + 1e-9 ? View::Front : View::Rear;
  return solid.x >= middle - 1e-9 ? View::Right : View::Left;
}

}  // namespace steamworthy::boiler::detail
