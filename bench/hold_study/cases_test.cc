#include "hold_study/cases.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>

namespace steamworthy::hold_study {
namespace {

bool same_bytes(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}

TEST(Cases, SameSeedAndNumberGiveTheSameBytes) {
  const Case a = make_case(5, 11);
  const Case b = make_case(5, 11);
  EXPECT_TRUE(same_bytes(a.log.seconds, b.log.seconds));
  EXPECT_TRUE(same_bytes(a.log.pressure_pa_gauge, b.log.pressure_pa_gauge));
  EXPECT_TRUE(same_bytes(a.log.water_k, b.log.water_k));
  EXPECT_TRUE(same_bytes(a.log.metal_k, b.log.metal_k));
  EXPECT_TRUE(same_bytes(a.log.pumped_m3, b.log.pumped_m3));
  EXPECT_FALSE(same_bytes(a.log.pressure_pa_gauge, make_case(5, 12).log.pressure_pa_gauge));
  EXPECT_FALSE(same_bytes(a.log.pressure_pa_gauge, make_case(6, 11).log.pressure_pa_gauge));
}

TEST(Cases, CoverTheRangesThatTheStudyPromises) {
  int leaks = 0;
  int within = 0;
  int comes_in = 0;
  int check_passes = 0;
  int airless = 0;
  int manual = 0;
  constexpr int n = 60;
  for (int number = 1; number <= n; ++number) {
    const Case made = make_case(3, static_cast<std::uint64_t>(number));
    const double volume = made.test.plant.volume_m3();
    EXPECT_GE(volume, 1.5);
    EXPECT_LE(volume, 45.0);
    EXPECT_GE(made.hold_s(), 1200.0);
    EXPECT_LE(made.hold_s(), 7200.0);
    EXPECT_NEAR(made.belief.volume_m3 / volume, 1.0, 0.09);
    EXPECT_NEAR(made.belief.growth_per_pa / made.test.plant.growth_per_pa(), 1.0, 0.45);
    // The crew reaches the test pressure, or a large leak keeps it from doing so.
    const auto start = static_cast<std::size_t>(made.course.hold_start_s);
    const double reached = made.course.pressure_pa[start] - 101325.0;
    const bool passes = !made.nothing_passes() || made.test.pump.check_passes_m3_s > 0.0;
    if (!passes) {
      EXPECT_GE(reached, made.test.plan.stages_pa_gauge.back());
    }
    EXPECT_LE(reached, made.test.plan.stages_pa_gauge.back() * 1.02 + 2e5);
    for (const double value : made.log.pressure_pa_gauge) ASSERT_TRUE(std::isfinite(value));
    leaks += made.test.leak.at_test_pressure_m3_s > 0.0;
    within += made.begins_within();
    comes_in += made.test.inflow.at_test_pressure_m3_s > 0.0;
    check_passes += made.test.pump.check_passes_m3_s > 0.0;
    airless += made.test.air_m3 == 0.0;
    manual += made.instruments.every_s == 300.0;
  }
  EXPECT_NEAR(leaks, 30, 15);
  EXPECT_NEAR(within, 6, 5);
  EXPECT_NEAR(comes_in, 5, 4);
  EXPECT_NEAR(check_passes, 5, 4);
  EXPECT_NEAR(airless, 9, 8);
  EXPECT_NEAR(manual, 10, 9);
}

TEST(Cases, PumpSideLeftShutMeansAPassingCheckEachTime) {
  Spread spread;
  spread.pump_side_open = false;
  const Case made = make_case(4, 1, spread);
  EXPECT_FALSE(made.test.plan.test_valve_shut);
  EXPECT_GT(made.net_loss_mean(), made.test.inflow.at_test_pressure_m3_s > 0.0 ? -1.0 : 0.0);
}

TEST(Logger, RoundsToItsStepsAndScalesThePump) {
  const Case made = make_case(9, 2);
  const Instruments& set = made.instruments;
  for (std::size_t i = 0; i < made.log.seconds.size(); ++i) {
    const double steps = made.log.pressure_pa_gauge[i] / set.gauge_step_pa;
    EXPECT_NEAR(steps, std::round(steps), 1e-6);
    EXPECT_EQ(std::fmod(made.log.seconds[i], set.every_s), 0.0);
  }
  EXPECT_NEAR(made.log.pumped_m3.back() * (1.0 + set.pump_scale_error),
              made.course.pumped_m3.back(), 1e-12 + made.course.pumped_m3.back() * 1e-2);
}

TEST(Logger, StrappedOnProbeIsLateAndSeesTheAir) {
  // A step of the steel by 1 K in still air 10 K warmer: (1 - 0.1) + 0.1 x 10 = 1.9 K, and 63 %
  // of it after one lag.
  Course course;
  for (int i = 0; i <= 3000; ++i) {
    course.seconds.push_back(i);
    course.pressure_pa.push_back(101325.0);
    course.water_k.push_back({300.0, 300.0, 300.0});
    course.steel_k.push_back(i == 0 ? std::array{300.0, 300.0, 300.0}
                                    : std::array{301.0, 301.0, 301.0});
    course.ambient_k.push_back(i == 0 ? std::array{300.0, 300.0, 300.0}
                                      : std::array{310.0, 310.0, 310.0});
    course.pumped_m3.push_back(0.0);
  }
  Instruments set;
  set.every_s = 1.0;
  set.metal_lag_s = 100.0;
  set.thermometer_noise_k = 0.0;
  set.thermometer_step_k = 0.0;
  Random random(1, 1);
  const Log log = observe(course, set, random);
  EXPECT_NEAR(log.metal_k[100] - 300.0, 1.9 * (1.0 - std::exp(-1.0)), 1e-6);
  EXPECT_NEAR(log.metal_k.back() - 300.0, 1.9, 1e-6);
}

}  // namespace
}  // namespace steamworthy::hold_study
