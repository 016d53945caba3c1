#include "boiler/check.h"

#include <fmt/format.h>

#include <cmath>

#include "base/nearest.h"
#include "boiler/faults.h"
#include "units/print.h"

namespace steamworthy::boiler {

void Faults::add(std::string code, std::string field, std::string found, std::string accepted,
                 std::string message) {
  problems_.push_back({std::move(code), "", 0, std::move(field), std::move(found),
                       std::move(accepted), std::move(message)});
}

std::string shown(const units::Measure& measure) {
  return units::print(measure, {units::System::Si, 0, " "});
}
std::string shown_size(units::Length length) {
  return fmt::format("{:.10g} mm", std::round(length.si() * 1e6) / 1e3);
}
std::string shown_level(units::Level level) {
  return fmt::format("{:.10g} m", std::round(level.si() * 1e4) / 1e4);
}
std::string shown_distance(units::Length length) {
  return fmt::format("{:.10g} m", std::round(length.si() * 1e4) / 1e4);
}

void Faults::between(const std::string& field, const units::Measure& value, double least,
                     double greatest) {
  if (!(value.si < least || value.si > greatest)) return;
  const auto limit = [&](double si) { return shown({value.kind, si}); };
  add("boiler.absurd", field, shown(value), fmt::format("{} to {}", limit(least), limit(greatest)),
      value.si < least ? "is less than can be right" : "is more than can be right");
}

void Faults::between(const std::string& field, int value, int least, int greatest) {
  if (value == unread || (value >= least && value <= greatest)) return;
  add("boiler.absurd", field, fmt::format("{}", value), fmt::format("{} to {}", least, greatest),
      value < least ? "is less than can be right" : "is more than can be right");
}

void Faults::known(const std::string& field, const std::string& tag,
                   const std::vector<std::string_view>& tags, std::string_view what) {
  if (tag.empty()) return;
  for (std::string_view each : tags) {
    if (each == tag) return;
  }
  const std::string_view near = nearest(tag, tags);
  add("boiler.unknown", field, tag,
      near.empty() ? fmt::format("the tag of {} described in this file", what)
                   : fmt::format("\"{}\", or another {} described in this file", near,
                                 what.substr(what.find(' ') + 1)),
      fmt::format("names {} that is not described", what));
}

std::vector<std::string_view> part_tags(const Boiler& boiler) {
  std::vector<std::string_view> tags;
  for (const Part& part : boiler.parts) tags.push_back(part.tag);
  return tags;
}

namespace {

void check_particulars(const Boiler& boiler, Faults& faults) {
  const std::string table = "boiler";
  if (boiler.year) faults.between(table + ".year", *boiler.year, 1800, 2200);
  if (boiler.reference_level) faults.level(table + ".reference_level", *boiler.reference_level);
  if (boiler.parts.empty() && !boiler.bulk) {
    faults.add("boiler.missing", table, "", "parts, or [content] with the maker's figures",
               "has neither parts nor a water content");
  }
  if (!boiler.parts.empty() && boiler.bulk) {
    faults.add("boiler.stated_twice", "content", "", "either parts or [content]",
               "is stated beside parts, from which it is computed");
  }
}

void check_bulk(const Boiler& boiler, Faults& faults) {
  if (!boiler.bulk) return;
  const Bulk& bulk = *boiler.bulk;
  faults.between("content.water_content", bulk.water_content, units::Kind::Volume, 1e-3, 2000.0);
  faults.level("content.top_level", bulk.top_level);
  faults.level("content.bottom_level", bulk.bottom_level);
  if (bulk.top_level <= bulk.bottom_level) {
    faults.add("boiler.impossible", "content.top_level", shown_level(bulk.top_level),
               fmt::format("above the bottom level, {}", shown_level(bulk.bottom_level)),
               "is not above the bottom level");
  }
  if (bulk.growth.si() <= 0.0) {
    faults.add("boiler.impossible", "content.growth",
               shown({units::Kind::VolumePerPressure, bulk.growth.si()}), "above 0 mL/bar",
               "is not above zero");
  }
  // Water itself gives 4.6e-10 of its volume for each pascal at 20 °C. A shell of diameter D and
  // wall t gives about D/(t E): ten times the water's share would be a wall of a thousandth.
  const double share = bulk.growth.si() / bulk.water_content.si();
  constexpr double greatest_share = 4.6e-9;
  if (share > greatest_share) {
    faults.add("boiler.absurd", "content.growth",
               shown({units::Kind::VolumePerPressure, bulk.growth.si()}),
               fmt::format("at most {}", shown({units::Kind::VolumePerPressure,
                                                greatest_share * bulk.water_content.si()})),
               "is more than ten times what the water itself gives");
  }
}

}  // namespace

std::vector<Problem> faults(const Boiler& boiler) {
  std::vector<Problem> problems;
  Faults faults(problems);
  check_particulars(boiler, faults);
  check_bulk(boiler, faults);
  check_tags(boiler, faults);
  check_parts(boiler, faults);
  check_water_ways(boiler, faults);
  check_closures(boiler, faults);
  check_spaces(boiler, faults);
  check_fittings(boiler, faults);
  check_instruments(boiler, faults);
  return problems;
}

}  // namespace steamworthy::boiler
