// Makers and readers: the doors by which plain numbers become quantities.
//
// A maker is named for its unit, a reader is "in_" and the unit. Conversion
// factors are exact by definition [NIST-SP811] (psi is derived from the exact
// pound-force and inch).
#pragma once

#include "units/quantity.h"

namespace steamworthy::units {

inline constexpr double pascals_per_bar = 1e5;
inline constexpr double newtons_per_pound_force = 4.4482216152605;
inline constexpr double metres_per_inch = 0.0254;
inline constexpr double pascals_per_psi =
    newtons_per_pound_force / (metres_per_inch * metres_per_inch);
inline constexpr double kilograms_per_pound = 0.45359237;
inline constexpr double cubic_metres_per_us_gallon = 0.003785411784;
inline constexpr double kelvin_of_zero_celsius = 273.15;

#define STEAMWORTHY_UNIT(Type, maker, factor)                                    \
  constexpr Type maker(double value) { return Type::from_si(value * (factor)); } \
  constexpr double in_##maker(Type quantity) { return quantity.si() / (factor); }

STEAMWORTHY_UNIT(Length, metres, 1.0)
STEAMWORTHY_UNIT(Length, millimetres, 1e-3)
STEAMWORTHY_UNIT(Length, inches, metres_per_inch)
STEAMWORTHY_UNIT(Length, feet, 12.0 * metres_per_inch)
STEAMWORTHY_UNIT(Level, level_metres, 1.0)
STEAMWORTHY_UNIT(Area, square_metres, 1.0)
STEAMWORTHY_UNIT(Area, square_millimetres, 1e-6)
STEAMWORTHY_UNIT(Volume, cubic_metres, 1.0)
STEAMWORTHY_UNIT(Volume, litres, 1e-3)
STEAMWORTHY_UNIT(Volume, millilitres, 1e-6)
STEAMWORTHY_UNIT(Volume, us_gallons, cubic_metres_per_us_gallon)
STEAMWORTHY_UNIT(Mass, kilograms, 1.0)
STEAMWORTHY_UNIT(Mass, pounds, kilograms_per_pound)
STEAMWORTHY_UNIT(Duration, seconds, 1.0)
STEAMWORTHY_UNIT(Duration, minutes, 60.0)
STEAMWORTHY_UNIT(Duration, hours, 3600.0)
STEAMWORTHY_UNIT(Density, kilograms_per_cubic_metre, 1.0)
STEAMWORTHY_UNIT(Stress, pascals, 1.0)
STEAMWORTHY_UNIT(Stress, bars, pascals_per_bar)
STEAMWORTHY_UNIT(Stress, megapascals, 1e6)
STEAMWORTHY_UNIT(Stress, psi, pascals_per_psi)
STEAMWORTHY_UNIT(AbsolutePressure, pascals_absolute, 1.0)
STEAMWORTHY_UNIT(AbsolutePressure, bars_absolute, pascals_per_bar)
STEAMWORTHY_UNIT(AbsolutePressure, megapascals_absolute, 1e6)
STEAMWORTHY_UNIT(AbsolutePressure, psi_absolute, pascals_per_psi)
STEAMWORTHY_UNIT(GaugePressure, pascals_gauge, 1.0)
STEAMWORTHY_UNIT(GaugePressure, bars_gauge, pascals_per_bar)
STEAMWORTHY_UNIT(GaugePressure, megapascals_gauge, 1e6)
STEAMWORTHY_UNIT(GaugePressure, psi_gauge, pascals_per_psi)
STEAMWORTHY_UNIT(Force, newtons, 1.0)
STEAMWORTHY_UNIT(Force, kilonewtons, 1e3)
STEAMWORTHY_UNIT(Force, pounds_force, newtons_per_pound_force)
STEAMWORTHY_UNIT(Energy, joules, 1.0)
STEAMWORTHY_UNIT(Power, watts, 1.0)
STEAMWORTHY_UNIT(Compressibility, per_pascal, 1.0)
STEAMWORTHY_UNIT(Expansivity, per_kelvin, 1.0)
STEAMWORTHY_UNIT(SpecificEnthalpy, joules_per_kilogram, 1.0)
STEAMWORTHY_UNIT(SpecificHeat, joules_per_kilogram_kelvin, 1.0)
STEAMWORTHY_UNIT(HeatCapacity, joules_per_kelvin, 1.0)
STEAMWORTHY_UNIT(Viscosity, pascal_seconds, 1.0)
STEAMWORTHY_UNIT(VolumeFlow, cubic_metres_per_second, 1.0)
STEAMWORTHY_UNIT(VolumeFlow, litres_per_minute, 1e-3 / 60.0)
STEAMWORTHY_UNIT(VolumeFlow, millilitres_per_minute, 1e-6 / 60.0)
STEAMWORTHY_UNIT(VolumePerPressure, cubic_metres_per_pascal, 1.0)
STEAMWORTHY_UNIT(VolumePerPressure, millilitres_per_bar, 1e-6 / pascals_per_bar)
STEAMWORTHY_UNIT(VolumePerTemperature, millilitres_per_kelvin, 1e-6)
STEAMWORTHY_UNIT(PressurePerTemperature, bars_per_kelvin, pascals_per_bar)
STEAMWORTHY_UNIT(PressureRate, bars_per_minute, pascals_per_bar / 60.0)
STEAMWORTHY_UNIT(TemperatureRate, kelvins_per_hour, 1.0 / 3600.0)
STEAMWORTHY_UNIT(Temperature, kelvins, 1.0)
STEAMWORTHY_UNIT(TemperatureDifference, kelvin_difference, 1.0)

#undef STEAMWORTHY_UNIT

constexpr Temperature celsius(double value) {
  return Temperature::from_si(value + kelvin_of_zero_celsius);
}
constexpr double in_celsius(Temperature t) { return t.si() - kelvin_of_zero_celsius; }
constexpr Temperature fahrenheit(double value) {
  return Temperature::from_si((value + 459.67) / 1.8);
}
constexpr double in_fahrenheit(Temperature t) { return t.si() * 1.8 - 459.67; }

}  // namespace steamworthy::units
