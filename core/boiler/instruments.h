// Test gear and surroundings: gauges, thermometers, pump, boiler house.
#pragma once

#include <optional>
#include <string>

#include "units/quantity.h"

namespace steamworthy::boiler {

/// A test gauge.
struct Gauge {
  std::string tag;
  std::string name;
  units::Level level;                    ///< of the instrument, not of its tapping
  units::GaugePressure range;            ///< full scale; the scale begins at zero
  units::PressureDifference resolution;  ///< the smallest step that can be read
  double accuracy = 0.0;                 ///< of full scale, as a fraction: 0.005 is half a percent
  std::string calibrated_until;          ///< "2027-03-31"; empty when nobody knows

  friend bool operator==(const Gauge&, const Gauge&) = default;
};

enum class ThermometerOn { Water, Metal, Air };

struct Thermometer {
  std::string tag;
  std::string name;
  ThermometerOn on = ThermometerOn::Water;
  std::string part;  ///< tag; empty for the boiler house air
  units::TemperatureDifference resolution;
  std::optional<units::TemperatureDifference> accuracy;

  friend bool operator==(const Thermometer&, const Thermometer&) = default;
};

struct Pump {
  std::string name;
  std::optional<units::Volume> stroke;
  std::optional<units::VolumeFlow> rate;
  std::optional<units::GaugePressure> relief;  ///< setting of its relief valve
  std::optional<units::Level> level;

  friend bool operator==(const Pump&, const Pump&) = default;
};

/// The boiler house and the supply as they are on the day.
struct House {
  std::optional<units::Temperature> air_temperature;
  std::optional<double> relative_humidity;  ///< 0 to 1
  std::optional<units::Temperature> supply_water_temperature;
  std::optional<units::AbsolutePressure> barometer;
  std::optional<units::VolumeFlow> fill_rate;  ///< of the filling hose or feed pump

  friend bool operator==(const House&, const House&) = default;
};

}  // namespace steamworthy::boiler
