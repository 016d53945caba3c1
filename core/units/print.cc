#include "units/print.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "units/unit_text.h"

namespace steamworthy::units {
namespace {

/// How many digits a number gets: `significant` of them, but at least
/// `least` and at most `most` after the point; trailing zeros go if `trim`.
struct Digits {
  int significant;
  int least;
  int most;
  bool trim = false;
};

constexpr Digits decimals(int n) { return {1, n, n, false}; }
constexpr Digits significant(int n, int most) { return {n, 0, most, false}; }
constexpr Digits trimmed(int n, int most) { return {n, 0, most, true}; }

struct Side {
  std::string_view unit;
  Digits digits;
};

struct Row {
  Kind kind;
  Side si;
  Side us;
};

constexpr std::array rows = {
    Row{Kind::GaugePressure, {"bar gauge", decimals(2)}, {"psig", decimals(1)}},
    Row{Kind::AbsolutePressure, {"bar abs", decimals(3)}, {"psia", decimals(2)}},
    Row{Kind::PressureDifference, {"bar", significant(3, 4)}, {"psi", significant(3, 3)}},
    Row{Kind::Stress, {"MPa", significant(4, 1)}, {"psi", significant(4, 0)}},
    Row{Kind::Modulus, {"GPa", significant(4, 1)}, {"ksi", significant(4, 0)}},
    Row{Kind::Temperature, {"°C", decimals(1)}, {"°F", decimals(1)}},
    Row{Kind::TemperatureDifference, {"K", significant(3, 3)}, {"°F", significant(3, 3)}},
    Row{Kind::TemperatureRate, {"K/h", significant(3, 2)}, {"°F/h", significant(3, 2)}},
    Row{Kind::Expansivity, {"µm/(m·K)", significant(4, 3)}, {"µin/(in·°F)", significant(4, 3)}},
    Row{Kind::Size, {"mm", trimmed(4, 2)}, {"in", trimmed(4, 4)}},
    Row{Kind::Distance, {"m", trimmed(4, 3)}, {"ft", trimmed(4, 2)}},
    Row{Kind::Level, {"m", decimals(3)}, {"ft", decimals(2)}},
    Row{Kind::Area, {"cm²", significant(4, 3)}, {"in²", significant(4, 3)}},
    Row{Kind::Volume, {"L", significant(4, 3)}, {"US gal", significant(4, 4)}},
    Row{Kind::LargeVolume, {"m³", significant(4, 4)}, {"US gal", significant(4, 1)}},
    Row{Kind::Mass, {"kg", significant(4, 2)}, {"lb", significant(4, 2)}},
    Row{Kind::Density, {"kg/m³", significant(5, 2)}, {"lb/ft³", significant(4, 3)}},
    Row{Kind::Force, {"kN", significant(4, 3)}, {"lbf", significant(4, 1)}},
    Row{Kind::Torque, {"N·m", significant(3, 2)}, {"ft·lbf", significant(3, 2)}},
    Row{Kind::Energy, {"MJ", significant(4, 3)}, {"Btu", significant(4, 1)}},
    Row{Kind::Power, {"kW", significant(3, 3)}, {"Btu/h", significant(3, 1)}},
    Row{Kind::SpecificHeat, {"kJ/(kg·K)", significant(4, 4)}, {"Btu/(lb·°F)", significant(4, 4)}},
    Row{Kind::SpecificEnthalpy, {"kJ/kg", significant(5, 2)}, {"Btu/lb", significant(5, 2)}},
    Row{Kind::Viscosity, {"mPa·s", significant(4, 4)}, {"cP", significant(4, 4)}},
    Row{Kind::Compressibility, {"/GPa", significant(4, 4)}, {"/Msi", significant(4, 4)}},
    Row{Kind::Flow, {"L/min", significant(3, 3)}, {"US gal/min", significant(3, 4)}},
    Row{Kind::Leakage, {"mL/min", significant(3, 2)}, {"US gal/h", significant(3, 4)}},
    Row{Kind::VolumePerPressure, {"mL/bar", significant(4, 2)}, {"US gal/psi", significant(4, 6)}},
    Row{Kind::VolumePerTemperature, {"mL/K", significant(3, 2)}, {"US gal/°F", significant(3, 5)}},
    Row{Kind::PressurePerTemperature, {"bar/K", significant(3, 3)}, {"psi/°F", significant(3, 2)}},
    Row{Kind::PressureRate, {"bar/min", significant(3, 4)}, {"psi/min", significant(3, 3)}},
    Row{Kind::Duration, {"s", trimmed(3, 1)}, {"s", trimmed(3, 1)}},
    Row{Kind::Percent, {"%", trimmed(3, 2)}, {"%", trimmed(3, 2)}},
    Row{Kind::Fraction, {"", trimmed(4, 4)}, {"", trimmed(4, 4)}},
    Row{Kind::Count, {"", trimmed(6, 2)}, {"", trimmed(6, 2)}},
};

constexpr bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].kind) != i) return false;
  }
  return rows.size() == static_cast<std::size_t>(Kind::Count) + 1;
}
static_assert(in_order(), "one row a kind, in the order of the enumeration");

const Side& side(Kind kind, System system) {
  const Row& row = rows[static_cast<std::size_t>(kind)];
  return system == System::Si ? row.si : row.us;
}

Unit unit_of(Kind kind, System system) {
  const std::string_view name = side(kind, system).unit;
  if (name.empty()) return Unit{};
  const auto unit = read_unit(name);
  assert(unit);  // print_test reads every unit of the table
  return *unit;
}

double converted(const Measure& measure, const Unit& unit) {
  const double offset = measure.kind == Kind::Temperature ? unit.offset : 0.0;
  return (measure.si - offset) / unit.factor;
}

void trim_zeros(std::string& text) {
  if (text.find('.') == std::string::npos) return;
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
}

/// Power of ten of the first digit of |value| > 0 once it is rounded to `significant` digits.
int exponent_of(double value, int significant) {
  const std::string text = fmt::format("{:.{}e}", std::fabs(value), significant - 1);
  const std::size_t e = text.find('e');
  int exponent = 0;
  for (std::size_t i = e + 2; i < text.size(); ++i) exponent = exponent * 10 + (text[i] - '0');
  return text[e + 1] == '-' ? -exponent : exponent;
}

std::string written(double value, Digits digits, int wanted) {
  constexpr double largest = 1e15;
  constexpr int longest = 17;            // digits that a double needs at most
  constexpr int smallest = longest + 4;  // decimals; below 0.0001 powers of ten are written
  if (!std::isfinite(value)) return "?";
  if (wanted > 0) {
    digits = {std::min(wanted, longest), 0, smallest, false};
    if (value != 0.0 && std::fabs(value) < 1e-4) {
      return fmt::format("{:.{}e}", value, digits.significant - 1);
    }
  }
  if (value == 0.0) {
    std::string zero = digits.trim ? "0" : fmt::format("{:.{}f}", 0.0, digits.least);
    return zero;
  }
  const int exponent = exponent_of(value, digits.significant);
  const bool tiny = digits.least != digits.most && exponent < -digits.most;
  if (std::fabs(value) >= largest || tiny) {
    return fmt::format("{:.{}e}", value, digits.significant - 1);
  }
  const int after = std::clamp(digits.significant - 1 - exponent, digits.least, digits.most);
  std::string text = fmt::format("{:.{}f}", value, after);
  if (digits.trim) trim_zeros(text);
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string join(const std::string& number, std::string_view unit, const PrintStyle& style) {
  if (unit.empty()) return number;
  std::string text = number + std::string(style.gap);
  // Blanks within a unit do not break either.
  for (const char c : unit) {
    if (c == ' ') {
      text += style.gap;
    } else {
      text += c;
    }
  }
  return text;
}

std::string print_duration(double seconds, const PrintStyle& style) {
  constexpr double two_minutes = 120.0;
  constexpr double two_hours = 7200.0;
  constexpr double longest = 1e12;
  const Digits digits = side(Kind::Duration, style.system).digits;
  const double size = std::fabs(seconds);
  if (!(size >= two_minutes) || size > longest || style.significant > 0) {
    return join(written(seconds, digits, style.significant), "s", style);
  }
  if (size < two_hours) return join(written(seconds / 60.0, digits, 0), "min", style);
  const double minutes = std::floor(size / 60.0 + 0.5);
  const double hours = std::floor(minutes / 60.0);
  std::string text = join(fmt::format("{}{:.0f}", seconds < 0.0 ? "-" : "", hours), "h", style);
  const double rest = minutes - 60.0 * hours;
  if (rest > 0.0) text += std::string(style.gap) + join(fmt::format("{:.0f}", rest), "min", style);
  return text;
}

}  // namespace

std::string_view unit(Kind kind, System system) { return side(kind, system).unit; }

double in_unit(const Measure& measure, System system) {
  return converted(measure, unit_of(measure.kind, system));
}

std::string print_number(const Measure& measure, const PrintStyle& style) {
  const Side& to = side(measure.kind, style.system);
  return written(in_unit(measure, style.system), to.digits, style.significant);
}

std::string print(const Measure& measure, const PrintStyle& style) {
  constexpr double one_litre = 1e-3;
  if (measure.kind == Kind::Duration) return print_duration(measure.si, style);
  if (measure.kind == Kind::Volume && style.system == System::Si && measure.si != 0.0 &&
      std::fabs(measure.si) < one_litre) {
    return join(written(measure.si * 1e6, significant(3, 2), style.significant), "mL", style);
  }
  return join(print_number(measure, style), unit(measure.kind, style.system), style);
}

}  // namespace steamworthy::units
