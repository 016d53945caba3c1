#include "hold/hold_rows.h"

#include <algorithm>
#include <cmath>

#include "numerics/statistics.h"

namespace steamworthy::hold {

namespace {

constexpr int most_averages = 120;
constexpr double settle_s = 60.0;         // left out at the start
constexpr double settle_fraction = 0.05;  // of a short hold
constexpr double sudden_fraction = 0.1;

struct Range {
  std::size_t begin = 0;
  std::size_t end = 0;
};

bool changed_between(const std::vector<double>& changes, double from_s, double to_s) {
  return std::any_of(changes.begin(), changes.end(),
                     [&](double at) { return at > from_s && at <= to_s; });
}

Range rows_of_hold(const HoldInput& input, const CleanRecord& r, const HoldBounds& bounds,
                   HoldRows& rows) {
  const double last = bounds.end_s.value_or(r.seconds.back());
  const double settle = std::min(settle_s, settle_fraction * std::max(last - bounds.start_s, 0.0));
  Range range;
  while (range.begin < r.size() && r.seconds[range.begin] < bounds.start_s + settle) ++range.begin;
  range.end = range.begin;
  while (range.end < r.size() && r.seconds[range.end] <= last + 1e-6) ++range.end;
  if (range.end - range.begin < 2) return range;

  const double barometer_pa = input.barometer.si();
  const double start_gauge = r.pressure_pa[range.begin] - barometer_pa;
  std::vector<double> falls;
  for (std::size_t i = range.begin + 1; i < range.end; ++i) {
    falls.push_back(std::fabs(r.pressure_pa[i] - r.pressure_pa[i - 1]));
  }
  const double usual = numerics::median(falls);
  for (std::size_t i = range.begin + 1; i < range.end; ++i) {
    const double fall = r.pressure_pa[i - 1] - r.pressure_pa[i];
    const bool sudden = fall > std::max(sudden_fraction * start_gauge, 20.0 * usual) &&
                        !changed_between(input.gauge.changed_at_s, r.seconds[i - 1], r.seconds[i]);
    if (sudden && !bounds.end_s) {
      rows.fell_suddenly = true;
      rows.fell_at_s = r.seconds[i];
      range.end = i;
    } else if (r.pressure_pa[i] - barometer_pa < 0.02 * start_gauge) {
      rows.pressure_gone = true;
      rows.fell_at_s = r.seconds[i];
      rows.used_share = (r.seconds[i] - bounds.start_s) / std::max(last - bounds.start_s, 1.0);
      range.end = i;
    }
  }
  return range;
}

}  // namespace

std::optional<HoldRows> hold_rows(const HoldInput& input, const CleanRecord& record,
                                  const Lump& lump, const HoldBounds& bounds, double scale,
                                  double air_m3) {
  HoldRows rows;
  const Range range = rows_of_hold(input, record, bounds, rows);
  if (range.end < range.begin + 2) return std::nullopt;

  const double first_s = record.seconds[range.begin];
  const double last_s = record.seconds[range.end - 1];
  std::vector<double> changes;
  for (const double at : input.gauge.changed_at_s) {
    if (at > first_s && at <= last_s) changes.push_back(at);
  }
  std::sort(changes.begin(), changes.end());
  changes.erase(std::unique(changes.begin(), changes.end()), changes.end());
  const std::size_t count = range.end - range.begin;
  const double width = count <= most_averages ? 0.0 : (last_s - first_s + 1e-9) / most_averages;

  // sums of one average: seconds, pressure, water, metal, pumped
  struct Sums {
    double s = 0, p = 0, w = 0, m = 0, v = 0;
    int n = 0;
    long span = -1;
    std::size_t gauge = 0;
  };
  std::vector<Sums> averages;
  for (std::size_t i = range.begin; i < range.end; ++i) {
    const double at = record.seconds[i];
    const long span =
        width == 0.0 ? static_cast<long>(i) : static_cast<long>((at - first_s) / width);
    const auto gauge = static_cast<std::size_t>(
        std::upper_bound(changes.begin(), changes.end(), at) - changes.begin());
    if (averages.empty() || averages.back().span != span || averages.back().gauge != gauge) {
      averages.push_back({});
      averages.back().span = span;
      averages.back().gauge = gauge;
    }
    Sums& sums = averages.back();
    sums.s += at - first_s;
    sums.p += record.pressure_pa[i];
    sums.w += record.water_k[i];
    sums.m += record.metal_k[i];
    if (!record.pumped_m3.empty()) sums.v += record.pumped_m3[i];
    ++sums.n;
  }
  const auto n = static_cast<Eigen::Index>(averages.size());
  if (n < 2) return std::nullopt;
  for (auto* v : {&rows.pressure_pa, &rows.water_k, &rows.metal_k, &rows.readings, &rows.steel_k,
                  &rows.missing_ml, &rows.apart_k, &rows.driving}) {
    v->resize(n);
  }
  Eigen::VectorXd pumped(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const Sums& a = averages[static_cast<std::size_t>(i)];
    rows.seconds.push_back(a.s / a.n);
    rows.pressure_pa(i) = a.p / a.n;
    rows.water_k(i) = a.w / a.n;
    rows.metal_k(i) = a.m / a.n;
    pumped(i) = a.v / a.n;
    rows.readings(i) = a.n;
  }
  const double origin = rows.seconds.front();
  for (double& s : rows.seconds) s -= origin;
  rows.start_s = first_s;
  rows.end_s = last_s;
  rows.reading_count = static_cast<int>(count);
  std::size_t first = range.begin;
  while (first > 0 && record.seconds[first - 1] >= bounds.start_s) --first;
  rows.whole_fall_pa = record.pressure_pa[first] - record.pressure_pa[range.end - 1];
  rows.whole_s = last_s - record.seconds[first];
  rows.steel_k = rows.water_k + 0.3 * (rows.metal_k - rows.water_k);
  rows.apart_k = (rows.metal_k - rows.water_k).array() - (rows.metal_k(0) - rows.water_k(0));

  const double mean_pa = rows.pressure_pa.mean();
  const WaterAt mean = water_at(mean_pa, rows.water_k.mean());
  const double supply = water_at(lump.barometer_pa, rows.water_k.mean()).density;
  const double air = std::max(air_m3, 0.0);
  const double barometer_pa = lump.barometer_pa;
  const double start_kg = lump.mass_kg(rows.pressure_pa(0), rows.water_k(0), rows.steel_k(0));
  const double start_gauge = std::max(rows.pressure_pa(0) - barometer_pa, 1.0);
  const bool falling = rows.pressure_pa(n - 1) < rows.pressure_pa(0);
  for (Eigen::Index i = 0; i < n; ++i) {
    const double gone_kg =
        start_kg - lump.mass_kg(rows.pressure_pa(i), rows.water_k(i), rows.steel_k(i));
    const double air_growth =
        air * barometer_pa * (1.0 / rows.pressure_pa(i) - 1.0 / rows.pressure_pa(0));
    const double added = (pumped(i) - pumped(0)) * supply / mean.density;
    rows.missing_ml(i) = (scale * gone_kg / mean.density + air_growth + added) * 1e6;
    rows.driving(i) =
        falling ? std::sqrt(std::max(rows.pressure_pa(i) - barometer_pa, 0.0) / start_gauge) : 1.0;
  }
  const double k = scale * lump.volume_m3 * (mean.compressibility + lump.growth_per_pa) +
                   air * barometer_pa / (mean_pa * mean_pa);
  rows.k_ml_per_pa = k * 1e6;
  rows.theta_ml_per_k = scale * lump.volume_m3 * mean.expansivity * 1e6;
  rows.steel_ml_per_k = scale * lump.volume_m3 * 3.0 * lump.steel_per_k * 1e6;
  for (const double at : changes) {
    Eigen::VectorXd step(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      step(i) = rows.seconds[static_cast<std::size_t>(i)] + origin + first_s >= at ? 1.0 : 0.0;
    }
    if (step.minCoeff() < step.maxCoeff()) rows.gauge_steps.push_back(step);
  }
  return rows;
}

}  // namespace steamworthy::hold
