// choose_test.cc — which rules are candidates, what they hang on, why others are not.
#include "rules/choose.h"

#include <gtest/gtest.h>

#include "rules/sample_rules_test.h"

namespace steamworthy::rules {
namespace {

using samples::boiler;
using samples::has_key;
using samples::strength;
using samples::tightness;

working::Message hangs_on(const std::string& input) {
  return {"rules.depends_on", {{"input", working::Term{"input." + input}}}};
}

TEST(Choose, TwoRulesThatApplyAreBothShown) {
  const Choice choice = choose({strength(), tightness()}, boiler());
  ASSERT_EQ(choice.candidates.size(), 2u);
  EXPECT_EQ(choice.candidates[0].applies, Applies::Yes);
  EXPECT_EQ(choice.candidates[1].applies, Applies::Yes);
  EXPECT_TRUE(has_key(choice.remarks, "rules.more_than_one"));
}

TEST(Choose, SaysWhyARuleDoesNotApply) {
  const Circumstances given = boiler();
  Rule rule = strength();
  rule.jurisdiction = "elsewhere";
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.other_jurisdiction");
  rule = strength();
  rule.subjects = {Subject::BoilerPiping, Subject::Fitting};
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.other_subject");
  rule = strength();
  rule.purpose = Purpose::History;
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.not_a_test");
  rule = strength();
  rule.boilers = {BoilerKind::Firetube};
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.other_boiler");
  rule = strength();
  rule.works = {Work::DrumRepaired};
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.other_work");
  rule.jurisdiction = "elsewhere";
  EXPECT_EQ(applies(rule, given).reasons.size(), 2u) << "all reasons, not the first";
}

TEST(Choose, WhatNobodyHasToldKeepsARuleInTheList) {
  Rule rule = strength();
  rule.works = {Work::GasketsOnly};
  rule.boilers = {BoilerKind::Watertube};
  rule.applies = {{{}, {}, {{Trait::LapSeam, true}}, {}, {}}};
  Circumstances given = boiler();
  EXPECT_EQ(applies(rule, given).reasons, std::vector{hangs_on("lap_seam")});
  given.boiler.reset();
  given.work.reset();
  const Candidate candidate = applies(rule, given);
  EXPECT_EQ(candidate.applies, Applies::Depends);
  EXPECT_EQ(candidate.reasons,
            (std::vector{hangs_on("boiler_kind"), hangs_on("work"), hangs_on("lap_seam")}));
  const Choice choice = choose({rule}, Circumstances{});
  EXPECT_TRUE(has_key(choice.remarks, "rules.jurisdiction_not_told"));
  EXPECT_TRUE(has_key(choice.remarks, "rules.work_not_told"));
  EXPECT_EQ(choice.candidates.size(), 1u);
}

TEST(Choose, OneCaseIsEnoughAndAnyExclusionIsToo) {
  Rule rule = strength();
  rule.applies = {{{}, {Work::DrumRepaired}, {}, {}, {}},
                  {{BoilerKind::Firetube}, {}, {{Trait::CanBeEntered, false}}, {}, {}}};
  Circumstances given = boiler();
  EXPECT_EQ(applies(rule, given).applies, Applies::No);
  EXPECT_EQ(applies(rule, given).reasons[0].key, "rules.no_case_holds");
  given.work = Work::DrumRepaired;
  EXPECT_EQ(applies(rule, given).applies, Applies::Yes);
  given.work = Work::GasketsOnly;
  given.boiler = BoilerKind::Firetube;
  EXPECT_EQ(applies(rule, given).reasons, std::vector{hangs_on("can_be_entered")});
  given.traits[Trait::CanBeEntered] = true;
  EXPECT_EQ(applies(rule, given).applies, Applies::No);
  given.traits[Trait::CanBeEntered] = false;
  EXPECT_EQ(applies(rule, given).applies, Applies::Yes);

  std::swap(rule.applies, rule.unless);
  const Candidate excluded = applies(rule, given);
  EXPECT_EQ(excluded.applies, Applies::No);
  EXPECT_EQ(excluded.reasons[0],
            (working::Message{"rules.excluded_by",
                              {{"condition_1", working::Term{"boiler_kind.firetube"}},
                               {"condition_2", working::Term{"trait_not.can_be_entered"}}}}));
}

TEST(Choose, WorkingPressureMayDecide) {
  Rule low = strength();
  low.applies = {{{}, {}, {}, {}, Stated<units::GaugePressure>{units::psi_gauge(30.0), "30 psi"}}};
  Rule high = strength();
  high.applies = {{{}, {}, {}, Stated<units::GaugePressure>{units::psi_gauge(30.0), "30 psi"}, {}}};
  Circumstances given = boiler();
  given.working_pressure = units::psi_gauge(30.0);
  EXPECT_EQ(applies(low, given).applies, Applies::Yes);
  EXPECT_EQ(applies(high, given).applies, Applies::No);
  given.working_pressure = units::psi_gauge(30.1);
  EXPECT_EQ(applies(low, given).applies, Applies::No);
  EXPECT_EQ(applies(high, given).applies, Applies::Yes);
  given.working_pressure.reset();
  EXPECT_EQ(applies(low, given).reasons, std::vector{hangs_on("working_pressure")});
}

TEST(Choose, CertainBeforeHangingSeenBeforeSecondHandThenById) {
  Rule b = strength();
  b.id = "b";
  Rule a = strength();
  a.id = "a";
  Rule second_hand = strength();
  second_hand.id = "0";
  second_hand.source.seen = Seen::SecondHand;
  Rule hanging = strength();
  hanging.id = "00";
  hanging.applies = {{{}, {}, {{Trait::LapSeam, false}}, {}, {}}};
  const Choice choice = choose({hanging, second_hand, b, a}, boiler());
  ASSERT_EQ(choice.candidates.size(), 4u);
  EXPECT_EQ(choice.candidates[0].rule, 3u);
  EXPECT_EQ(choice.candidates[1].rule, 2u);
  EXPECT_EQ(choice.candidates[2].rule, 1u);
  EXPECT_EQ(choice.candidates[3].rule, 0u);
}

TEST(Choose, NoRuleIsSaid) {
  Circumstances given = boiler();
  given.jurisdictions = {"nowhere"};
  const Choice choice = choose({strength()}, given);
  EXPECT_TRUE(choice.candidates.empty());
  EXPECT_TRUE(has_key(choice.remarks, "rules.none_applies"));
  EXPECT_EQ(choice.remarks[0],
            (working::Message{"rules.no_rule_of_jurisdiction", {{"jurisdiction", "nowhere"}}}));
}

}  // namespace
}  // namespace steamworthy::rules
