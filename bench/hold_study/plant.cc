#include "hold_study/plant.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

constexpr double gravity = 9.80665;
constexpr double gas_constant = 8.314462618;
constexpr double head_density = 998.0;
constexpr double water_heat = 4180.0;
constexpr double reference_k = 293.15;

double pressure_at(double gauge_pa, double level_m) {
  return gauge_pa - head_density * gravity * level_m;
}

double air_temperature(const State& state) { return state.water_k[0] + state.air_excess_k; }

/// Above the vapour's pressure by enough to divide by.
double dry_pressure(const Plant& plant, const State& state, double gauge_pa) {
  const double dry =
      pressure_at(gauge_pa, plant.pocket_level_m) - vapour_pressure(state.water_k[0]);
  return std::max(dry, 500.0);
}

double steel_volume(const Plant& plant, const Group& group, double steel_k, double pressure_pa) {
  return group.volume_m3 * (1.0 + 3.0 * plant.steel.expansion_per_k * (steel_k - reference_k) +
                            group.growth_per_pa * (pressure_pa - atmosphere_pa));
}

/// dm/dP at constant temperatures and air.
double mass_slope(const Plant& plant, const State& state, double gauge_pa) {
  double slope = 0.0;
  for (std::size_t g = 0; g < groups; ++g) {
    const Group& group = plant.group[g];
    const double p = pressure_at(gauge_pa, group.level_m);
    const double rho = density(p, state.water_k[g]);
    slope += rho * (steel_volume(plant, group, state.steel_k[g], p) *
                        compressibility(p, state.water_k[g]) +
                    group.volume_m3 * group.growth_per_pa);
  }
  const double rho = density(gauge_pa, state.water_k[0]);
  const double air = air_volume(plant, state, gauge_pa);
  return slope + rho * air *
                     (1.0 / dry_pressure(plant, state, gauge_pa) -
                      compressibility(gauge_pa, state.water_k[0]));
}

struct Temperatures {
  std::array<double, groups> water{};
  std::array<double, groups> steel{};
};

/// Kelvins per second.
Temperatures warming(const Plant& plant, const Temperatures& now,
                     const std::array<double, groups>& ambient_k) {
  Temperatures rate;
  for (std::size_t g = 0; g < groups; ++g) {
    const Group& group = plant.group[g];
    const double across = group.to_steel_w_per_k * (now.steel[g] - now.water[g]);
    rate.water[g] += across;
    rate.steel[g] += group.to_air_w_per_k * (ambient_k[g] - now.steel[g]) - across;
    if (g + 1 == groups) continue;
    const double mixed = plant.mixing_w_per_k * (now.water[g + 1] - now.water[g]);
    rate.water[g] += mixed;
    rate.water[g + 1] -= mixed;
  }
  for (std::size_t g = 0; g < groups; ++g) {
    rate.water[g] /= plant.group[g].volume_m3 * head_density * water_heat;
    rate.steel[g] /= plant.group[g].steel_kg * plant.steel.specific_heat;
  }
  return rate;
}

Temperatures moved(const Temperatures& from, const Temperatures& rate, double seconds) {
  Temperatures to = from;
  for (std::size_t g = 0; g < groups; ++g) {
    to.water[g] += seconds * rate.water[g];
    to.steel[g] += seconds * rate.steel[g];
  }
  return to;
}

}  // namespace

double Plant::volume_m3() const {
  double sum = 0.0;
  for (const Group& each : group) sum += each.volume_m3;
  return sum;
}

double Plant::growth_per_pa() const {
  double sum = 0.0;
  for (const Group& each : group) sum += each.volume_m3 * each.growth_per_pa;
  return sum / volume_m3();
}

double thin_cylinder_growth(const Steel& steel, double radius_by_thickness) {
  return radius_by_thickness * (5.0 - 4.0 * steel.poisson) / (2.0 * steel.modulus_pa);
}

double air_mol(double volume_m3, double temperature_k) {
  return volume_m3 * (atmosphere_pa - vapour_pressure(temperature_k)) /
         (gas_constant * temperature_k);
}

double air_volume(const Plant& plant, const State& state, double gauge_pa) {
  if (state.air_mol <= 0.0) return 0.0;
  return state.air_mol * gas_constant * air_temperature(state) /
         dry_pressure(plant, state, gauge_pa);
}

double mass_at(const Plant& plant, const State& state, double gauge_pa) {
  double mass = 0.0;
  for (std::size_t g = 0; g < groups; ++g) {
    const Group& group = plant.group[g];
    const double p = pressure_at(gauge_pa, group.level_m);
    mass += steel_volume(plant, group, state.steel_k[g], p) * density(p, state.water_k[g]);
  }
  return mass - density(gauge_pa, state.water_k[0]) * air_volume(plant, state, gauge_pa);
}

double pressure_of(const Plant& plant, const State& state, double guess_pa) {
  constexpr double lowest = 2e3;
  constexpr double highest = 400e5;
  double p = guess_pa;
  for (int turn = 0; turn < 100; ++turn) {
    const double miss = state.water_kg - mass_at(plant, state, p);
    const double step = miss / mass_slope(plant, state, p);
    const double next = std::clamp(p + std::clamp(step, -0.6 * p, 2.0 * p + 1e5), lowest, highest);
    // A hundredth of a pascal: far below any gauge, far above the rounding of the mass.
    if (std::fabs(next - p) < 0.01) return next;
    p = next;
  }
  throw std::runtime_error("hold_study: no pressure holds this much water");
}

void exchange_heat(const Plant& plant, State& state, const std::array<double, groups>& ambient_k,
                   double seconds) {
  const Temperatures start{state.water_k, state.steel_k};
  const Temperatures a = warming(plant, start, ambient_k);
  const Temperatures b = warming(plant, moved(start, a, seconds / 2), ambient_k);
  const Temperatures c = warming(plant, moved(start, b, seconds / 2), ambient_k);
  const Temperatures d = warming(plant, moved(start, c, seconds), ambient_k);
  for (std::size_t g = 0; g < groups; ++g) {
    state.water_k[g] += seconds / 6 * (a.water[g] + 2 * b.water[g] + 2 * c.water[g] + d.water[g]);
    state.steel_k[g] += seconds / 6 * (a.steel[g] + 2 * b.steel[g] + 2 * c.steel[g] + d.steel[g]);
  }
}

void squeeze(const Plant& plant, State& state, double gauge_pa, double change_pa) {
  const double middle = gauge_pa - change_pa / 2;
  const Steel& steel = plant.steel;
  if (state.air_mol > 0.0) {
    state.air_excess_k += 2.0 / 7.0 * air_temperature(state) * change_pa /
                          std::max(pressure_at(middle, plant.pocket_level_m), 1e4);
  }
  for (std::size_t g = 0; g < groups; ++g) {
    const double t = state.water_k[g];
    state.water_k[g] += expansivity(middle, t) * t / (density(middle, t) * water_heat) * change_pa;
    state.steel_k[g] -= steel.expansion_per_k * state.steel_k[g] *
                        plant.group[g].stress_per_pressure / (steel.density * steel.specific_heat) *
                        change_pa;
  }
}

}  // namespace steamworthy::hold_study
