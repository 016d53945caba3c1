#include "hold_study/observe.h"

#include <cmath>

#include "hold_study/water_kell.h"
#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

/// The strapped-on probe: late, and partly a thermometer of the air.
std::vector<double> probe(const Course& course, const Instruments& instruments) {
  const std::size_t g = instruments.metal_group;
  const double follow = 1.0 - numerics::exp(-1.0 / instruments.metal_lag_s);
  std::vector<double> shown;
  shown.reserve(course.seconds.size());
  double value = course.steel_k.front()[g];
  for (std::size_t i = 0; i < course.seconds.size(); ++i) {
    const double aims = (1.0 - instruments.metal_sees_air) * course.steel_k[i][g] +
                        instruments.metal_sees_air * course.ambient_k[i][g];
    if (i > 0) value += follow * (aims - value);
    shown.push_back(value);
  }
  return shown;
}

}  // namespace

double rounded(double value, double step) {
  return step > 0.0 ? std::nearbyint(value / step) * step : value;
}

Log observe(const Course& course, const Instruments& instruments, Random& random) {
  const std::vector<double> metal = probe(course, instruments);
  const auto stride = static_cast<std::size_t>(instruments.every_s);
  const std::size_t w = instruments.water_group;
  const double t_noise = instruments.thermometer_noise_k;
  const double t_step = instruments.thermometer_step_k;
  Log log;
  for (std::size_t i = 0; i < course.seconds.size(); i += stride) {
    log.seconds.push_back(course.seconds[i]);
    const double gauge = course.pressure_pa[i] - atmosphere_pa;
    log.pressure_pa_gauge.push_back(
        rounded(gauge + random.normal(0.0, instruments.gauge_noise_pa), instruments.gauge_step_pa));
    const double water = course.water_k[i][w] + instruments.water_offset_k;
    log.water_k.push_back(rounded(water + random.normal(0.0, t_noise), t_step));
    const double on_metal = metal[i] + instruments.metal_offset_k;
    log.metal_k.push_back(rounded(on_metal + random.normal(0.0, t_noise), t_step));
    log.ambient_k.push_back(rounded(course.ambient_k[i][1] + random.normal(0.0, 0.1), 0.1));
    log.pumped_m3.push_back(course.pumped_m3[i] / (1.0 + instruments.pump_scale_error));
  }
  return log;
}

}  // namespace steamworthy::hold_study
