// TestFacts: what the crew knows of a test, beside its log.
//
// Plain data. core/wire reads it from a test file (docs/formats/test-file.md);
// core/hold works from it. What is not stated is not known, and what is not
// stated to be done counts as not done: nothing here has a default.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trace/meaning.h"
#include "trace/moment.h"
#include "units/quantity.h"

namespace steamworthy::trace {

/// The water space, where no description of the boiler is named.
struct KnownBoiler {
  std::optional<units::Volume> volume;
  std::optional<double> volume_sd_fraction;  ///< 0.02: one standard deviation is 2 %
  /// Growth of the shell alone, as a fraction of its volume: (1/V) dV/dp.
  std::optional<units::Compressibility> growth;
  /// The same as a volume: dV/dp of the shell alone.
  std::optional<units::VolumePerPressure> growth_volume;
  std::optional<double> growth_sd_fraction;
};

struct GaugeFact {
  std::string tag;     ///< "TG-1"; may be empty
  std::string column;  ///< head or number of its column; empty: the first pressure
  std::optional<units::GaugePressure> range_low;
  std::optional<units::GaugePressure> range_high;
  std::optional<units::PressureDifference> resolution;
  std::optional<units::PressureDifference> accuracy;  ///< half width of what its maker warrants
  std::optional<double> accuracy_of_span_fraction;    ///< the same as a fraction of the span
  std::optional<units::PressureDifference> noise_sd;
  std::optional<units::Level> level;
  std::optional<bool> absolute;  ///< what the column reads, where its head does not say
};

struct ThermometerFact {
  std::string tag;
  std::string column;                      ///< head or number; empty: the first of its meaning
  Meaning of = Meaning::OtherTemperature;  ///< Water, Metal, Ambient, Supply
  std::string sits;                        ///< the part's tag or name: "SD", "tube bank"
  std::optional<units::TemperatureDifference> resolution;
  std::optional<units::TemperatureDifference> accuracy;
  std::optional<units::TemperatureDifference> noise_sd;
};

struct PumpFact {
  std::string tag;
  std::optional<units::Volume> stroke;
  std::optional<double> calibration_sd_fraction;
  std::optional<units::Temperature> supply;  ///< of the water at the pump's suction
};

struct TellTale {
  std::string tag;
  std::optional<bool> dry;
};

struct AllowedDrop {
  units::PressureDifference drop;
  std::optional<units::Duration> within;
  std::string rule;  ///< id of the rule, or the words of whoever sets it
};

struct TestFacts {
  std::string log;          ///< file name of the trace
  std::string description;  ///< path of the boiler's description, as written
  KnownBoiler boiler;

  std::optional<units::GaugePressure> test_pressure;
  std::vector<units::GaugePressure> stages;

  std::optional<double> clock_zero_s;  ///< seconds after midnight at elapsed time 0
  std::optional<Moment> hold_began;
  std::optional<Moment> hold_ended;
  std::optional<units::Duration> hold;
  std::vector<Moment> gauge_changed;

  std::vector<GaugeFact> gauges;
  std::vector<ThermometerFact> thermometers;
  PumpFact pump;
  std::optional<units::AbsolutePressure> barometer;

  /// Where the trapped air sits: its level, or how far it is below the gauge.
  std::optional<units::Level> pocket_level;
  std::optional<units::Length> pocket_below_gauge;

  std::optional<bool> test_valve_shut;
  std::optional<bool> pump_side_hung_open;
  std::vector<TellTale> tell_tales;

  std::optional<units::VolumeFlow> leak_of_concern;
  std::optional<AllowedDrop> allowed_drop;

  std::vector<std::string> notes;

  bool valve_is_shut() const { return test_valve_shut.value_or(false); }
  bool pump_side_is_open() const { return pump_side_hung_open.value_or(false); }
};

/// What the facts overrule of a log: gauge or absolute, where a gauge says it for all.
Overrules overrules_of(const TestFacts& facts);

}  // namespace steamworthy::trace
