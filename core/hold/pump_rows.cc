#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "hold/pump_fit.h"

namespace steamworthy::hold {

namespace {

constexpr double water_weight_pa_per_m = 997.0 * 9.80665;

// A straight line, or with eight rows and more a parabola, through a thermometer's
// readings: a step of the thermometer must not pass for a step of the water.
void smooth(const std::vector<double>& seconds, std::vector<double>& values) {
  const auto n = static_cast<Eigen::Index>(values.size());
  if (n < 4) return;
  const Eigen::Index terms = n < 8 ? 2 : 3;
  const double span = std::max(seconds.back() - seconds.front(), 1.0);
  Eigen::MatrixXd x(n, terms);
  Eigen::VectorXd y(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const double u = (seconds[static_cast<std::size_t>(i)] - seconds.front()) / span;
    x(i, 0) = 1.0;
    x(i, 1) = u;
    if (terms == 3) x(i, 2) = u * u;
    y(i) = values[static_cast<std::size_t>(i)] - values.front();
  }
  const Eigen::VectorXd fitted = x * x.householderQr().solve(y);
  const double first = values.front();
  for (Eigen::Index i = 0; i < n; ++i) values[static_cast<std::size_t>(i)] = first + fitted(i);
}

// Where the last raising begins: after the last fall to less than half, which no leak between two
// stages makes.
std::size_t last_raising(const CleanRecord& r, std::size_t end, double barometer_pa) {
  std::size_t begin = 0;
  double highest = r.pressure_pa.front();
  double lowest_since = highest;
  std::size_t at_lowest = 0;
  for (std::size_t i = 0; i < end; ++i) {
    const double p = r.pressure_pa[i];
    if (p > highest) {
      highest = p;
      lowest_since = p;
      at_lowest = i;
    }
    if (p <= lowest_since) {
      lowest_since = p;
      at_lowest = i;
    }
    if (highest - lowest_since > 0.5 * (highest - barometer_pa) + 1e5 && at_lowest > begin) {
      begin = at_lowest;
      if (i == at_lowest) highest = lowest_since = p;
    }
  }
  return begin;
}

}  // namespace

std::optional<PumpRows> pump_rows(const HoldInput& input, const CleanRecord& record,
                                  const InstrumentsUsed& used, double hold_start_s,
                                  std::size_t most_rows) {
  if (record.pumped_m3.empty()) return std::nullopt;
  std::size_t end = 0;
  while (end < record.size() && record.seconds[end] <= hold_start_s) ++end;
  end = std::min(end + 1, record.size());
  if (end < 4) return std::nullopt;

  const double barometer_pa = input.barometer.si();
  std::size_t begin = last_raising(record, end, barometer_pa);
  PumpRows rows;
  rows.let_down_before = begin > 0;
  const double before = record.pumped_m3[begin];
  while (begin + 1 < end && record.pumped_m3[begin + 1] <= before) ++begin;
  if (end - begin < 4) return std::nullopt;

  const double head_pa = std::max(0.0, -input.pocket_below_gauge.si()) * water_weight_pa_per_m;
  const double vented_pa = barometer_pa + head_pa;
  // A running total that is not zero in the very first row, and rises at once: somebody
  // pumped before the log began, however little the gauge shows of it.
  const bool pumped_before = begin == 0 && before > 0.0;
  rows.from_vented =
      !pumped_before && std::fabs(record.pressure_pa[begin] - vented_pa) <=
                            std::max({0.1e5, 1.01 * used.gauge_step_pa, 4.0 * used.gauge_noise_pa});
  const std::size_t count = end - begin;
  const std::size_t kept = std::min(count, most_rows);
  for (std::size_t k = 0; k < kept; ++k) {
    const std::size_t i = begin + (kept == count ? k : k * (count - 1) / (kept - 1));
    const double metal_less_water =
        record.metal_k[i] - record.water_k[i] - (record.metal_k[begin] - record.water_k[begin]);
    rows.seconds.push_back(record.seconds[i]);
    rows.pressure_pa.push_back(std::max(record.pressure_pa[i], 0.9 * barometer_pa));
    rows.water_k.push_back(record.water_k[i] + used.metal_weight * metal_less_water);
    rows.pumped_m3.push_back(record.pumped_m3[i] - before);
  }
  if (rows.from_vented) rows.pressure_pa.front() = vented_pa;
  smooth(rows.seconds, rows.water_k);
  for (double& t : rows.water_k) t = std::clamp(t, 273.16, 368.15);
  rows.changed_at_s = input.gauge.changed_at_s;
  const auto [low, high] = std::minmax_element(rows.pressure_pa.begin(), rows.pressure_pa.end());
  if (*high - *low < std::max(0.5e5, 3.0 * used.gauge_step_pa)) return std::nullopt;
  return rows;
}

PumpRows first_rows(const PumpRows& rows, std::size_t last) {
  PumpRows part = rows;
  for (auto* column : {&part.seconds, &part.pressure_pa, &part.water_k, &part.pumped_m3}) {
    column->resize(std::min(column->size(), last + 1));
  }
  return part;
}

}  // namespace steamworthy::hold
