// Checks closing/fold.h: the state depends on the set of facts alone.
#include "closing/fold.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "closing/explore_test.h"
#include "closing/outstanding.h"
#include "closing/stage.h"
#include "closing/world_test.h"
#include "facts/sample_test.h"

namespace steamworthy::closing {
namespace {

using namespace facts;  // the bodies

/// A body that matters in the small plant, or one of any kind.
Body some_body() {
  if (*rc::gen::inRange(0, 8) == 0) {
    const auto& rows = table();
    return sample(rows[*rc::gen::inRange<std::size_t>(0, rows.size())],
                  [](unsigned n) { return *rc::gen::inRange(0u, std::min(n, 20u)); });
  }
  if (*rc::gen::inRange(0, 12) == 0) {
    return EntryWithdrawn{*rc::gen::element<std::string>("A", "B", "C"), *rc::gen::inRange(1, 20),
                          "a slip"};
  }
  const Scenario& from = scenarios()[*rc::gen::inRange<std::size_t>(0, scenarios().size())];
  const Move& move = from.moves[*rc::gen::inRange<std::size_t>(0, from.moves.size())];
  return std::holds_alternative<Unread>(move.body) ? Body(RemarkMade{"x"}) : move.body;
}

/// Facts of three devices; each has seen what it happened to have seen, or claims heads that nobody
/// knows; clocks run as they like.
std::vector<Fact> some_facts() {
  Story story;
  tell_opened(story);
  std::vector<Fact> facts = story.facts;
  Teller teller = story.teller;
  const int more = *rc::gen::inRange(0, 40);
  for (int i = 0; i < more; ++i) {
    const std::string device = *rc::gen::element<std::string>("A", "B", "C");
    const std::string person = *rc::gen::element<std::string>("L", "P", "E");
    teller.now_ms += *rc::gen::inRange(-3, 9) * 60'000;
    if (*rc::gen::inRange(0, 3) == 0) teller.sync(device);
    facts.push_back(teller.tell_unsynced(device, person, some_body()));
    if (*rc::gen::inRange(0, 10) == 0) {
      facts.back().seen.push_back(
          {*rc::gen::element<std::string>("A", "B", "C", "D"), *rc::gen::inRange(1, 40)});
    }
    if (*rc::gen::inRange(0, 15) == 0) facts.back().version = 2;
    if (*rc::gen::inRange(0, 15) == 0) {  // another that carries the same number
      Fact fork = facts.back();
      fork.body = some_body();
      facts.push_back(std::move(fork));
    }
  }
  return facts;
}

std::vector<Fact> shuffled(std::vector<Fact> facts) {
  for (std::size_t i = facts.size(); i > 1; --i) {
    std::swap(facts[i - 1], facts[*rc::gen::inRange<std::size_t>(0, i)]);
  }
  return facts;
}

RC_GTEST_PROP(Fold, GivesTheSameStateInAnyOrderOfArrival, ()) {
  const std::vector<Fact> facts = some_facts();
  const Terms terms = small_terms();
  RC_ASSERT(fold(shuffled(facts), terms) == fold(facts, terms));
}

RC_GTEST_PROP(Fold, OneByOneGivesWhatAllAtOnceGives, ()) {
  const std::vector<Fact> facts = some_facts();
  const Terms terms = small_terms();
  Fold one_by_one(terms);
  for (const Fact& fact : shuffled(facts)) one_by_one.add(fact);
  RC_ASSERT(one_by_one.state() == fold(facts, terms));
}

RC_GTEST_PROP(Fold, TwoHalvesEqualOne, ()) {
  const std::vector<Fact> facts = some_facts();
  const Terms terms = small_terms();
  const auto middle = static_cast<std::ptrdiff_t>(*rc::gen::inRange<std::size_t>(0, facts.size()));
  Fold halves(terms);
  for (const Fact& fact : shuffled({facts.begin() + middle, facts.end()})) halves.add(fact);
  halves.state();
  for (const Fact& fact : shuffled({facts.begin(), facts.begin() + middle})) halves.add(fact);
  RC_ASSERT(halves.state() == fold(facts, terms));
}

RC_GTEST_PROP(Fold, FactsThatComeTwiceCountOnce, ()) {
  const std::vector<Fact> facts = some_facts();
  const Terms terms = small_terms();
  std::vector<Fact> doubled = facts;
  doubled.insert(doubled.end(), facts.begin(), facts.end());
  RC_ASSERT(fold(shuffled(doubled), terms) == fold(facts, terms));
  Fold one_by_one(terms);
  for (const Fact& fact : doubled) one_by_one.add(fact);
  RC_ASSERT(one_by_one.state() == fold(facts, terms));
}

RC_GTEST_PROP(Fold, AFactAddedNeverUntellsAFact, ()) {
  const std::vector<Fact> facts = shuffled(some_facts());
  Fold growing(small_terms());
  std::vector<Fact> told;
  for (const Fact& fact : facts) {
    growing.add(fact);
    told.push_back(fact);
    const std::vector<const Fact*> listed = growing.in_order();
    for (const Fact& earlier : told) {
      RC_ASSERT(std::any_of(listed.begin(), listed.end(),
                            [&](const Fact* one) { return *one == earlier; }));
    }
  }
}

RC_GTEST_PROP(Fold, KeepsCauseBeforeEffect, ()) {
  Fold folded(small_terms());
  for (const Fact& fact : shuffled(some_facts())) folded.add(fact);
  const auto listed = folded.in_order();
  for (std::size_t later = 0; later < listed.size(); ++later) {
    for (std::size_t earlier = 0; earlier < later; ++earlier) {
      // No earlier one has seen a later one, but for heads that form a circle.
      const Fact& a = *listed[earlier];
      const Fact& b = *listed[later];
      if (a.device == b.device) RC_ASSERT(a.device_seq <= b.device_seq);
    }
  }
}

RC_GTEST_PROP(Fold, AskingAnythingOfAnyStateGivesAnAnswer, ()) {
  const Terms terms = small_terms();
  const State state = fold(some_facts(), terms);
  for (const auto& [step, word] : Words<StepName>::table) {
    for (const char* subject : {"", "SD", "FU", "M1", "nothing"}) {
      outstanding(state, terms, {step, subject, units::bars_gauge(10)}, state.latest_ms);
    }
  }
  standing(state, terms, state.latest_ms);
  stage(state, terms);
}

std::vector<std::string> tokens(const State& state, const Terms& terms, const Clearance& clearance,
                                std::int64_t now_ms) {
  std::vector<std::string> found;
  for (const Outstanding& item : outstanding(state, terms, clearance, now_ms)) {
    found.push_back(std::string(row(item.check).token));
  }
  return found;
}

const Clearance last_way{StepName::CloseLastWayIn, "SD", std::nullopt};

TEST(Clocks, AClockThatRunsAheadDoesNotMakeACountLookFresh) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  const Terms terms = small_terms();
  story.teller.now_ms += 60 * 60'000;  // an hour ahead
  story.say(SpaceCounted{"SD", "Q", 0, 0, true, true});
  story.teller.now_ms -= 60 * 60'000;
  const std::int64_t now = story.teller.now_ms;
  // Dated ahead of the clock: of no known age.
  EXPECT_EQ(tokens(fold(story.facts, terms), terms, last_way, now),
            std::vector<std::string>{"s3_count_old"});
  // Any fact that has seen it shows when it was at the latest.
  story.say(RemarkMade{"seen it"});
  EXPECT_TRUE(tokens(fold(story.facts, terms), terms, last_way, now).empty());
  EXPECT_EQ(tokens(fold(story.facts, terms), terms, last_way, now + 16 * 60'000),
            std::vector<std::string>{"s3_count_old"});
}

TEST(Clocks, AClockThatRunsBehindMakesACountLookOldAndNothingWorse) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  const Terms terms = small_terms();
  const std::int64_t now = story.teller.now_ms;
  story.teller.now_ms -= 60 * 60'000;
  story.say(SpaceCounted{"SD", "Q", 0, 0, true, true});
  EXPECT_EQ(tokens(fold(story.facts, terms), terms, last_way, now),
            std::vector<std::string>{"s3_count_old"});
}

TEST(Late, SomebodyWhoWentInUnknownToTheCountRaisesAnAlarmUntilItIsTaken) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  story.from("B").say(DeviceReported{}).from("A");
  story.say(SpaceCounted{"SD", "Q", 0, 0, true, true});
  story.from("B").say(DeviceReported{}).from("A");
  story.say(given(StepName::CloseLastWayIn, "SD"));
  const Terms terms = small_terms();
  Fold folded(terms);
  for (const Fact& fact : story.facts) folded.add(fact);
  EXPECT_TRUE(stands(folded.state(), terms, StepName::CloseLastWayIn, "SD", story.teller.now_ms));
  // B has known of the count, not of the clearance.
  const Fact in = story.teller.tell_unsynced("B", "Q", TallyIn{{"SD", "Q"}});
  folded.add(in);
  EXPECT_FALSE(stands(folded.state(), terms, StepName::CloseLastWayIn, "SD", story.teller.now_ms));
  ASSERT_EQ(alarms(folded.state()).size(), 1u);
  const Alarm alarm = alarms(folded.state())[0];
  EXPECT_EQ(alarm.why.key, "alarm.clearance_wrong");
  folded.add(story.teller.tell("A", "P", AlarmTaken{alarm.name, RoleName::LeadHand, ""}));
  EXPECT_EQ(alarms(folded.state()).size(), 1u);  // P is no lead hand
  folded.add(
      story.teller.tell("A", "L", AlarmTaken{alarm.name, RoleName::LeadHand, "got him out"}));
  EXPECT_TRUE(alarms(folded.state()).empty());
}

TEST(Late, AlarmsThatStandRaiseNoAlarmsOfTheirOwn) {
  // Clearances given all the same, one after the other: each tells what stood in its way and no
  // more. When standing alarms counted among that, their number doubled each time.
  const Terms terms = small_terms();
  Story story;
  story.say(given(StepName::Fill));
  const std::size_t of_one = alarms(fold(story.facts, terms)).size();
  ASSERT_GT(of_one, 3u);
  for (int i = 0; i < 30; ++i) story.say(given(StepName::Fill));
  EXPECT_EQ(alarms(fold(story.facts, terms)).size(), 31 * of_one);
}

TEST(Late, AMissingEntryIsNamedUntilItComes) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  const Terms terms = small_terms();
  const Fact held = story.teller.tell("B", "Q", TallyIn{{"SD", "Q"}});
  story.facts.push_back(story.teller.tell("B", "Q", TallyOut{{"SD", "Q"}}));
  story.say(SpaceCounted{"SD", "Q", 0, 0, true, true});
  story.from("B").say(DeviceReported{});
  EXPECT_EQ(tokens(fold(story.facts, terms), terms, last_way, story.teller.now_ms),
            std::vector<std::string>{"s3_missing"});
  story.facts.push_back(held);
  EXPECT_TRUE(tokens(fold(story.facts, terms), terms, last_way, story.teller.now_ms).empty());
}

TEST(Withdrawn, AnEntryThatMadeAStepEasierLosesItsEffectTheOthersKeepIt) {
  Story story;
  tell_opened(story);
  story.say(ClosureOpened{{"M1"}}).say(ClosureLookedAt{{"M1"}});
  const int looked = story.facts.back().device_seq;
  story.say(TallyIn{{"SD", "P"}});
  const int went_in = story.facts.back().device_seq;
  story.say(EntryWithdrawn{"A", looked, "the wrong plate"});
  story.say(EntryWithdrawn{"A", went_in, "he says he did not"});
  const Terms terms = small_terms();
  const State state = fold(story.facts, terms);
  EXPECT_FALSE(state.closures.at("M1").looked_at.holds);
  EXPECT_EQ(inside(state.spaces.at("SD").people), std::vector<std::string>{"P"});
  EXPECT_EQ(state.withdrawn.size(), 2u);
  Fold folded(terms);
  for (const Fact& fact : story.facts) folded.add(fact);
  EXPECT_EQ(folded.in_order().size(), story.facts.size());
  EXPECT_TRUE(folded.is_withdrawn(story.facts[static_cast<std::size_t>(looked) - 1]));
  EXPECT_FALSE(folded.is_withdrawn(story.facts[static_cast<std::size_t>(went_in) - 1]));
}

TEST(LostDevice, NeedsTwoNamesAndAFreshCount) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  story.from("B").say(DeviceReported{}).from("A");
  const auto count = [&] { story.say(SpaceCounted{"SD", "Q", 0, 0, true, true}); };
  const Terms terms = small_terms();
  const auto now_against = [&] {
    return tokens(fold(story.facts, terms), terms, last_way, story.teller.now_ms);
  };
  count();
  EXPECT_EQ(now_against(), std::vector<std::string>{"s3_device"});
  story.say(DeviceLost{"B", "L"});  // one name is not two
  EXPECT_EQ(now_against(), std::vector<std::string>{"s3_device"});
  story.say(DeviceLost{"B", "Q"});
  EXPECT_EQ(now_against(), std::vector<std::string>{"s3_count"});
  count();
  EXPECT_TRUE(now_against().empty());
}

TEST(PaperTypedInLater, IsJudgedByWhenThingsHappened) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  tell_closed(story);
  const Terms terms = small_terms();
  const State at_once = fold(story.facts, terms);
  for (Fact& fact : story.facts) fact.recorded_at_ms += 6 * 3'600'000;
  const State later = fold(story.facts, terms);
  EXPECT_TRUE(later.alarms.empty());
  EXPECT_TRUE(later.spaces.at("SD").closed.holds);
  EXPECT_EQ(later.given, at_once.given);
}

TEST(Apply, KnowsEveryKindOfTheTable) {
  // apply() asserts that the body belongs to one family; here each is tried.
  const Terms terms = small_terms();
  for (const Row& one : table()) {
    Story story;
    story.say(sample(one, steady()));
    EXPECT_EQ(fold(story.facts, terms).devices.at("A").last, 1) << one.kind.token;
  }
}

}  // namespace
}  // namespace steamworthy::closing
