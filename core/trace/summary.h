// Summary: a log in a few figures.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "trace/trace.h"

namespace steamworthy::trace {

struct Highest {
  int column = 0;
  bool absolute = false;
  double pa = 0.0;
  double at_s = 0.0;  ///< when it was first read
};

struct Summary {
  std::size_t rows = 0;
  double span_s = 0.0;
  double usual_step_s = 0.0;  ///< the median step between rows; 0 for a single row
  std::size_t gaps = 0;
  double longest_gap_s = 0.0;
  std::size_t bad_lines = 0;
  std::vector<Highest> highest;  ///< one a pressure column that has a reading
};

Summary summarise(const Reading& reading);

/// The median of the steps between rows, of at most 100 000 of them evenly over the log; 0 where
/// there are none.
double usual_step(const std::vector<double>& seconds);

/// Steps of more than three times the usual one.
std::vector<Gap> find_gaps(const std::vector<double>& seconds);

/// The first row at which a cumulative column falls; nothing where it never does.
std::optional<std::size_t> first_fall(const Series& series);

}  // namespace steamworthy::trace
