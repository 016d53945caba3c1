#include "numerics/statistics.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"

namespace steamworthy::numerics {
namespace {

void require(std::size_t count, std::size_t least) {
  if (count < least) {
    throw OutOfRange("numerics.too_few", fmt::format("{} values; at least {}", count, least));
  }
}

void require_width(bool holds, int width) {
  if (!holds) throw OutOfRange("numerics.width", fmt::format("a width of {} values", width));
}

}  // namespace

double mean(const std::vector<double>& values) {
  require(values.size(), 1);
  const auto n = static_cast<double>(values.size());
  double sum = 0.0;
  for (const double value : values) sum += value;
  const double rough = sum / n;
  double rest = 0.0;  // what the rounding of the sum has left
  for (const double value : values) rest += value - rough;
  return rough + rest / n;
}

double variance(const std::vector<double>& values) {
  require(values.size(), 2);
  const auto n = static_cast<double>(values.size());
  const double middle = mean(values);
  double squares = 0.0;
  double rest = 0.0;
  for (const double value : values) {
    squares += (value - middle) * (value - middle);
    rest += value - middle;
  }
  return (squares - rest * rest / n) / (n - 1.0);
}

double quantile(std::vector<double> values, double p) {
  require(values.size(), 1);
  if (!(p >= 0.0 && p <= 1.0)) {
    throw OutOfRange("numerics.fraction", fmt::format("{} is not between 0 and 1", p));
  }
  std::sort(values.begin(), values.end());
  const double position = p * static_cast<double>(values.size() - 1);
  const auto below = static_cast<std::size_t>(std::floor(position));
  if (below + 1 == values.size()) return values[below];
  const double part = position - std::floor(position);
  return values[below] + part * (values[below + 1] - values[below]);
}

double median(std::vector<double> values) { return quantile(std::move(values), 0.5); }

std::vector<double> median_filter(const std::vector<double>& values, int width) {
  require_width(width >= 1 && width % 2 == 1, width);
  const auto half = static_cast<std::ptrdiff_t>(width / 2);
  const auto count = static_cast<std::ptrdiff_t>(values.size());
  std::vector<double> filtered;
  filtered.reserve(values.size());
  for (std::ptrdiff_t i = 0; i < count; ++i) {
    const std::ptrdiff_t first = std::max<std::ptrdiff_t>(0, i - half);
    const std::ptrdiff_t last = std::min(count, i + half + 1);
    filtered.push_back(median({values.begin() + first, values.begin() + last}));
  }
  return filtered;
}

std::vector<double> block_average(const std::vector<double>& values, int width) {
  require_width(width >= 1, width);
  const auto step = static_cast<std::ptrdiff_t>(width);
  const auto count = static_cast<std::ptrdiff_t>(values.size());
  std::vector<double> averages;
  for (std::ptrdiff_t first = 0; first + step <= count; first += step) {
    averages.push_back(mean({values.begin() + first, values.begin() + first + step}));
  }
  return averages;
}

}  // namespace steamworthy::numerics
