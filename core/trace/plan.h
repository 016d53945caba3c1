// Plan: what each column of a log is and how its cells become SI.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trace/clock.h"
#include "trace/heading.h"
#include "trace/layout.h"
#include "trace/trace.h"

namespace steamworthy::trace {

struct ColumnPlan {
  Meaning meaning = Meaning::Unknown;
  std::string name;
  units::Unit unit;  ///< si = number * factor + offset
  bool absolute = false;
  bool of_pump = false;
  bool written_as_clock = false;  ///< an elapsed time like "1:05:00"
  ClockStyle clock;
};

struct Plan {
  std::vector<ColumnPlan> columns;
  // Indices from 0, or -1.
  int elapsed = -1;
  int clock = -1;
  int date_time = -1;
  int date = -1;
  int remarks = -1;
  Understanding understanding;
  std::vector<Problem> problems;

  /// The column that places a row in time: elapsed, else date and time, else the clock.
  int time() const { return elapsed >= 0 ? elapsed : date_time >= 0 ? date_time : clock; }
};

/// Codes  trace.no_such_column, trace.unknown_unit, trace.wrong_unit, trace.no_time,
///        trace.no_pressure.
Plan make_plan(const Layout& layout, const Overrules& overrules, const std::string& file);

}  // namespace steamworthy::trace
