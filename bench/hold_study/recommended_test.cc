// The analysis asked about cases whose answer is plain. What it is worth on 500 random ones is told
// by tools/hold_study.sh.
#include "hold_study/recommended.h"

#include <gtest/gtest.h>

#include "hold_study/logs.h"

namespace steamworthy::hold_study {
namespace {

TEST(Recommended, IsToldTheBeliefAndNotTheTruth) {
  const Case made = make_case(1, 1);
  const hold::HoldInput input = input_of(made);
  EXPECT_EQ(input.boiler.volume.si(), made.belief.volume_m3);
  EXPECT_NE(input.boiler.volume.si(), made.test.plant.volume_m3());
  EXPECT_EQ(input.boiler.growth.si(), made.belief.growth_per_pa);
  EXPECT_EQ(input.record.seconds.size(), made.log.seconds.size());
  EXPECT_FALSE(input.pump.supply);
}

TEST(Recommended, SaysGainingWhereAValvePassesIn) {
  const Answer answer = recommended(named_case("gaining", 11, 10.0));
  EXPECT_EQ(answer.says, Says::Gaining) << answer.refused << answer.reason;
}

TEST(Recommended, SaysLosingAndCoversALeakOfSixty) {
  const Case made = named_case("losing", 21, 10.0);
  const Answer answer = recommended(made);
  EXPECT_EQ(answer.says, Says::Losing) << answer.refused << answer.reason;
  ASSERT_TRUE(answer.net_loss);
  EXPECT_NEAR(answer.net_loss->estimate, made.net_loss_mean() / ml_per_min, 10.0);
}

TEST(Recommended, CannotTellWhileThePumpSideIsNotHungOpen) {
  const Answer answer = recommended(named_case("not-bled", 31, 10.0));
  EXPECT_EQ(answer.says, Says::CannotTell);
  EXPECT_FALSE(answer.net_loss);
}

}  // namespace
}  // namespace steamworthy::hold_study
