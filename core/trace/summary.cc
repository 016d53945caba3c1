#include "trace/summary.h"

#include <algorithm>

namespace steamworthy::trace {

double usual_step(const std::vector<double>& seconds) {
  if (seconds.size() < 2) return 0.0;
  constexpr std::size_t most = 100'000;
  const std::size_t stride = std::max<std::size_t>(1, (seconds.size() - 1) / most);
  std::vector<double> steps;
  for (std::size_t i = 1; i < seconds.size(); i += stride) {
    steps.push_back(seconds[i] - seconds[i - 1]);
  }
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

std::vector<Gap> find_gaps(const std::vector<double>& seconds) {
  constexpr double far = 3.0;
  constexpr std::size_t most = 100'000;
  std::vector<Gap> gaps;
  const double usual = usual_step(seconds);
  if (usual <= 0.0) return gaps;
  for (std::size_t i = 1; i < seconds.size() && gaps.size() < most; ++i) {
    const double step = seconds[i] - seconds[i - 1];
    if (step > far * usual) gaps.push_back({i, step});
  }
  return gaps;
}

std::optional<std::size_t> first_fall(const Series& series) {
  std::optional<double> last;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (!series.has(i)) continue;
    const double now = series.number(i);
    if (last && now < *last) return i;
    last = now;
  }
  return std::nullopt;
}

Summary summarise(const Reading& reading) {
  const Trace& trace = reading.trace;
  Summary summary;
  summary.rows = trace.rows();
  summary.bad_lines = reading.bad_line_count;
  if (trace.rows() == 0) return summary;
  summary.span_s = trace.seconds.back();
  summary.usual_step_s = usual_step(trace.seconds);
  summary.gaps = trace.gaps.size();
  for (const Gap& gap : trace.gaps) {
    summary.longest_gap_s = std::max(summary.longest_gap_s, gap.seconds);
  }
  for (const Channel& gauge : trace.pressures) {
    std::optional<Highest> highest;
    for (std::size_t i = 0; i < gauge.values.size(); ++i) {
      if (!gauge.values.has(i)) continue;
      const double pa = gauge.values.si(i);
      if (!highest || pa > highest->pa) {
        highest = Highest{gauge.column, gauge.absolute, pa, trace.seconds[i]};
      }
    }
    if (highest) summary.highest.push_back(*highest);
  }
  return summary;
}

}  // namespace steamworthy::trace
