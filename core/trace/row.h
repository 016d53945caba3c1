// Row: one line of a log by the plan: its time and its measured cells, or what is wrong with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trace/cells.h"
#include "trace/layout.h"
#include "trace/plan.h"

namespace steamworthy::trace {

/// A cell of a measured column.
struct Measured {
  Written number;  ///< in the column's unit, unless is_si
  bool has = false;
  bool is_si = false;  ///< the cell has a unit of its own: number.value is in SI
  friend bool operator==(const Measured& a, const Measured& b) {
    return a.has == b.has && (!a.has || a.number.value == b.number.value);
  }
};

struct RowTime {
  double seconds = 0.0;  ///< elapsed, or after midnight, less the offset from universal time
  std::optional<long> day;
  std::optional<double> elapsed_s;  ///< as the log says it
  std::optional<double> clock_s;
};

class RowReader {
 public:
  RowReader(const Plan& plan, const Layout& layout, const std::string& file);

  /// Reads a line. False where it is bad; problem() then says why.
  bool read(std::string_view line, std::size_t number);

  const RowTime& time() const { return time_; }
  /// One for each index of measured_columns().
  const std::vector<Measured>& measured() const { return measured_; }
  const std::vector<int>& measured_columns() const { return columns_; }
  std::string_view remark() const { return remark_; }
  const Problem& problem() const { return problem_; }
  /// The cell that tells the time, as written; valid until the next read().
  std::string_view time_text() const;
  /// A problem of the time of a line.
  Problem time_problem(std::string code, std::size_t line, std::string_view found,
                       std::string accepted, std::string message) const;
  std::size_t cells_without_unit() const { return cells_without_unit_; }

 private:
  bool refuse(std::string code, int column, std::string_view found, std::string accepted,
              std::string message);
  bool count_fits(std::string_view line);
  bool read_time();
  bool read_timed_cell(int column, std::optional<TimeCell>& into);
  bool read_elapsed(int column, double& into);
  bool read_measured(std::size_t i);
  bool in_range(int column, double si);
  NumberCell number_of(std::string_view cell);
  std::string number_example() const;

  const Plan& plan_;
  const std::string& file_;
  char separator_;
  char decimal_;
  bool decimal_open_;
  CellSplitter splitter_;
  std::vector<int> columns_;
  std::vector<Measured> measured_;
  RowTime time_;
  std::string_view remark_;
  Problem problem_;
  std::size_t line_ = 0;
  std::size_t cells_without_unit_ = 0;
  std::string last_unit_text_;
  std::optional<UnitText> last_unit_;
};

}  // namespace steamworthy::trace
