#include "hold/lump.h"

#include "water/water.h"

namespace steamworthy::hold {

WaterAt water_at(double pressure_pa, double water_k) {
  const water::State state{units::Temperature::from_si(water_k),
                           units::AbsolutePressure::from_si(pressure_pa)};
  return {water::density(state).si(), water::isothermal_compressibility(state).si(),
          water::thermal_expansivity(state).si()};
}

}  // namespace steamworthy::hold
