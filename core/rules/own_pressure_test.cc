// own_pressure_test.cc — the user's own pressure beside what the rules say.
#include "rules/own_pressure.h"

#include <gtest/gtest.h>

#include "rules/sample_rules_test.h"

namespace steamworthy::rules {
namespace {

using samples::boiler;
using samples::has_key;
using samples::in_bar;
using samples::strength;
using samples::tightness;
using units::bars_gauge;

TEST(OwnPressure, WithAReasonBelowWorkingPressure) {
  const OwnVerdict verdict = judge_own_pressure(
      {bars_gauge(35.0), "only the east header was opened"}, {strength(), tightness()}, boiler());
  EXPECT_TRUE(verdict.accepted);
  EXPECT_NEAR(in_bar(verdict.pressure), 35.0, 1e-9);
  EXPECT_NEAR(in_bar(verdict.ceiling), 35.0, 1e-9);
  ASSERT_EQ(verdict.rules_say.size(), 2u);
  EXPECT_NEAR(in_bar(verdict.rules_say[0].least), 60.0, 1e-9) << "what the rule would have said";
  EXPECT_TRUE(has_key(verdict.remarks, "rules.own_below_rule"));
  EXPECT_EQ(
      verdict.pressure.working.remarks[0],
      (working::Message{"rules.own_reason", {{"reason", "only the east header was opened"}}}));
}

TEST(OwnPressure, AReasonMustSaySomething) {
  for (const char* reason : {"", "   ", "-", "...", "\t\n"}) {
    const OwnVerdict verdict =
        judge_own_pressure({bars_gauge(35.0), reason}, {strength()}, boiler());
    EXPECT_FALSE(verdict.accepted);
    EXPECT_FALSE(verdict.pressure.is_known());
    EXPECT_TRUE(has_key(verdict.refusals, "rules.own_reason_missing")) << reason;
  }
  EXPECT_TRUE(judge_own_pressure({bars_gauge(35.0), "é"}, {strength()}, boiler()).accepted);
}

TEST(OwnPressure, NothingAboveWorkingPressureWithoutARule) {
  Circumstances given = boiler();
  const OwnPressure own{bars_gauge(50.0), "the surveyor asked for it"};
  EXPECT_TRUE(has_key(judge_own_pressure(own, {}, given).refusals, "rules.own_without_rule"));
  EXPECT_TRUE(has_key(judge_own_pressure(own, {tightness()}, given).refusals,
                      "rules.own_above_every_rule"));
  EXPECT_TRUE(judge_own_pressure(own, {strength()}, given).accepted);
  given.authority.clear();
  EXPECT_TRUE(
      has_key(judge_own_pressure(own, {strength()}, given).refusals, "rules.authority_not_named"));
}

TEST(OwnPressure, ARuleThatOnlyMayApplyCarriesNothing) {
  Rule rule = strength();
  rule.applies = {{{}, {}, {{Trait::LapSeam, true}}, {}, {}}};
  const OwnVerdict verdict = judge_own_pressure({bars_gauge(50.0), "asked for"}, {rule}, boiler());
  EXPECT_FALSE(verdict.accepted);
  EXPECT_TRUE(has_key(verdict.refusals, "rules.own_without_rule"));
  EXPECT_TRUE(has_key(verdict.remarks, "rules.own_rule_not_certain"));
}

TEST(OwnPressure, ARememberedRuleCarriesNothing) {
  Rule rule = strength();
  rule.source.seen = Seen::FromMemory;
  const OwnVerdict verdict = judge_own_pressure({bars_gauge(50.0), "asked for"}, {rule}, boiler());
  EXPECT_TRUE(has_key(verdict.refusals, "rules.own_above_every_rule"));
}

TEST(OwnPressure, AnOpenRuleCarriesMoreThanItsLeast) {
  Rule rule = strength();
  rule.pressure.sense = Sense::AtLeast;
  EXPECT_TRUE(judge_own_pressure({bars_gauge(62.0), "asked for"}, {rule}, boiler()).accepted);
  rule.pressure = {Sense::NamedByAuthority, {}, {}};
  const OwnVerdict verdict = judge_own_pressure({bars_gauge(50.0), "asked for"}, {rule}, boiler());
  EXPECT_TRUE(verdict.accepted);
  EXPECT_TRUE(has_key(verdict.remarks, "rules.own_rule_names_none"));
}

TEST(OwnPressure, WithoutAWorkingPressureNothingIsTaken) {
  Circumstances given = boiler();
  given.working_pressure.reset();
  EXPECT_TRUE(has_key(judge_own_pressure({bars_gauge(5.0), "low"}, {}, given).refusals,
                      "rules.working_pressure_not_told"));
}

TEST(OwnPressure, ValvesAndCeilingBindItToo) {
  Circumstances given = boiler();
  given.safety_valves_gagged = false;
  const OwnPressure own{bars_gauge(39.5), "close to working"};
  EXPECT_TRUE(has_key(judge_own_pressure(own, {}, given).refusals, "rules.valves_not_gagged"));
  given.safety_valves_gagged.reset();
  const OwnVerdict asked = judge_own_pressure(own, {}, given);
  EXPECT_TRUE(asked.accepted);
  EXPECT_TRUE(has_key(asked.remarks, "rules.gags_needed"));
  given.stated_ceiling = bars_gauge(39.0);
  EXPECT_TRUE(has_key(judge_own_pressure(own, {}, given).refusals, "rules.above_ceiling"));
  given.stated_ceiling = bars_gauge(41.0);
  EXPECT_NEAR(in_bar(judge_own_pressure(own, {}, given).ceiling), 41.0, 1e-9);
  EXPECT_TRUE(has_key(judge_own_pressure({bars_gauge(0.0), "none"}, {}, given).refusals,
                      "rules.own_not_positive"));
}

TEST(OwnPressure, StandsToTheRule) {
  const auto remark = [](double bar) {
    return judge_own_pressure({bars_gauge(bar), "a reason"}, {tightness()}, boiler())
        .remarks.front()
        .key;
  };
  EXPECT_EQ(remark(36.0), "rules.own_below_rule") << "the interval begins above 36 bar";
  EXPECT_EQ(remark(36.1), "rules.own_within_rule");
  EXPECT_EQ(remark(39.0), "rules.own_within_rule");
  EXPECT_EQ(remark(39.5), "rules.own_above_rule");
}

}  // namespace
}  // namespace steamworthy::rules
