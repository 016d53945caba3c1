#include "hold_study/statistics.h"

#include <algorithm>
#include <cmath>

#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

void tally(Count& count, bool hit) {
  ++count.of;
  count.hits += hit ? 1 : 0;
}

double mean(const std::vector<double>& values) {
  if (values.empty()) return 0.0;
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

std::vector<double> absolute(std::vector<double> values) {
  for (double& value : values) value = std::fabs(value);
  return values;
}

/// Chance of at most `hits` in `of` trials of chance `p`.
double at_most(int hits, int of, double p) {
  if (p <= 0.0) return 1.0;
  if (p >= 1.0) return hits >= of ? 1.0 : 0.0;
  double sum = 0.0;
  double log_choose = 0.0;
  for (int k = 0; k <= hits; ++k) {
    if (k > 0) log_choose += numerics::log(static_cast<double>(of - k + 1) / k);
    sum += numerics::exp(log_choose + k * numerics::log(p) + (of - k) * numerics::log1p(-p));
  }
  return sum;
}

AirScore air_of(const std::vector<double>& errors, const std::vector<double>& relative) {
  AirScore result;
  result.cases = errors.size();
  result.bias_median_l = median(errors);
  result.error_median_l = median(absolute(errors));
  result.relative_bias_median = median(relative);
  result.relative_error_median = median(absolute(relative));
  result.relative_error_p90 = quantile(absolute(relative), 0.9);
  return result;
}

}  // namespace

double Count::upper_95() const {
  if (of == 0) return 1.0;
  double low = share();
  double high = 1.0;
  for (int turn = 0; turn < 60; ++turn) {
    const double middle = (low + high) / 2.0;
    (at_most(hits, of, middle) > 0.05 ? low : high) = middle;
  }
  return high;
}

double quantile(std::vector<double> values, double share) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  const double place = share * static_cast<double>(values.size() - 1);
  const auto i = static_cast<std::size_t>(place);
  if (i + 1 >= values.size()) return values.back();
  return values[i] + (place - static_cast<double>(i)) * (values[i + 1] - values[i]);
}

double median(std::vector<double> values) { return quantile(std::move(values), 0.5); }

Score score(const std::vector<Outcome>& outcomes, std::size_t method, const Filter& filter) {
  Score result;
  std::vector<double> errors;
  std::vector<double> widths;
  for (const Outcome& outcome : outcomes) {
    if (!filter(outcome)) continue;
    ++result.cases;
    const Answer& answer = outcome.answers[method];
    tally(result.refused, !answer.refused.empty());
    if (answer.net_loss && !outcome.made.begins_within()) {
      errors.push_back(answer.net_loss->estimate - outcome.net_mean);
      widths.push_back(answer.net_loss->high - answer.net_loss->low);
      tally(result.covered, answer.net_loss->covers(outcome.net_mean));
    }
    if (outcome.loses_concern()) tally(result.false_no_loss, answer.says == Says::NoLoss);
    if (outcome.loses_nothing()) tally(result.false_losing, answer.says == Says::Losing);
    if (outcome.gains_nothing()) tally(result.false_gaining, answer.says == Says::Gaining);
    const double concern = leak_of_concern_ml_per_min;
    if (std::min(outcome.net_mean, outcome.net_at_end) >= concern) {
      tally(result.found_losing, answer.says == Says::Losing);
    }
    if (std::max(outcome.net_mean, outcome.net_at_end) <= -concern) {
      tally(result.found_gaining, answer.says == Says::Gaining);
    }
    tally(result.cannot_tell, answer.says == Says::CannotTell);
  }
  result.bias_median = median(errors);
  result.bias_mean = mean(errors);
  result.error_median = median(absolute(errors));
  result.width_median = median(widths);
  for (double& error : errors) error *= error;
  result.error_rms = std::sqrt(mean(errors));
  return result;
}

AirScore air_score(const std::vector<Outcome>& outcomes, const Filter& filter) {
  std::vector<double> errors;
  std::vector<double> relative;
  Count covered;
  for (const Outcome& outcome : outcomes) {
    const std::optional<Interval>& air = outcome.answers[0].air_l;
    if (!filter(outcome) || !air) continue;
    errors.push_back(air->estimate - outcome.air_l);
    if (outcome.air_l > 1.0) relative.push_back(air->estimate / outcome.air_l - 1.0);
    tally(covered, air->covers(outcome.air_l));
  }
  AirScore result = air_of(errors, relative);
  result.covered = covered;
  return result;
}

AirScore intercept_score(const std::vector<Outcome>& outcomes) {
  std::vector<double> errors;
  std::vector<double> relative;
  for (const Outcome& outcome : outcomes) {
    if (!outcome.intercept_air_l) continue;
    errors.push_back(*outcome.intercept_air_l - outcome.air_l);
    if (outcome.air_l > 1.0) relative.push_back(*outcome.intercept_air_l / outcome.air_l - 1.0);
  }
  return air_of(errors, relative);
}

OnsetScore onset_score(const std::vector<Outcome>& outcomes) {
  OnsetScore result;
  std::vector<double> ratios;
  for (const Outcome& outcome : outcomes) {
    const Answer& answer = outcome.answers[0];
    if (!outcome.made.begins_within() || !answer.net_loss) continue;
    ++result.cases;
    const bool mean_covered = answer.net_loss->covers(outcome.net_mean);
    const Interval& end = answer.loss_at_end ? *answer.loss_at_end : *answer.net_loss;
    const bool end_covered = end.covers(outcome.net_at_end);
    tally(result.mean_covered, mean_covered);
    tally(result.end_covered, end_covered);
    tally(result.either_covered, mean_covered || end_covered);
    if (outcome.net_at_end > 1.0) ratios.push_back(end.estimate / outcome.net_at_end);
  }
  result.end_ratio_median = median(ratios);
  return result;
}

}  // namespace steamworthy::hold_study
