// layout_test.cc: the drawing by geometry. No source: the description is drawn to scale, so that
// each size on the drawing can be checked against the description itself.
#include "boiler/layout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "testing/examples_test.h"

namespace steamworthy::boiler {
namespace {

constexpr View all_views[] = {View::Front, View::Right, View::Rear, View::Left};

std::vector<Boiler> examples() {
  return {testing::example_boiler("watertube"), testing::example_boiler("firetube"),
          testing::example_boiler("minimal")};
}

const DrawnPart& part_of(const Drawing& drawing, const std::string& tag) {
  for (const DrawnPart& part : drawing.parts) {
    if (part.tag == tag) return part;
  }
  throw NotFound("testing.no_file", tag);
}

struct Extent {
  double left = 1e9, right = -1e9, bottom = 1e9, top = -1e9;
};

Extent extent(const DrawnPart& part) {
  Extent found;
  for (const DrawnLine& line : part.outline) {
    for (const Spot& spot : line.points) {
      found.left = std::min(found.left, spot.across);
      found.right = std::max(found.right, spot.across);
      found.bottom = std::min(found.bottom, spot.level);
      found.top = std::max(found.top, spot.level);
    }
  }
  return found;
}

TEST(Layout, EveryClosureAndMountingIsInExactlyOneView) {
  for (const Boiler& boiler : examples()) {
    std::multiset<std::string> drawn;
    for (const View view : all_views) {
      const Drawing one = drawing(boiler, view);
      for (const DrawnClosure& closure : one.closures) drawn.insert(closure.tag);
      for (const DrawnMounting& mounting : one.mountings) drawn.insert(mounting.tag);
    }
    EXPECT_EQ(drawn.size(), boiler.closures.size() + boiler.mountings.size()) << boiler.tag;
    for (const Closure& closure : boiler.closures) EXPECT_EQ(drawn.count(closure.tag), 1u);
    for (const Mounting& mounting : boiler.mountings) EXPECT_EQ(drawn.count(mounting.tag), 1u);
  }
}

TEST(Layout, NoTwoClosuresOfAPartOverlap) {
  for (const Boiler& boiler : examples()) {
    for (const View view : all_views) {
      const Drawing one = drawing(boiler, view);
      for (std::size_t i = 0; i < one.closures.size(); ++i) {
        for (std::size_t j = i + 1; j < one.closures.size(); ++j) {
          const DrawnClosure &a = one.closures[i], &b = one.closures[j];
          if (a.part != b.part) continue;
          const bool apart =
              std::abs(a.centre.across - b.centre.across) >= (a.width + b.width) / 2.0 ||
              std::abs(a.centre.level - b.centre.level) >= (a.height + b.height) / 2.0;
          EXPECT_TRUE(apart) << a.tag << " and " << b.tag;
        }
      }
    }
  }
}

TEST(Layout, ClosuresLieWithinTheirPart) {
  const Boiler boiler = testing::example_boiler("watertube");
  for (const View view : all_views) {
    const Drawing one = drawing(boiler, view);
    for (const DrawnClosure& closure : one.closures) {
      const Extent part = extent(part_of(one, closure.part));
      EXPECT_GE(closure.centre.across - closure.width / 2.0, part.left) << closure.tag;
      EXPECT_LE(closure.centre.across + closure.width / 2.0, part.right) << closure.tag;
      EXPECT_GE(closure.centre.level - closure.height / 2.0, part.bottom) << closure.tag;
      EXPECT_LE(closure.centre.level + closure.height / 2.0, part.top) << closure.tag;
    }
  }
}

TEST(Layout, SizesAreThoseOfTheDescription) {
  // examples/watertube.toml: steam drum 1250 mm bore, 50 mm wall, 6.6 m between tangent lines,
  // 2:1 heads, axis at 8.5 m, front to back with its middle at x = 2.7 m, y = 3.4 m.
  const Boiler boiler = testing::example_boiler("watertube");
  const Extent side = extent(part_of(drawing(boiler, View::Right), "SD"));
  EXPECT_NEAR(side.right - side.left, 6.6 + 2.0 * 1.35 / 4.0, 1e-9);
  EXPECT_NEAR((side.right + side.left) / 2.0, 3.4, 1e-9);
  EXPECT_NEAR(side.top - side.bottom, 1.35, 1e-9);
  EXPECT_NEAR((side.top + side.bottom) / 2.0, 8.5, 1e-9);
  const Extent front = extent(part_of(drawing(boiler, View::Front), "SD"));
  EXPECT_NEAR(front.right - front.left, 1.35, 1e-9);
  EXPECT_NEAR((front.right + front.left) / 2.0, 2.7, 1e-9);
}

TEST(Layout, RowsOfClosuresKeepTheirPitchFromTheFirstEnd) {
  // FH: 8 handholes, first at 440 mm, pitch 560 mm, header 4.8 m with its middle at x = 2.7 m.
  const Drawing front = drawing(testing::example_boiler("watertube"), View::Front);
  int found = 0;
  for (const DrawnClosure& closure : front.closures) {
    if (closure.part != "FH") continue;
    EXPECT_NEAR(closure.centre.across, 0.3 + 0.44 + 0.56 * found, 1e-9) << closure.tag;
    EXPECT_FALSE(closure.assumed);
    ++found;
  }
  EXPECT_EQ(found, 8);
}

TEST(Layout, RearAndLeftAreMirrored) {
  const Boiler boiler = testing::example_boiler("watertube");
  const Extent front = extent(part_of(drawing(boiler, View::Front), "LL"));
  const Extent rear = extent(part_of(drawing(boiler, View::Rear), "LL"));
  EXPECT_NEAR(front.left, -rear.right, 1e-9);
  // The first opening of the left header is nearest the front: at the right hand seen from the
  // left.
  const Drawing left = drawing(boiler, View::Left);
  double first = 0.0, last = 0.0;
  for (const DrawnClosure& closure : left.closures) {
    if (closure.tag == "LL-A01") first = closure.centre.across;
    if (closure.tag == "LL-A10") last = closure.centre.across;
  }
  EXPECT_GT(first, last);
}

TEST(Layout, FireTubesAndFurnaceStandInTheShellAndApart) {
  // examples/firetube.toml: one furnace, 64 and 72 tubes.
  const Drawing front = drawing(testing::example_boiler("firetube"), View::Front);
  const DrawnPart& shell = part_of(front, "SH");
  EXPECT_EQ(shell.thin.size(), 1u /* bore */ + 1u + 64u + 72u);
  const Extent all = extent(shell);
  for (const DrawnLine& line : shell.thin) {
    for (const Spot& spot : line.points) {
      EXPECT_LE(spot.across, all.right);
      EXPECT_GE(spot.across, all.left);
    }
  }
}

TEST(Layout, ABankBetweenTwoDrumsIsAsWideAsTheDrumsLetItBe) {
  // CB runs between drums of 1034 and 1350 mm over the metal, one above the other.
  const Drawing front = drawing(testing::example_boiler("watertube"), View::Front);
  double left = 1e9, right = -1e9;
  for (const DrawnLine& line : part_of(front, "CB").thin) {
    EXPECT_EQ(line.points.size(), 2u);  // straight
    for (const Spot& spot : line.points) {
      left = std::min(left, spot.across);
      right = std::max(right, spot.across);
    }
  }
  EXPECT_NEAR(right - left, 0.8 * 1.350, 1e-9);
  EXPECT_NEAR((right + left) / 2.0, 2.7, 1e-9);
}

TEST(Layout, APartWithoutAPlaceIsDrawnBesideTheOthersAndSaysSo) {
  Boiler boiler = testing::example_boiler("watertube");
  for (Part& part : boiler.parts) {
    if (part.tag == "EI" || part.tag == "EO") part.place.reset();
  }
  const Drawing front = drawing(boiler, View::Front);
  const Extent header = extent(part_of(front, "EI"));
  EXPECT_TRUE(part_of(front, "EI").assumed);
  EXPECT_FALSE(part_of(front, "SD").assumed);
  EXPECT_GT(header.left, extent(part_of(front, "RL")).right);
}

TEST(Layout, PartsWithoutAnyPlaceDoNotCoverEachOther) {
  Boiler boiler = testing::example_boiler("watertube");
  for (Part& part : boiler.parts) part.place.reset();
  const Drawing front = drawing(boiler, View::Front);
  for (std::size_t i = 0; i < front.parts.size(); ++i) {
    for (std::size_t j = i + 1; j < front.parts.size(); ++j) {
      if (front.parts[i].outline.empty() || front.parts[j].outline.empty()) continue;
      const Extent a = extent(front.parts[i]), b = extent(front.parts[j]);
      EXPECT_TRUE(a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom)
          << front.parts[i].tag << " and " << front.parts[j].tag;
    }
  }
}

TEST(Layout, APartAloneHasItsOwnClosuresOnly) {
  const Boiler boiler = testing::example_boiler("watertube");
  EXPECT_EQ(views_of(boiler, "FH"), std::vector<View>{View::Front});
  EXPECT_EQ(views_of(boiler, "SD"), (std::vector<View>{View::Front, View::Right, View::Rear}));
  const Drawing one = part_drawing(boiler, "FH", View::Front);
  EXPECT_EQ(one.parts.size(), 1u);
  EXPECT_EQ(one.closures.size(), 8u);
  EXPECT_EQ(one.mountings.size(), 2u);  // BD-2, FV-1
  EXPECT_TRUE(views_of(boiler, "no such part").empty());
  EXPECT_EQ(side_of(boiler, "LL"), View::Left);
  EXPECT_EQ(side_of(boiler, "RH"), View::Rear);
}

}  // namespace
}  // namespace steamworthy::boiler
