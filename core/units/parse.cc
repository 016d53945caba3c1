#include "units/parse.h"

#include <fmt/format.h>

#include <array>
#include <cassert>
#include <cmath>

#include "units/makers.h"
#include "units/number_text.h"

namespace steamworthy::units {
namespace {

struct Row {
  Kind kind;
  std::string_view noun;
  std::string_view examples;
  Dimension dimension;
  bool has_sign;
};

constexpr Dimension pressure{1, -1, -2, 0};
constexpr Dimension kelvin{0, 0, 0, 1};
constexpr Dimension metre{0, 1, 0, 0};
constexpr Dimension cubic_metre{0, 3, 0, 0};
constexpr Dimension joule{1, 2, -2, 0};
constexpr Dimension flow{0, 3, -1, 0};

constexpr std::array rows = {
    Row{Kind::GaugePressure, "a gauge pressure", "\"45 bar\" or \"650 psig\"", pressure, true},
    Row{Kind::AbsolutePressure, "an absolute pressure", "\"1.013 bara\" or \"14.7 psia\"", pressure,
        false},
    Row{Kind::PressureDifference, "a pressure difference", "\"0.5 bar\" or \"10 psi\"", pressure,
        true},
    Row{Kind::Stress, "a stress", "\"118 MPa\" or \"17500 psi\"", pressure, true},
    Row{Kind::Modulus, "a modulus", "\"200 GPa\" or \"29000 ksi\"", pressure, false},
    Row{Kind::Temperature, "a temperature", "\"21 \u00b0C\", \"70 \u00b0F\" or \"294 K\"", kelvin,
        true},
    Row{Kind::TemperatureDifference, "a temperature difference", "\"0.1 K\" or \"5 \u00b0F\"",
        kelvin, true},
    Row{Kind::TemperatureRate,
        "a temperature rate",
        "\"50 K/h\" or \"100 \u00b0F/h\"",
        {0, 0, -1, 1},
        true},
    Row{Kind::Expansivity,
        "an expansivity",
        "\"11.5e-6 /K\" or \"6.4e-6 /\u00b0F\"",
        {0, 0, 0, -1},
        true},
    Row{Kind::Size, "a length", "\"50 mm\" or \"2 1/2 in\"", metre, false},
    Row{Kind::Distance, "a length", "\"3.8 m\" or \"12 ft 6 in\"", metre, false},
    Row{Kind::Level, "a level", "\"3.8 m\" or \"12 ft 6 in\"", metre, true},
    Row{Kind::Area, "an area", "\"120 cm2\" or \"18 in2\"", {0, 2, 0, 0}, false},
    Row{Kind::Volume, "a volume", "\"20 L\", \"8 mL\" or \"5 gal\"", cubic_metre, false},
    Row{Kind::LargeVolume, "a volume", "\"3.5 m3\" or \"900 gal\"", cubic_metre, false},
    Row{Kind::Mass, "a mass", "\"120 kg\" or \"265 lb\"", {1, 0, 0, 0}, false},
    Row{Kind::Density, "a density", "\"998 kg/m3\" or \"62.4 lb/ft3\"", {1, -3, 0, 0}, false},
    Row{Kind::Force, "a force", "\"12 kN\" or \"2700 lbf\"", {1, 1, -2, 0}, true},
    Row{Kind::Torque, "a torque", "\"80 N m\" or \"60 ft lbf\"", joule, false},
    Row{Kind::Energy, "an energy", "\"5 MJ\" or \"4700 Btu\"", joule, true},
    Row{Kind::Power, "a power", "\"20 kW\" or \"27 hp\"", {1, 2, -3, 0}, true},
    Row{Kind::SpecificHeat,
        "a specific heat",
        "\"4.19 kJ/(kg K)\" or \"1 Btu/(lb \u00b0F)\"",
        {0, 2, -2, -1},
        false},
    Row{Kind::SpecificEnthalpy,
        "an enthalpy",
        "\"84 kJ/kg\" or \"36 Btu/lb\"",
        {0, 2, -2, 0},
        true},
    Row{Kind::Viscosity, "a viscosity", "\"1.0 mPa s\" or \"1 cP\"", {1, -1, -1, 0}, false},
    Row{Kind::Compressibility,
        "a compressibility",
        "\"0.45 /GPa\" or \"3.1e-6 /psi\"",
        {-1, 1, 2, 0},
        false},
    Row{Kind::Flow, "a flow", "\"20 L/min\" or \"5 gpm\"", flow, false},
    Row{Kind::Leakage, "a loss", "\"20 mL/min\" or \"0.3 gal/h\"", flow, true},
    Row{Kind::VolumePerPressure,
        "a volume per pressure",
        "\"1.468 L/bar\" or \"0.027 gal/psi\"",
        {-1, 4, 2, 0},
        false},
    Row{Kind::VolumePerTemperature,
        "a volume per temperature",
        "\"250 mL/K\" or \"0.04 gal/\u00b0F\"",
        {0, 3, 0, -1},
        true},
    Row{Kind::PressurePerTemperature,
        "a pressure per temperature",
        "\"3.1 bar/K\" or \"25 psi/\u00b0F\"",
        {1, -1, -2, -1},
        true},
    Row{Kind::PressureRate,
        "a pressure rate",
        "\"3 bar/min\" or \"50 psi/min\"",
        {1, -1, -3, 0},
        true},
    Row{Kind::Duration, "a time", "\"90 min\" or \"1 h 30 min\"", {0, 0, 1, 0}, false},
    Row{Kind::Percent, "a percentage", "\"0.5 %\"", {}, true},
    Row{Kind::Fraction, "a fraction", "\"0.9\" or \"90 %\"", {}, true},
    Row{Kind::Count, "a plain number", "\"23\"", {}, false},
};

constexpr bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].kind) != i) return false;
  }
  return rows.size() == static_cast<std::size_t>(Kind::Count) + 1;
}
static_assert(in_order(), "one row a kind, in the order of the enumeration");

const Row& row_of(Kind kind) { return rows[static_cast<std::size_t>(kind)]; }

/// No barometer at the surface has stood higher than 1090 hPa [WMO-EXTREMES].
constexpr double deepest_gauge_pressure = -1.1e5;

Problem problem(Kind kind, std::string_view text, std::string code, std::string message) {
  Problem out;
  out.code = std::move(code);
  out.found = quotable(text);
  out.accepted = accepted(kind);
  out.message = std::move(message);
  return out;
}

/// A number with its unit's text, "" where there is none.
struct Part {
  NumberText number;
  std::string_view unit;
};

std::string_view trim(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool starts_number(char c) { return (c >= '0' && c <= '9') || c == '.'; }

/// "12 ft 6 in", "12'-6\"", "1 h 30 min": parts that are each a number and a name of letters.
std::vector<Part> compound(std::string_view text) {
  std::vector<Part> parts;
  while (!(text = trim(text)).empty()) {
    if (!parts.empty() && text.front() == '-') text = trim(text.substr(1));
    const NumberText number = read_number(text);
    if (number.fault != NumberFault::None) return {};
    if (!parts.empty() && !starts_number(text.front())) return {};
    text = trim(text.substr(number.used));
    std::size_t n = 0;
    while (n < text.size() && !starts_number(text[n]) && text[n] != ' ' && text[n] != '-') ++n;
    if (n == 0) return {};
    parts.push_back({number, text.substr(0, n)});
    text.remove_prefix(n);
  }
  return parts;
}

bool may_be_compound(const Dimension& dimension) {
  return dimension == metre || dimension == Dimension{1, 0, 0, 0} ||
         dimension == Dimension{0, 0, 1, 0};
}

/// The sum of a compound in SI units; nothing if the text is none of this dimension.
std::optional<double> read_compound(const Dimension& dimension, std::string_view text) {
  if (!may_be_compound(dimension)) return std::nullopt;
  const std::vector<Part> parts = compound(text);
  if (parts.size() < 2) return std::nullopt;
  double sum = 0.0;
  double larger = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto unit = read_unit(parts[i].unit);
    if (!unit || !(unit->dimension == dimension)) return std::nullopt;
    const double value = std::fabs(parts[i].number.value) * unit->factor;
    if (i > 0 && (unit->factor >= larger || value >= larger)) return std::nullopt;
    larger = unit->factor;
    sum += value;
  }
  return parts.front().number.negative ? -sum : sum;
}

std::string number_fault(NumberFault fault) {
  switch (fault) {
    case NumberFault::AmbiguousComma:
      return "may be read in two ways: write no mark between thousands, and a point or comma only "
             "before decimals";
    case NumberFault::ZeroDenominator:
      return "divides by zero";
    case NumberFault::TooLarge:
      return "is too large a number";
    case NumberFault::Missing:
    case NumberFault::None:
      break;
  }
  return "does not begin with a number";
}

std::string number_code(NumberFault fault) {
  switch (fault) {
    case NumberFault::AmbiguousComma:
      return "units.ambiguous_number";
    case NumberFault::ZeroDenominator:
      return "units.zero_denominator";
    case NumberFault::TooLarge:
      return "units.too_large";
    case NumberFault::Missing:
    case NumberFault::None:
      break;
  }
  return "units.not_a_number";
}

bool is_scale(Kind kind) { return kind == Kind::GaugePressure || kind == Kind::AbsolutePressure; }

/// A parser's state on its way from text to SI value.
struct Reading {
  Kind kind;
  std::string_view text;  ///< as the user wrote it
  Parsed<Measure> out;

  Parsed<Measure> fail(std::string code, std::string message) {
    out.value.reset();
    out.problem = problem(kind, text, std::move(code), std::move(message));
    return out;
  }
};

/// Checks the sign and the limits of the scale, and hands the value over.
Parsed<Measure> finish(Reading& reading, double si) {
  const Row& row = row_of(reading.kind);
  if (!std::isfinite(si)) return reading.fail("units.too_large", "is too large a number");
  if (reading.kind == Kind::Temperature && si < 0.0) {
    return reading.fail("units.below_absolute_zero", "is below absolute zero");
  }
  if (reading.kind == Kind::GaugePressure && si < deepest_gauge_pressure) {
    return reading.fail("units.below_vacuum", "is below a vacuum");
  }
  if (!row.has_sign && si < 0.0) {
    return reading.fail("units.negative", fmt::format("is negative, which {} cannot be", row.noun));
  }
  reading.out.value = Measure{reading.kind, si == 0.0 ? 0.0 : si};
  return reading.out;
}

/// Puts a pressure on the scale that is wanted, or says why it cannot be.
Parsed<Measure> finish_pressure(Reading& reading, double si, Zero zero, const Assume& assume) {
  const bool wants_gauge = reading.kind == Kind::GaugePressure;
  const Zero wanted = wants_gauge ? Zero::Gauge : Zero::Absolute;
  if (zero == Zero::Difference) {
    return reading.fail("units.wrong_kind",
                        fmt::format("is a pressure difference, not {}", row_of(reading.kind).noun));
  }
  if (zero == Zero::Unsaid) {
    if (wants_gauge ? !assume.unmarked_is_gauge : !assume.unmarked_is_absolute) {
      return reading.fail("units.zero_unsaid", "does not say whether it is gauge or absolute");
    }
    reading.out.zero_assumed = true;
    return finish(reading, si);
  }
  if (zero == wanted) return finish(reading, si);
  if (assume.barometer) {
    const double barometer = assume.barometer->si();
    return finish(reading, wants_gauge ? si - barometer : si + barometer);
  }
  return wants_gauge ? reading.fail("units.absolute_for_gauge",
                                    "is an absolute pressure where a gauge pressure is wanted")
                     : reading.fail("units.gauge_for_absolute",
                                    "is a gauge pressure where an absolute pressure is wanted");
}

Parsed<Measure> without_unit(Reading& reading, double value, const Assume& assume) {
  const Row& row = row_of(reading.kind);
  if (reading.kind == Kind::Count || reading.kind == Kind::Fraction) return finish(reading, value);
  if (!assume.unit.empty()) {
    const auto unit = read_unit(assume.unit);
    assert(unit && unit->dimension == row.dimension);  // the caller names a unit of this kind
    reading.out.unit_assumed = true;
    const double si =
        value * unit->factor + (reading.kind == Kind::Temperature ? unit->offset : 0.0);
    if (is_scale(reading.kind)) return finish_pressure(reading, si, unit->zero, assume);
    return finish(reading, si);
  }
  // Nothing is nothing in every unit, but a temperature's zero and a vacuum are places.
  if (value == 0.0 && reading.kind != Kind::Temperature && reading.kind != Kind::AbsolutePressure) {
    return finish(reading, 0.0);
  }
  return reading.fail("units.no_unit", "has no unit");
}

Parsed<Measure> with_unit(Reading& reading, double value, std::string_view name,
                          const Assume& assume) {
  const Row& row = row_of(reading.kind);
  const auto unit = read_unit(name);
  if (!unit) {
    if (const auto instead = unit_trap(name); !instead.empty()) {
      return reading.fail(
          "units.unknown_unit",
          fmt::format("has the unit \"{}\", which may be read in two ways: write {}",
                      quotable(name), instead));
    }
    return reading.fail("units.unknown_unit",
                        fmt::format("has a unit that is not known: \"{}\"", quotable(name)));
  }
  if (!(unit->dimension == row.dimension) || reading.kind == Kind::Count) {
    const std::string_view found = dimension_name(unit->dimension);
    return reading.fail("units.wrong_kind", found.empty()
                                                ? fmt::format("is not {}", row.noun)
                                                : fmt::format("is {}, not {}", found, row.noun));
  }
  const double si = value * unit->factor + (reading.kind == Kind::Temperature ? unit->offset : 0.0);
  if (is_scale(reading.kind)) return finish_pressure(reading, si, unit->zero, assume);
  if (unit->zero == Zero::Gauge || unit->zero == Zero::Absolute) {
    return reading.fail(
        "units.not_a_difference",
        fmt::format("is {} pressure, not {}", unit->zero == Zero::Gauge ? "a gauge" : "an absolute",
                    row.noun));
  }
  return finish(reading, si);
}

}  // namespace

std::string accepted(Kind kind) {
  const Row& row = row_of(kind);
  return fmt::format("{} such as {}", row.noun, row.examples);
}

std::string_view noun(Kind kind) { return row_of(kind).noun; }

Dimension dimension(Kind kind) { return row_of(kind).dimension; }

Parsed<Measure> parse_measure(Kind kind, std::string_view text, const Assume& assume) {
  constexpr std::size_t longest = 120;
  Reading reading{kind, text, {}};
  if (text.size() > longest) return reading.fail("units.too_long", "is too long");
  const std::string plain = plain_characters(text);
  const std::string_view whole = trim(plain);
  if (whole.empty()) return reading.fail("units.empty", "is empty");

  const NumberText number = read_number(whole);
  if (number.fault != NumberFault::None) {
    return reading.fail(number_code(number.fault), number_fault(number.fault));
  }
  const std::string_view rest = trim(whole.substr(number.used));
  if (rest.empty()) return without_unit(reading, number.value, assume);
  // Before the unit: "5 ft 3 in" is no ft3 times in.
  if (const auto sum = read_compound(row_of(kind).dimension, whole)) return finish(reading, *sum);
  return with_unit(reading, number.value, rest, assume);
}

namespace {

template <class T>
Parsed<T> typed(Kind kind, std::string_view text, const Assume& assume) {
  const Parsed<Measure> parsed = parse_measure(kind, text, assume);
  Parsed<T> out;
  if (parsed.value) {
    if constexpr (std::is_same_v<T, double>) {
      out.value = parsed.value->si;
    } else {
      out.value = T::from_si(parsed.value->si);
    }
  }
  out.unit_assumed = parsed.unit_assumed;
  out.zero_assumed = parsed.zero_assumed;
  out.problem = parsed.problem;
  return out;
}

}  // namespace

Parsed<GaugePressure> parse_gauge_pressure(std::string_view text, const Assume& assume) {
  return typed<GaugePressure>(Kind::GaugePressure, text, assume);
}
Parsed<AbsolutePressure> parse_absolute_pressure(std::string_view text, const Assume& assume) {
  return typed<AbsolutePressure>(Kind::AbsolutePressure, text, assume);
}
Parsed<PressureDifference> parse_pressure_difference(std::string_view text, const Assume& assume) {
  return typed<PressureDifference>(Kind::PressureDifference, text, assume);
}
Parsed<Stress> parse_stress(std::string_view text, const Assume& assume) {
  return typed<Stress>(Kind::Stress, text, assume);
}
Parsed<Modulus> parse_modulus(std::string_view text, const Assume& assume) {
  return typed<Modulus>(Kind::Modulus, text, assume);
}
Parsed<Temperature> parse_temperature(std::string_view text, const Assume& assume) {
  return typed<Temperature>(Kind::Temperature, text, assume);
}
Parsed<TemperatureDifference> parse_temperature_difference(std::string_view text,
                                                           const Assume& assume) {
  return typed<TemperatureDifference>(Kind::TemperatureDifference, text, assume);
}
Parsed<TemperatureRate> parse_temperature_rate(std::string_view text, const Assume& assume) {
  return typed<TemperatureRate>(Kind::TemperatureRate, text, assume);
}
Parsed<Expansivity> parse_expansivity(std::string_view text, const Assume& assume) {
  return typed<Expansivity>(Kind::Expansivity, text, assume);
}
Parsed<Length> parse_length(std::string_view text, const Assume& assume) {
  return typed<Length>(Kind::Size, text, assume);
}
Parsed<Level> parse_level(std::string_view text, const Assume& assume) {
  return typed<Level>(Kind::Level, text, assume);
}
Parsed<Area> parse_area(std::string_view text, const Assume& assume) {
  return typed<Area>(Kind::Area, text, assume);
}
Parsed<Volume> parse_volume(std::string_view text, const Assume& assume) {
  return typed<Volume>(Kind::Volume, text, assume);
}
Parsed<Mass> parse_mass(std::string_view text, const Assume& assume) {
  return typed<Mass>(Kind::Mass, text, assume);
}
Parsed<Density> parse_density(std::string_view text, const Assume& assume) {
  return typed<Density>(Kind::Density, text, assume);
}
Parsed<Force> parse_force(std::string_view text, const Assume& assume) {
  return typed<Force>(Kind::Force, text, assume);
}
Parsed<Power> parse_power(std::string_view text, const Assume& assume) {
  return typed<Power>(Kind::Power, text, assume);
}
Parsed<VolumeFlow> parse_flow(std::string_view text, const Assume& assume) {
  return typed<VolumeFlow>(Kind::Flow, text, assume);
}
Parsed<VolumeFlow> parse_leakage(std::string_view text, const Assume& assume) {
  return typed<VolumeFlow>(Kind::Leakage, text, assume);
}
Parsed<VolumePerPressure> parse_volume_per_pressure(std::string_view text, const Assume& assume) {
  return typed<VolumePerPressure>(Kind::VolumePerPressure, text, assume);
}
Parsed<PressureRate> parse_pressure_rate(std::string_view text, const Assume& assume) {
  return typed<PressureRate>(Kind::PressureRate, text, assume);
}
Parsed<Duration> parse_duration(std::string_view text, const Assume& assume) {
  return typed<Duration>(Kind::Duration, text, assume);
}
Parsed<double> parse_percent(std::string_view text, const Assume& assume) {
  return typed<double>(Kind::Percent, text, assume);
}
Parsed<double> parse_count(std::string_view text) {
  Parsed<double> out = typed<double>(Kind::Count, text, {});
  if (out.value && *out.value != std::floor(*out.value)) {
    out.value.reset();
    out.problem = problem(Kind::Count, text, "units.not_whole", "is not a whole number");
  }
  return out;
}

}  // namespace steamworthy::units
