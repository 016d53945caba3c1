// TraceReader: a pressure log of any length, fed in chunks of any size.
//
// The first lines tell the layout (find_layout), the heads what each column is
// (make_plan); then each line becomes a row, or is put aside with the reason.
// Memory: 8 bytes a row for the time and 4 a cell of a measured column (series.h).
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

#include "trace/trace.h"

namespace steamworthy::trace {

class TraceReader {
 public:
  /// `file` is only named in problems.
  explicit TraceReader(std::string file, Overrules overrules = {});
  ~TraceReader();
  TraceReader(TraceReader&&) noexcept;
  TraceReader& operator=(TraceReader&&) noexcept;

  /// How many bytes will come, if that is known: saves room that columns would grow into.
  void expect(std::size_t bytes);
  void feed(std::string_view bytes);
  /// The reading; the reader is spent.
  ///
  /// Codes of Reading::problems   trace.no_readings, trace.no_rows and those of make_plan().
  /// Codes of Reading::bad_lines  trace.too_few_cells, trace.too_many_cells, trace.open_quote,
  ///        trace.too_long, trace.not_a_number, trace.not_a_time, trace.time_missing,
  ///        trace.time_runs_back, trace.time_runs_ahead, trace.out_of_range, trace.cell_unit.
  Reading finish();

 private:
  class Body;
  std::unique_ptr<Body> body_;
};

/// A whole log at once.
Reading read_trace(std::string_view text, const std::string& file, const Overrules& overrules = {});

}  // namespace steamworthy::trace
