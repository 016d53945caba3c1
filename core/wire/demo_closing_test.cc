// The demo closing: the example file is the story, and the story ends taken over.
//
// To renew the file after the story was changed: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/wire_test
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <map>

#include "closing/stage.h"
#include "testing/examples_test.h"
#include "units/makers.h"
#include "wire/demo_story_test.h"
#include "wire/fact_line.h"
#include "words/words.h"

namespace steamworthy::wire {
namespace {

using closing::Stage;
using facts::StepName;

constexpr const char* file = "examples/demo-closing.jsonl";
constexpr const char* mid_work_file = "examples/demo-mid-work.jsonl";

struct Chapter {
  Stage stage;
  std::map<StepName, std::vector<std::string>> outstanding;  ///< "check subject"
  std::size_t alarms;
};

std::map<std::string, Chapter>& chapters() {
  static std::map<std::string, Chapter> told;
  return told;
}

DemoStory tell(DemoEnd end) {
  return DemoStory(
      [](const std::string& name, const closing::Fold& fold, std::int64_t now_ms) {
        Chapter chapter{closing::stage(fold.state(), fold.terms()), {}, 0};
        for (const StepName step : {StepName::Open, StepName::Fill, StepName::RaisePressure,
                                    StepName::TakeOver, StepName::Steam}) {
          closing::Clearance asked{step, "", std::nullopt};
          if (step == StepName::RaisePressure) asked.up_to = units::bars_gauge(45);
          for (const auto& item : closing::outstanding(fold.state(), fold.terms(), asked, now_ms)) {
            const std::string token(closing::row(item.check).token);
            chapter.outstanding[step].push_back(token + " " + item.subject);
          }
        }
        chapter.alarms = closing::alarms(fold.state()).size();
        chapters()[name] = std::move(chapter);
      },
      [](const std::string& what) { ADD_FAILURE() << what; }, end);
}

const std::vector<facts::Fact>& story() {
  static const DemoStory told = tell(DemoEnd::TakenOver);
  return told.facts();
}

const std::vector<facts::Fact>& mid_work() {
  static const DemoStory told = tell(DemoEnd::MidWork);
  return told.facts();
}

/// Holds a file to what was written from a story, or renews it.
void expect_file(const std::string& name, const std::string& written) {
  if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr) {
    std::ofstream(std::string(STEAMWORTHY_SOURCE_DIR) + "/" + name) << written;
  }
  EXPECT_EQ(testing::source_file(name), written);
}

bool is_in(const std::string& chapter, StepName step, const std::string& item) {
  const auto& items = chapters().at(chapter).outstanding[step];
  return std::find(items.begin(), items.end(), item) != items.end();
}

TEST(DemoClosing, TheExampleFileIsTheStory) {
  std::string written =
      "# A closing of the invented plant's watertube boiler (watertube.toml), from shut down to\n"
      "# taken over: a stuck ball, a nicked gasket, a feed check that passes in, a test stopped "
      "at\n"
      "# night and left safe. Written from the story in core/wire/demo_story_test.cc.\n";
  for (const facts::Fact& fact : story()) written += fact_line(fact) + "\n";
  expect_file(file, written);
}

TEST(DemoClosing, TheExampleInMidWorkIsThatStory) {
  std::string written =
      "# A closing of the same boiler in the middle of its work: some headers closed, a plate "
      "that\n"
      "# is not its hole's, a scored seat, two people in the steam drum. Written from the story "
      "in\n"
      "# core/wire/demo_story_test.cc.\n";
  for (const facts::Fact& fact : mid_work()) written += fact_line(fact) + "\n";
  expect_file(mid_work_file, written);
}

TEST(DemoClosing, InMidWorkNothingAlarmsAndTwoAreInside) {
  mid_work();
  const Chapter& end = chapters().at("half of the headers closed");
  EXPECT_EQ(end.stage, Stage::ClosingUp);
  EXPECT_EQ(end.alarms, 0u);
  for (const char* item : {"s4_space SP-SD", "s4_closure RH-A04", "s4_finding F2"}) {
    EXPECT_TRUE(is_in("half of the headers closed", StepName::Fill, item)) << item;
  }
}

TEST(DemoClosing, TheExampleOfThePlantsPeopleIsThatOfTheStory) {
  std::string written =
      "# The people and the limits of the invented plant, for its own feed. Written from the "
      "story\n"
      "# in core/wire/demo_story_test.cc.\n";
  int number = 0;
  const auto write = [&](const facts::Body& body) {
    facts::Fact fact = story().front();
    fact.closing = "plant";
    fact.device_seq = ++number;
    fact.id.replace(fact.id.size() - 12, 12, fmt::format("{:012x}", 0xa0000 + number));
    fact.happened_at_ms = fact.recorded_at_ms -= 86'400'000;
    fact.person = "A. Holm";
    fact.body = body;
    written += fact_line(fact) + "\n";
  };
  for (const facts::PersonEnrolled& person : demo_people()) write(person);
  write(demo_limits());
  expect_file("examples/demo-plant.jsonl", written);
}

TEST(DemoClosing, EveryClearanceWasClearAndTheEndIsTakenOver) {
  story();  // each clearance that is not clear is a failure there
  const Chapter& end = chapters().at("taken over");
  EXPECT_EQ(end.stage, Stage::TakenOver);
  EXPECT_EQ(end.outstanding.count(StepName::Steam), 0u);
  for (const auto& [name, chapter] : chapters()) EXPECT_EQ(chapter.alarms, 0u) << name;
}

TEST(DemoClosing, FoldsFromItsFileInAnyOrder) {
  ReadFacts read = read_fact_lines(testing::source_file(file), file);
  ASSERT_TRUE(read.problems.empty());
  ASSERT_GT(read.facts.size(), 600u);
  const closing::Terms terms = demo_terms();
  const closing::State forwards = closing::fold(read.facts, terms);
  std::reverse(read.facts.begin(), read.facts.end());
  EXPECT_TRUE(closing::fold(read.facts, terms) == forwards);
  EXPECT_EQ(closing::stage(forwards, terms), Stage::TakenOver);
}

TEST(DemoClosing, WhatWasOutstandingInBetween) {
  story();
  EXPECT_TRUE(is_in("shut down", StepName::Open, "s1_vent "));
  EXPECT_TRUE(is_in("shut down", StepName::Open, "s1_drained BD-1"));
  EXPECT_FALSE(is_in("shut down", StepName::Open, "s1_isolation IS-1"));
  EXPECT_TRUE(is_in("opened", StepName::Fill, "s4_closure FH-A05"));
  EXPECT_TRUE(is_in("a ball is stuck", StepName::Fill, "s4_tubes CB"));
  EXPECT_TRUE(is_in("a ball is stuck", StepName::Fill, "s4_internal IN-1"));
  EXPECT_TRUE(is_in("a ball is stuck", StepName::Fill, "s4_finding F1"));
  EXPECT_FALSE(is_in("internals in", StepName::Fill, "s4_tubes CB"));
  EXPECT_TRUE(is_in("headers closed", StepName::Fill, "s4_space SP-SD"));
  EXPECT_FALSE(is_in("closed", StepName::Fill, "s4_space SP-SD"));
  EXPECT_TRUE(is_in("closed", StepName::Fill, "s4_order "));
  EXPECT_TRUE(is_in("filled", StepName::RaisePressure, "s5_sheet "));
  EXPECT_TRUE(is_in("the feed check passes in", StepName::TakeOver, "s9_leak K1"));
  EXPECT_TRUE(is_in("left safe for the night", StepName::TakeOver, "s9_weep K2"));
  EXPECT_TRUE(is_in("a nicked gasket", StepName::RaisePressure, "s5_filled FH-A05"));
  EXPECT_TRUE(is_in("seen dry", StepName::TakeOver, "s9_weep K3"));
  EXPECT_FALSE(is_in("passed", StepName::TakeOver, "s9_weep K3"));
  EXPECT_TRUE(is_in("passed", StepName::TakeOver, "s9_temporary T-1"));
  EXPECT_TRUE(is_in("normalised", StepName::Steam, "s9_taken_over "));
}

TEST(DemoClosing, PassesThroughTheStages) {
  story();
  const std::map<std::string, Stage> expected = {{"shut down", Stage::ShutDown},
                                                 {"opened", Stage::Opened},
                                                 {"headers closed", Stage::ClosingUp},
                                                 {"closed", Stage::Closed},
                                                 {"filled", Stage::Filled},
                                                 {"the feed check passes in", Stage::UnderTest},
                                                 {"left safe for the night", Stage::LeftSafe},
                                                 {"a nicked gasket", Stage::Repairing},
                                                 {"normalised", Stage::Normalised},
                                                 {"taken over", Stage::TakenOver}};
  for (const auto& [name, stage] : expected) {
    EXPECT_EQ(closing::token(chapters().at(name).stage), closing::token(stage)) << name;
  }
}

TEST(DemoClosing, ReadsAsSentencesWithoutAGap) {
  for (const facts::Fact& fact : story()) {
    const std::string said = words::sentence(facts::tell(fact));
    EXPECT_EQ(said.find('<'), std::string::npos) << said;
  }
}

}  // namespace
}  // namespace steamworthy::wire
