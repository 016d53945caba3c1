// detectable_test.cc: checks hold/detectable.h.
//
// Source: the detectability table of the independent reference model (25 C,
// 45 bar, no air; K and theta as printed there), whole numbers and tenths as
// printed. Tolerance: half the last printed digit, and what rounding K and theta
// to the printed digit can do.
#include "hold/detectable.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::hold {
namespace {

struct Row {
  double ml_per_bar, ml_per_k, hold_min, resolution_bar, drift_k_per_h;
  double detectable_ml_per_min;
  double half_digit;
};

constexpr Row reference_table[] = {
    {109, 524, 30, 0.05, 0.05, 1.5, 0.05},  {109, 524, 30, 0.05, 0.1, 2.9, 0.05},
    {109, 524, 30, 0.05, 0.3, 8.7, 0.05},   {109, 524, 30, 0.2, 0.05, 1.7, 0.05},
    {109, 524, 30, 0.2, 0.1, 3.0, 0.05},    {109, 524, 30, 1.0, 0.05, 5.1, 0.05},
    {109, 524, 30, 1.0, 0.1, 5.7, 0.05},    {109, 524, 30, 1.0, 0.3, 9.9, 0.05},
    {109, 524, 120, 0.05, 0.05, 1.4, 0.05}, {109, 524, 120, 1.0, 0.1, 3.1, 0.05},
    {437, 2097, 30, 0.05, 0.05, 5.8, 0.05}, {437, 2097, 30, 0.2, 0.05, 7.0, 0.05},
    {437, 2097, 30, 1.0, 0.05, 21, 0.5},    {437, 2097, 30, 1.0, 0.1, 23, 0.5},
    {437, 2097, 30, 1.0, 0.3, 40, 0.5},     {437, 2097, 120, 1.0, 0.05, 7.6, 0.05},
    {1476, 7076, 30, 0.05, 0.05, 20, 0.5},  {1476, 7076, 30, 0.2, 0.1, 41, 0.5},
    {1476, 7076, 30, 0.2, 0.3, 117, 0.5},   {1476, 7076, 30, 1.0, 0.05, 69, 0.5},
    {1476, 7076, 30, 1.0, 0.3, 134, 0.5},   {1476, 7076, 120, 1.0, 0.1, 42, 0.5},
    {1476, 7076, 120, 1.0, 0.3, 118, 0.5},
};

HoldLimits limits_of(const Row& row) {
  return {.hold = units::minutes(row.hold_min),
          .per_pressure = units::millilitres_per_bar(row.ml_per_bar),
          .per_temperature = units::millilitres_per_kelvin(row.ml_per_k),
          .unseen_drift = units::kelvins_per_hour(row.drift_k_per_h),
          .gauge_resolution = units::bars(row.resolution_bar)};
}

TEST(DetectableLoss, AgreesWithTheReferenceTableToThePrintedDigits) {
  for (const Row& row : reference_table) {
    const double found = units::in_millilitres_per_minute(detectable_loss(limits_of(row)));
    EXPECT_NEAR(found, row.detectable_ml_per_min,
                row.half_digit + 0.005 * row.detectable_ml_per_min)
        << row.ml_per_bar << " mL/bar, " << row.hold_min << " min, " << row.resolution_bar
        << " bar, " << row.drift_k_per_h << " K/h";
  }
}

TEST(DetectableLoss, OfAQuietGaugeIsTheTextbookDeviationOfASlope) {
  // Slope of N even readings with white noise s: var = 12 s^2 / (dt^2 N (N^2 - 1)),
  // which tends to 12 s^2 / (N T^2). Textbook, from memory.
  HoldLimits limits = limits_of(reference_table[0]);
  limits.unseen_drift = {};
  limits.gauge_resolution = {};
  limits.gauge_noise = units::bars(0.02);
  limits.between_readings = units::seconds(1.0);
  const double N = 1801.0;
  const double slope = std::sqrt(12.0 / (N * (N * N - 1.0))) * 0.02;  // bar per second
  const double expected = slope * 60.0 * 109.0;                       // mL/min
  EXPECT_NEAR(units::in_millilitres_per_minute(loss_rate_deviation(limits)) / expected, 1.0, 2e-3);
}

TEST(DetectableLoss, GrowsWithCoarseThermometersAndNeverShrinksWithThem) {
  HoldLimits limits = limits_of(reference_table[0]);
  const double without = detectable_loss(limits).si();
  limits.thermometer_resolution = units::kelvin_difference(0.1);
  // By hand: theta r / sqrt 12 = 15.13 mL a reading, sqrt 2 of it in 30 min: 0.713 mL/min.
  const double expected = std::hypot(without, 3.3 * 0.7131e-6 / 60.0);
  EXPECT_NEAR(detectable_loss(limits).si() / expected, 1.0, 1e-3);
}

TEST(DetectableLoss, RefusesAHoldOfNoLength) {
  HoldLimits limits = limits_of(reference_table[0]);
  limits.hold = {};
  try {
    detectable_loss(limits);
    FAIL() << "nothing was thrown";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "hold.limits");
  }
}

TEST(UsualUnseenDrift, FallsFromTwentyMinutesToTwoHoursAsSimulated) {
  // Source: independent reference model: 0.29 K/h over 20 min, 0.11 K/h over 120 min.
  EXPECT_NEAR(usual_unseen_drift(units::minutes(20)).si() * 3600.0, 0.29, 0.005);
  EXPECT_NEAR(usual_unseen_drift(units::minutes(120)).si() * 3600.0, 0.11, 0.01);
  EXPECT_EQ(usual_unseen_drift(units::minutes(600)), usual_unseen_drift(units::minutes(120)));
}

}  // namespace
}  // namespace steamworthy::hold
