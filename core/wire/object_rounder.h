// Rounding to the border: what JSON can carry, before anything is computed.
//
// 17 ft by way of inches is 5.1815999999999995 m, and 650 psi is a number of
// pascals that no number of bar gives to the last bit. Every quantity of a
// description is therefore set to what its JSON says, with 15 digits, so that
// program and tablet compute from the same bits.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "units/measure.h"
#include "wire/object_reader.h"

namespace steamworthy::wire {

/// A visitor like ObjectWriter that changes quantities in place, by less than
/// 1e-14 of each.
class ObjectRounder {
 public:
  static constexpr bool reads = false;

  void text(const char*, const std::string&, Need = Need::Optional) {}
  void texts(const char*, const std::vector<std::string>&) {}
  void flag(const char*, bool, Need = Need::Optional) {}
  void whole(const char*, int, Need = Need::Optional) {}
  void whole(const char*, const std::optional<int>&) {}
  template <class Enum>
  void word(const char*, const Enum&, Need = Need::Required) {}
  void pairs(const char*, const std::vector<std::pair<std::string, std::string>>&) {}

  template <class Quantity>
  void measure(const char*, Quantity& value, units::Kind kind, Need = Need::Required) {
    value = Quantity::from_si(rounded(kind, value.si()));
  }
  template <class Quantity>
  void measure(const char*, std::optional<Quantity>& value, units::Kind kind) {
    if (value) value = Quantity::from_si(rounded(kind, value->si()));
  }
  void number(const char*, double& value, units::Kind kind, Need = Need::Required) {
    value = rounded(kind, value);
  }
  void number(const char*, std::optional<double>& value, units::Kind kind) {
    if (value) value = rounded(kind, *value);
  }

 private:
  static double rounded(units::Kind kind, double si);
};

}  // namespace steamworthy::wire
