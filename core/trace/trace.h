// Trace: a pressure log as read, and what was understood of it.
//
// A logger's file or a sheet copied from paper becomes columns of numbers beside
// one column of seconds. Nothing is guessed: a cell that cannot be read puts its
// line aside with the reason; what the heads do not say (a unit, gauge or
// absolute) is assumed, marked as assumed, and can be overruled. The layouts that
// are read stand in docs/formats/trace.md. Start reading at TraceReader (reader.h)
// or read_trace().
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/error.h"
#include "trace/meaning.h"
#include "trace/series.h"
#include "working/message.h"

namespace steamworthy::trace {

/// One column of numbers, with a cell for each of Trace::seconds.
struct Channel {
  int column = 0;      ///< counted from 1, as in the file
  std::string name;    ///< its head without the unit
  std::string header;  ///< its head as written
  Meaning meaning = Meaning::Unknown;
  bool absolute = false;      ///< of a pressure: above vacuum, not above the atmosphere
  bool zero_assumed = false;  ///< of a pressure: nobody said gauge or absolute
  bool unit_assumed = false;  ///< nobody wrote a unit
  /// pascal (gauge or absolute as above), kelvin, cubic metre; strokes are plain numbers.
  Series values;
};

/// Whether a test file means this column: by its number, its head as written or the head's name.
bool is_called(const Channel& channel, const std::string& name);

struct Remark {
  std::size_t row = 0;
  std::string text;
};

/// A stretch of the log without rows: the step is over three times the usual one.
struct Gap {
  std::size_t row = 0;  ///< the first row after it
  double seconds = 0.0;
};

struct Trace {
  /// Since the first row that was kept; never falls. Equal times are kept in the file's order.
  std::vector<double> seconds;

  std::vector<Channel> pressures;  ///< in the file's order; the first is the main gauge
  std::vector<Channel> water;
  std::vector<Channel> metal;
  std::vector<Channel> ambient;
  std::vector<Channel> supply;
  std::vector<Channel> other_temperatures;  ///< of which the head does not say what of
  std::optional<Channel> pumped;            ///< m3, cumulative as logged
  std::optional<Channel> strokes;           ///< cumulative as logged; the test file has the stroke
  std::vector<Remark> remarks;  ///< each where it changes; rows without one are left out
  std::vector<Gap> gaps;

  /// What the first row said of time, to place a "hold began" on Trace::seconds (moment.h).
  std::optional<double> first_elapsed_s;  ///< of an elapsed time
  std::optional<double> first_clock_s;    ///< of a clock: seconds after midnight
  std::optional<long> first_day;          ///< of a date: days after 1970-01-01

  std::size_t rows() const { return seconds.size(); }
};

/// What was understood of one column.
struct Column {
  int number = 0;      ///< counted from 1
  std::string header;  ///< as written
  Meaning meaning = Meaning::Unknown;
  std::string unit;              ///< as it is understood: "bar", "°C"; empty where there is none
  std::optional<bool> absolute;  ///< of a pressure
  bool meaning_overruled = false;
  bool unit_overruled = false;
  bool unit_assumed = false;
  bool zero_assumed = false;
  bool zero_overruled = false;
  working::Message sentence;  ///< "column 3 is water temperature in °F"
};

struct Understanding {
  char separator = ',';  ///< ' ' stands for any run of blanks
  char decimal = '.';
  bool decimal_assumed = false;  ///< "6,500" may have been either
  int header_line = 0;           ///< 0: the file has no heads
  std::vector<Column> columns;
  /// Separator and decimal mark, then the columns, for people.
  std::vector<working::Message> sentences;
};

/// What a user says against, or beside, what the file says.
struct Overrules {
  std::vector<std::pair<int, Meaning>> columns;    ///< by column number
  std::vector<std::pair<int, std::string>> units;  ///< by column number; "psi", "bar abs", "min"
  std::optional<bool> pressures_absolute;  ///< of pressure columns that do not say it themselves
  std::optional<char> separator;
  std::optional<char> decimal;
};

struct Reading {
  Trace trace;
  Understanding understanding;
  /// Why nothing could be read: no line of numbers, no time, no pressure, a unit nobody knows, an
  /// overrule for a column that is not there. The trace is then empty.
  std::vector<Problem> problems;
  /// Lines that were put aside, the first thousand of them; field names the column.
  std::vector<Problem> bad_lines;
  std::size_t bad_line_count = 0;
  /// What else the reader should know: duplicates, midnight, gaps, comment lines.
  std::vector<working::Message> notes;

  bool is_usable() const { return problems.empty() && !trace.seconds.empty(); }
};

}  // namespace steamworthy::trace
