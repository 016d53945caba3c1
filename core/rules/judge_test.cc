// judge_test.cc — measured temperatures and falls of pressure put to a rule.
#include "rules/judge.h"

#include <gtest/gtest.h>

#include "base/error.h"
#include "rules/sample_rules_test.h"

namespace steamworthy::rules {
namespace {

using samples::strength;
using units::celsius;
using units::fahrenheit;
using units::minutes;
using units::psi_gauge;

Rule with_drop() {
  Rule rule = strength();
  rule.drop = AllowedDrop{0.1, {minutes(15.0), "15 min"}, ""};
  return rule;
}

// UFC 3-430-07, as read: not more than 10 % in 15 minutes. 750 psi may fall to 675 psi.
TEST(JudgeDrop, TenPercentInFifteenMinutes) {
  const auto judged = [](double end, double time) {
    return judge_drop(with_drop(), psi_gauge(750.0), psi_gauge(end), minutes(time));
  };
  EXPECT_EQ(judged(676.0, 15.0).verdict, DropVerdict::RuleMet);
  EXPECT_NEAR(judged(676.0, 15.0).least.value->si / units::pascals_per_psi, 675.0, 1e-9);
  EXPECT_EQ(judged(675.0, 15.0).verdict, DropVerdict::RuleMet) << "the limit itself";
  EXPECT_EQ(judged(674.0, 15.0).verdict, DropVerdict::RuleNotMet);
  EXPECT_EQ(judged(674.0, 5.0).verdict, DropVerdict::RuleNotMet) << "it will not rise again";
  EXPECT_EQ(judged(740.0, 14.9).verdict, DropVerdict::CannotTell);
  EXPECT_EQ(judged(740.0, 14.9).why.key, "rules.drop_too_short");
  EXPECT_EQ(judged(676.0, 60.0).verdict, DropVerdict::RuleMet);
  EXPECT_EQ(judged(674.0, 60.0).verdict, DropVerdict::CannotTell);
  EXPECT_EQ(judged(674.0, 60.0).why.key, "rules.drop_not_read_in_time");
}

TEST(JudgeDrop, RuleMetIsNeverTight) {
  const auto judged = judge_drop(with_drop(), psi_gauge(750.0), psi_gauge(750.0), minutes(15.0));
  EXPECT_EQ(judged.why.key, "rules.drop_met");
  EXPECT_EQ(judged.least.working.remarks[0].key, "rules.met_is_not_tight");
}

TEST(JudgeDrop, ARuleThatSaysNothingJudgesNothing) {
  const auto judged = judge_drop(strength(), psi_gauge(750.0), psi_gauge(1.0), minutes(15.0));
  EXPECT_EQ(judged.verdict, DropVerdict::NotStated);
  EXPECT_FALSE(judged.least.is_known());
}

TEST(JudgeDrop, RefusesNumbersThatCannotBe) {
  try {
    judge_drop(with_drop(), psi_gauge(0.0), psi_gauge(0.0), minutes(15.0));
    FAIL();
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "rules.drop_start");
    EXPECT_STREQ(error.what(),
                 "the pressure at the start of the drop test is 0 bar gauge; it must be above 0");
  }
  try {
    judge_drop(with_drop(), psi_gauge(750.0), psi_gauge(0.0), minutes(-1.0));
    FAIL();
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "rules.drop_elapsed");
    EXPECT_STREQ(error.what(), "the drop test lasted -1 min; it cannot be below 0");
  }
}

/// 46 CFR 61.05-5: filling water 70-160 °F (watertube), 70-100 °F (firetube).
Rule with_windows() {
  Rule rule = strength();
  rule.windows = {{Stage::Filling,
                   Medium::Water,
                   {BoilerKind::Watertube},
                   {{fahrenheit(70.0), "70 °F"}},
                   {{fahrenheit(160.0), "160 °F"}},
                   ""},
                  {Stage::Filling,
                   Medium::Water,
                   {BoilerKind::Firetube},
                   {{fahrenheit(70.0), "70 °F"}},
                   {{fahrenheit(100.0), "100 °F"}},
                   ""}};
  return rule;
}

WindowVerdict filling(std::optional<BoilerKind> kind, double degrees_fahrenheit) {
  return judge_temperature(with_windows(), kind, Stage::Filling, Medium::Water,
                           fahrenheit(degrees_fahrenheit))
      .verdict;
}

TEST(JudgeTemperature, ByKindOfBoiler) {
  EXPECT_EQ(filling(BoilerKind::Watertube, 65.0), WindowVerdict::TooCold);
  EXPECT_EQ(filling(BoilerKind::Watertube, 100.0), WindowVerdict::Within);
  EXPECT_EQ(filling(BoilerKind::Watertube, 161.0), WindowVerdict::TooHot);
  EXPECT_EQ(filling(BoilerKind::Firetube, 99.0), WindowVerdict::Within);
  EXPECT_EQ(filling(BoilerKind::Firetube, 101.0), WindowVerdict::TooHot);
  EXPECT_EQ(filling(BoilerKind::CastIron, 101.0), WindowVerdict::NotStated);
}

TEST(JudgeTemperature, AKindThatIsNotToldMattersOnlyWhereKindsDiffer) {
  EXPECT_EQ(filling(std::nullopt, 65.0), WindowVerdict::TooCold);
  EXPECT_EQ(filling(std::nullopt, 99.0), WindowVerdict::Within);
  EXPECT_EQ(filling(std::nullopt, 120.0), WindowVerdict::CannotTell);
}

TEST(JudgeTemperature, FillingAndExaminationAreApart) {
  EXPECT_EQ(judge_temperature(with_windows(), BoilerKind::Watertube, Stage::Examination,
                              Medium::Water, fahrenheit(200.0))
                .verdict,
            WindowVerdict::NotStated);
  EXPECT_EQ(judge_temperature(with_windows(), BoilerKind::Watertube, Stage::Filling, Medium::Metal,
                              fahrenheit(200.0))
                .verdict,
            WindowVerdict::NotStated);
}

TEST(JudgeTemperature, WaterUnderTestBindsFromFillingToExamination) {
  Rule rule = strength();
  rule.windows = {
      {Stage::UnderTest, Medium::Water, {}, {{celsius(20.0), ""}}, {{celsius(50.0), ""}}, ""}};
  for (const Stage stage : {Stage::Filling, Stage::UnderTest, Stage::Examination}) {
    const auto judged = judge_temperature(rule, std::nullopt, stage, Medium::Water, celsius(51.0));
    EXPECT_EQ(judged.verdict, WindowVerdict::TooHot);
    EXPECT_EQ(judged.why.key, "rules.too_hot");
    EXPECT_EQ(judge_temperature(rule, std::nullopt, stage, Medium::Water, celsius(50.0)).verdict,
              WindowVerdict::Within);
  }
}

}  // namespace
}  // namespace steamworthy::rules
