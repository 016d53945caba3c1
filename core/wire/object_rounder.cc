#include "wire/object_rounder.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

namespace steamworthy::wire {

double ObjectRounder::rounded(units::Kind kind, double si) {
  const std::string written = fmt::format("{:.15g}", units::at_border({kind, si}));
  double value = 0.0;
  fast_float::from_chars(written.data(), written.data() + written.size(), value);
  return units::from_border(kind, value).si;
}

}  // namespace steamworthy::wire
