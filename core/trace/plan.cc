#include "trace/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "trace/cells.h"
#include "trace/sentences.h"
#include "units/number_text.h"

namespace steamworthy::trace {
namespace {

using Cells = std::vector<std::string>;

bool all_of(const Cells& cells, bool (*holds)(std::string_view)) {
  std::size_t seen = 0;
  for (const std::string& cell : cells) {
    if (is_missing(cell)) continue;
    if (!holds(cell)) return false;
    ++seen;
  }
  return seen > 0;
}

/// What most of a column's cells look like.
CellLook usual_look(const Cells& cells) {
  constexpr std::size_t looks = 7;
  std::array<std::size_t, looks> counts = {};
  for (const std::string& cell : cells) ++counts[static_cast<std::size_t>(look_of(cell))];
  counts[static_cast<std::size_t>(CellLook::Empty)] = 0;
  const auto most = std::max_element(counts.begin(), counts.end());
  return *most == 0 ? CellLook::Empty : static_cast<CellLook>(most - counts.begin());
}

bool is_bare_clock(std::string_view cell) {
  ClockStyle style;
  style.bare = true;
  return read_clock(cell, style).has_value();
}
bool is_dotted_clock(std::string_view cell) {
  ClockStyle style;
  style.dotted = true;
  return cell.find('.') != std::string_view::npos && read_clock(cell, style).has_value();
}

/// Which of the kinds of time a time column holds, by its cells; sets how they are written.
Meaning kind_of_time(const Heading& heading, const Cells& cells, ColumnPlan& plan) {
  const bool elapsed = heading.says_elapsed || heading.minutes_first;
  switch (usual_look(cells)) {
    case CellLook::Clock:
      plan.clock.minutes_first = heading.minutes_first;
      plan.clock.past_midnight = elapsed;
      plan.written_as_clock = elapsed;
      return elapsed ? Meaning::Elapsed : Meaning::Clock;
    case CellLook::DateTime:
      return Meaning::DateTime;
    case CellLook::Date:
      return Meaning::Date;
    default:
      break;
  }
  if (heading.unit || elapsed) return Meaning::Elapsed;
  const bool zero_first = std::any_of(cells.begin(), cells.end(), [](const std::string& cell) {
    return cell.size() == 4 && cell.front() == '0';
  });
  if (all_of(cells, is_bare_clock) && (zero_first || heading.says_clock)) {
    plan.clock.bare = true;
    return Meaning::Clock;
  }
  if (heading.says_clock && all_of(cells, is_dotted_clock)) {
    plan.clock.dotted = true;
    return Meaning::Clock;
  }
  return heading.says_clock ? Meaning::Clock : Meaning::Elapsed;
}

Meaning by_cells(const Heading& heading, const Cells& cells, ColumnPlan& plan) {
  const CellLook look = usual_look(cells);
  const bool looks_timed =
      look == CellLook::Clock || look == CellLook::DateTime || look == CellLook::Date;
  if (heading.meaning == Meaning::Elapsed || (looks_timed && heading.meaning != Meaning::Remarks)) {
    return kind_of_time(heading, cells, plan);
  }
  if (heading.text.empty() && look == CellLook::Text) return Meaning::Remarks;
  return heading.meaning;
}

/// Whether American units are about: they decide what a missing unit is assumed to be.
bool is_american(const std::vector<Heading>& headings) {
  const double psi = units::read_unit("psi")->factor;
  for (const Heading& heading : headings) {
    if (!heading.unit) continue;
    const units::Unit& unit = heading.unit->unit;
    if (unit.factor == psi || shown_unit(*heading.unit) == "\u00b0F" ||
        unit.factor == units::read_unit("US gal")->factor) {
      return true;
    }
  }
  return false;
}

UnitText assumed_unit(Meaning meaning, const Cells& cells, bool american) {
  std::string_view text = "s";
  if (meaning == Meaning::Pressure) text = american ? "psi" : "bar";
  if (meaning == Meaning::Pumped) text = american ? "US gal" : "L";
  if (is_temperature(meaning)) text = american ? "\u00b0F" : "\u00b0C";
  if (meaning == Meaning::Elapsed && !cells.empty()) {
    // Milliseconds after 1970: as seconds they would be thirty thousand years.
    constexpr double no_seconds = 1e11;
    if (read_number(cells.front(), '.').number.value > no_seconds) text = "ms";
  }
  return *read_log_unit(text);
}

std::optional<UnitText> unit_of_cells(const Cells& cells) {
  for (const std::string& cell : cells) {
    for (const char decimal : {'.', ','}) {
      const NumberCell number = read_number(cell, decimal);
      const std::string_view rest = trimmed(std::string_view(cell).substr(number.used));
      if (number.used == 0 || rest.empty()) continue;
      if (auto unit = read_log_unit(rest)) return unit;
    }
  }
  return std::nullopt;
}

class Planner {
 public:
  Planner(const Layout& layout, const Overrules& overrules, const std::string& file)
      : layout_(layout), overrules_(overrules), file_(file) {}

  Plan make() {
    read_headings();
    for (std::size_t c = 0; c < headings_.size(); ++c) plan_column(c);
    refuse_missing_columns();
    elect();
    understand();
    return std::move(plan_);
  }

 private:
  void add(std::string code, const std::string& field, const std::string& found,
           std::string accepted, std::string message) {
    plan_.problems.push_back({std::move(code), file_, static_cast<int>(layout_.header_line), field,
                              units::quotable(found), std::move(accepted), std::move(message)});
  }

  void read_headings() {
    for (std::size_t c = 0; c < layout_.heads.size(); ++c) {
      std::string text = layout_.heads[c];
      Heading heading = read_heading(text);
      if (!layout_.units_row.empty() && c < layout_.units_row.size() && !heading.unit) {
        std::string unit = layout_.units_row[c];
        if (!unit.empty() && unit.front() != '[' && unit.front() != '(') unit = "[" + unit + "]";
        if (!unit.empty() && unit != "[-]") heading = read_heading(text + " " + unit);
        heading.text = text;
      }
      headings_.push_back(std::move(heading));
    }
  }

  const std::string* overruled_unit(std::size_t c) const {
    for (const auto& [number, unit] : overrules_.units) {
      if (number == static_cast<int>(c) + 1) return &unit;
    }
    return nullptr;
  }

  void plan_column(std::size_t c) {
    Heading& heading = headings_[c];
    const Cells& cells = layout_.cells[c];
    ColumnPlan plan;
    Column column;
    column.number = static_cast<int>(c) + 1;
    column.header = heading.text;
    plan.name = heading.name.empty() ? heading.text : heading.name;
    plan.of_pump = heading.of_pump;
    plan.meaning = by_cells(heading, cells, plan);
    for (const auto& [number, meaning] : overrules_.columns) {
      if (number != column.number) continue;
      plan.meaning = meaning;
      column.meaning_overruled = true;
      if (meaning == Meaning::Elapsed) {
        plan.written_as_clock = usual_look(cells) == CellLook::Clock;
        plan.clock.past_midnight = plan.written_as_clock;
      }
      if (!heading.unit && !heading.unreadable_unit.empty()) {
        heading.unit = read_log_unit(heading.unreadable_unit);
      }
    }
    for (const std::string& cell : cells) {
      if (const auto order = order_shown(cell)) plan.clock.order = *order;
    }
    if (const auto wanted = dimension(plan.meaning); wanted && !plan.written_as_clock) {
      const UnitText unit = unit_for(c, plan.meaning, *wanted, column);
      plan.unit = unit.unit;
      column.unit = shown_unit(unit);
      if (plan.meaning == Meaning::Pressure) set_zero(heading, unit, plan, column);
    } else if (overruled_unit(c) != nullptr) {
      add("trace.wrong_unit", field_of(column), *overruled_unit(c), "no unit for this column",
          fmt::format("{} has no unit", token(plan.meaning)));
    }
    column.meaning = plan.meaning;
    plan_.columns.push_back(plan);
    plan_.understanding.columns.push_back(column);
  }

  UnitText unit_for(std::size_t c, Meaning meaning, const units::Dimension& wanted,
                    Column& column) {
    const Heading& heading = headings_[c];
    const std::string accepted = accepted_units(meaning);
    if (const std::string* said = overruled_unit(c)) {
      const auto unit = read_log_unit(*said);
      if (unit && unit->unit.dimension == wanted) {
        column.unit_overruled = true;
        return *unit;
      }
      const std::string_view instead = units::unit_trap(*said);
      add(unit ? "trace.wrong_unit" : "trace.unknown_unit", field_of(column), *said,
          instead.empty() ? accepted : std::string(instead),
          unit ? "this unit does not measure what the column holds"
               : "this is no unit that we know");
    } else if (heading.unit && heading.unit->unit.dimension == wanted) {
      return *heading.unit;
    } else if (const auto unit = unit_of_cells(layout_.cells[c]);
               unit && unit->unit.dimension == wanted) {
      return *unit;
    } else if (is_stated(heading.unreadable_unit, heading.text)) {
      const std::string_view instead = units::unit_trap(heading.unreadable_unit);
      add("trace.unknown_unit", field_of(column), heading.unreadable_unit,
          instead.empty() ? accepted : std::string(instead),
          "the head's unit is none that we know; say which it is");
    }
    column.unit_assumed = true;
    return assumed_unit(meaning, layout_.cells[c], is_american(headings_));
  }

  /// Words in round brackets may be a name; in square brackets, or with a stroke, a unit is meant.
  static bool is_stated(const std::string& unit, const std::string& head) {
    return !unit.empty() &&
           (head.find('[') != std::string::npos || !units::unit_trap(unit).empty() ||
            unit.find('/') != std::string::npos);
  }

  void set_zero(const Heading& heading, const UnitText& unit, ColumnPlan& plan, Column& column) {
    std::optional<bool> absolute;
    if (unit.unit.zero != units::Zero::Unsaid) {
      absolute = unit.unit.zero == units::Zero::Absolute;
      column.zero_overruled = column.unit_overruled;
    } else if (heading.absolute) {
      absolute = heading.absolute;
    } else if (overrules_.pressures_absolute) {
      absolute = overrules_.pressures_absolute;
      column.zero_overruled = true;
    }
    column.zero_assumed = !absolute.has_value();
    plan.absolute = absolute.value_or(false);
    column.absolute = plan.absolute;
  }

  void refuse_missing_columns() {
    const int count = static_cast<int>(headings_.size());
    const auto check = [&](int number) {
      if (number >= 1 && number <= count) return;
      add("trace.no_such_column", "", fmt::format("column {}", number),
          fmt::format("a column from 1 to {}", count), "the log has no such column");
    };
    for (const auto& [number, meaning] : overrules_.columns) check(number);
    for (const auto& [number, unit] : overrules_.units) check(number);
  }

  /// One column each for time and remarks, volume and strokes; what is second is not read.
  void elect() {
    int pumped = -1;
    int strokes = -1;
    for (std::size_t c = 0; c < plan_.columns.size(); ++c) {
      int* into = nullptr;
      switch (plan_.columns[c].meaning) {
        case Meaning::Elapsed:
          into = &plan_.elapsed;
          break;
        case Meaning::Clock:
          into = &plan_.clock;
          break;
        case Meaning::DateTime:
          into = &plan_.date_time;
          break;
        case Meaning::Date:
          into = &plan_.date;
          break;
        case Meaning::Remarks:
          into = &plan_.remarks;
          break;
        case Meaning::Pumped:
          into = &pumped;
          break;
        case Meaning::Strokes:
          into = &strokes;
          break;
        default:
          break;
      }
      if (into == nullptr) continue;
      if (*into < 0) {
        *into = static_cast<int>(c);
      } else {
        plan_.columns[c].meaning = Meaning::Ignored;
        plan_.understanding.columns[c].meaning = Meaning::Ignored;
      }
    }
    if (plan_.time() < 0) {
      add("trace.no_time", "", heads(),
          "a head such as time, t_s, Zeit or Uhrzeit, or a column of clocks",
          "no column holds the time; say which with COLUMN=clock or COLUMN=elapsed");
    }
    const bool has_pressure =
        std::any_of(plan_.columns.begin(), plan_.columns.end(),
                    [](const ColumnPlan& column) { return column.meaning == Meaning::Pressure; });
    if (!has_pressure) {
      add("trace.no_pressure", "", heads(), "a head such as p_barg, Gauge (psig) or Druck [bar]",
          "no column holds a pressure; say which with COLUMN=pressure");
    }
  }

  std::string heads() const {
    std::string all;
    for (const Heading& heading : headings_) all += (all.empty() ? "" : "; ") + heading.text;
    return all;
  }

  void understand() {
    Understanding& understanding = plan_.understanding;
    understanding.separator = layout_.separator;
    understanding.decimal = layout_.decimal;
    understanding.decimal_assumed = layout_.decimal_assumed;
    understanding.header_line = static_cast<int>(layout_.header_line);
    say(understanding);
  }

  const Layout& layout_;
  const Overrules& overrules_;
  const std::string& file_;
  std::vector<Heading> headings_;
  Plan plan_;
};

}  // namespace

Plan make_plan(const Layout& layout, const Overrules& overrules, const std::string& file) {
  return Planner(layout, overrules, file).make();
}

}  // namespace steamworthy::trace
