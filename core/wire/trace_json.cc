#include "wire/trace_json.h"

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

Json column_json(const trace::Column& column) {
  Json json{{"column", column.number},
            {"header", column.header},
            {"meaning", trace::token(column.meaning)}};
  if (!column.unit.empty()) {
    json["unit"] = column.unit;
    json["unit_assumed"] = column.unit_assumed;
    json["unit_overruled"] = column.unit_overruled;
  }
  if (column.absolute) {
    json["zero"] = *column.absolute ? "absolute" : "gauge";
    json["zero_assumed"] = column.zero_assumed;
    json["zero_overruled"] = column.zero_overruled;
  }
  json["meaning_overruled"] = column.meaning_overruled;
  json["sentence"] = message_json(column.sentence);
  return json;
}

Json summary_json(const trace::Summary& summary) {
  using units::Kind;
  Json json{{"readings", summary.rows}};
  put_measure(json, "span", {Kind::Duration, summary.span_s});
  put_measure(json, "usual_step", {Kind::Duration, summary.usual_step_s});
  json["gaps"] = summary.gaps;
  put_measure(json, "longest_gap", {Kind::Duration, summary.longest_gap_s});
  Json list = Json::array();
  for (const trace::Highest& highest : summary.highest) {
    Json row{{"column", highest.column}};
    put_measure(row, "value",
                {highest.absolute ? Kind::AbsolutePressure : Kind::GaugePressure, highest.pa});
    put_measure(row, "at", {Kind::Duration, highest.at_s});
    list.push_back(std::move(row));
  }
  json["highest"] = std::move(list);
  return json;
}

}  // namespace

std::string trace_json(const std::string& file, const trace::Reading& reading,
                       const std::vector<working::Message>& told) {
  const trace::Understanding& understanding = reading.understanding;
  Json columns = Json::array();
  for (const trace::Column& column : understanding.columns) columns.push_back(column_json(column));
  Json bad = Json::array();
  for (const Problem& problem : reading.bad_lines) {
    bad.push_back(Json{{"code", problem.code},
                       {"line", problem.line},
                       {"field", problem.field},
                       {"found", problem.found},
                       {"accepted", problem.accepted},
                       {"message", problem.message}});
  }
  return text(Json{{"ok", reading.is_usable()},
                   {"file", file},
                   {"layout",
                    {{"separator", std::string(1, understanding.separator)},
                     {"decimal", std::string(1, understanding.decimal)},
                     {"decimal_assumed", understanding.decimal_assumed},
                     {"header_line", understanding.header_line}}},
                   {"columns", std::move(columns)},
                   {"summary", summary_json(trace::summarise(reading))},
                   {"notes", messages_json(reading.notes)},
                   {"bad_line_count", reading.bad_line_count},
                   {"bad_lines", std::move(bad)},
                   {"test", messages_json(told)}});
}

}  // namespace steamworthy::wire
