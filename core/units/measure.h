// Measure: a quantity whose kind is known when the program runs.
//
// Figures, messages and files carry numbers of every kind through one type. The
// kind says more than the dimension: a stress is not a pressure difference, a
// wall is written in millimetres and a level in metres. Each kind has one
// suffix for ever (docs/reference/units.md): the unit of that number wherever it
// leaves the program as JSON.
#pragma once

#include <string_view>

#include "units/quantity.h"

namespace steamworthy::units {

enum class Kind {
  GaugePressure,
  AbsolutePressure,
  PressureDifference,
  Stress,
  Modulus,
  Temperature,
  TemperatureDifference,
  TemperatureRate,
  Expansivity,
  Size,      ///< walls, diameters, gaskets: millimetres
  Distance,  ///< lengths of drums, tubes, pipes: metres
  Level,     ///< above the boiler's datum: metres
  Area,
  Volume,       ///< litres
  LargeVolume,  ///< cubic metres
  Mass,
  Density,
  Force,
  Torque,
  Energy,
  Power,
  SpecificHeat,
  SpecificEnthalpy,
  Viscosity,
  Compressibility,
  Flow,     ///< filling, pumping: litres a minute
  Leakage,  ///< millilitres a minute
  VolumePerPressure,
  VolumePerTemperature,
  PressurePerTemperature,
  PressureRate,
  Duration,
  Percent,  ///< inside: a fraction of one
  Fraction,
  Count,
};

struct KindInfo {
  Kind kind;
  std::string_view name;    ///< for programs: "gauge_pressure"
  std::string_view suffix;  ///< at every border: "_bar_gauge"; empty for a count
  double si_per_unit;       ///< value at the border = si / si_per_unit - offset
  double offset;
};

/// One row a kind, in the order of the enumeration.
const KindInfo& info(Kind kind);

/// A number of SI units (coherent, kelvin for temperatures) and what it measures.
struct Measure {
  Kind kind = Kind::Count;
  double si = 0.0;

  friend bool operator==(const Measure&, const Measure&) = default;
};

/// The number that goes with info(kind).suffix.
double at_border(const Measure& measure);
/// The inverse of at_border().
Measure from_border(Kind kind, double value);

constexpr Measure measure(GaugePressure p) { return {Kind::GaugePressure, p.si()}; }
constexpr Measure measure(AbsolutePressure p) { return {Kind::AbsolutePressure, p.si()}; }
constexpr Measure measure(Temperature t) { return {Kind::Temperature, t.si()}; }
constexpr Measure measure(TemperatureDifference t) { return {Kind::TemperatureDifference, t.si()}; }
constexpr Measure measure(TemperatureRate r) { return {Kind::TemperatureRate, r.si()}; }
constexpr Measure measure(Expansivity a) { return {Kind::Expansivity, a.si()}; }
constexpr Measure measure(Level z) { return {Kind::Level, z.si()}; }
constexpr Measure measure(Area a) { return {Kind::Area, a.si()}; }
constexpr Measure measure(Volume v) { return {Kind::Volume, v.si()}; }
constexpr Measure measure(Mass m) { return {Kind::Mass, m.si()}; }
constexpr Measure measure(Density d) { return {Kind::Density, d.si()}; }
constexpr Measure measure(Force f) { return {Kind::Force, f.si()}; }
constexpr Measure measure(Power p) { return {Kind::Power, p.si()}; }
constexpr Measure measure(SpecificHeat c) { return {Kind::SpecificHeat, c.si()}; }
constexpr Measure measure(Viscosity v) { return {Kind::Viscosity, v.si()}; }
constexpr Measure measure(Compressibility k) { return {Kind::Compressibility, k.si()}; }
constexpr Measure measure(VolumePerPressure k) { return {Kind::VolumePerPressure, k.si()}; }
constexpr Measure measure(VolumePerTemperature k) { return {Kind::VolumePerTemperature, k.si()}; }
constexpr Measure measure(PressurePerTemperature k) {
  return {Kind::PressurePerTemperature, k.si()};
}
constexpr Measure measure(PressureRate r) { return {Kind::PressureRate, r.si()}; }
constexpr Measure measure(Duration t) { return {Kind::Duration, t.si()}; }

// Dimensions that stand for more than one kind are named by the caller.
constexpr Measure measure_size(Length l) { return {Kind::Size, l.si()}; }
constexpr Measure measure_distance(Length l) { return {Kind::Distance, l.si()}; }
constexpr Measure measure_stress(Stress s) { return {Kind::Stress, s.si()}; }
constexpr Measure measure_modulus(Modulus e) { return {Kind::Modulus, e.si()}; }
constexpr Measure measure_pressure_difference(PressureDifference p) {
  return {Kind::PressureDifference, p.si()};
}
constexpr Measure measure_large_volume(Volume v) { return {Kind::LargeVolume, v.si()}; }
constexpr Measure measure_flow(VolumeFlow q) { return {Kind::Flow, q.si()}; }
constexpr Measure measure_leakage(VolumeFlow q) { return {Kind::Leakage, q.si()}; }
constexpr Measure measure_energy(Energy e) { return {Kind::Energy, e.si()}; }
constexpr Measure measure_torque(Torque t) { return {Kind::Torque, t.si()}; }
constexpr Measure measure_percent(double fraction) { return {Kind::Percent, fraction}; }
constexpr Measure measure_fraction(double fraction) { return {Kind::Fraction, fraction}; }
constexpr Measure measure_count(double count) { return {Kind::Count, count}; }

}  // namespace steamworthy::units
