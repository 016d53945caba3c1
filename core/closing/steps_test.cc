// A step that is done without its clearance is stored all the same and is an alarm; done under its
// clearance it is none. That the whole story, step by step under its clearances, is none is in
// story_test.cc.
#include <gtest/gtest.h>

#include <algorithm>

#include "closing/outstanding.h"
#include "closing/world_test.h"

namespace steamworthy::closing {
namespace {

using namespace facts;  // the bodies

using Told = void (*)(Story&);

/// A step: how far the small plant's story has come before it, and what tells of it.
struct Step {
  const char* name;
  std::vector<Told> before;
  std::vector<Body> telling;
};

// Which fact tells of which step: common practice, no source.
const Step steps[] = {
    {"open", {}, {ClosureOpened{{"M1"}}}},
    {"enter", {tell_opened}, {TallyIn{{"SD", "P"}}}},
    {"close the last way in", {tell_opened, tell_inside}, {ClosureNippedUp{{"M1"}}}},
    {"fill", {tell_opened, tell_inside, tell_closed}, {FillingStarted{}}},
    {"raise pressure",
     {tell_opened, tell_inside, tell_closed, tell_filled, tell_ready_to_raise},
     {RaisingStarted{bar(30)}}},
    {"walk the fire side",
     {tell_opened, tell_inside, tell_closed, tell_filled, tell_ready_to_raise, tell_held},
     {TallyIn{{"FU", "P"}}}},
    {"tighten",
     {tell_opened},
     {ReadingTaken{"G1", bar(5)}, ClosureTouched{"M1", TouchedHow::Tightened}}},
    {"harden up", {tell_opened}, {ReadingTaken{"G1", bar(5)}, ClosureHardenedUp{{"M1"}}}},
    {"strike",
     {tell_opened},
     {ReadingTaken{"G1", bar(5)}, ClosureTouched{"M1", TouchedHow::Struck}}},
    {"break a joint",
     {tell_opened, tell_inside, tell_closed, tell_filled},
     {ClosureOpened{{"M1"}}}},
    {"drain", {tell_opened, tell_inside, tell_closed, tell_filled}, {DrainOpened{{"D1"}}}},
    {"leave full", {tell_opened, tell_inside, tell_closed, tell_filled}, {BoilerLeftFull{"K"}}},
    {"take over", {tell_opened}, {BoilerReceived{}}},
};

std::vector<Alarm> without(const Story& story) {
  std::vector<Alarm> found = alarms(fold(story.facts, small_terms()));
  std::erase_if(found, [](const Alarm& a) { return a.why.key != "alarm.without_clearance"; });
  return found;
}

class AStep : public testing::TestWithParam<Step> {};

TEST_P(AStep, DoneWithoutItsClearanceIsAnAlarmOnce) {
  const Step& step = GetParam();
  Story story;
  for (const Told tell : step.before) tell(story);
  ASSERT_TRUE(without(story).empty());
  // What was given before does not count again after a shift change.
  story.say(ShiftHandedOver{"L", "N"});
  for (const Body& body : step.telling) story.say(body);
  EXPECT_EQ(without(story).size(), 1u);
  const Alarm first = without(story).front();
  for (const Body& body : step.telling) story.say(body);
  // One that stops nothing stands for all of its kind until it is taken.
  EXPECT_EQ(without(story).size(), first.stops ? 2u : 1u);
  story.say(AlarmTaken{first.name, RoleName::LeadHand, ""});
  for (const Body& body : step.telling) story.say(body);
  EXPECT_FALSE(without(story).empty());
}

INSTANTIATE_TEST_SUITE_P(OfTheTable, AStep, testing::ValuesIn(steps), [](const auto& row) {
  std::string name = row.param.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

TEST(AStepUnderItsClearance, DrainingBreakingAndClosingAgainAreNone) {
  Story story;
  for (const Told tell : {tell_opened, tell_inside, tell_closed, tell_filled}) tell(story);
  story.say(ReadingTaken{"G1", bar(0)})
      .say(VentOpened{{"V1"}})
      .say(VentMovingAir{{"V1"}})
      .say(given(StepName::Drain))
      .say(DrainOpened{{"D1"}})
      .say(DrainProved{{"D1"}})
      .say(BoilerDrained{})
      .say(given(StepName::BreakJoint, "M1"))
      .say(ClosureOpened{{"M1"}});
  EXPECT_TRUE(without(story).empty());
  tell_space_closed(story, "SD", "M1");
  const State state = fold(story.facts, small_terms());
  EXPECT_TRUE(alarms(state).empty());
  EXPECT_TRUE(state.spaces.at("SD").closed.holds);
}

TEST(AStepWithoutClearance, StopsNoOtherClearance) {
  Story story;
  tell_opened(story);
  story.say(TallyIn{{"SD", "P"}});
  ASSERT_EQ(without(story).size(), 1u);
  const Terms terms = small_terms();
  for (const Outstanding& item :
       outstanding(fold(story.facts, terms), terms, {StepName::Open}, story.teller.now_ms)) {
    EXPECT_NE(item.check, Check::S11Alarm);
  }
}

TEST(AStepWithoutClearance, IsNoAlarmWhereThePlateTakesUpAtZero) {
  Story story;
  tell_opened(story);
  story.say(ClosureTouched{"M1", TouchedHow::Tightened}).say(ClosureHardenedUp{{"M1"}});
  EXPECT_TRUE(without(story).empty());
}

}  // namespace
}  // namespace steamworthy::closing
