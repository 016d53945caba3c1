#include "hold/instruments_used.h"

#include <algorithm>

namespace steamworthy::hold {

InstrumentsUsed instruments_used(const HoldInput& input, const CleanRecord& record,
                                 double hold_start_s) {
  InstrumentsUsed used;
  std::vector<double> held;
  for (std::size_t i = 0; i < record.size(); ++i) {
    if (record.seconds[i] >= hold_start_s) held.push_back(record.pressure_pa[i]);
  }
  used.step_assumed = !input.gauge.resolution.has_value();
  used.gauge_step_pa =
      used.step_assumed ? smallest_step(record.pressure_pa) : input.gauge.resolution->si();
  used.noise_assumed = !input.gauge.noise.has_value();
  used.gauge_noise_pa = used.noise_assumed ? noise_of(held) : input.gauge.noise->si();

  const auto& thermometers = input.thermometers;
  if (thermometers.resolution.has_value()) {
    used.thermometer_step_k = thermometers.resolution->si();
  } else {
    used.thermometer_step_k = smallest_step(record.water_k);
  }
  if (thermometers.noise.has_value()) used.thermometer_noise_k = thermometers.noise->si();

  const bool both = record.water == CleanRecord::Source::Measured && record.metal_measured;
  if (both && !thermometers.in_one_space) {
    used.metal_weight = 0.2;
    used.metal_weight_sd = 0.15;
  }
  if (record.water == CleanRecord::Source::Metal) {
    used.thermometer_step_k = std::max(used.thermometer_step_k, 0.3);
  }
  if (record.water == CleanRecord::Source::Constant) {
    used.thermometer_step_k = 0.0;
    used.thermometer_noise_k = 0.0;
    used.unseen_water_k = 0.3;
  }
  return used;
}

}  // namespace steamworthy::hold
