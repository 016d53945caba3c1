// Writing measures for people: "45.30 bar gauge", "657.0 psig", "2.5 in".
//
// A number never stands without its unit. Digits are those that the trade can
// use, one rule a kind (print.cc); parse.h reads every text written here.
#pragma once

#include <string>
#include <string_view>

#include "units/measure.h"

namespace steamworthy::units {

enum class System { Si, Us };

struct PrintStyle {
  System system = System::Si;
  /// Significant digits in place of the kind's own rule; 0 keeps that rule.
  int significant = 0;
  /// Between number and unit; as it ships, a blank at which no line breaks.
  std::string_view gap = "\u00a0";
};

/// The number with its unit. Small and large volumes and times change their
/// unit ("8 mL", "1 h 30 min"). Never "-0"; "? bar" for what is not a number.
std::string print(const Measure& measure, const PrintStyle& style = {});

/// The number alone, in unit(kind, system), for columns with a unit at their head.
std::string print_number(const Measure& measure, const PrintStyle& style = {});

/// The unit of print_number(): "bar gauge", "psig"; empty for fractions and counts.
std::string_view unit(Kind kind, System system);

/// The number that stands before unit(kind, system).
double in_unit(const Measure& measure, System system);

}  // namespace steamworthy::units
