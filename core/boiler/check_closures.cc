// Closures: does each opening stand in its part, and is there room for it?
#include <fmt/format.h>

#include <algorithm>

#include "boiler/check.h"
#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

using units::Kind;
using units::Length;
using units::Level;

void check_opening(const Closure& closure, const std::string& field, Faults& faults) {
  faults.between(field + ".size", closure.opening.height, Kind::Size, 5e-3, 2.0);
  faults.between(field + ".size", closure.opening.width, Kind::Size, 5e-3, 3.0);
  if (closure.opening.shape == OpeningShape::Circle &&
      closure.opening.width > closure.opening.height) {
    faults.add("boiler.impossible", field + ".size",
               fmt::format("{} x {}", shown_size(closure.opening.width),
                           shown_size(closure.opening.height)),
               "one diameter", "is no circle");
  }
  if (closure.gasket) {
    faults.between(field + ".gasket.thickness", closure.gasket->thickness, Kind::Size, 0.1e-3,
                   30e-3);
    faults.between(field + ".gasket.land_width", closure.gasket->land_width, Kind::Size, 1e-3,
                   200e-3);
  }
  faults.between(field + ".yokes", closure.yokes, 0, 20);
  faults.between(field + ".studs", closure.studs, 0, 200);
}

void check_in_part(const Closure& closure, const Part& part, const std::string& field,
                   Faults& faults) {
  const Length bore = inner_diameter(part);
  const Length along = std::max(bore, length(part));
  if (closure.opening.height > bore) {
    faults.add("boiler.does_not_fit", field + ".size", shown_size(closure.opening.height),
               fmt::format("less than the bore of {}, {}", part.tag, shown_size(bore)),
               fmt::format("is wider than part {}", part.tag));
  } else if (closure.opening.width > along) {
    faults.add("boiler.does_not_fit", field + ".size", shown_size(closure.opening.width),
               fmt::format("less than the length of {}, {}", part.tag, shown_size(along)),
               fmt::format("is longer than part {}", part.tag));
  }
  const Level low = lowest(part) - nominal_wall(part);
  const Level high = highest(part) + nominal_wall(part);
  if (closure.level < low || closure.level > high) {
    faults.add(
        "boiler.outside_part", field + ".level", shown_level(closure.level),
        fmt::format("{} to {}, the height of {}", shown_level(low), shown_level(high), part.tag),
        fmt::format("lies outside part {}", part.tag));
  }
  if (closure.position && (closure.position->si() < 0.0 || *closure.position > length(part))) {
    faults.add("boiler.outside_part", field + ".position", shown_distance(*closure.position),
               fmt::format("0 to {}, the length of {}", shown_distance(length(part)), part.tag),
               fmt::format("lies beyond the end of part {}", part.tag));
  }
}

}  // namespace

void check_closures(const Boiler& boiler, Faults& faults) {
  const std::vector<std::string_view> tags = part_tags(boiler);
  for (const Closure& closure : boiler.closures) {
    const std::string field = fmt::format("closure[{}]", closure.tag);
    check_opening(closure, field, faults);
    if (!boiler.parts.empty()) faults.known(field + ".part", closure.part, tags, "a part");
    if (const Part* part = find_part(boiler, closure.part)) {
      check_in_part(closure, *part, field, faults);
    }
  }
}

void check_fit(const ClosurePattern& pattern, const Boiler& boiler, const std::string& field,
               std::vector<Problem>& problems) {
  Faults faults(problems);
  const Part* part = find_part(boiler, pattern.each.part);
  if (part == nullptr) {
    if (!boiler.parts.empty()) {
      faults.known(field + ".part", pattern.each.part, part_tags(boiler), "a part");
    }
    return;
  }
  const double steps = pattern.per_row - 1;
  const Length last = pattern.first_offset + steps * pattern.pitch;
  const Length half = 0.5 * pattern.each.opening.width;
  if (pattern.per_row > 1 && pattern.pitch < pattern.each.opening.height) {
    faults.add("boiler.does_not_fit", field + ".pitch", shown_size(pattern.pitch),
               fmt::format("more than the opening, {}", shown_size(pattern.each.opening.height)),
               "is less than the openings are wide");
    return;
  }
  if (last.si() + half.si() > length(*part).si() + 1e-3) {
    faults.add("boiler.outside_part", field + ".per_row", fmt::format("{}", pattern.per_row),
               fmt::format("a row that ends within {}, the length of {}",
                           shown_distance(length(*part)), part->tag),
               fmt::format("runs off part {}: the last opening would end at {}", part->tag,
                           shown_distance(last + half)));
  }
}

}  // namespace steamworthy::boiler
