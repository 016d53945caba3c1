// Cells: one line of a log parted into cells, and what a single cell says.
#pragma once

#include <cstddef>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "trace/series.h"

namespace steamworthy::trace {

/// Blanks of every kind taken off both ends: ' ', tab, no-break and thin spaces.
std::string_view trimmed(std::string_view text);

class CellSplitter {
 public:
  /// Parts a line. ' ' stands for any run of blanks and tabs. A cell may stand in double quotes,
  /// doubled within. Cells come trimmed and without their quotes; they are valid until the next
  /// call. False where a quote is not closed.
  bool split(std::string_view line, char separator);
  const std::vector<std::string_view>& cells() const { return cells_; }
  /// Whether the cell stood in quotes.
  bool was_quoted(std::size_t i) const { return quoted_[i]; }
  /// Cells from `first` to the last as they stand in the line, for remarks that hold separators.
  std::string_view rest_from(std::size_t first, std::string_view line) const;

 private:
  void add(std::string_view cell, std::size_t begin, bool quoted);
  /// Takes a quoted cell that begins at `begin`; gives where its closing quote stands, or npos.
  std::size_t take_quoted(std::string_view line, std::size_t begin);
  std::vector<std::string_view> cells_;
  std::vector<std::size_t> begins_;
  std::vector<bool> quoted_;
  std::deque<std::string> unquoted_;  ///< cells with doubled quotes
};

/// "", "-", "--", "NaN", "n/a", "null", "k.A.": the cell holds no reading.
bool is_missing(std::string_view cell);

/// A line that is a comment: it begins with #, %, // or *.
bool is_comment(std::string_view line);

/// A number at the start of a cell.
struct NumberCell {
  Written number;
  std::size_t used = 0;  ///< characters of it; 0 where no number stands there
};

/// Reads "15.84", "-0,010", "+3", "1.5e3", "1 234,5" and, with the other mark parting groups of
/// three and a decimal mark behind them, "1.234,5". A number with the other mark as its decimal
/// mark is none: used is 0. Unicode minus signs count as minus.
NumberCell read_number(std::string_view cell, char decimal);

}  // namespace steamworthy::trace
