// papers_test.cc: every paper of every example, in both sizes and both unit systems, as a display
// list. What PDF readers make of the files is checked by tests/paper_test.py.
#include "report/papers.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "boiler/places.h"
#include "paper/type.h"
#include "paper/write.h"
#include "report/boilers_test.h"
#include "report/document_test.h"
#include "report/sheet_sections.h"

namespace steamworthy::report {
namespace {

using paper::Box;
using paper::Page;
using paper::Text;

sheet::Request request_for(const std::string& boiler) {
  sheet::Request request;
  request.authority = "an inspector";
  request.work = rules::Work::GasketsOnly;
  request.hold = units::minutes(30);
  if (boiler == "watertube" || boiler == "600 closures") {
    request.rule_id = "us-marine-ordinary";
    request.stated_ceiling = units::bars_gauge(48);
  } else if (boiler == "firetube") {
    request.own_pressure = rules::OwnPressure{units::psi_gauge(150), "the site's yearly test"};
    request.stated_ceiling = units::psi_gauge(155);
  }
  return request;
}

struct Made {
  explicit Made(const std::string& name, paper::Size size = paper::Size::A4,
                units::System system = units::System::Si)
      : boiler(testing_boiler(name)),
        papers{{.boiler = boiler},
               sheet::make_sheet(boiler, testing::rule_files(), request_for(name))} {
    papers.context.size = size;
    papers.context.style.print.system = system;
    papers.context.version = "0";
    papers.context.sources = {{"x.toml", "00"}};
    papers.context.rule = papers.sheet.rule_id;
    papers.context.rule_title = papers.sheet.rule_title;
  }
  boiler::Boiler boiler;
  Papers papers;
};

class EveryPaper
    : public ::testing::TestWithParam<std::tuple<std::string, paper::Size, units::System>> {};

TEST_P(EveryPaper, StaysInsideItsPagesAndNothingCoversAnything) {
  const auto& [name, size, system] = GetParam();
  const Made made(name, size, system);
  for (const PaperKind& kind : kinds()) {
    const paper::Document document = kind.make(made.papers);
    ASSERT_FALSE(document.pages.empty());
    int number = 0;
    for (const Page& page : document.pages) {
      ++number;
      const Box all{8.0, 5.0, page.width - 16.0, page.height - 8.0};
      const std::vector<Text> here = texts(page);
      std::vector<Box> boxes;
      for (const Text& text : here) boxes.push_back(paper::bounds(text));
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

TEST_P(EveryPaper, SaysWhereItComesFromOnEveryPage) {
  const auto& [name, size, system] = GetParam();
  const Made made(name, size, system);
  const std::string hash = short_hash(made.papers.context);
  EXPECT_EQ(hash.size(), 12u);
  for (const PaperKind& kind : kinds()) {
    const paper::Document document = kind.make(made.papers);
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
      const paper::Document one{.pages = {document.pages[i]}};
      const std::string text = all_text(one);
      EXPECT_NE(text.find(hash), std::string::npos) << kind.token;
      EXPECT_NE(text.find("x.toml"), std::string::npos) << kind.token;
      EXPECT_NE(text.find("page " + std::to_string(i + 1) + " of " +
                          std::to_string(document.pages.size())),
                std::string::npos)
          << kind.token;
      const bool coded = std::any_of(document.pages[i].items.begin(), document.pages[i].items.end(),
                                     [&](const auto& item) {
                                       const auto* begun = std::get_if<paper::Begin>(&item);
                                       return begun && begun->words.find(hash) != std::string::npos;
                                     });
      EXPECT_TRUE(coded) << kind.token;
    }
  }
}

TEST_P(EveryPaper, HasNoBareKeyAndNeverSaysTight) {
  const auto& [name, size, system] = GetParam();
  const Made made(name, size, system);
  static const std::regex key("<[a-z_]+\\.[a-z_0-9.]+>"), word("\\btight\\b", std::regex::icase);
  for (const PaperKind& kind : kinds()) {
    const std::string text = all_text(kind.make(made.papers));
    EXPECT_FALSE(std::regex_search(text, key)) << kind.token;
    EXPECT_FALSE(std::regex_search(text, word)) << kind.token;
    EXPECT_EQ(text.find("nan"), std::string::npos) << kind.token;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Examples, EveryPaper,
    ::testing::Combine(::testing::Values("watertube", "firetube", "minimal", "600 closures"),
                       ::testing::Values(paper::Size::A4, paper::Size::Letter),
                       ::testing::Values(units::System::Si, units::System::Us)));

TEST(TestSheet, HasEveryFigureOfTheSheetWithItsUnit) {
  for (const units::System system : {units::System::Si, units::System::Us}) {
    const Made made("watertube", paper::Size::A4, system);
    const std::string text = all_text(test_sheet(made.papers));
    int known = 0;
    for (const sheet::Section& section : made.papers.sheet.sections) {
      for (const working::Figure& figure : section.figures) {
        if (!figure.is_known()) continue;
        ++known;
        const std::string value = with_plain_blanks(value_text(made.papers.context, figure));
        EXPECT_NE(text.find(value), std::string::npos) << figure.key << " " << figure.subject;
      }
    }
    EXPECT_GT(known, 200);
  }
}

TEST(TestSheet, TellsThePumpHandEachGaugeInLargeTypeOnTheFirstPage) {
  const Made made("watertube");
  const paper::Document document = test_sheet(made.papers);
  for (const boiler::Gauge& gauge : made.boiler.gauges) {
    for (const char* key : {"sheet.gauge_go_to", "sheet.gauge_never_above"}) {
      const auto* figure = sheet::find_figure(made.papers.sheet, key, gauge.tag);
      ASSERT_NE(figure, nullptr);
      const std::string wanted = value_text(made.papers.context, *figure);
      double size = 0.0;
      for (const Text& text : texts(document.pages.at(0))) {
        if (text.text == wanted) size = std::max(size, text.font.size);
      }
      EXPECT_GE(size, 16.0) << gauge.tag << " " << key;
    }
  }
}

TEST(TestSheet, AStopStandsOnTheFirstPageInLargeType) {
  boiler::Boiler boiler = testing_boiler("watertube");
  sheet::Request request = request_for("watertube");
  request.authority.clear();
  const Papers papers{{.boiler = boiler},
                      sheet::make_sheet(boiler, testing::rule_files(), request)};
  ASSERT_TRUE(papers.sheet.is_refused());
  bool found = false;
  for (const Text& text : texts(test_sheet(papers).pages.at(0)))
    found = found || (text.font.size >= 12.0 && text.text.starts_with("stop: "));
  EXPECT_TRUE(found);
}

TEST(ClosureSheets, HaveARowAndAnOutlineForEachClosure) {
  const Made made("600 closures");
  std::multiset<std::string> words;
  for (const Page& page : closure_sheets(made.papers).pages) {
    for (const Text& text : texts(page)) words.insert(text.text);
  }
  for (const boiler::Closure& closure : made.boiler.closures)
    EXPECT_EQ(words.count(closure.tag), 2u) << closure.tag;
}

TEST(WalkdownList, HasEveryPlaceOnceWithItsPressure) {
  const Made made("watertube");
  std::multiset<std::string> words;
  for (const Page& page : walkdown_list(made.papers).pages) {
    for (const Text& text : texts(page)) words.insert(text.text);
  }
  for (const boiler::PlaceToLook& place : boiler::places_to_look(made.boiler)) {
    EXPECT_EQ(words.count(place.tag), 1u) << place.tag;
    const auto* figure = sheet::find_figure(made.papers.sheet, "sheet.place_pressure", place.tag);
    ASSERT_NE(figure, nullptr);
    EXPECT_GE(words.count(made.papers.context.number(*figure->value)), 1u);
  }
}

TEST(StoresList, CountsAGasketForEachClosure) {
  // examples/watertube.toml: 4 manholes, 56 handholes, 24 metal to metal, 32 caps.
  const Made made("watertube");
  const std::string text = all_text(stores_list(made.papers));
  for (const char* count : {" 4 ", " 56 ", " 24 ", " 32 ", "116 gaskets"})
    EXPECT_NE(text.find(count), std::string::npos) << count;
}

TEST(Hash, IsThatOfTheNamesAndWhatWasSaid) {
  // printf 'x.toml 00\nrule=a\n' | sha256sum
  boiler::Boiler boiler;
  Context context{.boiler = boiler};
  context.sources = {{"x.toml", "00"}};
  context.said = "rule=a\n";
  EXPECT_EQ(short_hash(context), "e6cb3a27aa41");
}

}  // namespace
}  // namespace steamworthy::report
