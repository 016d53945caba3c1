// Moment: a point of time as people tell it, and where it falls on a trace.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "trace/trace.h"

namespace steamworthy::trace {

/// "07:25", "2026-11-25 07:25", or so many seconds after the log's zero.
struct Moment {
  std::optional<double> elapsed_s;  ///< after the zero of the log's elapsed time, or of clock_zero
  std::optional<double> clock_s;    ///< after midnight
  std::optional<long> day;          ///< days after 1970-01-01; only with clock_s

  friend bool operator==(const Moment&, const Moment&) = default;
};

/// Reads "07:25", "07:25:30", "2026-11-25 07:25", "25.11.2026 07:25", "2026-11-25T07:25:30".
/// Nothing where it is none.
std::optional<Moment> read_moment(std::string_view text);

/// Where a moment falls on Trace::seconds; nothing where the trace cannot tell (a clock told of a
/// log of elapsed time, without clock_zero). A clock without a day is the
/// first such time after the first row, or, where the trace ends before it, the nearest one.
///
/// clock_zero  seconds after midnight at the zero of elapsed times, if known.
std::optional<double> seconds_at(const Trace& trace, const Moment& moment,
                                 std::optional<double> clock_zero);

}  // namespace steamworthy::trace
