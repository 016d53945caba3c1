#include "hold_study/plant.h"

#include <gtest/gtest.h>

#include <cmath>

#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

/// One cubic metre at the gauge's level with a shell of 1e-10/Pa: the body of the reference table.
Plant simple_plant() {
  Plant plant;
  for (Group& group : plant.group) {
    group.volume_m3 = 1.0 / 3.0;
    group.growth_per_pa = 1e-10;
    group.steel_kg = 400.0;
  }
  return plant;
}

State filled(const Plant& plant, double celsius, double gauge_pa, double air_m3 = 0.0) {
  State state;
  state.water_k.fill(celsius + zero_celsius_k);
  state.steel_k = state.water_k;
  state.air_mol = air_mol(air_m3, state.water_k[0]);
  state.water_kg = mass_at(plant, state, gauge_pa);
  return state;
}

struct WarmRow {
  double celsius;
  double bar_per_k[3];  // at 1, 45, 150 bar gauge
};
class Warming : public testing::TestWithParam<WarmRow> {};
TEST_P(Warming, OneKelvinGivesTheBarsOfTheReferenceTable) {
  // Independent reference table (Python, IAPWS-IF97), two decimals as printed; 2 %.
  const double gauges[3] = {1e5, 45e5, 150e5};
  const Plant plant = simple_plant();
  for (int i = 0; i < 3; ++i) {
    const double p = atmosphere_pa + gauges[i];
    State state = filled(plant, GetParam().celsius, p);
    double pressure[2];
    for (int side = 0; side < 2; ++side) {
      const double t = GetParam().celsius + zero_celsius_k + (side == 0 ? -0.05 : 0.05);
      state.water_k.fill(t);
      state.steel_k.fill(t);
      pressure[side] = pressure_of(plant, state, p);
    }
    const double expected = GetParam().bar_per_k[i];
    EXPECT_NEAR((pressure[1] - pressure[0]) / (0.1 * 1e5), expected, 0.02 * expected + 0.005)
        << GetParam().celsius << " °C, " << gauges[i] / 1e5 << " bar";
  }
}
INSTANTIATE_TEST_SUITE_P(
    Table, Warming,
    testing::Values(WarmRow{10, {0.93, 1.13, 1.59}}, WarmRow{15, {2.06, 2.23, 2.63}},
                    WarmRow{20, {3.09, 3.23, 3.58}}, WarmRow{25, {4.04, 4.16, 4.47}},
                    WarmRow{30, {4.91, 5.02, 5.29}}, WarmRow{40, {6.48, 6.56, 6.76}},
                    WarmRow{50, {7.83, 7.89, 8.04}}));

TEST(Air, IsSqueezedAsTheGasLawSays) {
  // Boyle: volume times pressure above the vapour's stays, at the pocket's own level.
  Plant plant = simple_plant();
  plant.pocket_level_m = -1.0;
  const State state = filled(plant, 25.0, atmosphere_pa, 0.010);
  const double head = 998.0 * 9.80665;
  const double vapour = 3169.0;  // Pa at 25 °C, steam tables
  for (const double bar : {0.0, 1.0, 10.0, 45.0}) {
    const double p = atmosphere_pa + bar * 1e5;
    const double expected = 0.010 * (atmosphere_pa - vapour) / (p + head - vapour);
    EXPECT_NEAR(air_volume(plant, state, p) / expected, 1.0, 1e-4) << bar;
  }
}

TEST(Air, TakesTheLitresThatTheGasLawLeaves) {
  const Plant plant = simple_plant();
  const State with = filled(plant, 25.0, atmosphere_pa, 0.005);
  const State without = filled(plant, 25.0, atmosphere_pa);
  const double p = atmosphere_pa + 45e5;
  const double taken =
      (mass_at(plant, with, p) - with.water_kg) - (mass_at(plant, without, p) - without.water_kg);
  // 5 L less what is left of it under 46.3 bar, at the water's density before and after.
  const double left = 0.005 * (atmosphere_pa - 3169.0) / (p - 3169.0);
  EXPECT_NEAR(taken, 0.005 * 997.05 - left * density(p, 298.15), 2e-4);
}

TEST(Squeeze, WarmsWaterAndCoolsSteelByTheFiguresOfTheModel) {
  // Figures of the independent model at 25 °C: 0.084 K for 45 bar (0.0019 K a bar), 0.28 K for 150;
  // 0.93 mK per MPa of summed stress. Within a unit of their last place.
  Plant plant = simple_plant();
  plant.group[0].stress_per_pressure = 12.0;
  for (const auto& [bar, kelvin, unit] :
       {std::array{45.0, 0.084, 1e-3}, std::array{150.0, 0.28, 1e-2}}) {
    State state = filled(plant, 25.0, atmosphere_pa);
    squeeze(plant, state, atmosphere_pa + bar * 1e5, bar * 1e5);
    EXPECT_NEAR(state.water_k[0] - 298.15, kelvin, unit) << bar;
    const double summed_mpa = 12.0 * bar / 10.0;
    EXPECT_NEAR((298.15 - state.steel_k[0]) * 1e3 / summed_mpa, 0.93, 0.005) << bar;
  }
}

TEST(Squeeze, MakesWaterStifferByElevenPartsInAThousand) {
  // The adiabatic compressibility is 1.1 % below the isothermal one at 25 °C; here in a rigid body.
  Plant plant = simple_plant();
  for (Group& group : plant.group) group.growth_per_pa = 0.0;
  plant.steel.expansion_per_k = 0.0;
  const double p = atmosphere_pa + 10e5;
  State state = filled(plant, 25.0, atmosphere_pa);
  squeeze(plant, state, p, 10e5);
  const double adiabatic = mass_at(plant, state, p) - state.water_kg;
  const State cold = filled(plant, 25.0, atmosphere_pa);
  const double isothermal = mass_at(plant, cold, p) - cold.water_kg;
  EXPECT_NEAR(1.0 - adiabatic / isothermal, 0.011, 0.0005);
}

TEST(Squeeze, WarmsAPocketAsAnIdealGas) {
  // T (P/P0)^(2/7) for air, in many small steps.
  const Plant plant = simple_plant();
  State state = filled(plant, 20.0, atmosphere_pa, 0.001);
  const double start = state.water_k[0];
  double p = atmosphere_pa;
  for (int i = 0; i < 2000; ++i) squeeze(plant, state, p += 100.0, 100.0);
  const double expected = start * std::pow(p / atmosphere_pa, 2.0 / 7.0);
  EXPECT_NEAR(state.water_k[0] + state.air_excess_k, expected, 0.05);
}

TEST(Heat, IsKeptAndEvensOut) {
  Plant plant = simple_plant();
  for (Group& group : plant.group) group.to_steel_w_per_k = 2000.0;
  plant.mixing_w_per_k = 500.0;
  State state = filled(plant, 20.0, atmosphere_pa);
  state.water_k = {295.0, 293.0, 291.0};
  state.steel_k = {290.0, 300.0, 293.0};
  const auto heat = [&] {
    double sum = 0.0;
    for (std::size_t g = 0; g < groups; ++g) {
      sum += plant.group[g].volume_m3 * 998.0 * 4180.0 * state.water_k[g] +
             plant.group[g].steel_kg * 470.0 * state.steel_k[g];
    }
    return sum;
  };
  const double before = heat();
  for (int i = 0; i < 400000; ++i) exchange_heat(plant, state, {}, 1.0);
  EXPECT_NEAR(heat() / before, 1.0, 1e-9);
  for (std::size_t g = 0; g < groups; ++g) {
    EXPECT_NEAR(state.water_k[g], state.water_k[0], 1e-6);
    EXPECT_NEAR(state.steel_k[g], state.water_k[0], 1e-6);
  }
}

TEST(Heat, LeavesAtTheRateOfItsConductance) {
  // Steel and water that exchange heat quickly cool as one lump: exp(-t UA/C).
  Plant plant = simple_plant();
  for (Group& group : plant.group) {
    group.to_steel_w_per_k = 40000.0;
    group.to_air_w_per_k = 20.0;
  }
  State state = filled(plant, 30.0, atmosphere_pa);
  const double ambient = 293.15;
  for (int i = 0; i < 36000; ++i) exchange_heat(plant, state, {ambient, ambient, ambient}, 1.0);
  const double capacity = 998.0 * 4180.0 / 3.0 + 400.0 * 470.0;
  EXPECT_NEAR((state.water_k[0] - ambient) / 10.0, std::exp(-36000.0 * 20.0 / capacity), 1e-3);
}

}  // namespace
}  // namespace steamworthy::hold_study
