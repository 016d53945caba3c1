// Checks wire/closing_json.h on states folded from facts: shape, texts, marks, units.
#include "wire/closing_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "closing/fold.h"
#include "closing/mark.h"
#include "closing/stage.h"
#include "closing/world_test.h"
#include "testing/examples_test.h"
#include "units/makers.h"
#include "words/catalogue.h"
#include "words/words.h"

namespace steamworthy::wire {
namespace {

using nlohmann::json;
using namespace facts;
using closing::bar;
using closing::Story;

words::Style style_of(units::System system) {
  words::Style style;
  style.print.system = system;
  style.print.gap = " ";
  return style;
}

json view_of(const Story& story, const closing::Terms& terms, std::int64_t later_ms = 0,
             units::System system = units::System::Si) {
  const closing::State state = closing::fold(story.facts, terms);
  ClosingView view{state, terms, "C", story.teller.now_ms + later_ms};
  view.since_ms = story.facts.empty() ? 0 : story.facts.back().happened_at_ms;
  view.intake_no = static_cast<std::int64_t>(story.facts.size());
  if (!story.facts.empty()) view.last = {{view.intake_no, &story.facts.back()}};
  return json::parse(closing_json(view, style_of(system)));
}

json view_of(const Story& story) { return view_of(story, closing::small_terms()); }

const json& with_tag(const json& list, const std::string& tag) {
  for (const json& one : list) {
    if (one.value("tag", one.value("name", "")) == tag) return one;
  }
  static const json none;
  ADD_FAILURE() << "no " << tag;
  return none;
}

json closure(const json& view, const std::string& tag) {
  for (const json& part : view["parts"]) {
    for (const json& row : part["rows"]) {
      for (const json& one : row) {
        if (one["tag"] == tag) return one;
      }
    }
  }
  ADD_FAILURE() << "no " << tag;
  return {};
}

/// Every text in a view: none may show a word that is missing.
void expect_no_missing_word(const json& value, const std::string& where) {
  if (value.is_string()) {
    EXPECT_EQ(value.get<std::string>().find('<'), std::string::npos) << where << ": " << value;
  }
  if (!value.is_structured()) return;
  for (const auto& [key, inner] : value.items()) expect_no_missing_word(inner, where + "/" + key);
}

TEST(ClosingJson, OfAClosingThatHasNotBegunSaysWhatIsMissingToOpen) {
  const json view = view_of(Story{});
  EXPECT_EQ(view["stage"], "shut_down");
  EXPECT_EQ(view["next_step"], "open");
  EXPECT_EQ(view["next_step_text"], "clear to open");
  EXPECT_EQ(view["sentence"], "Shut down; next: clear to open, 5 still outstanding.");
  ASSERT_EQ(view["outstanding"].size(), 5u);
  EXPECT_EQ(view["outstanding"][0]["check"], "s1_pressure");
  EXPECT_EQ(view["outstanding"][0]["rule"], "S1");
  EXPECT_EQ(view["outstanding"][0]["role_text"], "lead hand");
  EXPECT_EQ(view["outstanding"][0]["remedy"], "Let the boiler down; read every gauge at zero.");
  EXPECT_TRUE(view["outstanding"][0]["overridable_by"].empty());
  EXPECT_EQ(view["outstanding"][4]["overridable_by"], json::array({"engineer"}));
  EXPECT_TRUE(view["sheet"].is_null());
}

TEST(ClosingJson, TellsWhoIsInsideTheAirAndTheClearance) {
  Story story;
  tell_opened(story);
  story.say(ClosureOpened{{"M1"}})
      .say(closing::air_of("SD", 20.9))
      .say(AttendantPosted{"SD", "Q"})
      .say(closing::given(StepName::Enter, "SD"))
      .say(TallyIn{{"SD", "P"}})
      .say(ToolIn{{"SD", "lamp"}});
  json view = view_of(story, closing::small_terms(), 4 * 60'000);
  json drum = with_tag(view["spaces"], "SD");
  EXPECT_EQ(drum["people"], json::array({"P"}));
  EXPECT_EQ(drum["things"], json::array({"lamp"}));
  EXPECT_EQ(drum["attendant"], "Q");
  EXPECT_EQ(drum["side"], "steam");
  EXPECT_EQ(drum["air"]["oxygen_top_percent"], 20.9);
  EXPECT_EQ(drum["air"]["age_min"], 4);
  EXPECT_EQ(drum["air"]["good"], true);
  EXPECT_EQ(drum["may_enter"], true);
  EXPECT_EQ(drum["ways_in"][0]["open"], true);
  EXPECT_NE(view["sentence"].get<std::string>().find("inside: P (SD)"), std::string::npos);
  ASSERT_EQ(view["clearances"].size(), 2u);
  EXPECT_EQ(view["clearances"][1]["step_text"], "clear to enter");
  EXPECT_EQ(view["clearances"][1]["permits_text"],
            "People may go in to SD, with the attendant outside.");
  EXPECT_EQ(view["clearances"][1]["stands"], true);
  EXPECT_EQ(view["clearances"][1]["by"], "L");
  EXPECT_EQ(view["clearances"][1]["second"], "Q");

  view = view_of(story, closing::small_terms(), 16 * 60'000);
  drum = with_tag(view["spaces"], "SD");
  EXPECT_EQ(drum["air"]["good"], false);
  EXPECT_EQ(drum["air"]["old"], true);
  EXPECT_EQ(drum["may_enter"], false);
  EXPECT_EQ(view["clearances"][1]["stands"], false);
  EXPECT_EQ(view["clearances"][1]["lapsed_by"], "s2_air_old");
  EXPECT_EQ(view["clearances"][1]["lapsed_text"], "The air in SD was tested too long ago.");
}

TEST(ClosingJson, AClearanceThatWasTakenBackSaysSo) {
  Story story;
  tell_opened(story);
  story.say(ClearanceLapsed{{StepName::Open, "", std::nullopt}});
  EXPECT_EQ(view_of(story)["clearances"][0]["lapsed_text"], "It was taken back.");
}

TEST(ClosingJson, ShowsClosuresByPartInTheirRowsWithTheMarkOfTheCore) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  Story story;
  story.say(ClosureOpened{{"FH-A01"}}).say(ClosureOpened{{"FH-A02"}});
  tell_plate_ready(story, "FH-A02");
  story.say(ClosureNippedUp{{"FH-A02"}}).say(ClosureNotOpened{{"FH-A03"}});
  const json view = view_of(story, terms);
  std::set<std::string> shown;
  for (const json& part : view["parts"]) {
    for (const json& row : part["rows"]) {
      for (const json& one : row) shown.insert(one["tag"].get<std::string>());
    }
  }
  EXPECT_EQ(shown.size(), terms.boiler().closures.size());
  const json& header = with_tag(view["parts"], "FH");
  EXPECT_EQ(header["opened"], 2);
  EXPECT_EQ(header["done"], 1);
  EXPECT_EQ(header["rows"][0][0]["tag"], "FH-A01");
  EXPECT_EQ(header["rows"][0][1]["tag"], "FH-A02");
  EXPECT_EQ(header["rows"][0][0]["mark"], "open");
  EXPECT_EQ(header["rows"][0][1]["mark"], "nipped_up");
  EXPECT_EQ(header["rows"][0][1]["mark_text"], "nipped up on its gasket");
  EXPECT_EQ(header["rows"][0][2]["step_done"], json::array({"not_opened"}));
  EXPECT_EQ(view["closures_opened"], 2);
  EXPECT_EQ(view["closures_left"], 1);
  EXPECT_NE(view["sentence"].get<std::string>().find("1 of 2 opened closures left"),
            std::string::npos);
}

TEST(ClosingJson, SaysWhichInternalComesBeforeWhich) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const auto& internals = terms.boiler().internals;
  ASSERT_GE(internals.size(), 2u);
  Story story;
  for (const boiler::Internal& one : internals) story.say(InternalOut{{one.tag}});
  const json view = view_of(story, terms);
  std::size_t waiting = 0;
  for (const json& one : view["internals"]) {
    EXPECT_EQ(one["in"], false);
    waiting += one["before"].size();
    for (const json& tag : one["before"]) {
      EXPECT_LT(with_tag(view["internals"], tag)["order"], one["order"]);
    }
  }
  EXPECT_GT(waiting, 0u);
}

TEST(ClosingJson, ShowsThePressureAtEachPlaceByItsHeight) {
  Story story;
  story.say(closing::small_sheet());
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const json view = view_of(story, terms);
  ASSERT_GT(view["places"].size(), 100u);
  double above = 1e9;
  for (const json& place : view["places"]) {
    EXPECT_LE(place["level_m"].get<double>(), above) << "top down";
    above = place["level_m"];
  }
  // Ten metres of water are 0.98 bar: between the highest and the lowest place.
  const double drop = view["places"].back()["pressure_bar_gauge"].get<double>() -
                      view["places"].front()["pressure_bar_gauge"].get<double>();
  const double height = view["places"].front()["level_m"].get<double>() -
                        view["places"].back()["level_m"].get<double>();
  EXPECT_NEAR(drop, height * 0.098, height * 0.001);
  EXPECT_EQ(view["sheet"]["test_pressure_bar_gauge"], 30.0);
  EXPECT_EQ(view["sheet"]["test_pressure_text"], "30.00 bar gauge");
}

TEST(ClosingJson, SpeaksInTheUnitsAskedFor) {
  Story story;
  story.say(closing::small_sheet());
  const json view = view_of(story, closing::small_terms(), 0, units::System::Us);
  EXPECT_EQ(view["sheet"]["test_pressure_text"], "435.1 psig");
  EXPECT_EQ(view["sheet"]["test_pressure_bar_gauge"], 30.0) << "numbers keep their one unit";
}

TEST(ClosingJson, ShowsAlarmsWithWhoMayTakeThem) {
  Story story;
  tell_opened(story);
  story.say(FillingStarted{});
  json view = view_of(story);
  ASSERT_EQ(view["alarms"].size(), 1u);
  EXPECT_EQ(view["alarms"][0]["text"], "Done without being clear to fill.");
  EXPECT_EQ(view["alarms"][0]["may_take"], json::array({"lead_hand", "engineer"}));
  EXPECT_EQ(view["alarms"][0]["taken"], false);
  const std::string name = view["alarms"][0]["name"];
  story.say(AlarmTaken{name, RoleName::LeadHand, "stopped"});
  EXPECT_EQ(view_of(story)["alarms"][0]["taken"], true);
}

TEST(ClosingJson, ALateEntrySaysWhatItSpeaksAgainst) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  tell_closed(story);
  story.say(DrainShut{{"D1"}}).say(VentManned{"V1", "Q"}).say(closing::given(StepName::Fill));
  // From a tablet that had seen nothing of it.
  story.facts.push_back(story.teller.tell_unsynced("B", "P", ClosureOpened{{"M1"}}));
  const json view = view_of(story);
  std::string all;
  for (const json& alarm : view["alarms"]) all += alarm["text"].get<std::string>() + "\n";
  EXPECT_NE(all.find("What is known now speaks against \"clear to fill\": a plate was touched."),
            std::string::npos)
      << all;
  expect_no_missing_word(view, "");
}

TEST(ClosingJson, KeepsWhatNobodyDescribed) {
  Story story;
  story.say(ClosureOpened{{"X1"}})
      .say(TemporaryOn{"T99", "SV1"})
      .say(TallyIn{{"attic", "P"}})
      .say(LeakFound{"1", "X1", LeakKind::Gasket, Passing::Out, MeasuredNumber{12, ""}})
      .say(FindingMade{"F1", "X1", Severity::Report, "a crack"});
  const json view = view_of(story);
  EXPECT_EQ(closure(view, "X1")["mark"], "open");
  EXPECT_EQ(closure(view, "X1")["leak"], "1");
  EXPECT_EQ(closure(view, "X1")["flag"], true);
  EXPECT_EQ(with_tag(view["temporaries"], "T99")["must_be_off_before"], "steam");
  EXPECT_EQ(with_tag(view["spaces"], "attic")["people"], json::array({"P"}));
  EXPECT_EQ(view["leaks"][0]["drops_per_min"], 12);
  EXPECT_EQ(view["leaks"][0]["text"], "Gasket at X1, 12 drops a minute, outward.");
  EXPECT_EQ(view["findings"][0]["undecided"], true);
  EXPECT_EQ(with_tag(view["mountings"], "SV1")["gag"], "T99");
}

TEST(ClosingJson, OfTheWholeStoryHasNoMissingWord) {
  Story story;
  std::vector<void (*)(Story&)> stretches = {
      closing::tell_opened, closing::tell_inside,         closing::tell_closed,
      closing::tell_filled, closing::tell_ready_to_raise, closing::tell_held,
      closing::tell_walked, closing::tell_handed_back};
  for (const auto stretch : stretches) {
    stretch(story);
    expect_no_missing_word(view_of(story), view_of(story)["stage"]);
  }
  EXPECT_EQ(view_of(story)["next_step"], "take_over");
  EXPECT_EQ(view_of(story)["last"][0]["kind"], "space.counted");
}

TEST(OutstandingJson, SaysWhatTheClearanceWouldPermit) {
  const closing::Terms terms = closing::small_terms();
  const closing::Clearance clearance{StepName::RaisePressure, "", units::bars_gauge(30)};
  const json asked = json::parse(outstanding_json(
      clearance, closing::outstanding({}, terms, clearance, 0), 7, style_of(units::System::Si)));
  EXPECT_EQ(asked["up_to_bar_gauge"], 30.0);
  EXPECT_EQ(asked["permits_text"], "The pump may be started, up to 30.00 bar gauge.");
  EXPECT_EQ(asked["may_be_given"], false);
  EXPECT_EQ(asked["intake_no"], 7);
  EXPECT_FALSE(asked["outstanding"].empty());
  EXPECT_EQ(asked["outstanding"][0]["danger"], 1);
}

TEST(ClosingWords, EveryStepSaysWhatItPermitsAndWhatLapsesIt) {
  for (const auto& [step, word] : facts::Words<StepName>::table) {
    for (const char* family : {"permits.", "lapses_when.", "clearance."}) {
      EXPECT_TRUE(words::find(words::Language::English, family + std::string(word))) << word;
    }
  }
  for (int i = 0; i <= static_cast<int>(closing::Mark::Touched); ++i) {
    const std::string key = "mark." + std::string(token(static_cast<closing::Mark>(i)));
    EXPECT_TRUE(words::find(words::Language::English, key)) << key;
  }
}

}  // namespace
}  // namespace steamworthy::wire
