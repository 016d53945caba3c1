#include "trace/told.h"

#include <algorithm>

#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

using units::Kind;
using units::Measure;
using working::Message;

Measure count(std::size_t n) { return units::measure_count(static_cast<double>(n)); }
Measure time(double s) { return {Kind::Duration, s}; }
Measure pressure(double pa, bool absolute) {
  return {absolute ? Kind::AbsolutePressure : Kind::GaugePressure, pa};
}

/// The last row that is not after `seconds`.
std::size_t row_at(const Trace& trace, double seconds) {
  const auto after = std::upper_bound(trace.seconds.begin(), trace.seconds.end(), seconds);
  return static_cast<std::size_t>(after - trace.seconds.begin()) - 1;
}

void tell_hold(const Trace& trace, const TestFacts& facts, std::vector<Message>& messages) {
  if (!facts.hold_began) {
    messages.push_back(Message{"trace.hold_not_stated", {}});
    return;
  }
  const auto at = seconds_at(trace, *facts.hold_began, facts.clock_zero_s);
  if (!at) {
    messages.push_back(Message{"trace.hold_not_placed", {}});
  } else if (*at < 0.0 || *at > trace.seconds.back()) {
    messages.push_back(
        Message{"trace.hold_outside", {{"at", time(*at)}, {"last", time(trace.seconds.back())}}});
  } else {
    Message message{"trace.hold_begins", {{"at", time(*at)}}};
    const std::size_t row = row_at(trace, *at);
    const Channel& gauge = trace.pressures.front();
    if (gauge.values.has(row)) {
      message.values.emplace_back("pressure", pressure(gauge.values.si(row), gauge.absolute));
    }
    messages.push_back(std::move(message));
  }
}

/// The greatest of a cumulative column.
std::optional<double> greatest(const Series& series) {
  std::optional<double> found;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (series.has(i) && (!found || series.si(i) > *found)) found = series.si(i);
  }
  return found;
}

void tell_pumped(const Trace& trace, const TestFacts& facts, std::vector<Message>& messages) {
  if (trace.pumped) {
    if (const auto volume = greatest(trace.pumped->values)) {
      messages.push_back(Message{"trace.pumped", {{"volume", Measure{Kind::Volume, *volume}}}});
    }
    return;
  }
  const auto strokes = trace.strokes ? greatest(trace.strokes->values) : std::nullopt;
  if (!strokes) return;
  if (!facts.pump.stroke) {
    messages.push_back(
        Message{"trace.stroke_not_stated", {{"strokes", units::measure_count(*strokes)}}});
    return;
  }
  const double volume = *strokes * facts.pump.stroke->si();
  messages.push_back(Message{"trace.pumped_by_strokes",
                             {{"strokes", units::measure_count(*strokes)},
                              {"stroke", Measure{Kind::Volume, facts.pump.stroke->si()}},
                              {"volume", Measure{Kind::Volume, volume}}}});
}

/// Whether a test file's name for a column is one of these channels.
bool is_named(const std::vector<Channel>& channels, const std::string& name) {
  return std::any_of(channels.begin(), channels.end(),
                     [&name](const Channel& channel) { return is_called(channel, name); });
}

void tell_missing_columns(const Trace& trace, const TestFacts& facts,
                          std::vector<Message>& messages) {
  const auto miss = [&messages](const std::string& name) {
    messages.push_back(Message{"trace.named_column_missing", {{"name", units::quotable(name)}}});
  };
  for (const GaugeFact& gauge : facts.gauges) {
    if (!gauge.column.empty() && !is_named(trace.pressures, gauge.column)) miss(gauge.column);
  }
  for (const ThermometerFact& thermometer : facts.thermometers) {
    if (thermometer.column.empty()) continue;
    const bool found =
        is_named(trace.water, thermometer.column) || is_named(trace.metal, thermometer.column) ||
        is_named(trace.ambient, thermometer.column) || is_named(trace.supply, thermometer.column) ||
        is_named(trace.other_temperatures, thermometer.column);
    if (!found) miss(thermometer.column);
  }
}

}  // namespace

std::vector<Message> tell(const Summary& summary) {
  std::vector<Message> messages;
  if (summary.rows == 0) return messages;
  messages.push_back(Message{"trace.readings",
                             {{"readings", count(summary.rows)},
                              {"span", time(summary.span_s)},
                              {"step", time(summary.usual_step_s)}}});
  if (summary.gaps == 0) messages.push_back(Message{"trace.no_gaps", {}});
  if (summary.bad_lines > 0) {
    messages.push_back(Message{"trace.bad_lines", {{"lines", count(summary.bad_lines)}}});
  }
  for (const Highest& highest : summary.highest) {
    messages.push_back(Message{"trace.highest",
                               {{"column", units::measure_count(highest.column)},
                                {"pressure", pressure(highest.pa, highest.absolute)},
                                {"at", time(highest.at_s)}}});
  }
  return messages;
}

std::vector<Message> tell(const Trace& trace, const TestFacts& facts) {
  std::vector<Message> messages;
  if (trace.rows() == 0) return messages;
  tell_hold(trace, facts, messages);
  tell_pumped(trace, facts, messages);
  tell_missing_columns(trace, facts, messages);
  return messages;
}

}  // namespace steamworthy::trace
