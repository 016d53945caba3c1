#include "hold/clean_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/error.h"
#include "numerics/statistics.h"
#include "water/water.h"

namespace steamworthy::hold {

namespace {

constexpr double coldest_k = 273.16;
constexpr double warmest_k = 368.15;
constexpr double highest_pa = 400e5;
constexpr double stand_in_k = 293.15;

void check_column(const std::vector<double>& values, std::size_t rows, const char* name) {
  if (!values.empty() && values.size() != rows) {
    throw OutOfRange("hold.record", fmt::format("the column {} has {} values and the time {}", name,
                                                values.size(), rows));
  }
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!std::isfinite(values[i])) {
      throw OutOfRange("hold.record",
                       fmt::format("the column {} has no number in row {}", name, i + 1));
    }
  }
}

bool in_range(double pressure_pa, double water_k, double metal_k) {
  return water_k >= coldest_k && water_k <= warmest_k && metal_k > 223.15 && metal_k < 523.15 &&
         pressure_pa <= highest_pa &&
         pressure_pa >
             water::saturation_pressure(units::Temperature::from_si(water_k)).si() + 1000.0;
}

double column(const std::vector<double>& values, std::size_t row, double otherwise) {
  return values.empty() ? otherwise : values[row];
}

// Rows of one second become their mean, so that their order cannot matter.
void join_equal_seconds(CleanRecord& r) {
  std::size_t out = 0;
  for (std::size_t begin = 0; begin < r.size();) {
    std::size_t end = begin + 1;
    while (end < r.size() && r.seconds[end] == r.seconds[begin]) ++end;
    for (auto* values : {&r.pressure_pa, &r.water_k, &r.metal_k, &r.pumped_m3}) {
      if (values->empty()) continue;
      const auto from = values->begin() + static_cast<std::ptrdiff_t>(begin);
      const auto to = values->begin() + static_cast<std::ptrdiff_t>(end);
      std::sort(from, to);
      const double sum = std::accumulate(from, to, 0.0);
      (*values)[out] = end - begin == 1 ? (*values)[begin] : sum / double(end - begin);
    }
    r.seconds[out++] = r.seconds[begin];
    begin = end;
  }
  r.seconds.resize(out);
  for (auto* values : {&r.pressure_pa, &r.water_k, &r.metal_k, &r.pumped_m3}) {
    if (!values->empty()) values->resize(out);
  }
}

}  // namespace

CleanRecord clean(const Record& record) {
  const std::size_t rows = record.seconds.size();
  check_column(record.seconds, rows, "seconds");
  check_column(record.pressure_pa_abs, rows, "pressure");
  if (rows > 0 && record.pressure_pa_abs.empty()) {
    throw OutOfRange("hold.record", "the record has no pressures");
  }
  check_column(record.water_temperature_k, rows, "water temperature");
  check_column(record.metal_temperature_k, rows, "metal temperature");
  check_column(record.pumped_m3, rows, "pumped");

  CleanRecord clean;
  clean.metal_measured = !record.metal_temperature_k.empty();
  clean.water = !record.water_temperature_k.empty() ? CleanRecord::Source::Measured
                : clean.metal_measured              ? CleanRecord::Source::Metal
                                                    : CleanRecord::Source::Constant;
  std::vector<std::size_t> order(rows);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return record.seconds[a] < record.seconds[b];
  });
  for (const std::size_t i : order) {
    const double metal_or = column(record.metal_temperature_k, i, stand_in_k);
    const double water_k = column(record.water_temperature_k, i, metal_or);
    const double metal_k = column(record.metal_temperature_k, i, water_k);
    if (!in_range(record.pressure_pa_abs[i], water_k, metal_k)) {
      ++clean.out_of_range;
      continue;
    }
    clean.seconds.push_back(record.seconds[i]);
    clean.pressure_pa.push_back(record.pressure_pa_abs[i]);
    clean.water_k.push_back(water_k);
    clean.metal_k.push_back(metal_k);
    if (!record.pumped_m3.empty()) clean.pumped_m3.push_back(record.pumped_m3[i]);
  }
  join_equal_seconds(clean);
  for (std::size_t i = 1; i < clean.pumped_m3.size(); ++i) {
    if (clean.pumped_m3[i] < clean.pumped_m3[i - 1] - 1e-9) clean.pumped_falls = true;
  }
  if (clean.pumped_falls) clean.pumped_m3.clear();
  return clean;
}

double smallest_step(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  double step = 0.0;
  for (std::size_t i = 1; i < values.size(); ++i) {
    const double gap = values[i] - values[i - 1];
    const double noise_of_digits = 1e-9 * std::fabs(values[i]) + 1e-12;
    if (gap > noise_of_digits && (step == 0.0 || gap < step)) step = gap;
  }
  return step;
}

double noise_of(const std::vector<double>& values) {
  if (values.size() < 5) return 0.0;
  std::vector<double> bends;
  for (std::size_t i = 1; i + 1 < values.size(); ++i) {
    bends.push_back(std::fabs(values[i - 1] - 2.0 * values[i] + values[i + 1]));
  }
  // median |x| of a normal variable is 0.6745 sigma; a second difference has variance 6
  return numerics::median(bends) / 0.6745 / std::sqrt(6.0);
}

double inferred_hold_start(const CleanRecord& r) {
  for (std::size_t i = r.pumped_m3.size(); i-- > 1;) {
    if (r.pumped_m3[i] > r.pumped_m3[i - 1]) return r.seconds[i];
  }
  const auto highest = std::max_element(r.pressure_pa.begin(), r.pressure_pa.end());
  return highest == r.pressure_pa.end()
             ? 0.0
             : r.seconds[static_cast<std::size_t>(highest - r.pressure_pa.begin())];
}

}  // namespace steamworthy::hold
