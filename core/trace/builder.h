// TraceBuilder: good rows become columns; time is kept from running back.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "trace/plan.h"
#include "trace/row.h"

namespace steamworthy::trace {

/// What was met besides readings.
struct Counts {
  std::size_t comments = 0;
  std::size_t preamble = 0;
  std::size_t repeated_heads = 0;
  bool was_utf16 = false;
  bool was_windows_1252 = false;
};

class TraceBuilder {
 public:
  TraceBuilder(const Plan& plan, const std::vector<int>& columns);

  std::size_t rows() const { return seconds_.size(); }
  void reserve(std::size_t rows);
  /// Takes the row that was read last. Its line, or the one before, is given to `aside` where the
  /// two cannot both be right.
  void add(const RowReader& row, std::size_t line, const std::function<void(Problem)>& aside);
  /// Puts trace and notes into the reading. The builder is spent.
  void finish(Reading& reading, const Counts& counts);

 private:
  enum class Direction { Unknown, Forward, Backward };

  double placed(const RowTime& time);
  bool is_doubled(const RowReader& row);
  bool last_ran_ahead(double t) const;
  void push(const RowReader& row, double t, std::size_t line);
  void pop();
  void turn_round();
  void add_notes(Reading& reading, const Counts& counts) const;

  const Plan& plan_;
  const std::vector<int>& columns_;
  std::vector<double> seconds_;
  std::vector<Series> series_;
  std::vector<Remark> remarks_;
  std::string last_remark_;

  RowTime first_;
  Direction direction_ = Direction::Unknown;
  long days_passed_ = 0;  ///< midnights that a clock without a date passed
  std::size_t midnights_ = 0;
  std::optional<double> last_clock_;
  std::size_t doubled_ = 0;
  std::size_t same_time_ = 0;
  std::size_t lost_remarks_ = 0;
  std::size_t last_line_ = 0;  ///< of the last row, should its time turn out to run ahead
  std::string last_time_text_;
  std::vector<std::vector<Measured>> group_;  ///< rows of the last time; group_size_ of them count
  std::size_t group_size_ = 0;
};

}  // namespace steamworthy::trace
