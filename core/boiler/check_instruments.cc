// Gauges, thermometers, pump, boiler house.
#include <fmt/format.h>

#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

using units::Kind;

/// "2027-03-31"; the day of the month is not checked against the month.
bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return false;
  }
  const int month = (text[5] - '0') * 10 + text[6] - '0';
  const int day = (text[8] - '0') * 10 + text[9] - '0';
  return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

void check_gauge(const Gauge& gauge, Faults& faults) {
  const std::string field = fmt::format("gauge[{}]", gauge.tag);
  faults.level(field + ".level", gauge.level);
  faults.between(field + ".range", gauge.range, Kind::GaugePressure, 0.1e5, 4000e5);
  if (gauge.resolution.si() <= 0.0 || gauge.resolution.si() > 0.2 * gauge.range.si()) {
    faults.add("boiler.impossible", field + ".resolution",
               shown({Kind::PressureDifference, gauge.resolution.si()}),
               fmt::format("above 0, at most a fifth of the range, {}",
                           shown({Kind::PressureDifference, 0.2 * gauge.range.si()})),
               "cannot be the resolution of this gauge");
  }
  if (gauge.accuracy <= 0.0 || gauge.accuracy > 0.1) {
    faults.add("boiler.absurd", field + ".accuracy", shown({Kind::Percent, gauge.accuracy}),
               "above 0 %, at most 10 % of full scale", "is no accuracy of a test gauge");
  }
  if (!gauge.calibrated_until.empty() && !is_date(gauge.calibrated_until)) {
    faults.add("boiler.impossible", field + ".calibrated_until", gauge.calibrated_until,
               "a date such as 2027-03-31", "is not a date");
  }
}

}  // namespace

void check_instruments(const Boiler& boiler, Faults& faults) {
  for (const Gauge& gauge : boiler.gauges) check_gauge(gauge, faults);
  const std::vector<std::string_view> parts = part_tags(boiler);
  for (const Thermometer& thermometer : boiler.thermometers) {
    const std::string field = fmt::format("thermometer[{}]", thermometer.tag);
    if (!parts.empty()) faults.known(field + ".part", thermometer.part, parts, "a part");
    if (!parts.empty() && thermometer.on != ThermometerOn::Air && thermometer.part.empty()) {
      faults.add("boiler.missing", field + ".part", "", "the tag of a part", "is missing");
    }
    faults.between(field + ".resolution", thermometer.resolution, Kind::TemperatureDifference, 1e-4,
                   20.0);
    faults.between(field + ".accuracy", thermometer.accuracy, Kind::TemperatureDifference, 1e-4,
                   20.0);
  }
  if (boiler.pump) {
    const Pump& pump = *boiler.pump;
    faults.between("pump.stroke", pump.stroke, Kind::Volume, 1e-8, 0.1);
    faults.between("pump.rate", pump.rate, Kind::Flow, 1e-8, 0.1);
    faults.between("pump.relief", pump.relief, Kind::GaugePressure, 0.1e5, 4000e5);
    faults.between("pump.level", pump.level, Kind::Level, -100.0, 200.0);
  }
  const House& house = boiler.house;
  faults.between("house.air_temperature", house.air_temperature, Kind::Temperature, 233.15, 343.15);
  if (house.relative_humidity) {
    faults.between("house.relative_humidity",
                   units::Measure{Kind::Percent, *house.relative_humidity}, 0.0, 1.0);
  }
  faults.between("house.supply_water_temperature", house.supply_water_temperature,
                 Kind::Temperature, 273.15, 373.15);
  faults.between("house.barometer", house.barometer, Kind::AbsolutePressure, 0.5e5, 1.1e5);
  faults.between("house.fill_rate", house.fill_rate, Kind::Flow, 1e-7, 1.0);
}

}  // namespace steamworthy::boiler
