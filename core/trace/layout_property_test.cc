// The same readings written in many layouts are read as the same readings.
//
// Numbers are whole hundredths (of bar, °C, s), so that every unit used here writes them without
// rounding: what comes back may differ by the last bits only.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "trace/reader.h"

namespace steamworthy::trace {
namespace {

struct Row {
  int second = 0;
  int centibar = 0;
  int water = 0;  // hundredths of a degree Celsius
  int metal = 0;
  int strokes = 0;
};

std::vector<Row> rows() {
  std::vector<Row> result;
  const int count = *rc::gen::inRange(2, 40);
  const int step = *rc::gen::inRange(1, 400);
  int second = 0;
  int strokes = 0;
  for (int i = 0; i < count; ++i) {
    result.push_back({second, *rc::gen::inRange(0, 9999), *rc::gen::inRange(100, 9000),
                      *rc::gen::inRange(100, 9000), strokes});
    second += step * *rc::gen::inRange(1, 3);
    strokes += *rc::gen::inRange(0, 9);
  }
  return result;
}

struct Style {
  char separator = ',';
  char decimal = '.';
  bool quoted = false;
  bool mark = false;  // byte-order mark
  std::string end = "\n";
  bool comments = false;
  bool units_in_cells = false;
  int time = 0;      // 0 s, 1 clock, 2 date and clock, 3 German date, 4 two columns
  int pressure = 0;  // 0 bar, 1 kPa, 2 MPa, 3 mbar, 4 Pa
  int heat = 0;      // 0 °C, 1 K, 2 °F
  bool german = false;
  std::vector<int> order = {0, 1, 2, 3, 4};
  int start = 7 * 3600;
};

Style style() {
  Style s;
  s.separator = *rc::gen::element(',', ';', '\t', '|');
  s.decimal = s.separator == ',' ? '.' : *rc::gen::element('.', ',');
  s.quoted = *rc::gen::arbitrary<bool>();
  s.mark = *rc::gen::arbitrary<bool>();
  s.end = *rc::gen::element<std::string>("\n", "\r\n", "\r");
  s.comments = *rc::gen::arbitrary<bool>();
  s.units_in_cells = *rc::gen::arbitrary<bool>();
  s.time = *rc::gen::inRange(0, 5);
  s.pressure = *rc::gen::inRange(0, 5);
  s.heat = *rc::gen::inRange(0, 3);
  s.german = *rc::gen::arbitrary<bool>();
  for (std::size_t i = s.order.size(); i-- > 1;) {
    std::swap(s.order[i], s.order[*rc::gen::inRange<std::size_t>(0, i + 1)]);
  }
  s.start = *rc::gen::inRange(0, 86400);
  return s;
}

/// whole / 10^decimals in the style's decimals.
std::string decimal(long whole, int decimals, char mark) {
  if (decimals == 0) return std::to_string(whole);
  long power = 1;
  for (int i = 0; i < decimals; ++i) power *= 10;
  return fmt::format("{}{}{:0{}}", whole / power, mark, whole % power, decimals);
}

std::string time_text(const Row& row, const Style& s) {
  if (s.time == 0) return std::to_string(row.second + s.start);
  const int all = s.start + row.second;
  const int day = 25 + all / 86400;
  const int in_day = all % 86400;
  const std::string clock =
      fmt::format("{:02}:{:02}:{:02}", in_day / 3600, in_day / 60 % 60, in_day % 60);
  if (s.time == 1) return clock;
  if (s.time == 2) return fmt::format("2026-11-{:02}T{}", day, clock);
  if (s.time == 3) return fmt::format("{:02}.11.2026 {}", day, clock);
  return fmt::format("{:02}.11.2026{}{}", day, s.separator, clock);
}

std::string head(int column, const Style& s) {
  static const char* const pressures[] = {"bar", "kPa", "MPa", "mbar", "Pa"};
  static const char* const heats[] = {"\u00b0C", "K", "\u00b0F"};
  const std::string pressure = s.units_in_cells ? "" : fmt::format(" [{}]", pressures[s.pressure]);
  const std::string heat = s.units_in_cells ? "" : fmt::format(" ({})", heats[s.heat]);
  switch (column) {
    case 0:
      if (s.time == 4)
        return fmt::format("{}{}{}", s.german ? "Datum" : "date", s.separator,
                           s.german ? "Uhrzeit" : "time");
      return s.time == 0 ? (s.german ? "Zeit [s]" : "t_s") : (s.german ? "Zeit" : "Time");
    case 1:
      return (s.german ? "Kesseldruck" : "Gauge") + pressure;
    case 2:
      return (s.german ? "Wassertemperatur" : "Water temp") + heat;
    case 3:
      return (s.german ? "Metalltemp." : "Shell temp") + heat;
    default:
      return s.german ? "Pumpenh\u00fcbe" : "strokes";
  }
}

std::string cell(int column, const Row& row, const Style& s) {
  static const char* const pressures[] = {" bar", " kPa", " MPa", "mbar", "Pa"};
  static const char* const heats[] = {" \u00b0C", "K", "\u00b0F"};
  const auto heat = [&s](int hundredths) {
    const std::string unit = s.units_in_cells ? heats[s.heat] : "";
    if (s.heat == 0) return decimal(hundredths, 2, s.decimal) + unit;
    if (s.heat == 1) return decimal(hundredths + 27315, 2, s.decimal) + unit;
    return decimal(hundredths * 18L + 32000L, 3, s.decimal) + unit;
  };
  const long p = row.centibar;
  switch (column) {
    case 0:
      return time_text(row, s);
    case 1: {
      const std::string unit = s.units_in_cells ? pressures[s.pressure] : "";
      switch (s.pressure) {
        case 0:
          return decimal(p, 2, s.decimal) + unit;
        case 1:
          return decimal(p, 0, s.decimal) + unit;
        case 2:
          return decimal(p, 3, s.decimal) + unit;
        case 3:
          return decimal(p * 10, 0, s.decimal) + unit;
        default:
          return decimal(p * 1000, 0, s.decimal) + unit;
      }
    }
    case 2:
      return heat(row.water);
    case 3:
      return heat(row.metal);
    default:
      return std::to_string(row.strokes);
  }
}

std::string written(const std::vector<Row>& all, const Style& s) {
  std::string text = s.mark ? "\ufeff" : "";
  if (s.comments) text += "# a log" + s.end + "% of somebody's" + s.end;
  const auto line = [&](auto&& cell_of) {
    std::string out;
    for (const int column : s.order) {
      const std::string one = cell_of(column);
      const bool quote = s.quoted && !(column == 0 && s.time == 4);
      out += (out.empty() ? "" : std::string(1, s.separator)) + (quote ? "\"" + one + "\"" : one);
    }
    text += out + s.end;
  };
  line([&](int column) { return head(column, s); });
  for (const Row& row : all) {
    line([&](int column) { return cell(column, row, s); });
    if (s.comments && row.second % 3 == 0) text += "// seen" + s.end;
  }
  return text;
}

void expect_rows(const Reading& reading, const std::vector<Row>& all) {
  for (const Problem& problem : reading.problems) RC_FAIL(sentence(problem));
  for (const Problem& problem : reading.bad_lines) RC_FAIL(sentence(problem));
  const Trace& trace = reading.trace;
  RC_ASSERT(trace.rows() == all.size());
  RC_ASSERT(trace.pressures.size() == 1u);
  RC_ASSERT(trace.water.size() == 1u);
  RC_ASSERT(trace.metal.size() == 1u);
  RC_ASSERT(trace.strokes.has_value());
  const auto near = [](double a, double b) {
    return std::fabs(a - b) <= 1e-12 * std::max(1.0, std::fabs(b));
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    RC_ASSERT(trace.seconds[i] == double(all[i].second - all[0].second));
    RC_ASSERT(near(trace.pressures[0].values.si(i), all[i].centibar * 1000.0));
    RC_ASSERT(near(trace.water[0].values.si(i), all[i].water / 100.0 + 273.15));
    RC_ASSERT(near(trace.metal[0].values.si(i), all[i].metal / 100.0 + 273.15));
    RC_ASSERT(trace.strokes->values.si(i) == double(all[i].strokes));
  }
}

RC_GTEST_PROP(Layouts, ChangeNothing, ()) {
  const std::vector<Row> all = rows();
  const Style s = style();
  const std::string text = written(all, s);
  RC_LOG(text);
  expect_rows(read_trace(text, "log"), all);
}

RC_GTEST_PROP(Layouts, PiecesOfAnySizeChangeNothing, ()) {
  const std::vector<Row> all = rows();
  const std::string text = written(all, style());
  TraceReader reader("log");
  const auto size = *rc::gen::inRange<std::size_t>(1, 60);
  for (std::size_t at = 0; at < text.size(); at += size) reader.feed(text.substr(at, size));
  expect_rows(reader.finish(), all);
}

RC_GTEST_PROP(Layouts, ShiftingTheClockChangesNothing, ()) {
  const std::vector<Row> all = rows();
  Style s = style();
  s.time = 1;  // a clock without a date, over midnight wherever the shift puts it
  s.start = *rc::gen::inRange(0, 86400);
  expect_rows(read_trace(written(all, s), "log"), all);
}

RC_GTEST_PROP(Layouts, ReorderingEqualReadingsChangesNothing, ()) {
  std::vector<Row> all = rows();
  const Style s = style();
  const std::vector<Row> once = all;
  // Each reading up to three times, the copies of one time in any order.
  std::vector<Row> doubled;
  for (const Row& row : all) {
    const int copies = *rc::gen::inRange(1, 4);
    for (int i = 0; i < copies; ++i) doubled.push_back(row);
  }
  expect_rows(read_trace(written(doubled, s), "log"), once);
}

RC_GTEST_PROP(Layouts, NewestFirstChangesNothing, ()) {
  const std::vector<Row> all = rows();
  Style s = style();
  std::vector<Row> turned(all.rbegin(), all.rend());
  expect_rows(read_trace(written(turned, s), "log"), all);
}

RC_GTEST_PROP(Layouts, AnyBytesAreReadWithoutHarm, (const std::string& text)) {
  const Reading reading = read_trace(text, "log");
  RC_ASSERT(reading.is_usable() || !reading.problems.empty());
}

}  // namespace
}  // namespace steamworthy::trace
