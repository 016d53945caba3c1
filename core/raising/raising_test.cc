// Checks raising/before_fire.h and raising/first_steam.h on the small plant's story and on the
// example watertube boiler.
#include <gtest/gtest.h>

#include <algorithm>

#include "closing/fold.h"
#include "closing/outstanding.h"
#include "closing/world_test.h"
#include "raising/before_fire.h"
#include "raising/first_steam.h"
#include "testing/examples_test.h"
#include "units/makers.h"

namespace steamworthy::raising {
namespace {

using closing::Story;
using units::level_metres;

using Texts = std::vector<std::string>;

Texts open_lines(const Story& story) {
  const closing::Terms terms = closing::small_terms();
  Texts lines;
  for (const Item& item : still_to_do(before_fire(terms, closing::fold(story.facts, terms)))) {
    EXPECT_FALSE(item.reason.empty());
    EXPECT_FALSE(item.remedy.empty());
    lines.push_back(std::string(token(item.task)) + " " + item.subject);
  }
  return lines;
}

Story told_up_to_walkdown() {
  Story story;
  closing::tell_opened(story);
  closing::tell_inside(story);
  closing::tell_closed(story);
  closing::tell_filled(story);
  closing::tell_ready_to_raise(story);
  closing::tell_held(story);
  closing::tell_walked(story);
  return story;
}

bool has(const std::vector<working::Message>& messages, const std::string& key) {
  return std::any_of(messages.begin(), messages.end(),
                     [&](const working::Message& message) { return message.key == key; });
}

TEST(BeforeFire, ListsAfterTheWalkdownEverythingThatTheTestLeftBehind) {
  EXPECT_EQ(open_lines(told_up_to_walkdown()),
            (Texts{"take_off_temporary T1", "prove_protection GG", "harden_up M1", "harden_up M2",
                   "take_off_gauge G1", "take_off_gauge G2", "free_hangers ", "restore_line IS1"}));
}

TEST(BeforeFire, IsEmptyOnceAllIsOffBackAndProved) {
  Story story = told_up_to_walkdown();
  closing::tell_handed_back(story);
  story.say(facts::GaugeRemoved{{"G1"}}).say(facts::GaugeRemoved{{"G2"}});
  EXPECT_EQ(open_lines(story), Texts{});
}

// Each fact of handing back, left out alone, leaves its own line.
TEST(BeforeFire, MissesNothingThatIsLeftOut) {
  using namespace facts;
  const std::vector<std::pair<Body, std::string>> facts = {
      {ClosureHardenedUp{{"M1"}}, "harden_up M1"},
      {ClosureHardenedUp{{"M2"}}, "harden_up M2"},
      {TemporaryOff{{"T1"}}, "take_off_temporary T1"},
      {TemporarySeenOff{{"T1"}}, "take_off_temporary T1"},
      {HangersFreed{}, "free_hangers "},
      {MountingPutBack{{"GG"}}, "prove_protection GG"},
      {MountingProved{{"GG"}}, "prove_protection GG"},
      {BoilerNormalised{}, "restore_line IS1"},
      {GaugeRemoved{{"G1"}}, "take_off_gauge G1"},
      {GaugeRemoved{{"G2"}}, "take_off_gauge G2"}};
  for (std::size_t left_out = 0; left_out < facts.size(); ++left_out) {
    Story story = told_up_to_walkdown();
    for (std::size_t i = 0; i < facts.size(); ++i) {
      if (i != left_out) story.say(facts[i].first);
    }
    EXPECT_EQ(open_lines(story), Texts{facts[left_out].second});
  }
}

// What closing calls outstanding for steam of this sort is on the list too.
TEST(BeforeFire, HoldsWhateverStopsTheClearance) {
  using closing::Check;
  const Story story = told_up_to_walkdown();
  const closing::Terms terms = closing::small_terms();
  const Texts lines = open_lines(story);
  int compared = 0;
  for (const closing::Outstanding& item :
       closing::outstanding(closing::fold(story.facts, terms), terms,
                            {facts::StepName::Steam, "", {}}, story.teller.now_ms)) {
    const bool of_this_sort = item.check == Check::S9Temporary || item.check == Check::S9SeenOff ||
                              item.check == Check::S9Hardened || item.check == Check::S9Protection;
    if (!of_this_sort) continue;
    EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
      return line.substr(line.find(' ') + 1) == item.subject;
    })) << item.subject;
    ++compared;
  }
  EXPECT_GE(compared, 4);
}

TEST(BeforeFire, OfAnEmptyClosingIsTheWholeListOfTheDescription) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const auto items = before_fire(terms, closing::State{});
  Texts first;
  for (const Item& item : items) {
    EXPECT_FALSE(item.done) << item.subject;
    first.push_back(item.subject);
  }
  // Four blanks, two glasses and two cut-outs, the pump, hangers, eight lines.
  EXPECT_EQ(first, (Texts{"T-1", "T-2", "T-3", "T-4", "GG-1", "GG-2", "LW-1", "LW-2", "TC-1", "",
                          "IS-1", "IS-2", "IS-3", "IS-4", "IS-5", "IS-6", "IS-7", "IS-8"}));
  EXPECT_EQ(items[0].reason.key, "raising.why.never_told_of");
}

TEST(BeforeFire, PutsGagsFirst) {
  boiler::Boiler boiler = testing::example_boiler("watertube");
  boiler.temporaries[3].kind = boiler::TemporaryKind::Gag;
  const closing::Terms terms(boiler, {});
  EXPECT_EQ(before_fire(terms, closing::State{}).front().subject, "T-4");
}

TEST(FirstSteam, WalksThreeRoundsWithWhatWasFollowedUpBeforeTheRest) {
  Story story = told_up_to_walkdown();
  story.say(facts::LeakFound{"7", "H1", facts::LeakKind::Gasket, facts::Passing::Out, {}});
  story.by("E").say(facts::LeakWatchedHot{"7", facts::RoleName::Engineer});
  story.by("L").say(facts::ClosureHardenedUp{{"M2"}});
  const closing::Terms terms = closing::small_terms();
  const FirstSteam steam = first_steam(terms, closing::fold(story.facts, terms));
  ASSERT_EQ(steam.rounds.size(), 3u);  // the small plant states no working pressure
  EXPECT_EQ(steam.rounds[0].pressure.value->si, 2e5);
  EXPECT_FALSE(steam.rounds[1].pressure.is_known());
  Texts subjects;
  for (const ToLook& place : steam.rounds[0].places) {
    subjects.push_back(std::string(token(place.why)) + " " + place.subject);
  }
  EXPECT_EQ(subjects, (Texts{"watched_hot H1", "hardened_up M2", "opened M1"}));
  EXPECT_TRUE(has(steam.notes, "raising.follow_up_pressure_off"));
}

TEST(FirstSteam, TakesHalfAndTheWholeOfTheLowestWorkingPressure) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const FirstSteam steam = first_steam(terms, closing::State{});
  ASSERT_EQ(steam.rounds.size(), 3u);
  EXPECT_EQ(steam.rounds[1].pressure.value->si, 18e5);
  EXPECT_EQ(steam.rounds[2].pressure.value->si, 36e5);
}

TEST(StartLevel, RunsTheDrumOffToTheLevelAndTellsWhatStandsHigher) {
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  const StartLevel start = start_level(boiler, level_metres(8.5));
  EXPECT_TRUE(start.stops.empty());
  // Half the drum: a cylinder of 1.25 m and 6.6 m and two 2:1 heads, pi/8 d^2 l + pi/24 d^3; and
  // from the economizer what lies above the links' hole in its outlet header, 8.9 - 0.1391/2 m:
  // the header and the coils' share above; the links, 8.6 to 8.9 m, empty.
  const double pi = 3.14159265358979323846;
  const double d = 1.25;
  const double drum = pi / 8 * d * d * 6.6 + pi / 24 * d * d * d;
  const double b = 0.1391;
  const double header = pi / 4 * b * b * 2.4 + pi / 12 * b * b * b;
  const double links = 2 * pi / 4 * 0.0943 * 0.0943 * 2.0;
  const double coils = 32 * pi / 4 * 0.03 * 0.03 * 34 * (0.5 * b) / 4.0;
  EXPECT_EQ(start.figures[1].key, "raising.run_off");
  EXPECT_NEAR(start.figures[1].value->si, drum + header + links + coils, 1e-3);
  const auto stands = [&](const std::string& part) {
    return std::any_of(start.notes.begin(), start.notes.end(), [&](const auto& note) {
      return std::get<std::string>(note.values[0].second) == part;
    });
  };
  EXPECT_TRUE(stands("SI"));
  EXPECT_TRUE(stands("SE"));
  EXPECT_TRUE(stands("EC"));
  EXPECT_FALSE(stands("MD"));
  EXPECT_FALSE(stands("CB"));
  EXPECT_TRUE(std::any_of(start.figures.begin(), start.figures.end(), [](const auto& figure) {
    return figure.key == "raising.held_water" && figure.subject == "SE";
  }));
}

TEST(StartLevel, RefusesALevelAtOrBelowALowWaterCutOutOrWithoutSteamRoom) {
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  EXPECT_TRUE(has(start_level(boiler, level_metres(8.3)).stops, "raising.below_cut_out"));
  EXPECT_TRUE(start_level(boiler, level_metres(8.31)).stops.empty());
  EXPECT_TRUE(has(start_level(boiler, level_metres(9.125)).stops, "raising.no_steam_room"));
}

TEST(StartLevel, GuessesNoLevel) {
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  const StartLevel start = start_level(boiler, {});
  EXPECT_EQ(start.figures[0].cannot_tell.key, "raising.start_level_not_stated");
}

}  // namespace
}  // namespace steamworthy::raising
