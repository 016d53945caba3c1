// Clock: times as loggers and people write them.
#pragma once

#include <optional>
#include <string_view>

namespace steamworthy::trace {

/// Which of day and month stands first where both are numbers with strokes between.
enum class DateOrder { DayFirst, MonthFirst };

/// How a time column writes clocks.
struct ClockStyle {
  bool dotted = false;         ///< "07.05" is a clock, no number: only where the head says so
  bool bare = false;           ///< "0705" is a clock: only where the whole column is so
  bool minutes_first = false;  ///< "05:30" is five minutes and a half
  bool past_midnight = false;  ///< hours may pass 24: an elapsed time
  DateOrder order = DateOrder::DayFirst;
};

/// What one cell says of time.
struct TimeCell {
  double clock_s = 0.0;     ///< seconds after midnight, or elapsed
  std::optional<long> day;  ///< days after 1970-01-01
  double offset_s = 0.0;    ///< of "Z" or "+01:00": local minus universal
  bool has_offset = false;
};

/// "07:05", "7:05:30", "07:05:30,25", "7:05 pm", "07:05 Uhr", "07h05".
std::optional<TimeCell> read_clock(std::string_view cell, const ClockStyle& style);

/// "2026-11-25", "25.11.2026", "25.11.26", "11/25/2026" as days after 1970-01-01.
std::optional<long> read_date(std::string_view cell, DateOrder order);

/// A date, a "T", blank or comma, and a clock with an optional "Z" or "+01:00".
std::optional<TimeCell> read_date_time(std::string_view cell, const ClockStyle& style);

/// Days after 1970-01-01 of a date; nothing where it is none.
std::optional<long> days_from(int year, int month, int day);

/// For a date with strokes, whether its first number can only be a day, or its second.
std::optional<DateOrder> order_shown(std::string_view cell);

}  // namespace steamworthy::trace
