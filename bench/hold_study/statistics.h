// What the answers to many cases come to.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "hold_study/outcome.h"

namespace steamworthy::hold_study {

struct Count {
  int hits = 0;
  int of = 0;

  double share() const { return of == 0 ? 0.0 : static_cast<double>(hits) / of; }
  /// The true rate is below this with 95 % confidence (Clopper and Pearson, one-sided).
  double upper_95() const;
};

/// Errors in mL/min, estimate less truth. Bias and coverage are of the cases without a leak that
/// begins within the hold; their truth is the mean net loss over the hold.
struct Score {
  std::size_t cases = 0;
  double bias_median = 0.0;
  double bias_mean = 0.0;
  double error_median = 0.0;  ///< of the absolute errors
  double error_rms = 0.0;
  double width_median = 0.0;  ///< of the 90 % intervals
  Count covered;
  Count false_no_loss;  ///< of those that lose at least the leak of concern
  Count false_losing;   ///< of those that lose nothing
  Count false_gaining;  ///< of those that gain nothing
  Count found_losing;   ///< of those that lose at least the leak of concern, over the hold and at
                        ///< its end
  Count found_gaining;  ///< of those that gain as much
  Count cannot_tell;
  Count refused;  ///< by an exception
};

/// Relative errors are of the cases with more than a litre.
struct AirScore {
  std::size_t cases = 0;
  double bias_median_l = 0.0;
  double error_median_l = 0.0;
  double relative_bias_median = 0.0;
  double relative_error_median = 0.0;
  double relative_error_p90 = 0.0;
  Count covered;
};

/// Of the cases whose leak begins within the hold.
struct OnsetScore {
  std::size_t cases = 0;
  Count mean_covered;
  Count end_covered;     ///< by the interval for the end of the hold, or by that for the mean
  Count either_covered;  ///< the mean by its interval, or the end
  double end_ratio_median = 0.0;  ///< estimate for the end over truth
};

using Filter = std::function<bool(const Outcome&)>;

Score score(const std::vector<Outcome>& outcomes, std::size_t method, const Filter& filter);
AirScore air_score(const std::vector<Outcome>& outcomes, const Filter& filter);
/// The rule of thumb, which gives no interval.
AirScore intercept_score(const std::vector<Outcome>& outcomes);
OnsetScore onset_score(const std::vector<Outcome>& outcomes);

/// Between the two middle values when their number is even; 0 of nothing.
double median(std::vector<double> values);
/// Linear between order statistics, share in [0, 1]; 0 of nothing.
double quantile(std::vector<double> values, double share);

}  // namespace steamworthy::hold_study
