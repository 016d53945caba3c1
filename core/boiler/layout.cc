#include "boiler/layout.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "boiler/solid.h"

namespace steamworthy::boiler {
namespace {

using detail::Solid;

const Solid* first_of(const std::vector<Solid>& solids, const std::string& tag) {
  for (const Solid& solid : solids) {
    if (solid.part->tag == tag) return &solid;
  }
  return nullptr;
}

bool is_end(const Solid& solid, Side side) {
  if (solid.upright) return side == Side::Top || side == Side::Bottom;
  if (solid.across) return side == Side::Left || side == Side::Right;
  return side == Side::Front || side == Side::Rear;
}

View view_of(const std::vector<Solid>& solids, const Solid& solid, Side side) {
  switch (side) {
    case Side::Front:
      return View::Front;
    case Side::Rear:
      return View::Rear;
    case Side::Left:
      return View::Left;
    case Side::Right:
      return View::Right;
    case Side::Top:
    case Side::Bottom:
      break;
  }
  return detail::home_view(solids, solid);
}

/// Along its part from the first end: stated, or spread evenly with those that state nothing.
std::map<std::string, double> positions(const Boiler& boiler, const std::vector<Solid>& solids) {
  std::map<std::string, double> along;
  std::map<std::pair<std::string, int>, std::vector<const Closure*>> silent;
  for (const Closure& closure : boiler.closures) {
    if (closure.position) {
      along[closure.tag] = closure.position->si();
    } else {
      silent[{closure.part, static_cast<int>(closure.side)}].push_back(&closure);
    }
  }
  for (const auto& [where, closures] : silent) {
    const Solid* solid = first_of(solids, where.first);
    if (solid == nullptr) continue;
    for (std::size_t i = 0; i < closures.size(); ++i) {
      along[closures[i]->tag] = solid->length * (static_cast<double>(i) + 1.0) /
                                (static_cast<double>(closures.size()) + 1.0);
    }
  }
  return along;
}

void put_closures(const Boiler& boiler, const std::vector<Solid>& solids, Drawing& drawing) {
  const auto along = positions(boiler, solids);
  std::map<std::pair<std::string, int>, double> taken_on_end;  // how far to the right, by part
  for (const Closure& closure : boiler.closures) {
    const Solid* solid = first_of(solids, closure.part);
    if (solid == nullptr || view_of(solids, *solid, closure.side) != drawing.view) continue;
    DrawnClosure drawn{closure.tag,
                       closure.part,
                       {},
                       closure.opening.width.si(),
                       closure.opening.height.si(),
                       closure.opening.shape};
    const double middle = detail::middle_of(drawing.view, *solid);
    drawn.centre = {middle, closure.level.si()};
    drawn.edge_on = closure.side == Side::Top || closure.side == Side::Bottom;
    drawn.assumed = solid->assumed || (!closure.position && !is_end(*solid, closure.side));
    if (drawn.edge_on) drawn.height = 0.25 * closure.opening.height.si();
    if (solid->upright) {
      if (closure.position) drawn.centre.level = solid->level;
      drawn.centre.level = closure.level.si();
    } else if (!is_end(*solid, closure.side)) {
      const double from_middle = along.at(closure.tag) - solid->length / 2.0;
      drawn.centre.across += detail::direction(drawing.view, *solid) * from_middle;
    }
    if (solid->upright || is_end(*solid, closure.side)) {
      // Several at one level of one end stand side by side.
      const std::pair<std::string, int> key{
          closure.part + "/" + std::to_string(static_cast<int>(closure.side)),
          static_cast<int>(std::lround(closure.level.si() * 50.0))};
      const auto it = taken_on_end.find(key);
      if (it != taken_on_end.end()) {
        drawn.centre.across = it->second + 0.6 * drawn.width;
        drawn.assumed = true;
      }
      taken_on_end[key] = drawn.centre.across + 0.6 * drawn.width;
    }
    drawing.closures.push_back(std::move(drawn));
  }
}

void put_mountings(const Boiler& boiler, const std::vector<Solid>& solids, Drawing& drawing) {
  std::map<std::string, std::vector<const Mounting*>> by_part;
  for (const Mounting& mounting : boiler.mountings) by_part[mounting.part].push_back(&mounting);
  for (const auto& [tag, mountings] : by_part) {
    const Solid* solid = first_of(solids, tag);
    if (solid == nullptr || detail::home_view(solids, *solid) != drawing.view) continue;
    const double middle = detail::middle_of(drawing.view, *solid);
    const double wide =
        solid->is_bank() || solid->upright ? std::max(solid->diameter, 0.6) : solid->length;
    const double radius = solid->is_bank() ? solid->length / 2.0
                          : solid->upright ? solid->length / 2.0
                                           : solid->diameter / 2.0;
    for (std::size_t i = 0; i < mountings.size(); ++i) {
      const double share =
          (static_cast<double>(i) + 1.0) / (static_cast<double>(mountings.size()) + 1.0);
      const double across = middle + wide * (share - 0.5);
      const double level = mountings[i]->level.si();
      const double root = std::clamp(level, solid->level - radius, solid->level + radius);
      drawing.mountings.push_back({mountings[i]->tag, tag, {across, level}, {across, root}});
    }
  }
}

void measure(const Boiler& boiler, Drawing& drawing) {
  constexpr double far = std::numeric_limits<double>::infinity();
  Spot low{far, far}, high{-far, -far};
  const auto see = [&](double across, double level) {
    low = {std::min(low.across, across), std::min(low.level, level)};
    high = {std::max(high.across, across), std::max(high.level, level)};
  };
  for (const DrawnPart& part : drawing.parts) {
    for (const auto* lines : {&part.outline, &part.thin}) {
      for (const DrawnLine& line : *lines) {
        for (const Spot& spot : line.points) see(spot.across, spot.level);
      }
    }
  }
  for (const DrawnClosure& one : drawing.closures) {
    see(one.centre.across - one.width / 2.0, one.centre.level - one.height / 2.0);
    see(one.centre.across + one.width / 2.0, one.centre.level + one.height / 2.0);
  }
  for (const DrawnMounting& one : drawing.mountings) see(one.at.across, one.at.level);
  if (drawing.parts.empty() && boiler.bulk) {
    see(0.0, boiler.bulk->bottom_level.si());
    see(1.0, boiler.bulk->top_level.si());
  }
  if (low.across > high.across) low = {0.0, 0.0}, high = {1.0, 1.0};
  drawing.lower_left = low;
  drawing.upper_right = high;
}

}  // namespace

Drawing drawing(const Boiler& boiler, View view) {
  Drawing drawn{.view = view};
  const std::vector<Solid> solids = detail::place_all(boiler);
  for (const Solid& solid : solids) {
    drawn.parts.push_back(solid.is_bank() ? detail::bank_of(solid, solids, view)
                                          : detail::outline_of(solid, view));
  }
  put_closures(boiler, solids, drawn);
  put_mountings(boiler, solids, drawn);
  measure(boiler, drawn);
  return drawn;
}

Drawing part_drawing(const Boiler& boiler, const std::string& part, View view) {
  Drawing drawn = drawing(boiler, view);
  const auto not_of = [&](const auto& one) { return one.part != part; };
  // Of several identical pieces the first carries what is described.
  bool found = false;
  std::erase_if(drawn.parts, [&](const DrawnPart& one) {
    const bool keep = one.tag == part && !found;
    found = found || keep;
    return !keep;
  });
  std::erase_if(drawn.closures, not_of);
  std::erase_if(drawn.mountings, not_of);
  measure(boiler, drawn);
  return drawn;
}

std::vector<View> views_of(const Boiler& boiler, const std::string& part) {
  std::vector<View> views;
  const std::vector<Solid> solids = detail::place_all(boiler);
  const Solid* solid = first_of(solids, part);
  if (solid == nullptr) return views;
  const auto add = [&](View view) {
    if (std::find(views.begin(), views.end(), view) == views.end()) views.push_back(view);
  };
  for (const Closure& closure : boiler.closures) {
    if (closure.part == part) add(view_of(solids, *solid, closure.side));
  }
  for (const Mounting& mounting : boiler.mountings) {
    if (mounting.part == part) add(detail::home_view(solids, *solid));
  }
  std::sort(views.begin(), views.end());
  return views;
}

View side_of(const Boiler& boiler, const std::string& part) {
  const std::vector<Solid> solids = detail::place_all(boiler);
  const Solid* solid = first_of(solids, part);
  return solid == nullptr ? View::Front : detail::home_view(solids, *solid);
}

}  // namespace steamworthy::boiler
