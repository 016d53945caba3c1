// What a crew with a spreadsheet would do: straight lines through the hold, by least squares, with
// the interval that a spreadsheet gives. For comparison only.
#pragma once

#include "hold_study/outcome.h"

namespace steamworthy::hold_study {

/// Slope of the gauge times V (kappa + C) of the description; temperature is not looked at.
Answer raw_slope(const Case& made);
/// Slope of the lost volume after taking off what the water thermometer's change explains,
/// V (alpha - 3 alpha_s) per kelvin.
Answer corrected_slope(const Case& made);
/// Trapped air by the rule of thumb, litres at one atmosphere: the straight line through the upper
/// half of the pump-up, back to the vented start. Nothing with fewer than three readings there.
std::optional<double> intercept_air(const Case& made);

struct Line {
  double at_zero = 0.0;
  double slope = 0.0;
  double slope_error = 0.0;  ///< standard error, residuals taken as independent
};
/// Least squares; nothing with fewer than three points or all x equal.
std::optional<Line> straight_line(const std::vector<double>& x, const std::vector<double>& y);

}  // namespace steamworthy::hold_study
