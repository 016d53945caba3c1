// Water: what ordinary water is like at a given state.
//
// How dense it is, how much it shrinks under pressure and swells with heat, how
// much heat it takes, when it would boil, and what its steam weighs. Pure
// functions, safe from any thread. Start reading at density().
//
// Sources
//   [IAPWS-R7-97]  industrial formulation 1997: equations, coefficients, check tables.
//   [IAPWS-R12-08] viscosity.
//   docs/methods/water.md derives the two derivatives.
//
// Range of validity
//   Liquid: region 1 of [IAPWS-R7-97], 273.15 K <= T <= 623.15 K and
//   saturation_pressure(T) <= p <= 100 MPa.
//
// Errors
//   Outside the range every function throws OutOfRange "water.out_of_range" with
//   the state and the limit broken. Nothing is clamped or extrapolated.
#pragma once

#include "units/quantity.h"

namespace steamworthy::water {

/// A state of compressed liquid water. Any pair may be built; whether it is
/// inside the range is decided by the function asked.
struct State {
  units::Temperature temperature;
  units::AbsolutePressure pressure;  ///< absolute, never gauge
};

/// Mass per volume.
///
///   rho = p* / (R T gamma_pi),   pi = p/p*,  tau = T*/T,  p* = 16.53 MPa,  T* = 1386 K
///
/// Source [IAPWS-R7-97] Eq. 7, table 3. Checked water_test.cc: table 5.
units::Density density(State state);

/// Fractional shrinkage per unit of pressure at constant temperature.
///
///   kappa_T = -gamma_pipi / (p* gamma_pi)
///
/// 0.14 to 0.36 % below [IAPWS-95] between 20 and 60 °C at one atmosphere.
units::Compressibility isothermal_compressibility(State state);

/// Fractional swelling per kelvin at constant pressure; negative below about 277 K.
///
///   alpha_v = (1 - tau gamma_pitau / gamma_pi) / T
units::Expansivity thermal_expansivity(State state);

/// c_p = -R tau^2 gamma_tautau.
units::SpecificHeat isobaric_heat_capacity(State state);

/// h = R T tau gamma_tau; zero by convention near the triple point.
units::SpecificEnthalpy enthalpy(State state);

/// Pressure at which liquid and vapour are in equilibrium. [IAPWS-R7-97] Eq. 30.
/// Range of its own: 273.15 K <= T <= 647.096 K.
units::AbsolutePressure saturation_pressure(units::Temperature temperature);

/// The inverse of saturation_pressure(). [IAPWS-R7-97] Eq. 31.
/// Range of its own: 611.213 Pa <= p <= 22.064 MPa.
units::Temperature saturation_temperature(units::AbsolutePressure pressure);

/// Density and enthalpy of dry saturated steam. [IAPWS-R7-97] Eq. 15 at saturation.
/// Range of its own: 273.15 K <= T <= 623.15 K.
units::Density steam_density(units::Temperature saturation);
units::SpecificEnthalpy steam_enthalpy(units::Temperature saturation);

/// Specific volume and enthalpy of steam in region 2. [IAPWS-R7-97] Eq. 15 to 17.
/// Range: 273.15 K <= T <= 1073.15 K, p above zero and not above saturation (up to
/// 623.15 K), the boundary to region 3 (Eq. 5) up to 863.15 K, and 100 MPa beyond.
units::SpecificVolume superheated_volume(State state);
units::SpecificEnthalpy superheated_enthalpy(State state);

}  // namespace steamworthy::water
