#include "trace/moment.h"

#include <cmath>

#include "trace/cells.h"
#include "trace/clock.h"
#include "trace/test_facts.h"

namespace steamworthy::trace {
namespace {
constexpr double day_s = 86400.0;
}

std::optional<Moment> read_moment(std::string_view text) {
  const ClockStyle style;
  if (const auto whole = read_date_time(text, style)) {
    return Moment{std::nullopt, whole->clock_s, whole->day};
  }
  if (const auto clock = read_clock(text, style)) {
    return Moment{std::nullopt, clock->clock_s, std::nullopt};
  }
  return std::nullopt;
}

std::optional<double> seconds_at(const Trace& trace, const Moment& moment,
                                 std::optional<double> clock_zero) {
  if (moment.elapsed_s) {
    if (trace.first_elapsed_s) return *moment.elapsed_s - *trace.first_elapsed_s;
    if (!trace.first_clock_s) return std::nullopt;
    // Elapsed since a zero that the crew noted, else since the first row.
    double zero = 0.0;
    if (clock_zero) {
      zero = *clock_zero - *trace.first_clock_s;
      if (zero > day_s / 2.0) zero -= day_s;
      if (zero <= -day_s / 2.0) zero += day_s;
    }
    return *moment.elapsed_s + zero;
  }
  if (!moment.clock_s) return std::nullopt;
  std::optional<double> first = trace.first_clock_s;
  if (!first && clock_zero && trace.first_elapsed_s) first = *clock_zero + *trace.first_elapsed_s;
  if (!first) return std::nullopt;
  double seconds = *moment.clock_s - *first;
  if (moment.day && trace.first_day) {
    return seconds + static_cast<double>(*moment.day - *trace.first_day) * day_s;
  }
  seconds -= std::floor(seconds / day_s) * day_s;  // the first such time after the first row
  const double last = trace.seconds.empty() ? 0.0 : trace.seconds.back();
  return seconds > last && seconds > day_s / 2.0 ? seconds - day_s : seconds;
}

bool is_called(const Channel& channel, const std::string& name) {
  return name == channel.header || name == channel.name || name == std::to_string(channel.column);
}

Overrules overrules_of(const TestFacts& facts) {
  Overrules overrules;
  bool said = false;
  for (const GaugeFact& gauge : facts.gauges) {
    if (!gauge.absolute) continue;
    if (said && overrules.pressures_absolute != gauge.absolute) {
      overrules.pressures_absolute.reset();  // they differ: no word for all of them
      break;
    }
    overrules.pressures_absolute = gauge.absolute;
    said = true;
  }
  return overrules;
}

}  // namespace steamworthy::trace
