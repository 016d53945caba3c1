// Checks closing/mark.h: each state of the table of marks, and which wins where several hold.
#include "closing/mark.h"

#include <gtest/gtest.h>

#include "closing/world_test.h"

namespace steamworthy::closing {
namespace {

using namespace facts;

const Terms& terms() {
  static const Terms small = small_terms();
  return small;
}
Mark mark_of(const Story& story) { return mark(fold(story.facts, terms()), "M1"); }
Signs signs_of(const Story& story) { return signs(fold(story.facts, terms()), "M1"); }

Story nipped_up() {
  Story story;
  story.say(small_sheet()).say(ClosureOpened{{"M1"}});
  tell_plate_ready(story, "M1");
  story.say(ClosureNippedUp{{"M1"}});
  return story;
}

TEST(Mark, FollowsTheWorkOnAClosure) {
  Story story;
  EXPECT_EQ(mark_of(story), Mark::NotOpened);
  story.say(small_sheet()).say(ClosureNotOpened{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::NotOpened);
  story.say(ClosureOpened{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::Open);
  story.say(ClosureCleaned{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::Open) << "cleaned, and nobody has looked";
  story.say(ClosureLookedAt{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::Cleaned);
  story.say(ClosureNippedUp{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::NippedUp);
  story.say(GapsMeasured{"M1", {}, GapVerdict::Report});
  EXPECT_EQ(mark_of(story), Mark::NippedUp);
  story.say(GapsMeasured{"M1", {}, GapVerdict::Good});
  EXPECT_EQ(mark_of(story), Mark::GapMeasured);
  story.say(PlaceSeenDry{"M1", bar(20)});
  EXPECT_EQ(mark_of(story), Mark::SeenDry);
  story.say(ClosureHardenedUp{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::HardenedUp);
  story.say(ClosureTouched{"M1", TouchedHow::Struck});
  EXPECT_EQ(mark_of(story), Mark::Touched);
  story.say(PlaceSeenDry{"M1", bar(20)});
  EXPECT_EQ(mark_of(story), Mark::HardenedUp);
  story.say(ClosureOpened{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::Open);
}

TEST(Mark, IsFilledOnlyForWhatWasSeenDryUnderPressure) {
  Story story = nipped_up();
  story.say(ClosureHardenedUp{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::NippedUp) << "hardened up before the test, and not seen yet";
  story.say(PlaceSeenDry{"M1", bar(19)});
  EXPECT_EQ(mark_of(story), Mark::NippedUp) << "below examination pressure";
  story.say(PlaceSeenDry{"M1", bar(20)});
  EXPECT_EQ(mark_of(story), Mark::HardenedUp);
}

TEST(Mark, OfAClosureThatWasNotOpenedIsFilledWhenItWasSeenDry) {
  Story story;
  story.say(small_sheet()).say(ClosureNotOpened{{"M1"}}).say(PlaceSeenDry{"M1", bar(20)});
  EXPECT_EQ(mark_of(story), Mark::SeenDry);
  story.say(ClosureTouched{"M1", TouchedHow::Tightened});
  EXPECT_EQ(mark_of(story), Mark::Touched);
}

TEST(Mark, ForgetsTheGapWhenThePlateMayHaveMoved) {
  Story story = nipped_up();
  story.say(GapsMeasured{"M1", {}, GapVerdict::Good}).say(ClosureNippedUp{{"M1"}});
  EXPECT_EQ(mark_of(story), Mark::NippedUp);
  story.say(ClosureTouched{"M1", TouchedHow::Slackened});
  EXPECT_EQ(mark_of(story), Mark::Cleaned);
}

TEST(Mark, OfALeakingPlaceIsNotFilledAndCarriesItsNumber) {
  Story story = nipped_up();
  story.say(PlaceSeenDry{"M1", bar(20)})
      .say(LeakFound{"7", "M1", LeakKind::Gasket, Passing::Out, std::nullopt});
  EXPECT_EQ(mark_of(story), Mark::NippedUp);
  EXPECT_EQ(signs_of(story).leak, "7");
  story.say(LeakRepaired{"7", "joint remade"});
  EXPECT_EQ(signs_of(story).leak, "7") << "not seen dry yet";
  story.say(PlaceSeenDry{"M1", bar(20)});
  EXPECT_EQ(signs_of(story), Signs{});
}

TEST(Signs, FlagWhatSomebodyMustDecide) {
  Story gap = nipped_up();
  EXPECT_FALSE(signs_of(gap).decide);
  gap.say(GapsMeasured{"M1", {}, GapVerdict::Report});
  EXPECT_TRUE(signs_of(gap).decide);
  gap.say(ClosureNippedUp{{"M1"}});
  EXPECT_FALSE(signs_of(gap).decide) << "moved: to be measured again";

  Story plate = nipped_up();
  plate.say(PlateMatched{"M1", false});
  EXPECT_TRUE(signs_of(plate).decide);
  plate.say(PlateMatched{"M1", true});
  EXPECT_FALSE(signs_of(plate).decide);

  Story finding = nipped_up();
  finding.say(FindingMade{"1", "M1", Severity::Note, "a scratch"});
  EXPECT_FALSE(signs_of(finding).decide);
  finding.say(FindingMade{"2", "M1", Severity::Report, "a crack"});
  EXPECT_TRUE(signs_of(finding).decide);
  finding.by("E").say(FindingDecided{"2", Disposition::Watch, RoleName::Engineer});
  EXPECT_FALSE(signs_of(finding).decide);
}

TEST(Mark, HasATokenForEachState) {
  EXPECT_EQ(token(Mark::NotOpened), "not_opened");
  EXPECT_EQ(token(Mark::GapMeasured), "gap_measured");
  EXPECT_EQ(token(Mark::Touched), "touched");
}

}  // namespace
}  // namespace steamworthy::closing
