// Rules of an invented site for the tests of this room.
#pragma once

#include "rules/rule.h"
#include "units/makers.h"

namespace steamworthy::rules::samples {

inline Formula times(double factor, Reference of) {
  Formula formula;
  formula.branches = {{std::nullopt, {{factor, of, false, {}, {}}}, std::nullopt, std::nullopt}};
  return formula;
}

/// 1.5 x working pressure, overshoot 6 %, let down to the working pressure.
inline Rule strength() {
  Rule rule;
  rule.id = "site-strength";
  rule.title = "Strength test";
  rule.jurisdiction = "site";
  rule.edition = "first";
  rule.source = {"SITE-1", SourceKind::Law, Seen::Seen};
  rule.purpose = Purpose::Strength;
  rule.pressure = {Sense::Exactly, times(1.5, Reference::WorkingPressure), {}};
  rule.ceiling = Ceiling{1.06, false};
  rule.examination = Examination{1.0, Reference::WorkingPressure};
  rule.witness = "boiler inspector";
  return rule;
}

/// Above the operating pressure, not above the lowest safety valve.
inline Rule tightness() {
  Rule rule;
  rule.id = "site-tightness";
  rule.title = "Tightness test";
  rule.jurisdiction = "site";
  rule.edition = "first";
  rule.source = {"SITE-2", SourceKind::Manual, Seen::Seen};
  rule.purpose = Purpose::Tightness;
  rule.pressure = {Sense::Between, times(1.0, Reference::LowestSafetyValve),
                   times(1.0, Reference::OperatingPressure)};
  return rule;
}

/// An invented boiler: 40 bar working, valves at 39 and 40 bar, run at 36 bar.
inline Circumstances boiler() {
  Circumstances given;
  given.jurisdictions = {"site"};
  given.boiler = BoilerKind::Watertube;
  given.work = Work::GasketsOnly;
  given.working_pressure = units::bars_gauge(40.0);
  given.operating_pressure = units::bars_gauge(36.0);
  given.lowest_safety_valve = units::bars_gauge(39.0);
  given.highest_safety_valve = units::bars_gauge(40.0);
  given.safety_valves_gagged = true;
  given.authority = "A. Name, boiler inspector";
  return given;
}

inline bool has_key(const std::vector<working::Message>& messages, std::string_view key) {
  for (const auto& message : messages) {
    if (message.key == key) return true;
  }
  return false;
}

inline double in_bar(const working::Figure& figure) {
  return figure.value ? figure.value->si / 1e5 : -1e9;
}

}  // namespace steamworthy::rules::samples
