#include "trace/layout.h"

#include <algorithm>
#include <array>
#include <map>

#include "trace/cells.h"
#include "trace/heading.h"

namespace steamworthy::trace {
namespace {

// In the order of preference where two part the lines equally well.
constexpr std::array<char, 5> separators = {';', '\t', '|', ',', ' '};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Whether a line's cells look like readings: two or more, most of them numbers or times.
bool is_reading(const CellSplitter& splitter) {
  std::size_t readings = 0;
  std::size_t texts = 0;
  for (const std::string_view cell : splitter.cells()) {
    const CellLook look = look_of(cell);
    if (look == CellLook::Text) ++texts;
    if (look != CellLook::Text && look != CellLook::Empty) ++readings;
  }
  return readings >= 2 && readings > texts;
}

struct Score {
  std::size_t lines = 0;    ///< lines of readings with the usual number of cells
  std::size_t columns = 0;  ///< that number
};

Score score_of(const std::vector<SampleLine>& lines, char separator) {
  std::map<std::size_t, std::size_t> by_count;
  CellSplitter splitter;
  for (const SampleLine& line : lines) {
    if (is_comment(line.text) || !splitter.split(line.text, separator)) continue;
    if (is_reading(splitter)) ++by_count[splitter.cells().size()];
  }
  Score best;
  for (const auto& [columns, count] : by_count) {
    if (count >= best.lines) best = {count, columns};
  }
  return best;
}

/// "sep=;" that spreadsheets write in the first line.
char stated_separator(const std::vector<SampleLine>& lines) {
  for (const SampleLine& line : lines) {
    if (line.number > 1) break;
    std::string_view text = trimmed(line.text);
    if (!text.empty() && text.front() == '"') text = text.substr(1, text.size() - 2);
    if (text.size() == 5 && text.substr(0, 4) == "sep=") return text.back();
  }
  return 0;
}

/// How decimals are written: counts of cells like "1,5" and "1.5".
struct Decimals {
  std::size_t commas = 0;
  std::size_t points = 0;
  bool sure = false;  ///< some comma cannot part thousands

  void look(std::string_view cell) {
    std::size_t p = !cell.empty() && (cell[0] == '-' || cell[0] == '+') ? 1 : 0;
    const std::size_t begin = p;
    while (p < cell.size() && is_digit(cell[p])) ++p;
    if (p == begin || p >= cell.size() || (cell[p] != ',' && cell[p] != '.')) return;
    const char mark = cell[p];
    const std::size_t before = p - begin;
    const std::size_t after_begin = ++p;
    while (p < cell.size() && is_digit(cell[p])) ++p;
    const std::size_t after = p - after_begin;
    if (after == 0) return;
    if (p < cell.size() && (cell[p] == '.' || cell[p] == ',')) {  // "1.234,5" or a date
      if (cell[p] == mark || after != 3) return;
      (mark == ',' ? points : commas) += 1;
      sure = true;
      return;
    }
    if (p < cell.size() && (cell[p] == ':' || cell[p] == '-' || cell[p] == '/')) return;
    (mark == ',' ? commas : points) += 1;
    if (mark == ',' && (after != 3 || before > 3 || cell[begin] == '0')) sure = true;
  }
};

/// The heads of a line, so many as there are columns.
std::vector<std::string> heads_of(std::string_view line, char separator, std::size_t columns) {
  CellSplitter splitter;
  std::vector<std::string> heads;
  if (separator == ' ') {
    // Heads of several words: parted by two blanks or more.
    std::string wide;
    std::size_t blanks = 0;
    for (const char c : trimmed(line)) {
      if (c == ' ') {
        ++blanks;
        continue;
      }
      if (blanks == 1) wide += ' ';
      if (blanks > 1) wide += '\t';
      blanks = 0;
      wide += c;
    }
    if (splitter.split(wide, '\t') && splitter.cells().size() == columns) {
      heads.assign(splitter.cells().begin(), splitter.cells().end());
      return heads;
    }
  }
  if (!splitter.split(line, separator)) return heads;
  heads.assign(splitter.cells().begin(), splitter.cells().end());
  return heads;
}

bool is_unit_row(const std::vector<std::string>& cells) {
  std::size_t units = 0;
  for (const std::string& cell : cells) {
    if (!is_unit_row_cell(cell)) return false;
    if (!cell.empty() && cell != "-") ++units;
  }
  return units > 0;
}

bool has_letter(const std::vector<std::string>& cells) {
  return std::any_of(cells.begin(), cells.end(),
                     [](const std::string& cell) { return look_of(cell) == CellLook::Text; });
}

/// Looks for the heads above the first line of readings.
void find_heads(const std::vector<SampleLine>& lines, std::size_t first, std::size_t columns,
                Layout& layout) {
  std::string commented;
  std::size_t commented_line = 0;
  for (std::size_t i = first; i-- > 0;) {
    const std::string& text = lines[i].text;
    if (trimmed(text).empty()) continue;
    if (is_comment(text)) {
      std::string_view bare = trimmed(text);
      while (!bare.empty() && (bare.front() == '#' || bare.front() == '%' || bare.front() == '/' ||
                               bare.front() == '*')) {
        bare = trimmed(bare.substr(1));
      }
      const auto heads = heads_of(bare, layout.separator, columns);
      if (commented.empty() && heads.size() == columns && has_letter(heads)) {
        commented = std::string(bare);
        commented_line = lines[i].number;
      }
      continue;
    }
    const auto heads = heads_of(text, layout.separator, columns);
    if (heads.size() < 2 || !has_letter(heads)) continue;
    if (heads.size() + 1 < columns) continue;  // a line of the preamble
    if (layout.units_row.empty() && is_unit_row(heads) && i > 0 && layout.header_line == 0) {
      // Units by themselves stand under the heads; if nothing stands above, they are the heads.
      layout.units_row = heads;
      layout.heads = heads;
      continue;
    }
    layout.heads = heads;
    layout.header_line = lines[i].number;
    layout.header_text = text;
    return;
  }
  if (!layout.units_row.empty()) {
    layout.units_row.clear();  // "s;bar;°C" and no heads: the units are all there is
    for (std::size_t i = first; i-- > 0 && layout.header_line == 0;) {
      if (!is_comment(lines[i].text) && !trimmed(lines[i].text).empty()) {
        layout.header_line = lines[i].number;
        layout.header_text = lines[i].text;
      }
    }
    return;
  }
  if (!commented.empty()) {
    layout.heads = heads_of(commented, layout.separator, columns);
    layout.header_line = commented_line;
  }
}

}  // namespace

CellLook look_of(std::string_view cell) {
  if (is_missing(cell)) return CellLook::Empty;
  const ClockStyle style;
  if (is_digit(cell.front())) {
    if (cell.find_first_of(":h") != std::string_view::npos && read_clock(cell, style)) {
      return CellLook::Clock;
    }
    if (cell.find_first_of("-./") != std::string_view::npos) {
      if (read_date(cell, DateOrder::DayFirst) || read_date(cell, DateOrder::MonthFirst)) {
        return CellLook::Date;
      }
      ClockStyle other;
      other.order = DateOrder::MonthFirst;
      if (read_date_time(cell, style) || read_date_time(cell, other)) return CellLook::DateTime;
    }
  }
  for (const char decimal : {'.', ','}) {
    const NumberCell number = read_number(cell, decimal);
    if (number.used == 0) continue;
    const std::string_view rest = trimmed(cell.substr(number.used));
    if (rest.empty()) return CellLook::Number;
    if (read_log_unit(rest)) return CellLook::NumberWithUnit;
  }
  // Elapsed times of many hours: "26:30:00".
  ClockStyle elapsed;
  elapsed.past_midnight = true;
  if (read_clock(cell, elapsed)) return CellLook::Clock;
  return CellLook::Text;
}

Layout find_layout(const std::vector<SampleLine>& lines, const Overrules& overrules) {
  Layout layout;
  Score best;
  const char stated = overrules.separator.value_or(stated_separator(lines));
  for (const char separator : separators) {
    if (stated != 0 && separator != stated) continue;
    const Score score = score_of(lines, separator);
    if (score.lines > best.lines) {
      best = score;
      layout.separator = separator;
    }
  }
  if (best.lines == 0) return layout;
  layout.is_found = true;

  CellSplitter splitter;
  std::size_t first = lines.size();
  std::size_t columns = best.columns;
  Decimals decimals;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const SampleLine& line = lines[i];
    if (is_comment(line.text) || !splitter.split(line.text, layout.separator)) continue;
    if (!is_reading(splitter)) continue;
    if (first == lines.size()) first = i;
    columns = std::max(columns, std::min(splitter.cells().size(), best.columns + 1));
    layout.cells.resize(std::max(layout.cells.size(), splitter.cells().size()));
    for (std::size_t c = 0; c < splitter.cells().size(); ++c) {
      layout.cells[c].emplace_back(splitter.cells()[c]);
      decimals.look(splitter.cells()[c]);
    }
  }
  layout.first_reading = lines[first].number;
  if (overrules.decimal) {
    layout.decimal = *overrules.decimal;
  } else if (decimals.commas > decimals.points) {
    layout.decimal = ',';
    layout.decimal_assumed = !decimals.sure;
  }
  layout.decimal_open =
      !overrules.decimal && decimals.commas + decimals.points == 0 && layout.separator != ',';
  find_heads(lines, first, best.columns, layout);
  // An unnamed last column of texts is one of remarks; other surplus cells make a bad line.
  std::size_t named = std::max(layout.heads.size(), best.columns);
  if (layout.heads.size() < columns && layout.heads.size() >= best.columns &&
      std::any_of(layout.cells[columns - 1].begin(), layout.cells[columns - 1].end(),
                  [](const std::string& cell) { return look_of(cell) == CellLook::Text; })) {
    named = std::max(named, columns);
  }
  layout.heads.resize(named);
  layout.cells.resize(named);
  for (std::size_t i = 0; i < first; ++i) {
    const bool is_head = lines[i].number == layout.header_line;
    if (!is_head && !trimmed(lines[i].text).empty() && !is_comment(lines[i].text))
      ++layout.preamble;
  }
  if (!layout.units_row.empty()) --layout.preamble;
  return layout;
}

}  // namespace steamworthy::trace
