// Mean, variance, quantile, median; block averages of a record.
#pragma once

#include <vector>

namespace steamworthy::numerics {

/// Arithmetic mean. Throws OutOfRange "numerics.too_few" if there is none.
double mean(const std::vector<double>& values);

/// Variance of a sample, sum (x - mean)^2 / (n - 1).
///
/// Throws    OutOfRange "numerics.too_few" below two values.
/// Checked   statistics_test.cc: [NIST-STRD] NumAcc1 to NumAcc3, made to expose cancellation.
double variance(const std::vector<double>& values);

/// The value below which the fraction p of a sample lies, interpolated linearly
/// between order statistics at position p (n - 1).
///
/// Range     0 <= p <= 1.
/// Throws    OutOfRange "numerics.too_few" if there is none, "numerics.fraction" outside.
/// Source    definition 7 of [Hyndman-1996].
double quantile(std::vector<double> values, double p);

/// quantile(values, 1/2).
double median(std::vector<double> values);

/// Each value replaced by the median of the `width` values around it, at the
/// ends of those that there are: takes out single wild readings, keeps steps.
///
/// Range     width odd, at least 1.
/// Throws    OutOfRange "numerics.width".
std::vector<double> median_filter(const std::vector<double>& values, int width);

/// Means of successive blocks of `width` values; a last, shorter block is left out.
///
/// Range     width at least 1.
/// Throws    OutOfRange "numerics.width".
std::vector<double> block_average(const std::vector<double>& values, int width);

}  // namespace steamworthy::numerics
