#include "trace/series.h"

#include <algorithm>
#include <array>
#include <limits>

namespace steamworthy::trace {
namespace {

constexpr std::int32_t missing = std::numeric_limits<std::int32_t>::min();
constexpr std::int64_t greatest = 2'000'000'000;
constexpr int most_decimals = 9;
constexpr std::array<double, most_decimals + 1> power_of_ten = {1e0, 1e1, 1e2, 1e3, 1e4,
                                                                1e5, 1e6, 1e7, 1e8, 1e9};

std::int64_t whole_power(int n) {
  std::int64_t power = 1;
  for (int i = 0; i < n; ++i) power *= 10;
  return power;
}

}  // namespace

bool Series::has(std::size_t i) const { return wide_ ? is_known_[i] : digits_[i] != missing; }

double Series::number(std::size_t i) const {
  if (wide_) return doubles_[i];
  return digits_[i] / power_of_ten[static_cast<std::size_t>(decimals_)];
}

double Series::last_digit_si() const {
  const auto n = static_cast<std::size_t>(std::min(decimals_, most_decimals));
  return factor_ / power_of_ten[n];
}

void Series::push(const Written& cell) {
  if (!wide_ && (!cell.exact || !rescale(cell.decimals))) widen();
  ++known_;
  if (wide_) {
    decimals_ = std::max(decimals_, cell.decimals);
    doubles_.push_back(cell.value);
    is_known_.push_back(true);
    return;
  }
  const std::int64_t scaled = cell.digits * whole_power(decimals_ - cell.decimals);
  if (scaled > greatest || scaled < -greatest) {
    widen();
    doubles_.push_back(cell.value);
    is_known_.push_back(true);
    return;
  }
  digits_.push_back(static_cast<std::int32_t>(scaled));
}

void Series::push_si(double si) {
  widen();
  ++known_;
  doubles_.push_back((si - offset_) / factor_);
  is_known_.push_back(true);
}

void Series::push_missing() {
  if (!wide_) {
    digits_.push_back(missing);
    return;
  }
  doubles_.push_back(0.0);
  is_known_.push_back(false);
}

void Series::pop() {
  if (has(size() - 1)) --known_;
  if (!wide_) {
    digits_.pop_back();
    return;
  }
  doubles_.pop_back();
  is_known_.pop_back();
}

void Series::reserve(std::size_t rows) {
  if (wide_) {
    doubles_.reserve(rows);
    is_known_.reserve(rows);
  } else {
    digits_.reserve(rows);
  }
}

void Series::reverse() {
  std::reverse(digits_.begin(), digits_.end());
  std::reverse(doubles_.begin(), doubles_.end());
  std::reverse(is_known_.begin(), is_known_.end());
}

std::size_t Series::bytes() const {
  return digits_.capacity() * sizeof(std::int32_t) + doubles_.capacity() * sizeof(double) +
         is_known_.capacity() / 8;
}

void Series::widen() {
  if (wide_) return;
  std::vector<double> doubles;
  doubles.reserve(std::max(digits_.capacity(), digits_.size()));
  is_known_.reserve(digits_.size());
  for (std::size_t i = 0; i < digits_.size(); ++i) {
    is_known_.push_back(digits_[i] != missing);
    doubles.push_back(is_known_.back() ? number(i) : 0.0);
  }
  doubles_ = std::move(doubles);
  std::vector<std::int32_t>().swap(digits_);
  wide_ = true;
}

/// Gives the column this many decimals at least; false where the cells would no longer fit.
bool Series::rescale(int decimals) {
  if (decimals <= decimals_) return true;
  if (decimals > most_decimals) return false;
  const std::int64_t by = whole_power(decimals - decimals_);
  for (const std::int32_t digits : digits_) {
    const std::int64_t scaled = digits * by;
    if (digits != missing && (scaled > greatest || scaled < -greatest)) return false;
  }
  for (std::int32_t& digits : digits_) {
    if (digits != missing) digits = static_cast<std::int32_t>(digits * by);
  }
  decimals_ = decimals;
  return true;
}

}  // namespace steamworthy::trace
