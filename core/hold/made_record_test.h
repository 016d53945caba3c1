// Records made from the state equation itself, for tests: no noise but a gauge's steps.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "hold/analyse.h"
#include "hold/lump.h"
#include "units/makers.h"

namespace steamworthy::hold {

/// What truly happens; pressures in bar gauge, volumes in mL, times in minutes.
struct Truth {
  double volume_m3 = 8.0;
  double growth_per_pa = 1e-10;
  double test_bar = 40.0;
  double loss_ml_min = 0.0;  ///< at test pressure; goes with its root
  double begins_min = 0.0;   ///< of the hold
  double air_l = 0.0;
  double celsius = 25.0;
  double cooling_k_per_h = 0.0;  ///< during the hold, of water and steel
  double hold_min = 60.0;
  double every_s = 30.0;
  double step_bar = 0.0;
};

inline double pressure_for(const Lump& lump, double kg, double air_m3, double k) {
  double low = 2e4, high = 399e5;
  for (int i = 0; i < 80; ++i) {
    const double p = 0.5 * (low + high);
    const double air_kg = air_m3 * lump.barometer_pa / p * water_at(p, k).density;
    (lump.mass_kg(p, k, k) - air_kg < kg ? low : high) = p;
  }
  return 0.5 * (low + high);
}

/// Pump-up in 20 minutes from the vented start at 2 minutes, then the hold. `lost_ml`, if
/// given, takes what was lost during the hold.
inline HoldInput made_record(const Truth& truth, double* lost_ml = nullptr) {
  HoldInput input;
  input.boiler.volume = units::cubic_metres(truth.volume_m3);
  input.boiler.growth = units::per_pascal(truth.growth_per_pa);
  input.valves = {true, true};
  input.leak_of_concern = units::millilitres_per_minute(20);
  input.gauge.noise = units::bars(0.005);
  input.gauge.resolution = units::bars(truth.step_bar > 0 ? truth.step_bar : 0.01);
  const double hold_start = 22 * 60.0;
  input.hold_start_s = hold_start;
  input.hold_end_s = hold_start + truth.hold_min * 60.0;

  const Lump lump = Lump::of(input.boiler, input.barometer);
  const double k0 = truth.celsius + 273.15;
  const double air = truth.air_l * 1e-3;
  const auto mass = [&](double p) {
    return lump.mass_kg(p, k0, k0) - air * lump.barometer_pa / p * water_at(p, k0).density;
  };
  const double vented = mass(lump.barometer_pa);
  const double pumped_kg = mass(lump.barometer_pa + truth.test_bar * 1e5) - vented;
  double lost_m3 = 0.0, made_good_m3 = 0.0;
  double before_pa = lump.barometer_pa;
  for (double s = 0.0; s <= *input.hold_end_s + 1e-6; s += truth.every_s) {
    const double share = s < 120 ? 0.0 : s < hold_start ? (s - 120.0) / (hold_start - 120.0) : 1.0;
    const double held_min = std::max(0.0, (s - hold_start) / 60.0);
    const double k = k0 - truth.cooling_k_per_h * held_min / 60.0;
    // a loss that does not begin within the hold runs from the first pressure on, and the
    // pump makes good what is lost before the hold
    const double running_min = truth.begins_min > 0.0 ? held_min - truth.begins_min : s / 60.0;
    const double minutes = std::clamp(running_min, 0.0, truth.every_s / 60.0);
    const double driving = std::max(0.0, (before_pa - lump.barometer_pa) / truth.test_bar / 1e5);
    const double lost_now = truth.loss_ml_min * 1e-6 * std::sqrt(driving) * minutes;
    (s <= hold_start ? made_good_m3 : lost_m3) += lost_now;
    const double density = water_at(lump.barometer_pa + truth.test_bar * 1e5, k0).density;
    const double kg = vented + share * pumped_kg - lost_m3 * density;
    double p = pressure_for(lump, kg, air, k);
    before_pa = p;
    if (truth.step_bar > 0.0) {
      const double step = truth.step_bar * 1e5;
      p = lump.barometer_pa + std::floor((p - lump.barometer_pa) / step + 0.5) * step;
    }
    input.record.seconds.push_back(s);
    input.record.pressure_pa_abs.push_back(p);
    input.record.water_temperature_k.push_back(k);
    input.record.metal_temperature_k.push_back(k);
    input.record.pumped_m3.push_back((share * pumped_kg + made_good_m3 * density) /
                                     water_at(lump.barometer_pa, k0).density);
  }
  if (lost_ml) *lost_ml = lost_m3 * 1e6;
  return input;
}

inline double ml_min(units::VolumeFlow q) { return units::in_millilitres_per_minute(q); }

}  // namespace steamworthy::hold
