// What the analysis of a pump-up and a hold is given: the record in SI columns,
// and what the crew knows of boiler, instruments and valves.
//
// What is not stated counts as not done, or as not known; the answer names each
// assumption that it made instead.
#pragma once

#include <optional>
#include <vector>

#include "units/quantity.h"
#include "working/message.h"

namespace steamworthy::hold {

/// One record of one gauge, in columns of equal length or empty. Rows in any order;
/// rows of one second are averaged. Values are finite.
struct Record {
  std::vector<double> seconds;              ///< since any instant of the same day or log
  std::vector<double> pressure_pa_abs;      ///< at the gauge
  std::vector<double> water_temperature_k;  ///< empty: no thermometer in the water
  std::vector<double> metal_temperature_k;  ///< empty: none on the metal
  std::vector<double> pumped_m3;            ///< running total as the pump draws it; empty: unknown
};

struct GaugeKnown {
  std::optional<units::PressureDifference> resolution;  ///< smallest step of a reading
  std::optional<units::PressureDifference> noise;       ///< standard deviation of one reading
  std::vector<double> changed_at_s;  ///< instants from which another gauge was read
};

/// The water thermometer and the one on metal.
struct ThermometersKnown {
  std::optional<units::TemperatureDifference> resolution;
  std::optional<units::TemperatureDifference> noise;  ///< unknown: 0.02 K
  bool in_one_space = true;                           ///< false: they sit in different water spaces
};

struct BoilerKnown {
  units::Volume volume;  ///< of the water space at 20 °C, no pressure
  double volume_sd_fraction = 0.02;
  units::Compressibility growth;  ///< (1/V) dV/dp of the steel
  double growth_sd_fraction = 0.10;
  units::Expansivity steel_expansion = units::Expansivity::from_si(11.5e-6);  ///< linear
};

struct PumpKnown {
  std::optional<units::Temperature> supply;  ///< unknown: as the water inside
  double calibration_sd_fraction = 0.02;
};

/// The hold counts only with the test valve shut and the pump side beyond it bled and open.
struct ValvesSeen {
  bool test_valve_shut = false;
  bool pump_side_hung_open = false;
};

/// A rule's own measure of a hold: the greatest fall of the gauge that it allows.
struct AllowedFall {
  units::PressureDifference fall;
  std::optional<units::Duration> within;  ///< unstated: over the hold
};

struct HoldInput {
  Record record;
  std::optional<double> hold_start_s;  ///< unstated: from the record, and said
  std::optional<double> hold_end_s;    ///< unstated: the end of the record
  BoilerKnown boiler;
  GaugeKnown gauge;
  ThermometersKnown thermometers;
  PumpKnown pump;
  ValvesSeen valves;
  units::AbsolutePressure barometer = units::standard_atmosphere;
  units::Length pocket_below_gauge;  ///< how far below the gauge trapped air would sit
  std::optional<units::VolumeFlow> leak_of_concern;
  std::optional<AllowedFall> allowed_fall;
  std::vector<working::Message> notes;  ///< for the answer, from whoever made this
};

}  // namespace steamworthy::hold
