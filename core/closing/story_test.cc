// The small plant's story from shut down to taken over: what is outstanding, stage by stage.
#include <gtest/gtest.h>

#include "closing/outstanding.h"
#include "closing/stage.h"
#include "closing/world_test.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

std::vector<std::string> tokens(const Story& story, const Clearance& clearance) {
  const Terms terms = small_terms();
  std::vector<std::string> found;
  for (const Outstanding& item :
       outstanding(fold(story.facts, terms), terms, clearance, story.teller.now_ms)) {
    found.push_back(std::string(row(item.check).token) + " " + item.subject);
  }
  return found;
}

Stage stage_of(const Story& story) {
  const Terms terms = small_terms();
  return stage(fold(story.facts, terms), terms);
}

const std::vector<std::string> none;

TEST(SmallPlant, GoesFromShutDownToTakenOver) {
  Story story;
  EXPECT_EQ(stage_of(story), Stage::ShutDown);
  tell_opened(story);
  EXPECT_EQ(tokens(story, {StepName::Open}), none);
  tell_inside(story);
  EXPECT_EQ(stage_of(story), Stage::Opened);
  EXPECT_EQ(tokens(story, {StepName::Enter, "SD"}), none);
  tell_closed(story);
  EXPECT_EQ(stage_of(story), Stage::Closed);
  tell_filled(story);
  EXPECT_EQ(stage_of(story), Stage::Filled);
  tell_ready_to_raise(story);
  EXPECT_EQ(tokens(story, {StepName::RaisePressure, "", units::bars_gauge(30)}), none);
  tell_held(story);
  EXPECT_EQ(stage_of(story), Stage::UnderTest);
  EXPECT_EQ(tokens(story, {StepName::WalkFireSide, "FU"}), none);
  tell_walked(story);
  EXPECT_EQ(stage_of(story), Stage::Passed);
  tell_handed_back(story);
  EXPECT_EQ(stage_of(story), Stage::Normalised);
  EXPECT_EQ(tokens(story, {StepName::TakeOver}), none);
  EXPECT_EQ(tokens(story, {StepName::Steam}), std::vector<std::string>{"s9_taken_over "});
  story.say(given(StepName::TakeOver));
  story.say(facts::BoilerGiven{}).by("W").say(facts::BoilerReceived{});
  EXPECT_EQ(stage_of(story), Stage::TakenOver);
  EXPECT_EQ(tokens(story, {StepName::Steam}), none);
  const Terms terms = small_terms();
  EXPECT_TRUE(alarms(fold(story.facts, terms)).empty());
}

}  // namespace
}  // namespace steamworthy::closing
