// A hydrostatic test from the vented start to the end of the hold, marched second by second.
//
// The crew shuts the vent after a minute, pumps whole strokes until the gauge shows a stage, waits,
// and at the last stage shuts the test valve and hangs the pump side open. Water leaves by a leak
// (power of the pressure, possibly from an instant within the hold), by the pump's own check valve
// while the test valve is open, and comes in through a valve that passes. Heat moves between three
// water spaces, their steel and the air around; pumping heats water and cools steel; trapped air is
// squeezed and goes into solution.
#pragma once

#include <functional>
#include <vector>

#include "hold_study/plant.h"

namespace steamworthy::hold_study {

/// One millilitre a minute, in m3/s.
inline constexpr double ml_per_min = 1e-6 / 60.0;

/// Water that passes, as it would be at the test pressure.
struct Leak {
  double at_test_pressure_m3_s = 0.0;
  double exponent = 0.5;          ///< of the gauge pressure
  double begins_in_hold_s = 0.0;  ///< 0: from the start of pumping
};

/// A valve that passes water in from a main at a steady pressure above the test's.
struct Inflow {
  double at_test_pressure_m3_s = 0.0;
  double main_pa_gauge = 0.0;
};

struct Pump {
  double rate_m3_s = 0.0;
  double stroke_m3 = 0.0;
  double supply_k = 0.0;
  double check_passes_m3_s = 0.0;  ///< back through its check valve at the test pressure
};

struct TestPlan {
  std::vector<double> stages_pa_gauge;  ///< the last is the test pressure
  double wait_s = 300.0;                ///< at each stage but the last
  double hold_s = 3600.0;
  double vented_s = 60.0;
  double longest_pumping_s = 7200.0;  ///< to one stage; then the crew goes on with what it has
  bool test_valve_shut = true;        ///< at the start of the hold, and the pump side hung open
};

struct Disorder {
  std::array<double, groups> water_k{};  ///< above the mean at the start
  std::array<double, groups> steel_k{};  ///< steel above its water
};

/// The air around each group at a time of the test.
using Ambient = std::function<std::array<double, groups>(double seconds)>;

struct Trial {
  Plant plant;
  TestPlan plan;
  Pump pump;
  Leak leak;
  Inflow inflow;
  double start_k = 293.15;
  Disorder disorder;
  Ambient ambient;
  double air_m3 = 0.0;          ///< moist, at one atmosphere
  double air_surface_m2 = 0.0;  ///< through which it goes into solution
};

/// Columns of equal length, one row a second.
struct Course {
  std::vector<double> seconds;
  std::vector<double> pressure_pa;  ///< absolute, at the gauge
  std::vector<std::array<double, groups>> water_k;
  std::vector<std::array<double, groups>> steel_k;
  std::vector<std::array<double, groups>> ambient_k;
  std::vector<double> pumped_m3;  ///< drawn by the pump, at its suction
  std::vector<double> lost_m3;    ///< net, as it leaves, at the boiler's density
  std::vector<double> water_kg;
  std::vector<double> air_mol;
  double vent_shut_s = 0.0;
  double hold_start_s = 0.0;
  double balance_kg = 0.0;  ///< water that came in less what left, since the vent was shut

  double end_s() const { return seconds.back(); }
  /// Net loss between two instants of the course, m3/s.
  double mean_loss(double from_s, double to_s) const;
};

Course simulate(const Trial& test);

}  // namespace steamworthy::hold_study
