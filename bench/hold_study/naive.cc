#include "hold_study/naive.h"

#include <algorithm>
#include <cmath>

#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

constexpr double skipped_s = 60.0;  ///< of the hold, as the recommended method does
constexpr double ninety_percent = 1.6449;

struct Columns {
  std::vector<double> minutes;
  std::vector<double> pressure_pa;
  std::vector<double> water_k;
};

Columns hold_rows(const Case& made) {
  Columns rows;
  for (std::size_t i = 0; i < made.log.seconds.size(); ++i) {
    const double into = made.log.seconds[i] - made.course.hold_start_s;
    if (into < std::min(skipped_s, 0.05 * made.hold_s())) continue;
    rows.minutes.push_back(into / 60.0);
    rows.pressure_pa.push_back(made.log.pressure_pa_gauge[i] + atmosphere_pa);
    rows.water_k.push_back(made.log.water_k[i]);
  }
  return rows;
}

double mean(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

Answer judged(const std::optional<Line>& line) {
  Answer answer;
  if (!line) return answer;
  const double half = ninety_percent * line->slope_error;
  answer.net_loss = Interval{line->slope, line->slope - half, line->slope + half};
  const double concern = leak_of_concern_ml_per_min;
  if (answer.net_loss->low > concern / 10.0) {
    answer.says = Says::Losing;
  } else if (answer.net_loss->high < -concern / 10.0) {
    answer.says = Says::Gaining;
  } else if (answer.net_loss->high < concern) {
    answer.says = Says::NoLoss;
  }
  return answer;
}

Answer slope(const Case& made, bool corrected) {
  const Columns rows = hold_rows(made);
  if (rows.minutes.size() < 3) return {};
  const Belief& belief = made.belief;
  const double p = mean(rows.pressure_pa);
  const double t = mean(rows.water_k);
  const double per_pa = belief.volume_m3 * (compressibility(p, t) + belief.growth_per_pa);
  const double per_k =
      belief.volume_m3 * (expansivity(p, t) - 3.0 * made.test.plant.steel.expansion_per_k);
  std::vector<double> lost_ml;
  for (std::size_t i = 0; i < rows.minutes.size(); ++i) {
    double lost = per_pa * (rows.pressure_pa[0] - rows.pressure_pa[i]);
    if (corrected) lost += per_k * (rows.water_k[i] - rows.water_k[0]);
    lost_ml.push_back(lost * 1e6);
  }
  return judged(straight_line(rows.minutes, lost_ml));
}

}  // namespace

std::optional<Line> straight_line(const std::vector<double>& x, const std::vector<double>& y) {
  const auto n = static_cast<double>(x.size());
  if (x.size() < 3) return std::nullopt;
  const double x_mean = mean(x);
  const double y_mean = mean(y);
  double xx = 0.0;
  double xy = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xx += (x[i] - x_mean) * (x[i] - x_mean);
    xy += (x[i] - x_mean) * (y[i] - y_mean);
  }
  if (xx <= 0.0) return std::nullopt;
  Line line;
  line.slope = xy / xx;
  line.at_zero = y_mean - line.slope * x_mean;
  double squares = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double rest = y[i] - line.at_zero - line.slope * x[i];
    squares += rest * rest;
  }
  line.slope_error = std::sqrt(squares / (n - 2.0) / xx);
  return line;
}

Answer raw_slope(const Case& made) { return slope(made, false); }

Answer corrected_slope(const Case& made) { return slope(made, true); }

std::optional<double> intercept_air(const Case& made) {
  std::vector<double> gauge;
  std::vector<double> litres;
  double highest = 0.0;
  for (std::size_t i = 0; i < made.log.seconds.size(); ++i) {
    if (made.log.seconds[i] > made.course.hold_start_s + made.instruments.every_s) break;
    highest = std::max(highest, made.log.pressure_pa_gauge[i]);
  }
  for (std::size_t i = 0; i < made.log.seconds.size(); ++i) {
    if (made.log.seconds[i] > made.course.hold_start_s + made.instruments.every_s) break;
    if (made.log.pressure_pa_gauge[i] <= 0.5 * highest) continue;
    gauge.push_back(made.log.pressure_pa_gauge[i]);
    litres.push_back(made.log.pumped_m3[i] * 1e3);
  }
  const std::optional<Line> line = straight_line(gauge, litres);
  if (!line) return std::nullopt;
  return line->at_zero;
}

}  // namespace steamworthy::hold_study
