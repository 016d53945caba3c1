// Water for the simulator: a description of its own, so that simulator and estimator share none.
//
// Density and compressibility at one atmosphere after [Kell-1975]; under pressure the bulk modulus
// grows linearly (Murnaghan), which integrates to a closed form:
//
//   rho(P, T) = rho_0(T) [1 + n kappa_0(T) (P - P_0)]^(1/n),   P_0 = 101325 Pa,  n = 6
//
// n is the slope of 1/kappa with pressure that water shows between 0 and 70 °C. Vapour pressure by
// Magnus' form with the constants of Buck (from memory).
//
// Range    2 to 70 °C, 0 to 160 bar gauge, all in SI (K, Pa absolute); not checked at run time.
// Checked  water_kell_test.cc against the core's IAPWS-IF97: density 2e-5, expansivity 8e-7/K,
//          compressibility 0.45 %, vapour pressure 0.2 %.
#pragma once

namespace steamworthy::hold_study {

inline constexpr double atmosphere_pa = 101325.0;
inline constexpr double zero_celsius_k = 273.15;

/// kg/m3
double density(double pressure_pa, double temperature_k);
/// -(1/v) dv/dp, 1/Pa
double compressibility(double pressure_pa, double temperature_k);
/// (1/v) dv/dT, 1/K
double expansivity(double pressure_pa, double temperature_k);
/// Pa
double vapour_pressure(double temperature_k);

}  // namespace steamworthy::hold_study
