#include "fitup/check.h"

#include <fmt/format.h>

#include <cmath>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::fitup {
namespace {

bool is_size(units::Length length) { return std::isfinite(length.si()) && length.si() > 0.0; }

void check_reading(const GapReading& reading, std::size_t number, std::vector<Problem>& problems) {
  const auto bad = [&](const char* field, double found, const char* accepted) {
    problems.push_back({"fitup.bad_reading", "", 0, fmt::format("readings[{}].{}", number, field),
                        fmt::format("{}", found), accepted, "no feeler gives this"});
  };
  if (!(reading.clock >= 0.0 && reading.clock <= 12.0)) {
    bad("clock", reading.clock, "0 to 12 o'clock");
  }
  if (!(std::isfinite(reading.gap.si()) && reading.gap.si() >= 0.0)) {
    bad("gap", units::in_millimetres(reading.gap), "0 mm or more");
  }
  if (!is_size(reading.step)) {
    bad("step", units::in_millimetres(reading.step), "more than 0 mm, to the next thicker feeler");
  }
}

}  // namespace

void check(const FitRequest& request) {
  std::vector<Problem> problems;
  const std::string count = fmt::format("{}", request.readings.size());
  if (request.readings.size() < fewest_readings) {
    problems.push_back({"fitup.too_few_readings", "", 0, "readings", count,
                        fmt::format("{} or more", fewest_readings),
                        "too few gaps to tell how the plate sits"});
  }
  if (request.readings.size() > most_readings) {
    problems.push_back({"fitup.too_many_readings", "", 0, "readings", count,
                        fmt::format("{} at most", most_readings), "more gaps than anybody feels"});
  }
  for (std::size_t i = 0; i < request.readings.size(); ++i) {
    check_reading(request.readings[i], i, problems);
  }
  const boiler::Opening& opening = request.outline.opening;
  const bool is_round = opening.shape == boiler::OpeningShape::Circle;
  if (!is_size(opening.width) || !is_size(opening.height) || opening.width < opening.height ||
      (is_round && opening.width != opening.height) ||
      !(request.outline.long_axis >= 0.0 && request.outline.long_axis <= 12.0)) {
    problems.push_back(
        {"fitup.bad_opening", "", 0, "outline",
         fmt::format("{} x {} mm, long axis at {} o'clock", units::in_millimetres(opening.width),
                     units::in_millimetres(opening.height), request.outline.long_axis),
         "the greater width first, both more than 0, an axis from 0 to 12 o'clock",
         "no opening is like this"});
  }
  if (request.makers_limit && !is_size(*request.makers_limit)) {
    problems.push_back({"fitup.bad_limit", "", 0, "makers_limit",
                        fmt::format("{} mm", units::in_millimetres(*request.makers_limit)),
                        "more than 0 mm", "no gap keeps within this"});
  }
  if (!problems.empty()) throw BadInput(std::move(problems));
}

}  // namespace steamworthy::fitup
