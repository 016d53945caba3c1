#include "hold/detectable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::hold {

namespace {

double square(double x) { return x * x; }

void require(bool good, const char* name, double value, const char* unit, const char* limit) {
  if (!good) {
    throw OutOfRange("hold.limits",
                     fmt::format("{} is {} {}, which is not {}", name, value, unit, limit));
  }
}

}  // namespace

units::VolumeFlow loss_rate_deviation(const HoldLimits& limits) {
  const double T = limits.hold.si();
  const double K = limits.per_pressure.si();
  const double theta = std::fabs(limits.per_temperature.si());
  const double sigma_r = limits.unseen_drift.si();
  const double r = limits.gauge_resolution.si();
  const double s = limits.gauge_noise.si();
  const double r_T = limits.thermometer_resolution.si();
  const double step = limits.between_readings.si();
  require(T > 0.0, "the hold", T, "s", "above zero");
  require(step > 0.0, "the time between readings", step, "s", "above zero");
  require(K >= 0.0, "the volume per pressure", K, "m3/Pa", "zero or above");
  require(theta >= 0.0, "the volume per temperature", theta, "m3/K", "a number");
  require(sigma_r >= 0.0, "the unseen drift", sigma_r, "K/s", "zero or above");
  require(r >= 0.0, "the gauge's resolution", r, "Pa", "zero or above");
  require(s >= 0.0, "the gauge's noise", s, "Pa", "zero or above");
  require(r_T >= 0.0, "the thermometer's resolution", r_T, "K", "zero or above");

  const bool sticks = s < 0.5 * r;
  const double N = T / step + 1.0;
  const double gauge = sticks ? 2.0 * square(K * r) / 12.0 / square(T)
                              : 12.0 * square(K) * (square(s) + square(r) / 12.0) / (N * square(T));
  const double thermometer = 2.0 * square(theta * r_T) / 12.0 / square(T);
  return units::VolumeFlow::from_si(std::sqrt(square(theta * sigma_r) + gauge + thermometer));
}

units::VolumeFlow detectable_loss(const HoldLimits& limits) {
  return 3.3 * loss_rate_deviation(limits);
}

units::TemperatureRate usual_unseen_drift(units::Duration hold) {
  require(hold.si() > 0.0, "the hold", hold.si(), "s", "above zero");
  const double minutes = std::min(units::in_minutes(hold), 120.0);
  return units::kelvins_per_hour(0.29 * std::sqrt(20.0 / minutes));
}

}  // namespace steamworthy::hold
