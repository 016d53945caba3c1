// Checks boiler/places.h, boiler/pattern.h and boiler/tube_ends.h.
#include "boiler/places.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "boiler/check.h"
#include "boiler/pattern.h"
#include "boiler/tube_ends.h"
#include "units/makers.h"

namespace steamworthy::boiler {
namespace {

using units::level_metres;
using units::metres;
using units::millimetres;

ClosurePattern two_rows_of_eleven() {
  ClosurePattern pattern;
  pattern.each.part = "H";
  pattern.prefix = "FW";
  pattern.rows = 2;
  pattern.per_row = 11;
  pattern.pitch = millimetres(190);
  pattern.first_offset = millimetres(150);
  pattern.row_levels = {level_metres(1.3), level_metres(1.1)};
  return pattern;
}

TEST(ClosurePattern, TwoRowsOfElevenAt190AreWrittenOut) {
  std::vector<Problem> problems;
  const std::vector<Closure> closures = expand(two_rows_of_eleven(), "p", problems);
  EXPECT_TRUE(problems.empty());
  ASSERT_EQ(closures.size(), 22U);
  EXPECT_EQ(closures[0].tag, "FW-A01");
  EXPECT_EQ(closures[6].tag, "FW-A07");
  EXPECT_EQ(closures[11].tag, "FW-B01");
  EXPECT_EQ(closures[21].tag, "FW-B11");
  EXPECT_NEAR(closures[6].position->si(), 0.150 + 6 * 0.190, 1e-12);
  EXPECT_EQ(closures[21].level, level_metres(1.1));
  EXPECT_EQ(closures[21].row, 2);
  EXPECT_EQ(closures[21].column, 11);
}

TEST(ClosurePattern, ASkippedTagIsLeftOutAndNothingIsRenumbered) {
  ClosurePattern pattern = two_rows_of_eleven();
  pattern.skip = {"FW-A02"};
  std::vector<Problem> problems;
  const std::vector<Closure> closures = expand(pattern, "p", problems);
  ASSERT_EQ(closures.size(), 21U);
  EXPECT_EQ(closures[1].tag, "FW-A03");
}

TEST(ClosurePattern, MoreThanNinetyNineGetThreeDigits) {
  ClosurePattern pattern = two_rows_of_eleven();
  pattern.per_row = 100;
  pattern.row_letters = "XY";
  std::vector<Problem> problems;
  EXPECT_EQ(expand(pattern, "p", problems).front().tag, "FW-X001");
}

TEST(ClosurePattern, RefusesMoreThanAnyBoilerHas) {
  ClosurePattern pattern = two_rows_of_eleven();
  pattern.rows = 26;
  pattern.per_row = 999;
  pattern.row_levels.assign(26, level_metres(1.0));
  std::vector<Problem> problems;
  EXPECT_TRUE(expand(pattern, "p", problems).empty());
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].field, "p.per_row");
}

Part header(const std::string& tag, double level) {
  Cylinder shape;
  shape.inner_diameter = metres(0.2);
  shape.wall = millimetres(10);
  shape.length = metres(4.0);
  shape.centre_level = level_metres(level);
  shape.heads.resize(2);
  Part part;
  part.tag = tag;
  part.kind = PartKind::Header;
  part.shape = shape;
  return part;
}

Boiler small() {
  Boiler boiler;
  boiler.parts = {header("A", 1.0), header("B", 5.0)};
  Tubes tubes;
  tubes.outer_diameter = millimetres(40);
  tubes.wall = millimetres(4);
  tubes.length = metres(4.2);
  tubes.bottom_level = level_metres(1.0);
  tubes.top_level = level_metres(5.0);
  tubes.from = "A";
  tubes.to = "B";
  tubes.plugged = 2;
  tubes.from_level = tubes.to_level = level_metres(std::nan(""));
  Part bank;
  bank.tag = "T";
  bank.kind = PartKind::TubeBank;
  bank.count = 30;
  bank.shape = tubes;
  boiler.parts.push_back(bank);
  complete_tube_ends(boiler);
  Closure closure;
  closure.tag = "HH-1";
  closure.part = "A";
  closure.level = level_metres(1.0);
  boiler.closures = {closure};
  Mounting drain;
  drain.tag = "DR-1";
  drain.kind = MountingKind::Drain;
  drain.part = "A";
  drain.level = level_metres(0.4);
  drain.leads_to = "pit";
  Mounting valve = drain;
  valve.tag = "SV-1";
  valve.kind = MountingKind::SafetyValve;
  valve.part = "B";
  valve.level = level_metres(5.6);
  boiler.mountings = {drain, valve};
  PlaceToLook stated;
  stated.tag = "PL-1";
  boiler.stated_places = {stated};
  return boiler;
}

TEST(TubeEnds, AtHeadersOpenAtTopAndBottomOfTheBore) {
  const Boiler boiler = small();
  const auto& tubes = std::get<Tubes>(boiler.parts[2].shape);
  EXPECT_DOUBLE_EQ(tubes.from_level.si(), 1.1);
  EXPECT_DOUBLE_EQ(tubes.to_level.si(), 4.9);
}

TEST(PlacesToLook, FollowFromTheDescription) {
  std::vector<std::string> tags;
  for (const PlaceToLook& place : places_to_look(small())) {
    tags.push_back(place.tag + " x" + std::to_string(place.count));
  }
  EXPECT_EQ(tags, (std::vector<std::string>{"HH-1 x1", "A.seams x2", "B.seams x2", "T.ends-A x30",
                                            "T.ends-B x30", "T.plugged x2", "DR-1.nozzle x1",
                                            "DR-1.gland x1", "DR-1.far-end x1", "SV-1.nozzle x1",
                                            "PL-1 x1"}));
}

TEST(PlacesToLook, LookAtAMountingsHoleInThePartAndAtItsFarEnd) {
  for (const PlaceToLook& place : places_to_look(small())) {
    if (place.tag == "DR-1.nozzle") {
      EXPECT_DOUBLE_EQ(place.level.si(), 0.9);  // the bottom of the header's bore
    }
    if (place.tag == "DR-1.far-end") {
      EXPECT_EQ(place.level, level_metres(0.4));
      EXPECT_EQ(place.name, "pit");
    }
  }
}

TEST(UsualOrder, IsThatOfCommonPractice) {
  EXPECT_EQ(usual_order("Internal feed pipe"), 1);
  EXPECT_EQ(usual_order("desuperheater"), 2);
  EXPECT_EQ(usual_order("dry pipe"), 3);
  EXPECT_EQ(usual_order("steam baffles"), 4);
  EXPECT_EQ(usual_order("cyclones"), std::nullopt);
}

TEST(Faults, OfAnEmptyBoilerSayThatItHasNothing) {
  const std::vector<Problem> found = faults(Boiler{});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].code, "boiler.missing");
}

}  // namespace
}  // namespace steamworthy::boiler
