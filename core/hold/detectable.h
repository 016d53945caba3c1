// Detectable: the smallest loss that a hold could show.
//
// Known before the pump is started: it needs the boiler's stiffness, the
// instruments and the length of the hold, no reading. The method and its table
// are in docs/methods/hold-detectable.md.
#pragma once

#include "units/quantity.h"

namespace steamworthy::hold {

/// What limits a hold: how long it is, how the boiler answers, how well its
/// pressure and its temperature are known.
struct HoldLimits {
  units::Duration hold;
  units::VolumePerPressure per_pressure;  ///< water lost per fall of the gauge, at test pressure
  units::VolumePerTemperature per_temperature;  ///< V alpha: apparent loss per kelvin of cooling
  units::TemperatureRate unseen_drift;  ///< standard deviation of the mean water's rate of warming
                                        ///< that no thermometer shows
  units::PressureDifference gauge_resolution;  ///< smallest step of the reading
  units::PressureDifference gauge_noise = {};  ///< standard deviation of one reading
  units::TemperatureDifference thermometer_resolution = {};
  units::Duration between_readings = units::Duration::from_si(60.0);
};

/// Standard deviation of the loss rate that such a hold leaves.
///
///   sigma_q^2 = (theta sigma_r)^2
///             + 2 (K r / sqrt 12)^2 / T^2       noise below half a step: the gauge sticks
///             or 12 K^2 s^2 / (N T^2)           otherwise: averaging helps
///             + 2 (theta r_T / sqrt 12)^2 / T^2 the thermometer's own steps
///
///   K, theta   per_pressure, per_temperature     sigma_r  unseen_drift
///   r, r_T     resolutions                       T        hold
///   s^2        noise^2 + r^2/12                  N        number of readings, hold/between + 1
///
/// Range     hold and between_readings above zero, nothing below zero.
/// Throws    OutOfRange "hold.limits".
/// Source    docs/methods/hold-detectable.md, derived there.
/// Checked   detectable_test.cc: the table of the independent reference; textbook
///           variance of a slope.
units::VolumeFlow loss_rate_deviation(const HoldLimits& limits);

/// The loss that is missed once in twenty when a false alarm is allowed once in
/// twenty: 3.3 times loss_rate_deviation() (twice the 95 % point of the normal
/// distribution, 2 x 1.645).
units::VolumeFlow detectable_loss(const HoldLimits& limits);

/// Usual standard deviation of the unseen drift with one water thermometer in a
/// drum and one on the metal of another part, as found by simulation:
/// 0.29 K/h over a hold of 20 minutes, 0.11 K/h over 120 minutes.
///
///   sigma_r = 0.29 K/h sqrt(20 min / T), for T above 120 minutes the value there
///
/// Range     hold above zero. Below 20 minutes the law is continued upwards.
/// Throws    OutOfRange "hold.limits".
/// Source    own simulation, bench/hold_study; real logs may differ.
units::TemperatureRate usual_unseen_drift(units::Duration hold);

}  // namespace steamworthy::hold
