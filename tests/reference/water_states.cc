// Prints 10,000 seeded random states of liquid water and our properties there, for
// tests/water_against_iapws.py.
#include <cstdio>

#include "same_bits/random.h"
#include "units/makers.h"
#include "water/viscosity.h"
#include "water/water.h"

int main() {
  using namespace steamworthy;
  same_bits::Random random("water_states");
  std::puts("t,p,rho,kt,alfav,cp,h,mu,psat,p_boil,tsat,rho_steam,h_steam");
  for (int i = 0; i < 10'000; ++i) {
    const units::Temperature t = units::kelvins(random.uniform(273.15, 623.15));
    const double boiling = units::in_megapascals_absolute(water::saturation_pressure(t));
    const water::State state{t, units::megapascals_absolute(random.uniform(boiling, 100.0))};
    const units::AbsolutePressure p = units::megapascals_absolute(random.uniform(0.000612, 22.0));
    std::printf("%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n",
                t.si(), state.pressure.si(), water::density(state).si(),
                water::isothermal_compressibility(state).si(),
                water::thermal_expansivity(state).si(), water::isobaric_heat_capacity(state).si(),
                water::enthalpy(state).si(), water::viscosity(state).si(),
                water::saturation_pressure(t).si(), p.si(), water::saturation_temperature(p).si(),
                water::steam_density(t).si(), water::steam_enthalpy(t).si());
  }
  return 0;
}
