// Checks boiler/part.h and boiler/content.h: lowest and highest water and the
// bodies of a part, against `vessel` and closed forms of school geometry.
#include <gtest/gtest.h>

#include <cmath>

#include "base/error.h"
#include "boiler/content.h"
#include "boiler/metal.h"
#include "units/makers.h"
#include "vessel/volume.h"

namespace steamworthy::boiler {
namespace {

using units::level_metres;
using units::metres;
using units::millimetres;

constexpr double pi = 3.14159265358979323846;

Head elliptical() {
  Head head;
  head.wall = millimetres(20);
  return head;
}

Part drum(Axis axis) {
  Cylinder shape;
  shape.axis = axis;
  shape.inner_diameter = metres(1.0);
  shape.wall = millimetres(20);
  shape.length = metres(3.0);
  shape.centre_level = level_metres(5.0);
  shape.rise = axis == Axis::Inclined ? metres(1.2) : metres(0.0);
  shape.heads = {elliptical(), elliptical()};
  Part part;
  part.tag = "D";
  part.shape = shape;
  return part;
}

void expect_agreement_with_vessel(const Part& part) {
  double bottom = 1e9;
  double top = -1e9;
  for (const vessel::Body& body : bodies(part)) {
    bottom = std::min(bottom, vessel::bottom(body).si());
    top = std::max(top, vessel::top(body).si());
  }
  EXPECT_NEAR(lowest(part).si(), bottom, 1e-9);
  EXPECT_NEAR(highest(part).si(), top, 1e-9);
}

TEST(PartHeight, AgreesWithVesselForEveryAxis) {
  expect_agreement_with_vessel(drum(Axis::Horizontal));
  expect_agreement_with_vessel(drum(Axis::Vertical));
  expect_agreement_with_vessel(drum(Axis::Inclined));
}

TEST(PartHeight, AgreesWithVesselForATorisphericalHeadStanding) {
  Part part = drum(Axis::Vertical);
  auto& shape = std::get<Cylinder>(part.shape);
  for (Head& head : shape.heads) {
    head.kind = HeadKind::Torispherical;
    head.crown_radius = metres(1.0);
    head.knuckle_radius = metres(0.1);
  }
  expect_agreement_with_vessel(part);
}

TEST(PartHeight, OfAStandingDrumIsItsLengthAndBothHeads) {
  const Part part = drum(Axis::Vertical);
  EXPECT_DOUBLE_EQ(lowest(part).si(), 5.0 - 1.5 - 0.25);
  EXPECT_DOUBLE_EQ(highest(part).si(), 5.0 + 1.5 + 0.25);
  EXPECT_DOUBLE_EQ(middle(part).si(), 5.0);
}

// School geometry: a cylinder pi r^2 L and two half-ellipsoids of depth r/2.
TEST(WaterContent, OfADrumIsCylinderAndHeadsAtAnyAxis) {
  const double expected = pi * 0.25 * 3.0 + 2.0 * (2.0 / 3.0) * pi * 0.125 / 2.0;
  for (const Axis axis : {Axis::Horizontal, Axis::Vertical, Axis::Inclined}) {
    EXPECT_NEAR(water_content(drum(axis)).si(), expected, 1e-12);
  }
}

TEST(WaterContent, HalfOfALyingDrumIsBelowItsAxis) {
  const Part part = drum(Axis::Horizontal);
  EXPECT_NEAR(volume_below(part, level_metres(5.0)).si(), 0.5 * water_content(part).si(), 1e-12);
}

TEST(WaterContent, OfIdenticalPiecesIsAMultiple) {
  Part part = drum(Axis::Inclined);
  const double one = water_content(part).si();
  part.count = 3;
  EXPECT_NEAR(water_content(part).si(), 3.0 * one, 1e-12);
}

Part tubes(int count, int plugged) {
  Tubes shape;
  shape.outer_diameter = millimetres(50);
  shape.wall = millimetres(5);
  shape.length = metres(4.0);
  shape.bottom_level = level_metres(1.0);
  shape.top_level = level_metres(4.0);
  shape.plugged = plugged;
  Part part;
  part.tag = "T";
  part.kind = PartKind::TubeBank;
  part.count = count;
  part.shape = shape;
  return part;
}

TEST(PluggedTubes, HoldNoWaterButWeighAsBefore) {
  Boiler boiler;
  const double one = pi * 0.25 * 0.04 * 0.04 * 4.0;
  EXPECT_NEAR(water_content(tubes(10, 0)).si(), 10.0 * one, 1e-12);
  EXPECT_NEAR(water_content(tubes(10, 3)).si(), 7.0 * one, 1e-12);
  EXPECT_EQ(water_content(tubes(4, 4)).si(), 0.0);
  EXPECT_EQ(metal_mass(boiler, tubes(10, 3)), metal_mass(boiler, tubes(10, 0)));
}

Boiler with_parts() {
  Boiler boiler;
  boiler.parts = {drum(Axis::Horizontal), tubes(10, 0)};
  return boiler;
}

TEST(LevelOf, TurnsVolumeBelowAround) {
  const Boiler boiler = with_parts();
  for (const double level : {1.2, 3.7, 4.6, 5.1, 5.45}) {
    const units::Volume volume = *volume_below(boiler, level_metres(level));
    EXPECT_NEAR(level_of(boiler, volume)->si(), level, 2e-5);
  }
  EXPECT_THROW(level_of(boiler, units::cubic_metres(100)), OutOfRange);
  EXPECT_THROW(level_of(boiler, units::cubic_metres(-1)), OutOfRange);
}

TEST(SurfaceAt, IsTheSlopeOfTheVolume) {
  const Boiler boiler = with_parts();
  const double step = 1e-5;
  for (const double level : {2.0, 4.8, 5.2}) {
    const double slope = (volume_below(boiler, level_metres(level + step))->si() -
                          volume_below(boiler, level_metres(level - step))->si()) /
                         (2.0 * step);
    EXPECT_NEAR(surface_at(boiler, level_metres(level))->si() / slope, 1.0, 1e-6);
  }
}

TEST(BulkBoiler, TellsItsEndsAndNothingBetween) {
  Boiler boiler;
  boiler.bulk = Bulk{units::litres(8400), units::millilitres_per_bar(95), level_metres(3.2),
                     level_metres(0.3)};
  EXPECT_EQ(water_content(boiler), units::litres(8400));
  EXPECT_EQ(growth(boiler).value, units::millilitres_per_bar(95));
  EXPECT_EQ(volume_below(boiler, level_metres(0.2))->si(), 0.0);
  EXPECT_EQ(*volume_below(boiler, level_metres(3.2)), units::litres(8400));
  EXPECT_FALSE(volume_below(boiler, level_metres(1.0)).has_value());
  EXPECT_FALSE(metal_mass(boiler).has_value());
  EXPECT_FALSE(growth_per_kelvin(boiler).has_value());
  EXPECT_EQ(reference_level(boiler), level_metres(3.2));
}

TEST(EmptyBoiler, IsRefused) {
  try {
    water_content(Boiler{});
    FAIL();
  } catch (const NotFound& error) {
    EXPECT_EQ(error.code(), "boiler.no_content");
  }
  EXPECT_THROW(part(Boiler{}, "SD"), NotFound);
}

TEST(Metal, OfNobodyKnowsWhatStandsInAndTellsNoYield) {
  Boiler boiler;
  const Metal unknown = metal(boiler, std::string("unobtainium"));
  EXPECT_FALSE(unknown.known);
  EXPECT_TRUE(unknown.material.yield.empty());
  EXPECT_TRUE(metal(boiler, std::string("P265GH")).known);
  EXPECT_FALSE(metal(boiler, std::string()).known);
}

TEST(Metal, OfTheUsersOwnGoesBeforeTheShippedOne) {
  Boiler boiler;
  OwnMaterial own;
  own.name = "P265GH";
  own.modulus = units::megapascals(190e3);
  own.yield = {{units::celsius(20), units::megapascals(280)}};
  own.source = "certificate 1";
  boiler.materials = {own};
  const Metal found = metal(boiler, std::string("P265GH"));
  EXPECT_TRUE(found.known);
  EXPECT_EQ(found.material.young.value, units::megapascals(190e3));
  EXPECT_EQ(found.material.young.provenance.trust, materials::Trust::User);
  EXPECT_EQ(found.material.density.provenance.trust, materials::Trust::Remembered);
  ASSERT_EQ(found.material.yield.size(), 1U);
  EXPECT_EQ(found.material.yield[0].provenance.remark, "certificate 1");
}

// Openings, trade-values: 12 x 16 in is 150.80 in^2 (pi/4 a b, derived there).
TEST(OpeningArea, OfAManholeOf12By16Inches) {
  const Opening opening{OpeningShape::Oval, units::inches(16), units::inches(12)};
  EXPECT_NEAR(area(opening).si() / (0.0254 * 0.0254), 150.80, 0.005);
  const Opening oblong{OpeningShape::Oblong, metres(0.3), metres(0.1)};
  EXPECT_NEAR(area(oblong).si(), 0.2 * 0.1 + pi * 0.0025, 1e-12);
}

}  // namespace
}  // namespace steamworthy::boiler
