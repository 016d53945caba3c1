#include "service/test_log.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>

#include "base/error.h"
#include "service/trace_service.h"

namespace steamworthy::service {

trace::Reading TestLog::read(const std::string& name) {
  trace::Reading reading = trace::read_trace(csv, name, overrules);
  if (!reading.is_usable()) throw BadInput(reading.problems);
  const double last_s = reading.trace.seconds.back();
  const double after_s = hold_ms ? static_cast<double>(*hold_ms - first_at_ms) / 1000.0 : -1.0;
  if (after_s >= 0.0 && after_s <= last_s) {
    const double first_s = reading.trace.first_elapsed_s.value_or(0.0);
    test.hold_began = trace::Moment{first_s + after_s, std::nullopt, std::nullopt};
  }
  return reading;
}

/// The readings of the gauge that was read most, with the temperatures known
/// then, as a log.
TestLog entered_log(const Ledger& ledger) {
  std::map<std::string, int> read;
  const auto facts = ledger.facts_after(0, std::numeric_limits<std::size_t>::max());
  for (const wire::TakenIn& taken : facts) {
    if (const auto* reading = std::get_if<facts::ReadingTaken>(&taken.fact->body)) {
      ++read[reading->gauge];
    }
  }
  TestLog known;
  std::string gauge;
  for (const auto& [tag, count] : read) {
    if (gauge.empty() || count > read[gauge]) gauge = tag;
  }
  struct Row {
    std::int64_t at_ms;
    double pressure;
    std::optional<double> water, metal;
  };
  std::vector<Row> rows;
  std::optional<double> water, metal;
  std::vector<wire::TakenIn> by_time = facts;
  std::stable_sort(by_time.begin(), by_time.end(), [](const auto& a, const auto& b) {
    return a.fact->happened_at_ms < b.fact->happened_at_ms;
  });
  for (const wire::TakenIn& taken : by_time) {
    const facts::Fact& fact = *taken.fact;
    if (const auto* reading = std::get_if<facts::ReadingTaken>(&fact.body)) {
      if (reading->gauge != gauge) continue;
      rows.push_back({fact.happened_at_ms,
                      units::at_border(units::measure(reading->pressure.value)), water, metal});
    } else if (const auto* heat = std::get_if<facts::TemperatureTaken>(&fact.body)) {
      const double celsius = units::at_border(units::measure(heat->temperature.value));
      if (heat->of == facts::Thing::Water) water = celsius;
      if (heat->of == facts::Thing::Metal) metal = celsius;
    } else if (std::holds_alternative<facts::HoldStarted>(fact.body)) {
      known.hold_ms = fact.happened_at_ms;
    }
  }
  const auto all = [&](auto member) {
    return !rows.empty() && std::all_of(rows.begin(), rows.end(),
                                        [&](const Row& row) { return (row.*member).has_value(); });
  };
  const bool has_water = all(&Row::water);
  const bool has_metal = all(&Row::metal);
  known.csv = "t_s,p_barg";
  if (has_water) known.csv += ",T_water_C";
  if (has_metal) known.csv += ",T_metal_C";
  known.csv += "\n";
  known.readings = rows.size();
  if (!rows.empty()) known.first_at_ms = rows.front().at_ms;
  for (const Row& row : rows) {
    known.csv += fmt::format(
        "{:.1f},{}", static_cast<double>(row.at_ms - known.first_at_ms) / 1000.0, row.pressure);
    if (has_water) known.csv += fmt::format(",{}", *row.water);
    if (has_metal) known.csv += fmt::format(",{}", *row.metal);
    known.csv += "\n";
  }
  const closing::State& state = ledger.state();
  known.test.test_valve_shut = state.test_valve_shut.holds;
  known.test.pump_side_hung_open = state.pump_side_open.holds;
  if (!gauge.empty()) known.test.gauges.push_back({.tag = gauge});
  return known;
}

std::optional<facts::TraceAdded> logger_log(const Ledger& ledger, const std::string& sha256) {
  std::optional<facts::TraceAdded> last;
  for (const wire::TakenIn& taken :
       ledger.facts_after(0, std::numeric_limits<std::size_t>::max())) {
    const auto* added = std::get_if<facts::TraceAdded>(&taken.fact->body);
    if (added != nullptr && (sha256.empty() || added->trace_sha256 == sha256)) last = *added;
  }
  return last;
}

TestLog by_logger(TestLog entered, const facts::TraceAdded& logger, std::string bytes) {
  entered.csv = std::move(bytes);
  entered.overrules =
      read_overrules(between_commas(logger.columns), between_commas(logger.column_units));
  entered.first_at_ms = logger.from_ms;
  entered.test.gauges.clear();
  entered.test.gauges.push_back({.tag = logger.gauge});
  return entered;
}

std::vector<std::string> between_commas(const std::string& text) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(',', at), text.size());
    parts.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return parts;
}

}  // namespace steamworthy::service
