// What a logger makes of a course: sampled, noisy, rounded to its steps.
#pragma once

#include <vector>

#include "hold_study/random.h"
#include "hold_study/simulate.h"

namespace steamworthy::hold_study {

struct Instruments {
  double every_s = 10.0;
  double gauge_step_pa = 1e4;
  double gauge_noise_pa = 1e3;
  double thermometer_step_k = 0.1;
  double thermometer_noise_k = 0.02;
  std::size_t water_group = 0;  ///< where the water thermometer sits
  std::size_t metal_group = 1;  ///< where the other is strapped on
  double water_offset_k = 0.0;
  double metal_offset_k = 0.0;
  double metal_lag_s = 60.0;
  double metal_sees_air = 0.10;   ///< share of the air's temperature in what the probe shows
  double pump_scale_error = 0.0;  ///< true volume over counted volume, less 1
};

/// Columns of equal length.
struct Log {
  std::vector<double> seconds;
  std::vector<double> pressure_pa_gauge;
  std::vector<double> water_k;
  std::vector<double> metal_k;
  std::vector<double> ambient_k;
  std::vector<double> pumped_m3;
};

Log observe(const Course& course, const Instruments& instruments, Random& random);

/// To the nearest multiple of `step`; unchanged when `step` is 0.
double rounded(double value, double step);

}  // namespace steamworthy::hold_study
