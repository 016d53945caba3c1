#include "hold_study/naive.h"

#include <gtest/gtest.h>

#include <cmath>

#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

TEST(StraightLine, GivesTheSlopeAndItsErrorOfATextbookExample) {
  // By hand: x 1..4, y 1, 3, 2, 5: slope 1.1, intercept 0, residual squares 2.7, error
  // sqrt(2.7 / 2 / 5).
  const auto line = straight_line({1, 2, 3, 4}, {1, 3, 2, 5});
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->slope, 1.1, 1e-12);
  EXPECT_NEAR(line->at_zero, 0.0, 1e-12);
  EXPECT_NEAR(line->slope_error, std::sqrt(2.7 / 2.0 / 5.0), 1e-12);
}

TEST(StraightLine, NeedsThreePointsAndTwoPlaces) {
  EXPECT_FALSE(straight_line({1, 2}, {1, 2}));
  EXPECT_FALSE(straight_line({1, 1, 1}, {1, 2, 3}));
}

/// One cubic metre in a shell of 1e-10/Pa at 25 °C and 45 bar, read each minute without noise.
Case ideal(double pa_per_min, double k_per_min) {
  Case made;
  made.test.plan.hold_s = 3600.0;
  made.belief = {1.0, 1e-10, 0.0};
  for (int i = 0; i <= 60; ++i) {
    made.log.seconds.push_back(60.0 * i);
    made.log.pressure_pa_gauge.push_back(45e5 + pa_per_min * i);
    made.log.water_k.push_back(298.15 + k_per_min * i);
    made.log.pumped_m3.push_back(0.0);
  }
  return made;
}

TEST(Naive, RawSlopeIsTheFallTimesTheStiffness) {
  // K = 1 m3 (4.466 + 1) 1e-10/Pa (reference table, 25 °C, 45 bar; Kell is 0.3 % above):
  // 0.0547 mL per kPa per litre... 1 kPa a minute is 0.547 mL a minute.
  const Answer answer = raw_slope(ideal(-1000.0, 0.0));
  ASSERT_TRUE(answer.net_loss);
  EXPECT_NEAR(answer.net_loss->estimate, 0.5466, 0.003);
  EXPECT_EQ(answer.says, Says::NoLoss);
}

TEST(Naive, CorrectedSlopeTakesOffWhatCoolingExplains) {
  // 4.16 bar/K (reference table, 25 °C, 45 bar) at 1 mK a minute: nothing is left.
  const Answer answer = corrected_slope(ideal(-416.0, -1e-3));
  ASSERT_TRUE(answer.net_loss);
  EXPECT_NEAR(answer.net_loss->estimate, 0.0, 0.003);
  EXPECT_NEAR(raw_slope(ideal(-416.0, -1e-3)).net_loss->estimate, 0.2274, 0.002);
}

TEST(Naive, JudgesByTheIntervalAlone) {
  EXPECT_EQ(raw_slope(ideal(-10000.0, 0.0)).says, Says::Losing);
  EXPECT_EQ(raw_slope(ideal(+10000.0, 0.0)).says, Says::Gaining);
}

TEST(Naive, InterceptIsTheAirOfAStraightPumpUp) {
  // 3 L before the gauge moves, then 1 L a bar: the upper half's line says 3 L.
  Case made;
  made.instruments.every_s = 10.0;
  made.course.hold_start_s = 1000.0;
  for (int i = 0; i <= 100; ++i) {
    const double gauge_bar = std::max(0.0, 0.1 * i - 1.0);
    made.log.seconds.push_back(10.0 * i);
    made.log.pressure_pa_gauge.push_back(gauge_bar * 1e5);
    made.log.pumped_m3.push_back(gauge_bar == 0.0 ? 3e-5 * i : 3e-3 + 1e-3 * gauge_bar);
  }
  ASSERT_TRUE(intercept_air(made));
  EXPECT_NEAR(*intercept_air(made), 3.0, 1e-9);
}

}  // namespace
}  // namespace steamworthy::hold_study
