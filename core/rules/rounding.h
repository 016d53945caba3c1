// Comparing what a person entered with what a rule computes.
//
// 900 psi entered and 1.5 x 600 psi computed differ in the last bit of a double.
// Within `same_to` of each other two values count as one: far below what any
// gauge or thermometer shows, far above what conversions of units leave behind.
#pragma once

#include <cmath>

#include "units/quantity.h"

namespace steamworthy::rules {

inline constexpr double same_to = 1e-9;  ///< share of the pressure
inline constexpr auto same_temperature_to = units::TemperatureDifference::from_si(1e-6);

/// a is above b, by more than rounding.
inline bool above(units::GaugePressure a, units::GaugePressure b) {
  return a.si() - b.si() > same_to * std::fabs(b.si());
}
inline bool below(units::GaugePressure a, units::GaugePressure b) { return above(b, a); }
inline bool same(units::GaugePressure a, units::GaugePressure b) {
  return !above(a, b) && !above(b, a);
}

inline bool above(units::Temperature a, units::Temperature b) {
  return a - b > same_temperature_to;
}
inline bool below(units::Temperature a, units::Temperature b) { return above(b, a); }

}  // namespace steamworthy::rules
