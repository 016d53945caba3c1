#include "trace/row.h"

#include <fmt/format.h>

#include <cmath>

#include "trace/head_words.h"
#include "trace/sentences.h"
#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

// Loggers write 9999 or -999 for a broken sensor; no test with water is near these.
constexpr double lowest_gauge = -1.1e5;
constexpr double lowest_absolute = -1e4;
constexpr double highest_pressure = 2e8;
constexpr double coldest = 223.15;
constexpr double hottest = 673.15;

}  // namespace

RowReader::RowReader(const Plan& plan, const Layout& layout, const std::string& file)
    : plan_(plan),
      file_(file),
      separator_(layout.separator),
      decimal_(layout.decimal),
      decimal_open_(layout.decimal_open) {
  for (std::size_t c = 0; c < plan_.columns.size(); ++c) {
    if (is_measured(plan_.columns[c].meaning)) columns_.push_back(static_cast<int>(c));
  }
  measured_.resize(columns_.size());
}

bool RowReader::refuse(std::string code, int column, std::string_view found, std::string accepted,
                       std::string message) {
  problem_ = {std::move(code),
              file_,
              static_cast<int>(line_),
              column < 0 ? std::string()
                         : field_of(plan_.understanding.columns[static_cast<std::size_t>(column)]),
              units::quotable(found),
              std::move(accepted),
              std::move(message)};
  return false;
}

std::string_view RowReader::time_text() const {
  const auto column = static_cast<std::size_t>(plan_.time());
  return column < splitter_.cells().size() ? splitter_.cells()[column] : std::string_view();
}

Problem RowReader::time_problem(std::string code, std::size_t line, std::string_view found,
                                std::string accepted, std::string message) const {
  const auto column = static_cast<std::size_t>(plan_.time());
  return {std::move(code),        file_,
          static_cast<int>(line), field_of(plan_.understanding.columns[column]),
          units::quotable(found), std::move(accepted),
          std::move(message)};
}

bool RowReader::read(std::string_view line, std::size_t number) {
  line_ = number;
  remark_ = {};
  if (!splitter_.split(line, separator_)) {
    return refuse("trace.open_quote", -1, trimmed(line),
                  fmt::format("a closing \" and then \"{}\" or the line's end",
                              separator_ == '\t' ? std::string("\\t") : std::string(1, separator_)),
                  "a quoted cell is not closed");
  }
  if (!count_fits(line)) return false;
  if (!read_time()) return false;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (!read_measured(i)) return false;
  }
  return true;
}

/// Whether the line has a cell for each column that is read. Remarks may be left out at the end,
/// and may hold separators.
bool RowReader::count_fits(std::string_view line) {
  const auto& cells = splitter_.cells();
  const std::size_t columns = plan_.columns.size();
  const std::string accepted = fmt::format("{} cells", columns);
  for (std::size_t c = cells.size(); c < columns; ++c) {
    const Meaning meaning = plan_.columns[c].meaning;
    if (!is_measured(meaning) && !is_time(meaning)) continue;
    return refuse("trace.too_few_cells", -1,
                  fmt::format("{} cells: {}", cells.size(), trimmed(line)), accepted,
                  "the line has too few cells; it may be cut off");
  }
  std::size_t filled = cells.size();
  while (filled > columns && is_missing(cells[filled - 1])) --filled;
  const auto remarks = static_cast<std::size_t>(plan_.remarks);
  if (plan_.remarks >= 0 && remarks < cells.size()) {
    const bool is_last = remarks + 1 == columns;
    remark_ = filled > columns && is_last ? splitter_.rest_from(remarks, line) : cells[remarks];
    if (is_last) return true;
  }
  if (filled <= columns) return true;
  return refuse("trace.too_many_cells", -1, fmt::format("{} cells: {}", filled, trimmed(line)),
                accepted, "the line has too many cells");
}

bool RowReader::read_elapsed(int column, double& into) {
  const std::string_view cell = splitter_.cells()[static_cast<std::size_t>(column)];
  const ColumnPlan& plan = plan_.columns[static_cast<std::size_t>(column)];
  if (is_missing(cell)) {
    return refuse("trace.time_missing", column, cell, "a time", "the line has no time");
  }
  if (plan.written_as_clock) {
    if (const auto time = read_clock(cell, plan.clock)) {
      into = time->clock_s;
      return true;
    }
    return refuse("trace.not_a_time", column, cell, plan.clock.minutes_first ? "5:30" : "1:05:00",
                  "this is no elapsed time");
  }
  const NumberCell number = number_of(cell);
  const std::string_view rest = trimmed(cell.substr(number.used));
  double factor = plan.unit.factor;
  if (number.used > 0 && !rest.empty()) {
    const auto unit = read_log_unit(rest);
    if (!unit || !(unit->unit.dimension == units::Dimension{0, 0, 1, 0})) {
      return refuse("trace.not_a_time", column, cell, "a number such as " + number_example(),
                    "this is no elapsed time");
    }
    factor = unit->unit.factor;
  }
  if (number.used == 0) {
    return refuse("trace.not_a_time", column, cell, "a number such as " + number_example(),
                  "this is no elapsed time");
  }
  into = number.number.value * factor;
  return true;
}

bool RowReader::read_timed_cell(int column, std::optional<TimeCell>& into) {
  const std::string_view cell = splitter_.cells()[static_cast<std::size_t>(column)];
  const ColumnPlan& plan = plan_.columns[static_cast<std::size_t>(column)];
  if (is_missing(cell)) {
    return refuse("trace.time_missing", column, cell, "a time", "the line has no time");
  }
  if (plan.meaning == Meaning::Date) {
    if (const auto day = read_date(cell, plan.clock.order)) {
      into = TimeCell{0.0, day};
      return true;
    }
    return refuse("trace.not_a_time", column, cell, "2026-11-25 or 25.11.2026", "this is no date");
  }
  into = plan.meaning == Meaning::DateTime ? read_date_time(cell, plan.clock)
                                           : read_clock(cell, plan.clock);
  if (into) return true;
  if (plan.meaning == Meaning::DateTime) {
    return refuse("trace.not_a_time", column, cell, "2026-11-25 07:05:00",
                  "this is no date with a time of day");
  }
  return refuse("trace.not_a_time", column, cell, plan.clock.bare ? "0705" : "07:05 or 07:05:30",
                "this is no time of day");
}

bool RowReader::read_time() {
  time_ = {};
  std::optional<TimeCell> cell;
  if (plan_.elapsed >= 0) {
    if (!read_elapsed(plan_.elapsed, time_.seconds)) return false;
    time_.elapsed_s = time_.seconds;
    // A clock beside it only tells when the log began: what it cannot read does no harm.
    const Problem before = problem_;
    if (plan_.date_time >= 0 && read_timed_cell(plan_.date_time, cell)) {
      time_.clock_s = cell->clock_s;
    } else if (plan_.clock >= 0 && read_timed_cell(plan_.clock, cell)) {
      time_.clock_s = cell->clock_s;
    }
    problem_ = before;
    return true;
  }
  if (!read_timed_cell(plan_.time(), cell)) return false;
  time_.clock_s = cell->clock_s;
  time_.seconds = cell->clock_s - cell->offset_s;
  time_.day = cell->day;
  if (plan_.date_time < 0 && plan_.date >= 0) {
    if (!read_timed_cell(plan_.date, cell)) return false;
    time_.day = cell->day;
  }
  return true;
}

NumberCell RowReader::number_of(std::string_view cell) {
  NumberCell number = read_number(cell, decimal_);
  if (number.used < cell.size() && decimal_open_) {
    const char other = decimal_ == '.' ? ',' : '.';
    const bool has_own = cell.find(decimal_) != std::string_view::npos;
    if (const NumberCell with_other = read_number(cell, other);
        !has_own && with_other.used > number.used) {
      decimal_ = other;
      decimal_open_ = false;
      return with_other;
    }
  }
  if (number.number.decimals > 0) decimal_open_ = false;
  return number;
}

std::string RowReader::number_example() const { return decimal_ == ',' ? "6,5" : "6.5"; }

bool RowReader::read_measured(std::size_t i) {
  const int column = columns_[i];
  const auto at = static_cast<std::size_t>(column);
  Measured& out = measured_[i];
  out = {};
  const auto& cells = splitter_.cells();
  const std::string_view cell = cells[at];
  if (is_missing(cell)) return true;
  const ColumnPlan& plan = plan_.columns[at];
  const NumberCell number = number_of(cell);
  if (number.used == 0) {
    return refuse("trace.not_a_number", column, cell, "a number such as " + number_example(),
                  "this is no number");
  }
  out.has = true;
  out.number = number.number;
  if (number.used == cell.size()) {
    return in_range(column, out.number.value * plan.unit.factor + plan.unit.offset);
  }
  const std::string_view rest = trimmed(cell.substr(number.used));
  if (plan.meaning == Meaning::Strokes) {
    if (says(Word::Stroke, folded(rest), words_of(rest))) return in_range(column, out.number.value);
    return refuse("trace.not_a_number", column, cell, "a whole number",
                  "this is no count of strokes");
  }
  if (last_unit_text_ != rest) {
    last_unit_text_ = rest;
    last_unit_ = read_log_unit(rest);
  }
  if (!last_unit_) {
    // "6.5 bar?" has a doubt behind a unit, "6.5.2" is no number at all.
    return refuse("trace.not_a_number", column, cell, "a number such as " + number_example(),
                  "this is no number");
  }
  const units::Unit& unit = last_unit_->unit;
  if (!(unit.dimension == plan.unit.dimension)) {
    return refuse("trace.cell_unit", column, cell, accepted_units(plan.meaning),
                  "this unit does not measure what the column holds");
  }
  if (plan.meaning == Meaning::Pressure && unit.zero != units::Zero::Unsaid &&
      (unit.zero == units::Zero::Absolute) != plan.absolute) {
    return refuse("trace.cell_unit", column, cell,
                  plan.absolute ? "an absolute pressure" : "a gauge pressure",
                  "the column holds pressures from another zero");
  }
  if (unit.factor != plan.unit.factor || unit.offset != plan.unit.offset) {
    out.is_si = true;
    out.number.value = out.number.value * unit.factor + unit.offset;
    return in_range(column, out.number.value);
  }
  return in_range(column, out.number.value * plan.unit.factor + plan.unit.offset);
}

bool RowReader::in_range(int column, double si) {
  const ColumnPlan& plan = plan_.columns[static_cast<std::size_t>(column)];
  const std::string_view cell = splitter_.cells()[static_cast<std::size_t>(column)];
  if (plan.meaning == Meaning::Pressure) {
    if (si >= (plan.absolute ? lowest_absolute : lowest_gauge) && si <= highest_pressure)
      return true;
    return refuse("trace.out_of_range", column, cell,
                  plan.absolute ? "an absolute pressure from 0 to 2000 bar"
                                : "a gauge pressure from -1.1 to 2000 bar",
                  "no gauge reads this");
  }
  if (is_temperature(plan.meaning)) {
    if (si >= coldest && si <= hottest) return true;
    return refuse("trace.out_of_range", column, cell, "a temperature from -50 to 400 \u00b0C",
                  "no thermometer of a water test reads this");
  }
  if (std::isfinite(si)) return true;
  return refuse("trace.not_a_number", column, cell, "a number such as " + number_example(),
                "this is no number");
}

}  // namespace steamworthy::trace
