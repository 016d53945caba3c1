#include "hold_study/cases.h"

#include <algorithm>
#include <cmath>

#include "hold_study/water_kell.h"
#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

constexpr double litre = 1e-3;
constexpr double minute_s = 60.0;

/// Around the boiler: an offset from its water for each case and each group, a ramp, a sinusoid.
Ambient random_ambient(Random& random, double start_k, double disorder) {
  const double offset = random.normal(0.0, 7.0) * disorder;
  const double ramp_per_s = random.normal(0.0, 1.0) / 3600.0;
  const double swing = random.uniform(0.0, 2.0);
  const double phase = random.uniform(0.0, 2.0 * numerics::pi);
  const double period_s = random.uniform(1800.0, 10800.0);
  std::array<double, groups> local{};
  for (double& each : local) each = random.normal(0.0, 1.0);
  return [=](double seconds) {
    const double common = start_k + offset + ramp_per_s * seconds +
                          swing * numerics::sin(2.0 * numerics::pi * seconds / period_s + phase);
    std::array<double, groups> air{};
    for (std::size_t g = 0; g < groups; ++g) air[g] = common + local[g];
    return air;
  };
}

Disorder random_disorder(Random& random, double disorder) {
  Disorder start;
  for (double& each : start.water_k) each = random.normal(0.0, 0.5) * disorder;
  for (double& each : start.steel_k) each = random.normal(0.0, 0.4) * disorder;
  return start;
}

TestPlan random_plan(Random& random) {
  TestPlan plan;
  const double test_pa = 1e5 * random.choice({10, 16, 25, 32, 45, 60, 67.5, 90, 120, 150});
  plan.hold_s = minute_s * random.choice({20, 30, 30, 60, 60, 120});
  const double stages = random.choice({1, 2, 3});
  if (stages == 2) plan.stages_pa_gauge = {0.5 * test_pa};
  if (stages == 3) plan.stages_pa_gauge = {0.3 * test_pa, 0.7 * test_pa};
  plan.stages_pa_gauge.push_back(test_pa);
  return plan;
}

/// A hand pump for little water, a motor pump for much: an hour's pumping at most.
Pump random_pump(Random& random, double volume_m3, double air_m3, double test_pa, double start_k) {
  const double litres = (volume_m3 * 5.5e-10 * test_pa + air_m3) / litre;
  const bool motor = litres > 15.0 || random.chance(0.4);
  Pump pump;
  const double litres_per_min =
      motor ? std::max(random.uniform(1.0, 6.0), litres / 60.0) : random.uniform(0.4, 1.0);
  pump.rate_m3_s = litres_per_min * litre / minute_s;
  pump.stroke_m3 = 1e-6 * (motor ? random.uniform(3.0, 10.0) : random.uniform(15.0, 45.0));
  pump.supply_k = start_k + random.normal(0.0, 3.0);
  return pump;
}

Leak random_leak(Random& random, double hold_s) {
  Leak leak;
  const bool leaks = random.chance(0.5);
  const double size = random.log_uniform(2.0, 400.0);
  leak.exponent = random.choice({0.5, 0.5, 1.0});
  const bool within = random.chance(0.2);
  const double begins = random.uniform(0.2, 0.6) * hold_s;
  if (!leaks) return leak;
  leak.at_test_pressure_m3_s = size * ml_per_min;
  if (within) leak.begins_in_hold_s = begins;
  return leak;
}

Instruments random_instruments(Random& random) {
  Instruments set;
  set.every_s = random.choice({1, 5, 10, 30, 60, 300});
  set.gauge_step_pa = 1e5 * random.choice({0.01, 0.05, 0.1, 0.2, 0.5});
  set.gauge_noise_pa = 1e5 * random.choice({0.002, 0.01, 0.03});
  set.thermometer_step_k = random.choice({0.01, 0.1, 0.1, 0.5});
  set.thermometer_noise_k = random.choice({0.005, 0.02, 0.05});
  set.water_group = static_cast<std::size_t>(random.choice({0, 0, 2, 1}));
  set.metal_group = static_cast<std::size_t>(random.choice({1, 1, 0, 2}));
  set.pump_scale_error = random.normal(0.0, 0.02);
  set.water_offset_k = random.normal(0.0, 0.3);
  set.metal_offset_k = random.normal(0.0, 0.5);
  set.metal_lag_s = random.uniform(20.0, 200.0);
  return set;
}

double trapped_air(Random& random, double volume_m3) {
  const bool none = random.chance(0.15);
  const double share = random.log_uniform(5e-5, 8e-3);
  return none ? 0.0 : volume_m3 * share;
}

/// A valve that passes in, in one case of twelve; a pump check that passes, in one of twelve or in
/// all when the pump side is left shut.
void let_pass(Random& random, Trial& test, const Spread& spread) {
  const double test_pa = test.plan.stages_pa_gauge.back();
  const bool comes_in = random.chance(1.0 / 12.0);
  const double size = random.log_uniform(2.0, 200.0) * ml_per_min;
  const double main = test_pa + 1e5 * random.uniform(5.0, 40.0);
  if (comes_in) test.inflow = {size, main};
  const bool check_passes = random.chance(1.0 / 12.0);
  const double back = random.log_uniform(2.0, 50.0) * ml_per_min;
  if (check_passes || !spread.pump_side_open) test.pump.check_passes_m3_s = back;
  test.plan.test_valve_shut = spread.pump_side_open;
}

}  // namespace

Plant random_plant(Random& random) {
  Plant plant;
  const double volume = random.log_uniform(1.5, 45.0);
  const std::array<double, groups> shares = random.shares({8, 10, 5});
  const std::array<std::array<double, 2>, groups> radius_by_thickness{
      {{9.0, 14.0}, {5.0, 9.0}, {5.0, 12.0}}};
  // Half the bore; heads and headers make drums a little softer than a bare cylinder.
  const std::array<double, groups> bore{0.35 * numerics::pow(volume / 10.0, 0.2), 0.024, 0.2};
  const std::array<double, groups> softer{1.06, 1.0, 1.03};
  const std::array<std::array<double, 2>, groups> to_air{{{0.5, 3.0}, {0.1, 1.0}, {0.5, 3.0}}};
  const double height = random.uniform(3.0, 12.0);
  const std::array<double, groups> level{-random.uniform(0.3, 1.5), -0.5 - height / 2,
                                         -0.5 - height};
  for (std::size_t g = 0; g < groups; ++g) {
    Group& group = plant.group[g];
    const double ratio = random.uniform(radius_by_thickness[g][0], radius_by_thickness[g][1]);
    group.volume_m3 = volume * shares[g];
    group.growth_per_pa = softer[g] * thin_cylinder_growth(plant.steel, ratio);
    group.level_m = level[g];
    group.steel_kg = group.volume_m3 * (2.0 / ratio + 1.0 / (ratio * ratio)) * plant.steel.density;
    group.stress_per_pressure = 1.5 * ratio;
    const double inner_m2 = 2.0 * group.volume_m3 / (bore[g] * random.uniform(0.8, 1.2));
    group.to_steel_w_per_k = inner_m2 * random.uniform(80.0, 250.0);
    group.to_air_w_per_k = 1.15 * inner_m2 * random.uniform(to_air[g][0], to_air[g][1]);
  }
  plant.pocket_level_m = level[0];
  plant.mixing_w_per_k = 997.0 * 4180.0 * volume * random.log_uniform(1.0 / 40000, 1.0 / 4000);
  return plant;
}

Case make_case(std::uint64_t seed, std::uint64_t number, const Spread& spread) {
  Random random(seed, number);
  Case made;
  made.seed = seed;
  made.number = number;
  Trial& test = made.test;
  test.plant = random_plant(random);
  const double volume = test.plant.volume_m3();
  test.plan = random_plan(random);
  const double test_pa = test.plan.stages_pa_gauge.back();
  test.start_k = zero_celsius_k + random.uniform(10.0, 45.0);
  test.ambient = random_ambient(random, test.start_k, spread.thermal_disorder);
  test.disorder = random_disorder(random, spread.thermal_disorder);
  test.leak = random_leak(random, test.plan.hold_s);
  test.air_m3 = trapped_air(random, volume);
  if (test.air_m3 > 0.0) {
    const double squeezed = test.air_m3 / std::max(test_pa / atmosphere_pa, 1.0);
    test.air_surface_m2 = std::min(squeezed / 0.01 + 0.02, 3.0);
  }
  test.pump = random_pump(random, volume, test.air_m3, test_pa, test.start_k);
  let_pass(random, test, spread);
  // A crew gives up when a stage takes more than twice the water that it should.
  test.plan.longest_pumping_s =
      300.0 + 2.0 * (volume * 5.5e-10 * test_pa + test.air_m3) / test.pump.rate_m3_s;
  made.instruments = random_instruments(random);
  made.belief.volume_m3 = volume * (1.0 + random.normal(0.0, 0.02));
  made.belief.growth_per_pa = test.plant.growth_per_pa() * (1.0 + random.normal(0.0, 0.10));
  made.belief.pocket_below_gauge_m = -test.plant.pocket_level_m + random.normal(0.0, 0.15);
  made.course = simulate(test);
  made.log = observe(made.course, made.instruments, random);
  return made;
}

double Case::net_loss_mean() const { return course.mean_loss(course.hold_start_s, course.end_s()); }

double Case::net_loss_at_end() const {
  return course.mean_loss(course.end_s() - 120.0, course.end_s());
}

bool Case::nothing_passes() const {
  const bool check = !test.plan.test_valve_shut && test.pump.check_passes_m3_s > 0.0;
  return test.leak.at_test_pressure_m3_s == 0.0 && test.inflow.at_test_pressure_m3_s == 0.0 &&
         !check;
}

}  // namespace steamworthy::hold_study
