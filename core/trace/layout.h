// Layout: how a log's lines are parted: separator, decimal mark, heads, first line of readings.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "trace/clock.h"
#include "trace/trace.h"

namespace steamworthy::trace {

/// A line kept until the layout is known.
struct SampleLine {
  std::string text;
  std::size_t number = 0;
};

/// What a single cell of the sample looks like.
enum class CellLook { Empty, Number, NumberWithUnit, Clock, DateTime, Date, Text };
CellLook look_of(std::string_view cell);

struct Layout {
  bool is_found = false;  ///< a line of readings was seen
  char separator = ',';
  char decimal = '.';
  bool decimal_assumed = false;
  bool decimal_open = false;    ///< no cell of the sample has decimals: the first that has decides
  std::size_t header_line = 0;  ///< 0: none
  std::size_t first_reading = 0;       ///< line number of the first line of readings
  std::vector<std::string> heads;      ///< one a column; empty where a column has none
  std::vector<std::string> units_row;  ///< a row of units under the heads; empty if there is none
  std::string header_text;             ///< the whole line, to know it again
  /// Cells of the sample's lines of readings, column by column.
  std::vector<std::vector<std::string>> cells;
  std::size_t preamble = 0;  ///< lines before the heads that are neither comment nor empty
};

/// Finds the layout in the first lines of a log. What is overruled is taken as said.
Layout find_layout(const std::vector<SampleLine>& lines, const Overrules& overrules);

}  // namespace steamworthy::trace
