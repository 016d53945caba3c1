// The simulated boiler: three water spaces in their steel, how they hold water and exchange heat.
//
//   m = sum_g V_g [1 + 3 alpha_s (Ts_g - 20 °C) + C_g (P_g - P_atm)] rho(P_g, Tw_g) - rho V_air
//   P_g = P + rho_h g (-level_g),  V_air = n R T_air / (P_pocket - p_v)
//
// SI all through: Pa absolute, K, m3, kg, mol, W. No estimator code is used here.
#pragma once

#include <array>

namespace steamworthy::hold_study {

inline constexpr std::size_t groups = 3;  ///< 0 upper drum, 1 tube banks, 2 lower drum and headers

struct Steel {
  double expansion_per_k = 11.5e-6;
  double density = 7850.0;
  double specific_heat = 470.0;
  double modulus_pa = 200e9;
  double poisson = 0.3;
};

struct Group {
  double volume_m3 = 0.0;
  double growth_per_pa = 0.0;  ///< (1/V) dV/dp
  double level_m = 0.0;        ///< of its water, above the gauge
  double steel_kg = 0.0;
  double to_steel_w_per_k = 0.0;
  double to_air_w_per_k = 0.0;
  double stress_per_pressure = 0.0;  ///< sum of the principal stresses over the pressure
};

struct Plant {
  std::array<Group, groups> group;
  double mixing_w_per_k = 0.0;  ///< between neighbouring water spaces
  double pocket_level_m = 0.0;  ///< of trapped air, above the gauge
  Steel steel;

  double volume_m3() const;
  /// Of all groups together.
  double growth_per_pa() const;
};

/// (1/V) dV/dp of a thin cylinder with closed ends: r (5 - 4 nu) / (2 t E).
double thin_cylinder_growth(const Steel& steel, double radius_by_thickness);

struct State {
  std::array<double, groups> water_k{};
  std::array<double, groups> steel_k{};
  double water_kg = 0.0;
  double air_mol = 0.0;
  double air_excess_k = 0.0;  ///< the pocket above the water around it, after a quick squeeze
};

/// Amount of air in a moist pocket of this volume at one atmosphere.
double air_mol(double volume_m3, double temperature_k);
/// Volume of the pocket when the gauge shows this absolute pressure.
double air_volume(const Plant& plant, const State& state, double gauge_pa);
/// Water that the boiler holds at this pressure; `state.water_kg` is not looked at.
double mass_at(const Plant& plant, const State& state, double gauge_pa);
/// The pressure at which it holds `state.water_kg`. Throws std::runtime_error when there is none
/// between 2000 Pa and 400 bar.
double pressure_of(const Plant& plant, const State& state, double guess_pa);

/// Heat between water, steel and the air around, over `seconds` (at most about ten).
/// `ambient_k` holds for the middle of the step.
void exchange_heat(const Plant& plant, State& state, const std::array<double, groups>& ambient_k,
                   double seconds);
/// What a change of pressure does at once: water warms by alpha T / (rho cp) dP, stretched steel
/// cools by alpha_s T sum(sigma) / (rho c), a pocket of air warms as an ideal gas (7/5).
void squeeze(const Plant& plant, State& state, double gauge_pa, double change_pa);

}  // namespace steamworthy::hold_study
