#include "trace/sentences.h"

#include <fmt/format.h>

#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

using working::Message;
using working::Term;

std::string_view separator_key(char separator) {
  switch (separator) {
    case ';':
      return "trace_separator.semicolon";
    case '\t':
      return "trace_separator.tab";
    case '|':
      return "trace_separator.bar";
    case ' ':
      return "trace_separator.blank";
    default:
      return "trace_separator.comma";
  }
}

Message column_sentence(const Column& column) {
  const units::Measure number = units::measure_count(column.number);
  if (column.meaning == Meaning::Unknown || column.meaning == Meaning::Ignored) {
    Message message = column.meaning == Meaning::Unknown
                          ? Message{"trace.column_not_understood", {{"column", number}}}
                          : Message{"trace.column_not_read", {{"column", number}}};
    if (!column.header.empty())
      message.values.emplace_back("header", units::quotable(column.header));
    return message;
  }
  Message message{"trace.column_is",
                  {{"column", number}, {"meaning", Term{std::string(words_key(column.meaning))}}}};
  if (!column.header.empty()) message.values.emplace_back("header", units::quotable(column.header));
  if (!column.unit.empty()) message.values.emplace_back("unit", column.unit);
  if (column.absolute) {
    message.values.emplace_back(
        "zero", Term{*column.absolute ? "trace_zero.absolute" : "trace_zero.gauge"});
  }
  if (column.unit_assumed || column.zero_assumed) {
    message.values.emplace_back(
        "assumed", Term{column.unit_assumed && column.zero_assumed ? "trace_assumed.both"
                        : column.unit_assumed                      ? "trace_assumed.unit"
                                                                   : "trace_assumed.zero"});
  }
  if (column.meaning_overruled || column.unit_overruled || column.zero_overruled) {
    message.values.emplace_back("overruled", Term{"trace_assumed.overruled"});
  }
  return message;
}

}  // namespace

void say(Understanding& understanding) {
  understanding.sentences.clear();
  Message layout{"trace.layout",
                 {{"separator", Term{std::string(separator_key(understanding.separator))}},
                  {"decimal", Term{understanding.decimal == ',' ? "trace_separator.comma"
                                                                : "trace_separator.point"}}}};
  if (understanding.decimal_assumed)
    layout.values.emplace_back("assumed", Term{"trace_assumed.decimal"});
  if (understanding.header_line > 0) {
    layout.values.emplace_back("line", units::measure_count(understanding.header_line));
  }
  understanding.sentences.push_back(std::move(layout));
  for (Column& column : understanding.columns) {
    column.sentence = column_sentence(column);
    understanding.sentences.push_back(column.sentence);
  }
}

std::string field_of(const Column& column) {
  if (column.header.empty()) return fmt::format("column {}", column.number);
  return fmt::format("column {} ({})", column.number, units::quotable(column.header));
}

std::string accepted_units(Meaning meaning) {
  if (meaning == Meaning::Pressure) return "a unit such as bar, psi, kPa or MPa, with g or abs";
  if (meaning == Meaning::Pumped) return "a unit such as L, mL or US gal";
  if (is_temperature(meaning)) return "\u00b0C, \u00b0F or K";
  return "s, min, h or ms";
}

}  // namespace steamworthy::trace
