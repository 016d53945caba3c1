#include "server/test_calls.h"

#include <fmt/format.h>

#include <algorithm>

#include "hold/sections.h"
#include "record/sha256.h"
#include "server/sheet_form.h"
#include "service/closing_service.h"
#include "service/hold_service.h"
#include "service/test_log.h"
#include "service/trace_service.h"
#include "store/local_time.h"
#include "trace/reader.h"
#include "trace/summary.h"
#include "units/makers.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using units::Kind;
using wire::JsonObject;

std::string column_json(const trace::Column& column, const words::Style& style) {
  return JsonObject()
      .put("column", column.number)
      .put("header", column.header)
      .put("meaning", trace::token(column.meaning))
      .put("unit", column.unit)
      .put("unit_assumed", column.unit_assumed)
      .put("text", words::sentence(column.sentence, style))
      .text();
}

/// How a log is understood; the rest is for one that was taken in.
JsonObject preview(const trace::Reading& reading, const words::Style& style) {
  std::vector<std::string> columns;
  for (const trace::Column& column : reading.understanding.columns) {
    columns.push_back(column_json(column, style));
  }
  std::vector<std::string> bad;
  for (const Problem& problem : reading.bad_lines) {
    if (bad.size() < 20) bad.push_back(problem_json(problem));
  }
  return JsonObject()
      .put("ok", reading.is_usable())
      .list("columns", columns)
      .put("readings", static_cast<std::int64_t>(reading.trace.rows()))
      .put("notes", sentences(reading.notes, style))
      .list("bad_lines", bad)
      .put("bad_line_count", static_cast<std::int64_t>(reading.bad_line_count));
}

/// When the first line of a log was, in milliseconds since 1970; nothing where
/// it does not say.
/// When its first line was, where the log tells day and clock: those of this machine's wall.
std::optional<std::int64_t> first_ms(const trace::Trace& trace) {
  if (!trace.first_day || !trace.first_clock_s) return std::nullopt;
  const std::int64_t wall_ms = std::int64_t{*trace.first_day} * 86'400'000 +
                               static_cast<std::int64_t>(*trace.first_clock_s) * 1000;
  return wall_ms - std::int64_t{store::utc_offset_min(wall_ms)} * 60'000;
}

double border(Kind kind, double si) { return units::at_border({kind, si}); }

template <class Quantity>
void put_estimate(JsonObject& json, const char* key, Kind kind,
                  const std::optional<hold::Estimate<Quantity>>& estimate) {
  if (!estimate) {
    json.put_null(key);
    return;
  }
  json.raw(key, JsonObject()
                    .put("estimate", border(kind, estimate->estimate.si()))
                    .put("low_90", border(kind, estimate->low_90.si()))
                    .put("high_90", border(kind, estimate->high_90.si()))
                    .text());
}

template <class Quantity>
void put_maybe(JsonObject& json, const char* key, Kind kind, const std::optional<Quantity>& value) {
  if (value) {
    json.put(key, border(kind, value->si()));
  } else {
    json.put_null(key);
  }
}

std::string parts_json(const hold::FallSplit& split) {
  const auto bar = [](units::PressureDifference p) {
    return border(Kind::PressureDifference, p.si());
  };
  return JsonObject()
      .put("cooling_bar", bar(split.cooling))
      .put("relaxing_bar", bar(split.relaxing))
      .put("air_bar", bar(split.air))
      .put("loss_bar", bar(split.loss))
      .put("rest_bar", bar(split.rest))
      .text();
}

/// At most so many points of the main gauge, the first and the last among them.
std::vector<std::string> points(const trace::Trace& trace, std::int64_t first_at_ms,
                                units::AbsolutePressure barometer) {
  constexpr std::size_t most = 2000;
  std::vector<std::string> list;
  if (trace.pressures.empty()) return list;
  const std::size_t step = trace.rows() / most + 1;
  const trace::Channel& gauge = trace.pressures.front();
  for (std::size_t row = 0; row < trace.rows(); row += step) {
    if (!gauge.values.has(row)) continue;
    const double pa = gauge.values.si(row) - (gauge.absolute ? barometer.si() : 0.0);
    list.push_back(
        JsonObject()
            .put("at_ms", first_at_ms + static_cast<std::int64_t>(trace.seconds[row] * 1000))
            .put("pressure_bar_gauge", border(Kind::GaugePressure, pa))
            .text());
  }
  return list;
}

std::vector<std::string> pump_points(const service::HoldJudgement& judgement) {
  std::vector<std::string> list;
  if (!judgement.answer.pump_up) return list;
  for (const hold::PumpUpPoint& point : judgement.answer.pump_up->points) {
    list.push_back(
        JsonObject()
            .put("pumped_l", border(Kind::Volume, point.pumped.si()))
            .put("pressure_bar_gauge",
                 border(Kind::GaugePressure, point.pressure.si() - judgement.input.barometer.si()))
            .put("airless_l", border(Kind::Volume, point.airless.si()))
            .text());
  }
  return list;
}

JsonObject gauge_json(const service::HoldJudgement& judgement, const trace::Reading& reading,
                      std::int64_t first_at_ms, const words::Style& style) {
  const auto& [input, answer, description] = judgement;
  JsonObject json;
  json.put("result", hold::token(answer.result))
      .put("result_text",
           words::label(fmt::format("gauge_result.{}", hold::token(answer.result)), style))
      .put("reason", words::sentence(answer.reason, style))
      .put("settle_by", sentences(answer.settle_by, style))
      .put("notes", sentences(answer.notes, style));
  put_estimate(json, "net_loss_ml_per_min", Kind::Leakage, answer.net_loss);
  put_maybe(json, "detectable_ml_per_min", Kind::Leakage, answer.detectable);
  put_maybe(json, "leak_of_concern_ml_per_min", Kind::Leakage, input.leak_of_concern);
  if (answer.split) {
    json.put("fall_bar", border(Kind::PressureDifference, answer.split->fall.si()))
        .raw("fall_parts", parts_json(*answer.split));
  } else {
    json.put_null("fall_bar").put_null("fall_parts");
  }
  std::optional<hold::Estimate<units::Volume>> air;
  if (answer.pump_up) air = answer.pump_up->trapped_air;
  put_estimate(json, "trapped_air_l", Kind::Volume, air);
  std::vector<std::string> sections;
  for (const working::Section& section : hold::hold_sections(input, answer)) {
    sections.push_back(section_json(section, style));
  }
  sections.push_back(section_json(
      hold::pump_up_section(input, answer, description ? &*description : nullptr), style));
  return json.list("readings", points(reading.trace, first_at_ms, input.barometer))
      .list("pump_up", pump_points(judgement))
      .list("sections", sections);
}

}  // namespace

Outcome trace(House& house, const Call& call) {
  const record::Scope scope = scope_of(call.closing());
  house.closings.newest(scope.id);
  const words::Style style = call.style();
  const std::string& bytes = call.request.body;
  const std::string name = call.asked("name").value_or("log");
  const trace::Reading reading = trace::read_trace(
      bytes, name,
      service::read_overrules(service::between_commas(call.asked("columns").value_or("")),
                              service::between_commas(call.asked("column_units").value_or(""))));
  if (!reading.is_usable()) throw BadInput(reading.problems);
  JsonObject json = preview(reading, style);
  if (!call.flag("accept")) {
    return answer(json.put("accepted", false)
                      .put("sha256", hex(record::sha256(bytes)))
                      .put_null("intake_no")
                      .text());
  }
  const auto from_ms = call.asked("started_at_ms")
                           ? std::optional(call.whole("started_at_ms", 0, 0, record::latest_ms))
                           : first_ms(reading.trace);
  const std::string gauge = call.asked("gauge").value_or("");
  if (!from_ms || gauge.empty()) {
    throw Refusal(422, "server.trace_not_told",
                  "say which gauge wrote this log (gauge), and when its first line was "
                  "(started_at_ms) where the log itself does not");
  }
  facts::TraceAdded added;
  added.gauge = gauge;
  added.columns = call.asked("columns").value_or("");
  added.column_units = call.asked("column_units").value_or("");
  added.from_ms = *from_ms;
  added.to_ms = *from_ms + static_cast<std::int64_t>(reading.trace.seconds.back() * 1000.0);
  std::int64_t intake_no = 0;
  house.writer.run([&] {
    added.trace_sha256 = hex(house.log.add_blob(bytes));
    house.closings.write([&](service::ClosingBook& book) {
      store::Draft draft = service::draft_of(scope, call.caller.person, added, call.now_ms,
                                             store::utc_offset_min(call.now_ms));
      draft.blobs.push_back(record::sha256(bytes));
      intake_no = service::append(house.log, book, {draft}, call.now_ms).front().intake_no;
    });
  });
  return answer(json.put("accepted", true)
                    .put("sha256", added.trace_sha256)
                    .put("intake_no", intake_no)
                    .text());
}

Outcome gauge(House& house, const Call& call) {
  const words::Style style = call.style();
  const KnownBoiler known_boiler = house.closings.boiler_of(call.closing());
  // A logger's log is better than readings by hand; "entered" asks for those all the same.
  const std::string wanted = call.asked("trace").value_or("");
  service::TestLog log;
  std::optional<facts::TraceAdded> logger;
  house.closings.read([&](const service::ClosingBook& book) {
    const service::Ledger& ledger = book.ledger(scope_of(call.closing()));
    log = service::entered_log(ledger);
    if (wanted != "entered") logger = service::logger_log(ledger, wanted);
  });
  if (logger) {
    const auto hash = record::from_hex<record::Hash>(logger->trace_sha256);
    auto bytes = hash ? house.log.blob(*hash) : std::nullopt;
    if (!bytes) throw Refusal(404, "server.no_blob", "the log is not in this store");
    log = service::by_logger(std::move(log), *logger, std::move(*bytes));
  } else if (!wanted.empty() && wanted != "entered") {
    throw Refusal(404, "server.no_blob", "no such log was taken in in this closing");
  } else if (log.readings < 2) {
    throw Refusal(422, "server.no_readings", "there are not two readings of a gauge yet");
  }
  if (const auto concern = call.number("leak_of_concern_ml_per_min")) {
    log.test.leak_of_concern = units::VolumeFlow::from_si(*concern * 1e-6 / 60.0);
  }
  const trace::Reading reading = log.read("readings");
  const service::HoldJudgement judgement =
      service::judge_hold(reading.trace, log.test, *known_boiler.boiler);
  return answer(gauge_json(judgement, reading, log.first_at_ms, style)
                    .put("trace_sha256", logger ? logger->trace_sha256 : "")
                    .text());
}

}  // namespace steamworthy::server
