// evaluate_test.cc — what an evaluation gives and refuses, on rules of an invented site.
//
// The arithmetic is by hand; the laws that ship are in wire/rules_published_test.cc.
#include "rules/evaluate.h"

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
using units::celsius;
using units::minutes;

TEST(Evaluate, StrengthTestWithGagsAndANamedAuthority) {
  const Evaluation result = evaluate(strength(), boiler());
  EXPECT_TRUE(result.may_be_preset());
  EXPECT_NEAR(in_bar(result.test_pressure), 60.0, 1e-9);
  EXPECT_NEAR(in_bar(result.ceiling), 63.6, 1e-9);
  EXPECT_NEAR(in_bar(result.examination_pressure), 40.0, 1e-9);
  EXPECT_EQ(result.ceiling.working.formula, "p_never = k_over p");
  EXPECT_TRUE(result.ceiling.working.remarks.empty());
  EXPECT_TRUE(result.missing.empty());
  EXPECT_EQ(result.test_pressure.subject, "site-strength");
  EXPECT_EQ(result.test_pressure.working.sources, std::vector<std::string>{"SITE-1"});
}

TEST(Evaluate, NothingAboveWorkingPressureWithoutANamedAuthority) {
  Circumstances given = boiler();
  given.authority = " - ";
  const Evaluation result = evaluate(strength(), given);
  EXPECT_FALSE(result.may_be_preset());
  EXPECT_FALSE(result.test_pressure.is_known());
  EXPECT_EQ(result.test_pressure.cannot_tell.key, "rules.authority_not_named");
  EXPECT_NEAR(in_bar(result.least), 60.0, 1e-9) << "what the rule would say is still shown";
  EXPECT_NEAR(in_bar(result.ceiling), 63.6, 1e-9);
}

TEST(Evaluate, ATestWithinWorkingPressureNeedsNoAuthority) {
  Rule rule = strength();
  rule.pressure.value = samples::times(1.0, Reference::WorkingPressure);
  Circumstances given = boiler();
  given.authority.clear();
  EXPECT_TRUE(evaluate(rule, given).may_be_preset());
}

TEST(Evaluate, UnknownWorkingPressureForbidsAPreset) {
  Rule rule = strength();
  rule.pressure.value = samples::times(1.5, Reference::DesignPressure);
  rule.examination.reset();
  Circumstances given = boiler();
  given.working_pressure.reset();
  given.design_pressure = bars_gauge(42.0);
  const Evaluation result = evaluate(rule, given);
  EXPECT_TRUE(has_key(result.stops, "rules.working_pressure_not_told"));
  EXPECT_FALSE(result.test_pressure.is_known());
}

TEST(Evaluate, ARememberedRulePresetsNothingAboveWorkingPressure) {
  Rule rule = strength();
  rule.source.seen = Seen::FromMemory;
  const Evaluation result = evaluate(rule, boiler());
  EXPECT_TRUE(has_key(result.stops, "rules.from_memory"));
  EXPECT_TRUE(has_key(result.remarks, "rules.check_your_copy"));
  EXPECT_FALSE(result.may_be_preset());
}

TEST(Evaluate, SecondHandIsSaidAndNotForbidden) {
  Rule rule = strength();
  rule.source.seen = Seen::SecondHand;
  const Evaluation result = evaluate(rule, boiler());
  EXPECT_TRUE(result.may_be_preset());
  ASSERT_TRUE(has_key(result.remarks, "rules.second_hand"));
  EXPECT_EQ(result.remarks[0], (working::Message{"rules.second_hand", {{"source", "SITE-1"}}}));
}

TEST(Evaluate, MissingInputsAreNamedAllAtOnce) {
  const Evaluation result = evaluate(tightness(), Circumstances{});
  ASSERT_EQ(result.missing.size(), 2u);
  EXPECT_EQ(result.missing[0].values[0].second,
            working::Value(working::Term{"input.operating_pressure"}));
  EXPECT_EQ(result.missing[1].values[0].second,
            working::Value(working::Term{"input.lowest_safety_valve"}));
  EXPECT_EQ(result.test_pressure.cannot_tell, result.missing[0]);
}

TEST(Evaluate, AnIntervalIsForTheUserToPickIn) {
  Circumstances given = boiler();
  const Evaluation open = evaluate(tightness(), given);
  EXPECT_FALSE(open.test_pressure.is_known());
  EXPECT_EQ(open.test_pressure.cannot_tell.key, "rules.pick_within");
  EXPECT_TRUE(open.least_must_be_passed);
  EXPECT_NEAR(in_bar(open.least), 36.0, 1e-9);
  EXPECT_NEAR(in_bar(open.most), 39.0, 1e-9);
  EXPECT_NEAR(in_bar(open.ceiling), 39.0, 1e-9) << "of a tightness test the rule is the ceiling";

  given.picked = bars_gauge(38.0);
  const Evaluation picked = evaluate(tightness(), given);
  EXPECT_TRUE(picked.may_be_preset());
  EXPECT_NEAR(in_bar(picked.test_pressure), 38.0, 1e-9);
  given.picked = bars_gauge(36.0);
  EXPECT_TRUE(has_key(evaluate(tightness(), given).stops, "rules.picked_below"));
  given.picked = bars_gauge(39.01);
  EXPECT_TRUE(has_key(evaluate(tightness(), given).stops, "rules.picked_above"));
  given.picked = bars_gauge(0.0);
  EXPECT_TRUE(has_key(evaluate(tightness(), given).stops, "rules.picked_not_positive"));
}

TEST(Evaluate, AnIntervalWithoutRoomSaysSo) {
  Circumstances given = boiler();
  given.lowest_safety_valve = given.operating_pressure;
  const Evaluation result = evaluate(tightness(), given);
  EXPECT_TRUE(has_key(result.stops, "rules.empty_interval"));
  EXPECT_FALSE(result.test_pressure.is_known());
}

TEST(Evaluate, UngaggedValvesStayBelowTheirSetting) {
  Circumstances given = boiler();
  given.safety_valves_gagged = false;
  given.picked = bars_gauge(39.0);
  const Evaluation at_setting = evaluate(tightness(), given);
  EXPECT_TRUE(has_key(at_setting.stops, "rules.valves_not_gagged"));
  given.picked = bars_gauge(38.0);
  const Evaluation below = evaluate(tightness(), given);
  EXPECT_TRUE(below.may_be_preset());
  EXPECT_TRUE(has_key(below.ceiling.working.remarks, "rules.ungagged_at_valve_height"));

  const Evaluation strong = evaluate(strength(), given);  // the pick is not the rule's either
  EXPECT_FALSE(strong.may_be_preset());
  given.picked.reset();
  const Evaluation ungagged = evaluate(strength(), given);
  EXPECT_TRUE(has_key(ungagged.stops, "rules.valves_not_gagged"));
  EXPECT_NEAR(in_bar(ungagged.ceiling), 39.0, 1e-9) << "no 106 % with valves that are free";
}

TEST(Evaluate, WhereGagsAreNotToldTheyAreAskedFor) {
  Circumstances given = boiler();
  given.safety_valves_gagged.reset();
  const Evaluation result = evaluate(strength(), given);
  EXPECT_TRUE(result.may_be_preset());
  EXPECT_TRUE(has_key(result.remarks, "rules.gags_needed"));
  EXPECT_TRUE(has_key(result.ceiling.working.remarks, "rules.ceiling_only_gagged"));
}

TEST(Evaluate, TheUsersCeilingLowersAndNeverRaises) {
  Circumstances given = boiler();
  given.stated_ceiling = bars_gauge(61.0);
  EXPECT_NEAR(in_bar(evaluate(strength(), given).ceiling), 61.0, 1e-9);
  given.stated_ceiling = bars_gauge(70.0);
  EXPECT_NEAR(in_bar(evaluate(strength(), given).ceiling), 63.6, 1e-9);
  given.stated_ceiling = bars_gauge(59.0);
  EXPECT_TRUE(has_key(evaluate(strength(), given).stops, "rules.above_ceiling"));
  Rule silent = strength();
  silent.ceiling.reset();
  EXPECT_NEAR(in_bar(evaluate(silent, given).ceiling), 59.0, 1e-9);
  given.stated_ceiling.reset();
  EXPECT_EQ(evaluate(silent, given).ceiling.cannot_tell.key, "rules.ceiling_not_stated");
}

TEST(Evaluate, ACeilingOfTheOriginalTestNeedsIt) {
  Rule rule = strength();
  rule.ceiling = Ceiling{1.06, true};
  const Evaluation lacking = evaluate(rule, boiler());
  EXPECT_FALSE(lacking.ceiling.is_known());
  EXPECT_TRUE(has_key(lacking.missing, "rules.missing_input"));
  Circumstances given = boiler();
  given.original_test_pressure = bars_gauge(50.0);
  const Evaluation low = evaluate(rule, given);
  EXPECT_NEAR(in_bar(low.ceiling), 53.0, 1e-9);
  EXPECT_TRUE(has_key(low.stops, "rules.above_ceiling"));
}

TEST(Evaluate, AtLeastMayBePickedHigherAndAtMostMustBePicked) {
  Rule rule = strength();
  rule.pressure.sense = Sense::AtLeast;
  Circumstances given = boiler();
  EXPECT_NEAR(in_bar(evaluate(rule, given).test_pressure), 60.0, 1e-9);
  given.picked = bars_gauge(62.0);
  EXPECT_NEAR(in_bar(evaluate(rule, given).test_pressure), 62.0, 1e-9);
  given.picked = bars_gauge(59.0);
  EXPECT_TRUE(has_key(evaluate(rule, given).stops, "rules.picked_below"));

  rule.pressure.sense = Sense::AtMost;
  EXPECT_NEAR(in_bar(evaluate(rule, given).test_pressure), 59.0, 1e-9);
  given.picked = bars_gauge(60.5);
  EXPECT_TRUE(has_key(evaluate(rule, given).stops, "rules.picked_above"));
  given.picked.reset();
  EXPECT_EQ(evaluate(rule, given).test_pressure.cannot_tell.key, "rules.pick_within");

  rule.pressure.sense = Sense::Exactly;
  given.picked = bars_gauge(59.0);
  EXPECT_TRUE(has_key(evaluate(rule, given).stops, "rules.picked_is_not_the_rules"));
}

TEST(Evaluate, WhereTheSurveyorNamesThePressureHeMustHaveAName) {
  Rule rule = strength();
  rule.pressure = {Sense::NamedByAuthority, {}, {}};
  Circumstances given = boiler();
  EXPECT_EQ(evaluate(rule, given).test_pressure.cannot_tell.key, "rules.authority_names_pressure");
  given.picked = bars_gauge(30.0);
  EXPECT_TRUE(evaluate(rule, given).may_be_preset());
  given.authority.clear();
  EXPECT_TRUE(has_key(evaluate(rule, given).stops, "rules.authority_names_pressure"));
}

TEST(Evaluate, ATestAtZeroIsNone) {
  Circumstances given = boiler();
  given.working_pressure = bars_gauge(0.0);
  const Evaluation result = evaluate(strength(), given);
  EXPECT_TRUE(has_key(result.stops, "rules.target_not_positive"));
  EXPECT_FALSE(result.may_be_preset());
}

TEST(Evaluate, LimitsAndHistoryAreShownAndNeverGoneTo) {
  for (const Purpose purpose : {Purpose::Limit, Purpose::History}) {
    Rule rule = strength();
    rule.purpose = purpose;
    const Evaluation result = evaluate(rule, boiler());
    EXPECT_NEAR(in_bar(result.least), 60.0, 1e-9);
    EXPECT_FALSE(result.test_pressure.is_known());
    EXPECT_TRUE(has_key(result.stops, "rules.not_a_test"));
    EXPECT_FALSE(result.ceiling.is_known());
  }
}

TEST(Evaluate, EverythingElseThatARuleSays) {
  Rule rule = strength();
  rule.windows = {
      {Stage::Filling, Medium::Water, {BoilerKind::Watertube}, {{celsius(20.0), ""}}, {}, "W"},
      {Stage::Filling, Medium::Water, {BoilerKind::Firetube}, {{celsius(25.0), ""}}, {}, ""},
      {Stage::Examination, Medium::Metal, {}, {}, {{celsius(50.0), ""}}, ""}};
  rule.holds = {{Stated<units::Duration>{minutes(30.0), "30 min"}, HoldAt::TestPressure, "first"},
                {std::nullopt, HoldAt::ExaminationPressure, "then"}};
  rule.drop = AllowedDrop{0.1, {minutes(15.0), "15 min"}, "D"};
  rule.gauges =
      GaugeDemand{2, 1.5, 4.0, Stated<units::PressureDifference>{units::bars(1.0), ""}, 0.005, ""};
  rule.rise = Rise{Stated<units::PressureRate>{units::bars_per_minute(3.0), ""}, 0.5, 0.1, "", ""};
  rule.stress_cap = 0.9;
  const Evaluation result = evaluate(rule, boiler());
  ASSERT_EQ(result.windows.size(), 2u) << "the firetube window is not this boiler's";
  EXPECT_DOUBLE_EQ(result.windows[0].from.value->si, 293.15);
  EXPECT_EQ(result.windows[0].from.working.sources, std::vector<std::string>{"W"});
  EXPECT_EQ(result.windows[0].to.cannot_tell.key, "rules.not_stated");
  EXPECT_DOUBLE_EQ(result.windows[1].to.value->si, 323.15);
  ASSERT_EQ(result.holds.size(), 2u);
  EXPECT_DOUBLE_EQ(result.holds[0].at_least.value->si, 1800.0);
  EXPECT_EQ(result.holds[1].at_least.cannot_tell.key, "rules.until_examined");
  EXPECT_NEAR(in_bar(result.drop_least), 54.0, 1e-9);
  EXPECT_TRUE(has_key(result.remarks, "rules.met_is_not_tight"));
  EXPECT_DOUBLE_EQ(result.gauge_number.value->si, 2.0);
  EXPECT_NEAR(in_bar(result.gauge_range_from), 90.0, 1e-9);
  EXPECT_NEAR(in_bar(result.gauge_range_to), 240.0, 1e-9);
  EXPECT_DOUBLE_EQ(result.gauge_graduation.value->si, 1e5);
  EXPECT_DOUBLE_EQ(result.gauge_accuracy.value->si, 0.005);
  EXPECT_NEAR(result.greatest_rate.value->si, 3e5 / 60.0, 1e-9);
  EXPECT_DOUBLE_EQ(result.stress_cap.value->si, 0.9);
  ASSERT_EQ(result.steps.size(), 6u);  // 50, 60, 70, 80, 90, 100 %
  EXPECT_NEAR(in_bar(result.steps[0]), 30.0, 1e-9);
  EXPECT_NEAR(in_bar(result.steps[4]), 54.0, 1e-9);
  EXPECT_NEAR(in_bar(result.steps[5]), 60.0, 1e-9);
}

TEST(Evaluate, WindowsThatHangOnTheKindOfBoilerAskForIt) {
  Rule rule = strength();
  rule.windows = {
      {Stage::Filling, Medium::Water, {BoilerKind::Watertube}, {{celsius(20.0), ""}}, {}, ""},
      {Stage::Filling, Medium::Water, {BoilerKind::Firetube}, {{celsius(25.0), ""}}, {}, ""}};
  Circumstances given = boiler();
  given.boiler.reset();
  const Evaluation result = evaluate(rule, given);
  ASSERT_EQ(result.windows.size(), 1u);
  EXPECT_EQ(result.windows[0].from.cannot_tell.key, "rules.missing_input");
  EXPECT_EQ(result.missing.size(), 1u);
  EXPECT_TRUE(result.may_be_preset()) << "a temperature that is not known is no pressure";
}

TEST(Evaluate, WhatARuleDoesNotSayIsSaidToBeUnsaid) {
  Rule rule = strength();
  rule.examination.reset();
  const Evaluation result = evaluate(rule, boiler());
  for (const working::Figure* figure :
       {&result.examination_pressure, &result.drop_share, &result.drop_time, &result.drop_least,
        &result.gauge_number, &result.gauge_range_from, &result.gauge_range_to,
        &result.gauge_graduation, &result.gauge_accuracy, &result.greatest_rate,
        &result.stress_cap}) {
    EXPECT_FALSE(figure->is_known());
    EXPECT_EQ(figure->cannot_tell.key, "rules.not_stated") << figure->key;
  }
}

}  // namespace
}  // namespace steamworthy::rules
