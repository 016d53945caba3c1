// paper_test.cc: the display list, its writers and the layout of pages. What other programs read
// out of the files is checked by tests/paper_test.py with poppler, qpdf, zbar and openpyxl.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/error.h"
#include "paper/digest.h"
#include "paper/flow.h"
#include "paper/marks.h"
#include "paper/plot.h"
#include "paper/qr.h"
#include "paper/type.h"
#include "paper/workbook.h"
#include "paper/write.h"

namespace steamworthy::paper {
namespace {

std::vector<Text> texts(const Page& page) {
  std::vector<Text> found;
  for (const Item& item : page.items) {
    if (const auto* text = std::get_if<Text>(&item)) found.push_back(*text);
  }
  return found;
}

int count(const Page& page, const std::string& words) {
  int found = 0;
  for (const Text& text : texts(page)) found += text.text == words ? 1 : 0;
  return found;
}

Document long_table(int rows, Size size = Size::A4) {
  Flow flow({size}, {"Title", "B1", {"foot"}, "code"}, {.title = "Title", .creator = "test"});
  flow.heading("A heading");
  Table table{{{"tag"}, {"pressure, bar gauge", 0.0, Align::Right}, {"what", 40.0}}, {}};
  for (int i = 0; i < rows; ++i)
    table.rows.push_back({{{"R" + std::to_string(i)}, {"45.0"}, {"a plate, a few words on it"}}});
  flow.table(table);
  return flow.finish();
}

TEST(Type, WidthGrowsWithTheSizeInProportion) {
  const double nine = text_width("steam drum", {9.0});
  EXPECT_NEAR(text_width("steam drum", {18.0}), 2.0 * nine, 1e-9);
  EXPECT_GT(text_width("steam drum", {9.0, true}), nine);
  EXPECT_EQ(text_width("", {9.0}), 0.0);
}

TEST(Type, WrappedLinesFitAndLoseNoWord) {
  const std::string text =
      "go near only after the hold, at examination pressure, by name Donaudampfschifffahrt";
  for (const double width : {12.0, 30.0, 80.0}) {
    std::string joined;
    for (const std::string& one : wrap(text, {9.0}, width)) {
      EXPECT_LE(text_width(one, {9.0}), width + 1e-6) << one;
      joined += one;
    }
    std::erase(joined, ' ');
    std::string bare = text;
    std::erase(bare, ' ');
    EXPECT_EQ(joined, bare);
  }
}

TEST(Type, NumberAndUnitStayOnOneLine) {
  for (const std::string& one : wrap("go to 45.00\u00a0bar\u00a0gauge now", {9.0}, 30.0)) {
    EXPECT_EQ(one.find("45.00") != std::string::npos, one.find("gauge") != std::string::npos);
  }
}

TEST(Type, ShortenedTextFitsAndSaysThatItWasCut) {
  const std::string cut = shorten("front wall lower header", {9.0}, 20.0);
  EXPECT_LE(text_width(cut, {9.0}), 20.0);
  EXPECT_NE(cut.find("…"), std::string::npos);
  EXPECT_EQ(shorten("front", {9.0}, 20.0), "front");
}

TEST(Type, TurnedTextIsAsHighAsItIsWide) {
  const Text text{{50.0, 50.0}, "SD-M1", {9.0}, Align::Left, 90.0};
  const Box box = bounds(text);
  EXPECT_NEAR(box.height, text_width("SD-M1", {9.0}), 1e-9);
  EXPECT_LE(box.bottom(), 50.0 + 1e-9);  // reads upward
}

TEST(Flow, EveryPageOfATableHasItsHeadsAndNoRowIsLost) {
  for (const Size size : {Size::A4, Size::Letter}) {
    for (const int rows : {1, 2, 40, 55, 56, 57, 58, 59, 200}) {
      const Document document = long_table(rows, size);
      int found = 0;
      for (const Page& page : document.pages) {
        EXPECT_EQ(count(page, "tag"), 1);
        int here = 0;
        for (const Text& text : texts(page)) here += text.text.starts_with("R") ? 1 : 0;
        EXPECT_GT(here, rows > 1 ? 1 : 0) << "a row alone on a page, " << rows << " rows";
        found += here;
      }
      EXPECT_EQ(found, rows);
    }
  }
}

TEST(Flow, EveryTextIsInsideItsPageAndClearOfTheFoot) {
  const Document document = long_table(200, Size::Letter);
  for (const Page& page : document.pages) {
    const Box body{10.0, 5.0, page.width - 20.0, page.height - 10.0};
    for (const Text& text : texts(page)) {
      EXPECT_TRUE(body.contains(bounds(text))) << text.text;
      EXPECT_TRUE(!text.text.starts_with("R") || bounds(text).bottom() < page.height - 24.0);
    }
  }
}

TEST(Flow, PagesAreCounted) {
  const Document document = long_table(200);
  const auto total = document.pages.size();
  ASSERT_GT(total, 2u);
  for (std::size_t i = 0; i < total; ++i) {
    EXPECT_EQ(
        count(document.pages[i], "page " + std::to_string(i + 1) + " of " + std::to_string(total)),
        1);
  }
}

TEST(Flow, ARowHigherThanAPageGoesOnOnTheNext) {
  Flow flow({}, {}, {});
  std::string words;
  for (int i = 0; i < 3000; ++i) words += "w" + std::to_string(i) + " ";
  flow.table({{{"a", 20.0}, {"b", 30.0}}, {{{{"note"}, {words}}}}});
  const Document document = flow.finish();
  EXPECT_GT(document.pages.size(), 3u);
  int found = 0;
  for (const Page& page : document.pages) {
    for (const Text& text : texts(page)) {
      EXPECT_LT(text.at.y, page.height - 24.0 + 4.1) << text.text;
      found += static_cast<int>(std::count(text.text.begin(), text.text.end(), 'w'));
    }
  }
  EXPECT_EQ(found, 3000);
}

TEST(Flow, AHeadingNeverStandsAloneAtTheFoot) {
  for (int fill = 0; fill < 60; ++fill) {
    Flow flow({}, {}, {});
    for (int i = 0; i < fill; ++i) flow.paragraph("line");
    flow.heading("HEADING");
    flow.paragraph("UNDER");
    const Document document = flow.finish();
    for (const Page& page : document.pages) EXPECT_EQ(count(page, "HEADING"), count(page, "UNDER"));
  }
}

TEST(ColumnWidths, FillTheWidthAndNeverBreakAWordThatHasRoom) {
  Table table{{{"tag"}, {"words"}, {"box", 9.0}}, {}};
  table.rows.push_back(
      {{{"FH-A01"}, {"a long sentence that must give way before any tag is broken in two"}, {""}}});
  const auto widths = column_widths(table, 60.0);
  EXPECT_NEAR(widths[0] + widths[1] + widths[2], 60.0, 1e-9);
  EXPECT_EQ(widths[2], 9.0);
  EXPECT_GE(widths[0], text_width("FH-A01", table.font));
}

TEST(Writers, TheSameDocumentGivesTheSameBytes) {
  const Document document = long_table(120);
  EXPECT_EQ(pdf(document), pdf(long_table(120)));
  EXPECT_EQ(png(document.pages[0], 100.0), png(document.pages[0], 100.0));
  EXPECT_EQ(svg(document.pages[0], "t"), svg(document.pages[0], "t"));
  EXPECT_NE(pdf(document), pdf(long_table(121)));
}

TEST(Writers, PdfTellsItsStructureAndNoDayThatNobodyTold) {
  const std::string bytes = pdf(long_table(3));
  EXPECT_TRUE(bytes.starts_with("%PDF-1.5"));
  EXPECT_NE(bytes.find("/MarkInfo << /Marked true >>"), std::string::npos);
  EXPECT_NE(bytes.find("/S /Document"), std::string::npos);
  EXPECT_NE(bytes.find("19700101"), std::string::npos);
}

TEST(Writers, SvgTextIsTextAndEscaped) {
  Page page;
  page.add(Text{{10.0, 10.0}, "<P & \"Q\">\x01"});
  const std::string text = svg(page, "a & b");
  EXPECT_NE(text.find(">&lt;P &amp; &quot;Q&quot;&gt;</text>"), std::string::npos);
  EXPECT_NE(text.find("<title>a &amp; b</title>"), std::string::npos);
}

TEST(Digest, IsThatOfTheStandard) {
  // FIPS 180-4's example "abc", from memory; the same as `printf abc | sha256sum`.
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST(Code, TooLongATextIsRefused) {
  Page page;
  EXPECT_THROW(draw_code(page, {0, 0, 20, 20}, std::string(4000, 'x')), OutOfRange);
  draw_code(page, {0, 0, 20, 20}, "short");
  EXPECT_FALSE(page.items.empty());
}

TEST(Marks, NoTwoStatesAreDrawnAlike) {
  std::vector<std::string> drawn;
  for (const Outlined shape : {Outlined::Oval, Outlined::Circle, Outlined::Oblong}) {
    for (int mark = 0; mark <= static_cast<int>(Mark::Touched); ++mark) {
      Page page;
      draw_mark(page, {10, 10, 8, shape == Outlined::Circle ? 8.0 : 6.0}, shape,
                static_cast<Mark>(mark));
      // Beyond tone: with all ink made equal they must still differ.
      for (Item& item : page.items) {
        if (auto* one = std::get_if<Shape>(&item); one && one->pen) one->pen->ink = 1.0;
      }
      drawn.push_back(svg(page, ""));
    }
  }
  std::sort(drawn.begin(), drawn.end());
  EXPECT_EQ(std::adjacent_find(drawn.begin(), drawn.end()), drawn.end());
}

TEST(Plot, TicksAreRoundAndInside) {
  EXPECT_EQ(ticks(0.0, 45.0, 6), (std::vector<double>{0, 10, 20, 30, 40}));
  EXPECT_EQ(ticks(44.2, 45.1, 5).front(), 44.2);
  for (const double value : ticks(-3.0, 17.0, 7)) EXPECT_TRUE(value >= -3.0 && value <= 17.0);
  EXPECT_TRUE(ticks(1.0, 1.0, 5).empty());
}

TEST(Plot, ManyPointsAreThinnedAndTheHighestStays) {
  Plot plot{{"time, h"}, {"pressure, bar gauge"}, {}, {{"never above", 50.0}}, {}};
  Curve curve{"trace", {}};
  for (int i = 0; i < 86'400; ++i) curve.points.push_back({i / 3600.0, i == 40'000 ? 49.0 : 45.0});
  plot.curves.push_back(curve);
  Page page;
  draw_plot(page, {10, 10, 180, 90}, plot);
  std::size_t points = 0;
  double top = 1e9;
  for (const Item& item : page.items) {
    const auto* shape = std::get_if<Shape>(&item);
    if (shape == nullptr || shape->path.points.size() < 1000) continue;
    points += shape->path.points.size();
    for (const Point& point : shape->path.points) top = std::min(top, point.y);
  }
  EXPECT_GT(points, 1000u);
  EXPECT_LT(points, 8000u);
  // 49 bar on an axis from 44.75 to 50.25 in a frame 5.5 mm below the top, 70.3 mm high.
  EXPECT_NEAR(top, 15.5 + (50.25 - 49.0) / 5.5 * 70.3, 0.01);
}

TEST(Workbook, TheSameTableGivesTheSameBytes) {
  const auto folder = std::filesystem::temp_directory_path();
  std::string bytes[2];
  for (int i = 0; i < 2; ++i) {
    const auto path = folder / ("steamworthy_workbook_" + std::to_string(i) + ".xlsx");
    write_xlsx({"t", "s", "c", {{"closures", {"tag", "level, m"}, {{"=SD", 8.5}, {"MD", {}}}}}},
               path.string());
    std::ifstream file(path, std::ios::binary);
    bytes[i].assign(std::istreambuf_iterator<char>(file), {});
    std::filesystem::remove(path);
  }
  EXPECT_FALSE(bytes[0].empty());
  EXPECT_EQ(bytes[0], bytes[1]);
  EXPECT_THROW(write_xlsx({"t", "", "", {}}, "/no/such/folder/x.xlsx"), Error);
}

}  // namespace
}  // namespace steamworthy::paper
