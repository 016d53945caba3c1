// Unit names as people write them: "bar", "bar(g)", "kgf/cm2", "mL/bar", "°F".
//
// A name is either in the table of unit_text.cc, or put together from names of
// that table: "kJ/(kg K)". Everything after the first "/" divides.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace steamworthy::units {

/// Exponents of kilogram, metre, second, kelvin.
struct Dimension {
  int mass = 0;
  int length = 0;
  int time = 0;
  int temperature = 0;

  friend bool operator==(const Dimension&, const Dimension&) = default;
};

/// What the writer said about the zero of a pressure.
enum class Zero { Unsaid, Gauge, Absolute, Difference };

/// A unit: on a scale, si = value * factor + offset; as a difference, si = value * factor.
struct Unit {
  Dimension dimension;
  double factor = 1.0;
  double offset = 0.0;  ///< kelvin; not 0 only for degrees Celsius and Fahrenheit
  Zero zero = Zero::Unsaid;
};

/// Reads a unit's name; nothing where it is none that we know. Capitals count
/// where they tell units apart ("mW", "MW"), otherwise not ("PSI", "Bar").
std::optional<Unit> read_unit(std::string_view text);

/// For a name that must not be guessed at ("mPa", "ML"), what to write instead; otherwise empty.
std::string_view unit_trap(std::string_view text);

/// "a mass", "a length", "a pressure"; empty for a dimension without a name.
std::string_view dimension_name(const Dimension& dimension);

}  // namespace steamworthy::units
