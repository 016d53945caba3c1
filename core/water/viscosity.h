// Viscosity of water [IAPWS-R12-08], without its critical enhancement.
#pragma once

#include "units/quantity.h"
#include "water/water.h"

namespace steamworthy::water {

/// Dynamic viscosity of a state of liquid water.
///
///   mu = mu* mu0(T/T*) mu1(T/T*, rho/rho*),  mu* = 1e-6 Pa s, Eq. 10 to 12
///
/// The enhancement near the critical point is left out (below 2 % outside
/// 645.91 to 650.77 K, by the release). Range: as density(). Throws: as density().
units::Viscosity viscosity(State state);

/// The same at a density, for the release's own check table.
units::Viscosity viscosity_at(units::Temperature temperature, units::Density density);

}  // namespace steamworthy::water
