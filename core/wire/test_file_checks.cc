#include "wire/test_file_checks.h"

#include <cmath>

namespace steamworthy::wire {
namespace {

class Checker {
 public:
  Checker(Reading& reading, std::string (*name_of)(const std::string&))
      : reading_(reading), name_of_(name_of) {}

  template <class Quantity>
  void above_zero(const std::string& field, const std::optional<Quantity>& value) {
    if (!value || std::isnan(value->si()) || value->si() > 0.0) return;
    add("wire.not_above_zero", field, "more than zero", "is not above zero");
  }
  template <class Quantity>
  void not_below_zero(const std::string& field, const std::optional<Quantity>& value) {
    if (!value || std::isnan(value->si()) || value->si() >= 0.0) return;
    add("wire.not_above_zero", field, "zero or more", "is below zero");
  }
  /// A doubt or an accuracy: more than nothing, less than all.
  void fraction(const std::string& field, const std::optional<double>& value) {
    if (!value || std::isnan(*value) || (*value > 0.0 && *value < 1.0)) return;
    add("wire.not_a_fraction", field, "more than 0 % and less than 100 %",
        "is no share of the whole");
  }
  void one_of_two(const std::string& field, bool first, bool second, std::string accepted) {
    if (first && second) add("wire.one_of_two", field, std::move(accepted), "is said twice");
  }
  void add(std::string code, const std::string& field, std::string accepted, std::string message) {
    reading_.add_located({std::move(code), "", 0, name_of_ == nullptr ? field : name_of_(field), "",
                          std::move(accepted), std::move(message)});
  }

 private:
  Reading& reading_;
  std::string (*name_of_)(const std::string&);
};

std::string in(const char* table, const char* key) { return std::string(table) + "." + key; }

template <class Item>
std::string path(const char* list, const std::vector<Item>& items, std::size_t i) {
  const std::string name = items[i].tag.empty() ? "#" + std::to_string(i + 1) : items[i].tag;
  return std::string(list) + "[" + name + "].";
}

}  // namespace

void check_test_facts(const trace::TestFacts& facts, Reading& reading,
                      std::string (*name_of)(const std::string& field)) {
  Checker check(reading, name_of);
  const trace::KnownBoiler& boiler = facts.boiler;
  check.above_zero(in("boiler", "volume"), boiler.volume);
  check.not_below_zero(in("boiler", "growth"), boiler.growth);
  check.not_below_zero(in("boiler", "growth_volume"), boiler.growth_volume);
  check.fraction(in("boiler", "volume_doubt"), boiler.volume_sd_fraction);
  check.fraction(in("boiler", "growth_doubt"), boiler.growth_sd_fraction);
  check.one_of_two(in("boiler", "growth_volume"), boiler.growth.has_value(),
                   boiler.growth_volume.has_value(), "growth or growth_volume");
  check.one_of_two(in("boiler", "volume"), !facts.description.empty(), boiler.volume.has_value(),
                   "description or volume");
  check.above_zero(in("test", "pressure"), facts.test_pressure);
  check.above_zero(in("test", "leak_of_concern"), facts.leak_of_concern);
  for (const units::GaugePressure stage : facts.stages) {
    check.above_zero(in("test", "stages"), std::optional(stage));
  }
  if (facts.allowed_drop) {
    check.not_below_zero(in("allowed_drop", "drop"), std::optional(facts.allowed_drop->drop));
    check.above_zero(in("allowed_drop", "within"), facts.allowed_drop->within);
  }
  check.above_zero(in("hold", "lasts"), facts.hold);
  check.one_of_two(in("hold", "lasts"), facts.hold_ended.has_value(), facts.hold.has_value(),
                   "lasts or ended");
  for (std::size_t i = 0; i < facts.gauges.size(); ++i) {
    const trace::GaugeFact& gauge = facts.gauges[i];
    const std::string at = path("gauge", facts.gauges, i);
    check.above_zero(at + "resolution", gauge.resolution);
    check.above_zero(at + "accuracy", gauge.accuracy);
    check.not_below_zero(at + "noise", gauge.noise_sd);
    check.fraction(at + "accuracy_of_span", gauge.accuracy_of_span_fraction);
    check.one_of_two(at + "accuracy_of_span", gauge.accuracy.has_value(),
                     gauge.accuracy_of_span_fraction.has_value(), "accuracy or accuracy_of_span");
    const units::GaugePressure low = gauge.range_low.value_or(units::GaugePressure{});
    if (gauge.range_high && *gauge.range_high <= low) {
      check.add("wire.upside_down", at + "range", "more than where the range begins",
                "ends below its beginning");
    }
  }
  for (std::size_t i = 0; i < facts.thermometers.size(); ++i) {
    const trace::ThermometerFact& thermometer = facts.thermometers[i];
    const std::string at = path("thermometer", facts.thermometers, i);
    check.above_zero(at + "resolution", thermometer.resolution);
    check.above_zero(at + "accuracy", thermometer.accuracy);
    check.not_below_zero(at + "noise", thermometer.noise_sd);
  }
  check.above_zero(in("pump", "stroke"), facts.pump.stroke);
  check.fraction(in("pump", "calibration_doubt"), facts.pump.calibration_sd_fraction);
  check.one_of_two(in("pocket", "below_gauge"), facts.pocket_level.has_value(),
                   facts.pocket_below_gauge.has_value(), "level or below_gauge");
  check.above_zero(in("house", "barometer"), facts.barometer);
}

}  // namespace steamworthy::wire
