// Reading what people write: "650 psi", "45 bar(g)", "2 1/2\"", "12 ft 6 in", "4,5 MPa".
//
// A text is read as one kind of quantity, the one that is wanted. It either
// gives a value, with marks for what was assumed, or a Problem that says what
// was found and what would be accepted; nothing is guessed and nothing thrown.
// Gauge and absolute pressures never pass for each other: turning one into the
// other takes a barometer, given in Assume. The spellings are listed in
// docs/reference/units.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/error.h"
#include "units/measure.h"
#include "units/unit_text.h"

namespace steamworthy::units {

/// What may be taken for granted where the text does not say it.
struct Assume {
  std::string_view unit = {};     ///< taken where none is written; empty: a bare number is refused
  bool unmarked_is_gauge = true;  ///< "45 bar" may be read as a gauge pressure
  bool unmarked_is_absolute = false;  ///< "45 bar" may be read as an absolute pressure
  std::optional<AbsolutePressure> barometer = std::nullopt;  ///< lets the other scale be converted
};

/// A barometer's reading: "1013 mbar" is absolute by its nature.
inline constexpr Assume barometer_reading{{}, false, true, std::nullopt};

template <class T>
struct Parsed {
  std::optional<T> value;
  bool unit_assumed = false;  ///< the text had no unit; Assume::unit was taken
  bool zero_assumed = false;  ///< the text did not say gauge or absolute
  Problem problem;            ///< code, found, accepted and message; empty if there is a value

  explicit operator bool() const { return value.has_value(); }
};

/// Reads text as a quantity of this kind.
///
/// Codes of the problem: units.empty, units.too_long, units.not_a_number,
/// units.ambiguous_number, units.zero_denominator, units.too_large,
/// units.no_unit, units.unknown_unit, units.wrong_kind, units.absolute_for_gauge,
/// units.gauge_for_absolute, units.zero_unsaid, units.not_a_difference,
/// units.negative, units.below_vacuum, units.below_absolute_zero.
///
/// Range  negative values only of kinds that have a sign (levels, differences,
///        rates, net losses, gauge pressures down to -1.1 bar, a temperature's scale).
Parsed<Measure> parse_measure(Kind kind, std::string_view text, const Assume& assume = {});

/// What would be accepted for a kind: `a length such as "50 mm" or "2 1/2 in"`.
std::string accepted(Kind kind);

/// "a gauge pressure", "a length", "a plain number".
std::string_view noun(Kind kind);

/// The dimension of a kind.
Dimension dimension(Kind kind);

// The same with the type that goes with the kind.
Parsed<GaugePressure> parse_gauge_pressure(std::string_view text, const Assume& assume = {});
Parsed<AbsolutePressure> parse_absolute_pressure(std::string_view text, const Assume& assume = {});
Parsed<PressureDifference> parse_pressure_difference(std::string_view text,
                                                     const Assume& assume = {});
Parsed<Stress> parse_stress(std::string_view text, const Assume& assume = {});
Parsed<Modulus> parse_modulus(std::string_view text, const Assume& assume = {});
Parsed<Temperature> parse_temperature(std::string_view text, const Assume& assume = {});
Parsed<TemperatureDifference> parse_temperature_difference(std::string_view text,
                                                           const Assume& assume = {});
Parsed<TemperatureRate> parse_temperature_rate(std::string_view text, const Assume& assume = {});
Parsed<Expansivity> parse_expansivity(std::string_view text, const Assume& assume = {});
/// A wall, a diameter, a gasket: never negative.
Parsed<Length> parse_length(std::string_view text, const Assume& assume = {});
/// A height above the datum: may be negative.
Parsed<Level> parse_level(std::string_view text, const Assume& assume = {});
Parsed<Area> parse_area(std::string_view text, const Assume& assume = {});
Parsed<Volume> parse_volume(std::string_view text, const Assume& assume = {});
Parsed<Mass> parse_mass(std::string_view text, const Assume& assume = {});
Parsed<Density> parse_density(std::string_view text, const Assume& assume = {});
Parsed<Force> parse_force(std::string_view text, const Assume& assume = {});
Parsed<Power> parse_power(std::string_view text, const Assume& assume = {});
Parsed<VolumeFlow> parse_flow(std::string_view text, const Assume& assume = {});
Parsed<VolumeFlow> parse_leakage(std::string_view text, const Assume& assume = {});
Parsed<VolumePerPressure> parse_volume_per_pressure(std::string_view text,
                                                    const Assume& assume = {});
Parsed<PressureRate> parse_pressure_rate(std::string_view text, const Assume& assume = {});
Parsed<Duration> parse_duration(std::string_view text, const Assume& assume = {});
/// A fraction of one, from "0.5 %".
Parsed<double> parse_percent(std::string_view text, const Assume& assume = {});
/// A whole number, not negative.
Parsed<double> parse_count(std::string_view text);

}  // namespace steamworthy::units
