#include "hold_study/statistics.h"

#include <gtest/gtest.h>

#include "hold_study/tables.h"

namespace steamworthy::hold_study {
namespace {

TEST(Bound, OfZeroHitsIsTheClosedForm) {
  // 1 - 0.05^(1/n); 2.3 % of 131 and 1.2 % of 247, as the independent study prints them.
  EXPECT_NEAR((Count{0, 131}.upper_95()), 0.0226, 5e-5);
  EXPECT_NEAR((Count{0, 247}.upper_95()), 0.0121, 5e-5);
}

TEST(Bound, OfSomeHitsIsThatOfClopperAndPearson) {
  // The 0.95 quantile of Beta(4, 97), by scipy 1.10's beta.ppf: 0.07571079.
  EXPECT_NEAR((Count{3, 100}.upper_95()), 0.07571079, 1e-8);
  EXPECT_EQ((Count{5, 5}.upper_95()), 1.0);
}

TEST(Quantile, IsLinearBetweenOrderStatistics) {
  EXPECT_EQ(median({3.0, 1.0, 2.0}), 2.0);
  EXPECT_EQ(median({4.0, 1.0, 2.0, 3.0}), 2.5);
  EXPECT_EQ(quantile({0.0, 10.0}, 0.9), 9.0);
  EXPECT_EQ(median({}), 0.0);
}

Outcome outcome(double truth, Says says, Interval said) {
  Outcome made;
  made.made.test.plan.stages_pa_gauge = {45e5};
  made.net_mean = truth;
  made.net_at_end = truth;
  Answer answer;
  answer.says = says;
  answer.net_loss = said;
  answer.air_l = Interval{2.0, 1.5, 2.5};
  made.answers.assign(method_count, answer);
  made.air_l = 2.2;
  return made;
}

std::vector<Outcome> five() {
  return {outcome(0.0, Says::NoLoss, {1.0, -2.0, 4.0}), outcome(0.0, Says::Losing, {5.0, 3.0, 7.0}),
          outcome(40.0, Says::NoLoss, {10.0, 5.0, 15.0}),
          outcome(40.0, Says::Losing, {42.0, 30.0, 54.0}),
          outcome(-30.0, Says::Gaining, {-31.0, -40.0, -22.0})};
}

TEST(Score, CountsWhatIsFalseAmongThoseWhereItCanBe) {
  const Score s = score(five(), 0, [](const Outcome&) { return true; });
  EXPECT_EQ(s.cases, 5U);
  EXPECT_EQ(s.covered.hits, 3);
  EXPECT_EQ(s.false_no_loss.hits, 1);
  EXPECT_EQ(s.false_no_loss.of, 2);
  EXPECT_EQ(s.false_losing.hits, 1);
  EXPECT_EQ(s.false_losing.of, 3);
  EXPECT_EQ(s.false_gaining.hits, 0);
  EXPECT_EQ(s.false_gaining.of, 4);
  EXPECT_EQ(s.found_losing.hits, 1);
  EXPECT_EQ(s.found_losing.of, 2);
  EXPECT_EQ(s.found_gaining.hits, 1);
  EXPECT_EQ(s.found_gaining.of, 1);
  EXPECT_EQ(s.bias_median, 1.0);
  EXPECT_NEAR(s.bias_mean, (1.0 + 5.0 - 30.0 + 2.0 - 1.0) / 5.0, 1e-12);
}

TEST(Score, LeavesLeaksThatBeginWithinTheHoldOutOfCoverage) {
  std::vector<Outcome> outcomes = five();
  outcomes[2].made.test.leak = {40 * ml_per_min, 0.5, 600.0};
  const Score s = score(outcomes, 0, [](const Outcome&) { return true; });
  EXPECT_EQ(s.covered.of, 4);
  EXPECT_EQ(s.false_no_loss.hits, 1);
  EXPECT_EQ(onset_score(outcomes).cases, 1U);
  EXPECT_EQ(onset_score(outcomes).either_covered.hits, 0);
}

TEST(AirScore, IsRelativeToTheTruth) {
  const AirScore s = air_score(five(), [](const Outcome&) { return true; });
  EXPECT_EQ(s.covered.hits, 5);
  EXPECT_NEAR(s.relative_bias_median, 2.0 / 2.2 - 1.0, 1e-12);
}

TEST(Tables, NameTheSeedAndEveryMethod) {
  Study study;
  study.ordinary = five();
  const std::string text = tables(study);
  EXPECT_NE(text.find("Seed 20261125"), std::string::npos);
  for (const char* method : methods) EXPECT_NE(text.find(method), std::string::npos);
  EXPECT_EQ(text, tables(study));
}

TEST(Worst, PutsFalseResultsFirst) {
  const std::vector<Outcome> outcomes = five();
  const std::string text = worst(outcomes, 2);
  EXPECT_NE(text.find("says no_loss_seen 10.0"), std::string::npos) << text;
  EXPECT_NE(text.find("says losing 5.0"), std::string::npos) << text;
}

}  // namespace
}  // namespace steamworthy::hold_study
