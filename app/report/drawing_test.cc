// drawing_test.cc: the drawing on paper by geometry: every tag there, inside its page and clear of
// the others; scale and scale bar true. The sizes come from the description itself.
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "paper/type.h"
#include "paper/write.h"
#include "report/boilers_test.h"
#include "report/document_test.h"
#include "report/drawing_paper.h"
#include "report/elevation.h"
#include "units/makers.h"

namespace steamworthy::report {
namespace {

using paper::Box;
using paper::Page;
using paper::Text;

Context context_of(const boiler::Boiler& boiler, paper::Size size, units::System system) {
  Context context{.boiler = boiler};
  context.size = size;
  context.style.print.system = system;
  context.version = "0";
  context.sources = {{"x.toml", "00"}};
  return context;
}

/// Is the tag written, alone or with its level behind it?
bool is_written(const std::set<std::string>& words, const std::string& tag) {
  return words.count(tag) != 0 ||
         std::any_of(words.begin(), words.end(),
                     [&](const std::string& one) { return one.starts_with(tag + " "); });
}

class Drawings
    : public ::testing::TestWithParam<std::tuple<std::string, paper::Size, units::System>> {};

TEST_P(Drawings, HasEveryTagInsideThePageAndClearOfTheFoot) {
  const auto& [name, size, system] = GetParam();
  const boiler::Boiler boiler = testing_boiler(name);
  const paper::Document document = drawing_paper(context_of(boiler, size, system));
  std::set<std::string> words;
  for (const Page& page : document.pages) {
    const Box all{5.0, 5.0, page.width - 10.0, page.height - 10.0};
    for (const Text& text : texts(page)) {
      EXPECT_TRUE(all.contains(paper::bounds(text))) << text.text;
      words.insert(text.text);
    }
  }
  for (const boiler::Closure& one : boiler.closures)
    EXPECT_TRUE(is_written(words, one.tag)) << one.tag;
  for (const boiler::Mounting& one : boiler.mountings)
    EXPECT_TRUE(is_written(words, one.tag)) << one.tag;
  for (const boiler::Part& one : boiler.parts) EXPECT_TRUE(is_written(words, one.tag)) << one.tag;
}

TEST_P(Drawings, NoTwoTagsOfAViewCoverEachOther) {
  const auto& [name, size, system] = GetParam();
  const boiler::Boiler boiler = testing_boiler(name);
  const paper::Document document = drawing_paper(context_of(boiler, size, system));
  std::set<std::string> tags;
  for (const boiler::Closure& one : boiler.closures) tags.insert(one.tag);
  for (const Page& page : document.pages) {
    std::vector<std::pair<std::string, Box>> boxes;
    for (const Text& text : texts(page)) {
      if (tags.count(text.text) != 0) boxes.emplace_back(text.text, paper::bounds(text));
    }
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      for (std::size_t j = i + 1; j < boxes.size(); ++j) {
        EXPECT_FALSE(boxes[i].second.overlaps(boxes[j].second))
            << boxes[i].first << " and " << boxes[j].first;
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(
    Examples, Drawings,
    ::testing::Combine(::testing::Values("watertube", "firetube", "minimal", "600 closures"),
                       ::testing::Values(paper::Size::A4, paper::Size::Letter),
                       ::testing::Values(units::System::Si, units::System::Us)));

TEST(Scales, TheBarIsAsLongAsItSays) {
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  for (const bool us : {false, true}) {
    const Context context =
        context_of(boiler, paper::Size::A4, us ? units::System::Us : units::System::Si);
    for (const Scale& scale : scales(us)) {
      Page page;
      draw_scale_bar(context, page, {20.0, 100.0}, scale);
      const auto& bar = std::get<paper::Shape>(page.items.at(0)).path.points;
      const double on_paper = bar.at(1).x - bar.at(0).x;
      EXPECT_GE(on_paper, 15.0) << scale.words;
      EXPECT_LE(on_paper, 75.0 + 1e-9) << scale.words;
      const std::string length =
          context.print({units::Kind::Distance, on_paper * scale.of / 1000.0});
      EXPECT_TRUE(texts(page).at(0).text.starts_with(length + ","))
          << texts(page).at(0).text << " is not " << length;
      EXPECT_NE(texts(page).at(0).text.find(scale.words), std::string::npos);
    }
  }
}

TEST(Scales, TheScaleOfAnArchitectIsTheOneInBrackets) {
  // "1/4 in = 1 ft" is 12 in on 1/4 in: 1:48.
  for (const Scale& scale : scales(true)) {
    double inches = 0.0, over = 1.0;
    if (scale.words.find("in =") == std::string::npos) continue;
    if (scale.words.starts_with("1 1/2")) {
      inches = 1.5;
    } else if (std::sscanf(scale.words.c_str(), "%lf/%lf in", &inches, &over) >= 1) {
      inches /= over;
    }
    EXPECT_NEAR(12.0 / inches, scale.of, 1e-9) << scale.words;
  }
}

TEST(Elevation, ADrumIsDrawnAtItsScale) {
  // Steam drum of examples/watertube.toml: 1350 mm over the metal; 1:50 makes it 27 mm.
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  const Context context = context_of(boiler, paper::Size::A4, units::System::Si);
  boiler::Drawing drawing = boiler::part_drawing(boiler, "SD", boiler::View::Front);
  Page page;
  draw_view(context, page, drawing, {50.0, "1:50"}, {50.0, 100.0}, {0, 0, 200, 200}, {});
  double left = 1e9, right = -1e9;
  for (const paper::Item& item : page.items) {
    const auto* shape = std::get_if<paper::Shape>(&item);
    if (shape == nullptr || shape->path.points.size() < 40) continue;
    for (const paper::Point& point : shape->path.points) {
      left = std::min(left, point.x);
      right = std::max(right, point.x);
    }
  }
  EXPECT_NEAR(right - left, 27.0, 1e-6);
}

}  // namespace
}  // namespace steamworthy::report
