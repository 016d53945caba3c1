// Mountings, isolations, temporaries, places to look.
#include <fmt/format.h>

#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

using units::Kind;

void check_mounting(const Boiler& boiler, const Mounting& mounting, Faults& faults) {
  const std::string field = fmt::format("mounting[{}]", mounting.tag);
  faults.level(field + ".level", mounting.level);
  faults.between(field + ".setting", mounting.setting, Kind::GaugePressure, 0.1e5, 500e5);
  faults.between(field + ".test_limit", mounting.test_limit, Kind::GaugePressure, 0.0, 2000e5);
  faults.between(field + ".size", mounting.size, Kind::Size, 1e-3, 2.0);
  const bool lifts = mounting.kind == MountingKind::SafetyValve;
  if (lifts && !mounting.setting) {
    faults.add("boiler.missing", field + ".setting", "",
               "the gauge pressure at which it lifts, such as \"38 bar\"", "is missing");
  }
  if (!lifts && mounting.setting) {
    faults.add("boiler.impossible", field + ".setting",
               shown({Kind::GaugePressure, mounting.setting->si()}), "no setting",
               "is stated for what is no safety valve");
  }
  const Part* part = find_part(boiler, mounting.part);
  if (part != nullptr && mounting.opening_level) {
    const units::Level low = lowest(*part) - nominal_wall(*part);
    const units::Level high = highest(*part) + nominal_wall(*part);
    if (*mounting.opening_level < low || *mounting.opening_level > high) {
      faults.add(
          "boiler.outside_part", field + ".opening_level", shown_level(*mounting.opening_level),
          fmt::format("{} to {}, the height of {}", shown_level(low), shown_level(high), part->tag),
          fmt::format("lies outside part {}", part->tag));
    }
  }
}

}  // namespace

void check_fittings(const Boiler& boiler, Faults& faults) {
  const std::vector<std::string_view> parts = part_tags(boiler);
  for (const Mounting& mounting : boiler.mountings) {
    if (!parts.empty()) {
      faults.known(fmt::format("mounting[{}].part", mounting.tag), mounting.part, parts, "a part");
    }
    check_mounting(boiler, mounting, faults);
  }

  std::vector<std::string_view> fixed = parts;
  for (const Mounting& mounting : boiler.mountings) fixed.push_back(mounting.tag);
  for (const Isolation& isolation : boiler.isolations) fixed.push_back(isolation.tag);
  for (const Closure& closure : boiler.closures) fixed.push_back(closure.tag);

  for (const Isolation& isolation : boiler.isolations) {
    if (isolation.how == IsolationKind::TwoValvesAndTellTale && isolation.tell_tale.empty()) {
      faults.add("boiler.missing", fmt::format("isolation[{}].tell_tale", isolation.tag), "",
                 "the open drain between the two valves", "is missing");
    }
  }
  for (const Temporary& temporary : boiler.temporaries) {
    const std::string field = fmt::format("temporary[{}]", temporary.tag);
    faults.known(field + ".where", temporary.where, fixed, "a mounting, pipe, closure or part");
    faults.level(field + ".level", temporary.level);
  }
  for (const PlaceToLook& place : boiler.stated_places) {
    const std::string field = fmt::format("place_to_look[{}]", place.tag);
    if (!parts.empty()) faults.known(field + ".part", place.part, parts, "a part");
    faults.known(field + ".about", place.about, fixed, "a mounting, pipe, closure or part");
    faults.level(field + ".level", place.level);
    faults.between(field + ".count", place.count, 1, 20000);
  }
}

}  // namespace steamworthy::boiler
