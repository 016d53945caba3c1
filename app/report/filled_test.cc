// filled_test.cc: papers filled from the demo closing (examples/demo-closing.jsonl), at its end and
// in its middle. What is looked for is in that file, not in the code under test.
#include "report/filled.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <regex>

#include "paper/type.h"
#include "report/boilers_test.h"
#include "report/demo_test.h"
#include "report/document_test.h"
#include "report/drawing_paper.h"
#include "report/papers.h"

namespace steamworthy::report {
namespace {

using paper::Box;
using paper::Page;
using paper::Text;

const DemoClosing& demo(const std::string& until) {
  static std::map<std::string, std::unique_ptr<DemoClosing>> all;
  auto& one = all[until];
  if (!one) one = std::make_unique<DemoClosing>(until);
  return *one;
}

struct Made {
  explicit Made(const std::string& until = "", paper::Size size = paper::Size::A4,
                units::System system = units::System::Si)
      : boiler(testing::example_boiler("watertube")),
        papers{{.boiler = boiler}, sheet::make_sheet(boiler, testing::rule_files(), {})} {
    papers.context.size = size;
    papers.context.style.print.system = system;
    papers.context.version = "0";
    papers.context.sources = {{"x.toml", "00"}};
    papers.context.filled = demo(until).filled.get();
  }
  std::string text(const char* kind) const { return all_text(find_kind(kind)->make(papers)); }
  boiler::Boiler boiler;
  Papers papers;
};

/// Up to the first entry of such a kind; all.
const char* const moments[] = {"closing.started", "tubes.balled", "test.stopped", ""};

class FilledPaper
    : public ::testing::TestWithParam<std::tuple<const char*, paper::Size, units::System>> {};

TEST_P(FilledPaper, StaysInsideItsPagesAndNothingCoversAnything) {
  const auto& [until, size, system] = GetParam();
  const Made made(until, size, system);
  static const std::regex key("<[a-z_]+\\.[a-z_0-9.]+>"), word("\\btight\\b", std::regex::icase);
  for (const PaperKind& kind : kinds()) {
    if (kind.token == "labels") continue;  // holds nothing of a closing
    const paper::Document document = kind.make(made.papers);
    const std::string text = all_text(document);
    EXPECT_FALSE(std::regex_search(text, key)) << kind.token;
    EXPECT_FALSE(std::regex_search(text, word)) << kind.token;
    int number = 0;
    for (const Page& page : document.pages) {
      ++number;
      const Box all{8.0, 5.0, page.width - 16.0, page.height - 8.0};
      const std::vector<Text> here = texts(page);
      std::vector<Box> boxes;
      for (const Text& one : here) boxes.push_back(paper::bounds(one));
      for (std::size_t i = 0; i < here.size(); ++i) {
        EXPECT_TRUE(all.contains(boxes[i]))
            << kind.token << " page " << number << ": " << here[i].text;
        for (std::size_t j = i + 1; j < here.size(); ++j) {
          EXPECT_FALSE(boxes[i].inset(0.15).overlaps(boxes[j].inset(0.15)))
              << kind.token << " page " << number << ": \"" << here[i].text << "\" and \""
              << here[j].text << "\"";
        }
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Moments, FilledPaper,
                         ::testing::Combine(::testing::ValuesIn(moments),
                                            ::testing::Values(paper::Size::A4, paper::Size::Letter),
                                            ::testing::Values(units::System::Si,
                                                              units::System::Us)));

TEST(FilledWalkdown, HasTheLeaksTheirDropsAndWhoLooked) {
  const std::string text = Made().text("walkdown");
  for (const char* words : {"K1", "K2", "K3", "inward", "20 drops a minute", "36.00 bar gauge",
                            "to be watched hot, signed by A. Holm", "by log entry"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(FilledClosures, TellsWhatWasDoneToEach) {
  const std::string text = Made().text("closures");
  for (const char* words : {"G-114", "G-115", "hardened up", "not opened this time", "at 3 o'clock",
                            "repaired and seen dry", "seal S-FH-2"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
  // One line a closure that was not opened: SI, SO, EI, EO.
  std::size_t not_opened = 0;
  for (const facts::Fact& fact : demo_facts())
    not_opened += std::holds_alternative<facts::ClosureNotOpened>(fact.body) ? 1 : 0;
  std::size_t told = 0;
  for (const Page& page : closure_sheets(Made().papers).pages) {
    for (const Text& one : texts(page))
      told += one.text.find(": not opened") != std::string::npos ? 1 : 0;
  }
  EXPECT_GT(not_opened, 10u);
  EXPECT_LE(told, not_opened);
}

TEST(FilledTally, PairsInAndOutAndTellsWhoIsStillInside) {
  const std::string middle = Made("internal.out").text("tally");
  EXPECT_NE(middle.find("still inside"), std::string::npos);
  EXPECT_NE(middle.find("lamp 3"), std::string::npos);
  const std::string end = Made().text("tally");
  EXPECT_EQ(end.find("still inside"), std::string::npos);
  EXPECT_NE(end.find("GD-2"), std::string::npos);
}

TEST(FilledTakingOver, NamesWhatStandsInTheWayOfSteam) {
  const std::string middle = Made("test.stopped").text("taking-over");
  for (const char* words : {"T-1, T-2, T-3, T-4 is on", "Weep K2 is open"})
    EXPECT_NE(middle.find(words), std::string::npos) << words;
  const std::string end = Made().text("taking-over");
  EXPECT_EQ(end.find("T-1, T-2"), std::string::npos);
  EXPECT_NE(end.find("M. Ness"), std::string::npos);
  EXPECT_NE(end.find("B. Krog"), std::string::npos);
}

TEST(FilledHandover, TellsShiftsLeaksAndPlatesThatWait) {
  const std::string text = Made("shift.handed_over").text("handover");
  for (const char* words : {"R. Lind to K. Aas", "left safe", "K2", "see it dry under pressure"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(FilledLeaveSafe, TellsWhomToCallAndWhatStaysOn) {
  const std::string text = Made("shift.handed_over").text("leave-safe");
  for (const char* words : {"K. Aas, inside line 14", "T-3", "IS-1", "end of the shift"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(FilledPressureLog, HasEveryReadingAndTheHolds) {
  const Made made;
  const std::string text = made.text("pressure-log");
  for (const char* words : {"hold at 45.00 bar gauge", "45.80", "46.60", "stopped the test"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(FilledDrawing, DrawsMarksAndTheirLegend) {
  const Made made;
  const paper::Document marked = drawing_paper(made.papers.context);
  EXPECT_NE(all_text(marked).find("hardened up, done"), std::string::npos);
}

TEST(Filled, TellsADescriptionThatIsNotTheOneOfTheClosing) {
  DemoClosing other;
  EXPECT_FALSE(other.filled->is_described_otherwise());
  other.filled->set_described_as(std::string(64, 'f'));
  EXPECT_TRUE(other.filled->is_described_otherwise());
  Made made;
  made.papers.context.filled = other.filled.get();
  EXPECT_NE(made.text("tally").find("another description"), std::string::npos);
}

TEST(Filled, LeavesOutWhatWasWithdrawn) {
  closing::Fold fold(demo_terms());
  facts::Fact fact = demo_facts().front();
  fold.add(fact);
  fact.device_seq = 2;
  fact.body = facts::ClosureCleaned{{"FH-A01"}};
  fold.add(fact);
  fact.device_seq = 3;
  fact.body = facts::EntryWithdrawn{"node", 2, "another plate"};
  fold.add(fact);
  const Filled filled(fold, "B1-2026-11");
  EXPECT_EQ(filled.last<facts::ClosureCleaned>("FH-A01"), nullptr);
  EXPECT_NE(filled.last<facts::EntryWithdrawn>("node"), nullptr);
}

}  // namespace
}  // namespace steamworthy::report
