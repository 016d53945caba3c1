// Faults: gathers what check.h finds. Internal to the room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "boiler/boiler.h"
#include "units/measure.h"

namespace steamworthy::boiler {

class Faults {
 public:
  explicit Faults(std::vector<Problem>& problems) : problems_(problems) {}

  void add(std::string code, std::string field, std::string found, std::string accepted,
           std::string message);

  /// Limits that nothing on a boiler comes near, in SI units: outside them something
  /// was written wrongly. Values that are not a number pass.
  void between(const std::string& field, const units::Measure& value, double least,
               double greatest);
  template <class Quantity>
  void between(const std::string& field, Quantity value, units::Kind kind, double least,
               double greatest) {
    between(field, units::Measure{kind, value.si()}, least, greatest);
  }
  template <class Quantity>
  void between(const std::string& field, const std::optional<Quantity>& value, units::Kind kind,
               double least, double greatest) {
    if (value) between(field, *value, kind, least, greatest);
  }
  void between(const std::string& field, int value, int least, int greatest);

  void level(const std::string& field, units::Level value) {
    between(field, units::Measure{units::Kind::Level, value.si()}, -100.0, 200.0);
  }

  /// A tag or name that must be one of those known; an empty one passes if it may.
  void known(const std::string& field, const std::string& tag,
             const std::vector<std::string_view>& tags, std::string_view what);

 private:
  std::vector<Problem>& problems_;
};

/// "0.305 m": for messages, in SI units with a common blank.
std::string shown(const units::Measure& measure);
std::string shown_size(units::Length length);
std::string shown_level(units::Level level);
std::string shown_distance(units::Length length);

std::vector<std::string_view> part_tags(const Boiler& boiler);

// The groups of check.h; each looks at its own tables.
void check_tags(const Boiler& boiler, Faults& faults);
void check_parts(const Boiler& boiler, Faults& faults);
void check_shape(const Part& part, const std::string& field, Faults& faults);
void check_water_ways(const Boiler& boiler, Faults& faults);
void check_closures(const Boiler& boiler, Faults& faults);
void check_spaces(const Boiler& boiler, Faults& faults);
void check_fittings(const Boiler& boiler, Faults& faults);
void check_instruments(const Boiler& boiler, Faults& faults);

}  // namespace steamworthy::boiler
