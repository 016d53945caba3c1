// The filled boiler as one lump, for fitting: one temperature of the water, one of the steel.
//
//   m = s V [1 + 3 alpha_s (T_s - 20 C) + C (P - P_atm)] rho(P, T)
//
// Plain SI numbers: pascals absolute, kelvins, cubic metres, kilograms.
#pragma once

#include "hold/input.h"

namespace steamworthy::hold {

struct WaterAt {
  double density = 0.0;          ///< kg/m3
  double compressibility = 0.0;  ///< 1/Pa
  double expansivity = 0.0;      ///< 1/K
};
/// Range as water::density(); throws as it does.
WaterAt water_at(double pressure_pa, double water_k);

struct Lump {
  double volume_m3;
  double growth_per_pa;
  double steel_per_k;  ///< linear
  double barometer_pa;

  static Lump of(const BoilerKnown& boiler, units::AbsolutePressure barometer) {
    return {boiler.volume.si(), boiler.growth.si(), boiler.steel_expansion.si(), barometer.si()};
  }

  double mass_kg(double pressure_pa, double water_k, double steel_k) const {
    return volume_m3 *
           (1.0 + 3.0 * steel_per_k * (steel_k - 293.15) +
            growth_per_pa * (pressure_pa - barometer_pa)) *
           water_at(pressure_pa, water_k).density;
  }
};

}  // namespace steamworthy::hold
