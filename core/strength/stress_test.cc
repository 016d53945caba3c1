// Checks strength/stress.h.
#include "strength/stress.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/error.h"
#include "materials/steels.h"
#include "units/makers.h"

namespace steamworthy::strength {
namespace {

using units::bars;
using units::celsius;
using units::in_megapascals;
using units::level_metres;
using units::megapascals;
using units::metres;
using units::millimetres;

vessel::Body drum(double inner_mm, std::optional<double> wall_mm) {
  vessel::Cylinder c{millimetres(inner_mm), std::nullopt, metres(6.0),
                     level_metres(8.5),     0.0,          vessel::Ends::Closed};
  if (wall_mm) c.wall = millimetres(*wall_mm);
  return {c};
}
vessel::Body head(vessel::HeadForm form, double inner_mm, std::optional<double> wall_mm) {
  vessel::Head h{form, millimetres(inner_mm), std::nullopt, level_metres(0.0), 0.0};
  if (wall_mm) h.wall = millimetres(*wall_mm);
  return {h};
}

// Source: a solver's public verification page [LAME-CYLINDER]: a 10 mm, b 20 mm, 100 MPa: hoop at
// the bore 166.7 MPa, four digits; outside 66.7 MPa, which with equilibrium makes the mean 100 MPa
// = p a/t.
TEST(WallStresses, OfAThickCylinderGiveThePrintedHoopAtTheBore) {
  const auto stress = wall_stresses(drum(20.0, 10.0), megapascals(100.0), 0.3).at(0);
  EXPECT_EQ(stress.place, Place::Shell);
  EXPECT_NEAR(in_megapascals(*stress.greatest), 166.7, 0.05);
  EXPECT_NEAR(in_megapascals(*stress.membrane), 150.0, 1e-9);  // p D_m / (2 t) = 100 * 30 / 20
}

// Source: worked example of docs/methods/strength.md.
TEST(WallStresses, OfTheDrumGiveTheWorkedExample) {
  const auto stress =
      wall_stresses(drum(1250.0, 50.0), bars(67.5), 0.3, {millimetres(48.2), 0.62}).at(0);
  EXPECT_TRUE(stress.wall_measured);
  EXPECT_NEAR(in_megapascals(*stress.membrane), 146.61, 0.005);
  EXPECT_NEAR(in_megapascals(*stress.greatest), 91.03, 0.005);
  const auto plate = materials::steel("P265GH");
  const ShareOfYield share = share_of_yield(stress, &*plate, celsius(30.0));
  EXPECT_NEAR(in_megapascals(*share.yield), 242.625, 1e-6);
  EXPECT_NEAR(*share.share, 0.6043, 0.00005);
}

TEST(WallStresses, OfAThinCylinderAreAlikeAcrossTheWall) {
  const auto stress = wall_stresses(drum(1000.0, 0.1), bars(1.0), 0.3).at(0);
  EXPECT_NEAR(*stress.greatest / *stress.membrane, 1.0, 2e-4);
}

// Equilibrium: the pressure on the meridian plane is carried by the mean hoop stress, which is p
// a/t; the middle-diameter form is above it by half the pressure, whatever the wall.
RC_GTEST_PROP(WallStresses, OfACylinderLieBetweenEquilibriumAndTheBore, ()) {
  const double inner = *rc::gen::inRange(20, 3000);
  const double wall = *rc::gen::inRange(1, 200);
  const auto stress = wall_stresses(drum(inner, wall), bars(10.0), 0.3).at(0);
  const double mean = inner / 2.0 / wall;
  RC_ASSERT(std::fabs(*stress.membrane / bars(10.0) - mean - 0.5) < 1e-9 * mean + 1e-12);
  RC_ASSERT(*stress.greatest > *stress.membrane);
}

TEST(WallStresses, MeasuredWallGoesBeforeTheWallAsMade) {
  const auto stress =
      wall_stresses(drum(1000.0, 20.0), bars(10.0), 0.3, {millimetres(10.0), 1.0}).at(0);
  EXPECT_NEAR(in_megapascals(*stress.membrane), 50.5, 1e-9);
  const auto only_measured =
      wall_stresses(drum(1000.0, std::nullopt), bars(10.0), 0.3, {millimetres(10.0), 1.0}).at(0);
  EXPECT_EQ(*only_measured.membrane, *stress.membrane);
}

TEST(WallStresses, TellNothingWithoutAWall) {
  EXPECT_EQ(wall_stresses(drum(1000.0, std::nullopt), bars(10.0), 0.3).at(0).why_not,
            NoAnswer::WallNotKnown);
  EXPECT_EQ(
      wall_stresses(drum(1000.0, 20.0), bars(10.0), 0.3, {millimetres(0.0), 1.0}).at(0).why_not,
      NoAnswer::WallGone);
  EXPECT_EQ(wall_stresses(head(vessel::Ellipsoidal{2.0}, 1000.0, std::nullopt), bars(10.0), 0.3)
                .at(0)
                .why_not,
            NoAnswer::WallNotKnown);
}

TEST(WallStresses, RefuseAnEfficiencyThatCannotBe) {
  for (const double efficiency : {0.0, -0.1, 1.01}) {
    try {
      wall_stresses(drum(1000.0, 20.0), bars(10.0), 0.3, {std::nullopt, efficiency});
      FAIL();
    } catch (const OutOfRange& error) {
      EXPECT_EQ(error.code(), "strength.efficiency");
    }
  }
}

TEST(WallStresses, OfATubeCountTheWearFromItsBore) {
  const vessel::TubeBank bank{100,
                              millimetres(50.8),
                              millimetres(3.5),
                              metres(5.0),
                              level_metres(1.0),
                              level_metres(5.0),
                              vessel::Ends::Closed};
  const auto made = wall_stresses({bank}, bars(67.5), 0.3).at(0);
  EXPECT_EQ(made.place, Place::Tube);
  EXPECT_NEAR(in_megapascals(*made.membrane), 6.75 * (50.8 - 3.5) / 7.0, 1e-9);
  const auto worn = wall_stresses({bank}, bars(67.5), 0.3, {millimetres(2.0), 1.0}).at(0);
  EXPECT_NEAR(in_megapascals(*worn.membrane), 6.75 * 48.8 / 4.0, 1e-9);
  EXPECT_THROW(wall_stresses({bank}, bars(67.5), 0.3, {millimetres(26.0), 1.0}), BadInput);
}

// Membrane theory: a 2:1 head carries p R/t at the crown and -p R/t round the rim; a half ball p
// R/(2t) everywhere.
TEST(WallStresses, OfThinHeadsAreThoseOfTheMembrane) {
  const double wall = 0.01;
  const auto two_to_one =
      wall_stresses(head(vessel::Ellipsoidal{2.0}, 2000.0, wall), bars(1.0), 0.3);
  ASSERT_EQ(two_to_one.size(), 2u);
  const double pr_over_t = 0.1 * 1000.0 / wall;
  EXPECT_NEAR(in_megapascals(*two_to_one[0].membrane) / pr_over_t, 1.0, 1e-4);
  EXPECT_EQ(two_to_one[1].place, Place::HeadKnuckle);
  EXPECT_NEAR(in_megapascals(*two_to_one[1].membrane) / pr_over_t, -1.0, 1e-4);
  for (const vessel::HeadForm& form :
       {vessel::HeadForm{vessel::Ellipsoidal{1.0}}, vessel::HeadForm{vessel::Hemispherical{}}}) {
    const auto ball = wall_stresses(head(form, 2000.0, wall), bars(1.0), 0.3);
    ASSERT_EQ(ball.size(), 1u);
    EXPECT_NEAR(in_megapascals(*ball[0].membrane) / pr_over_t, 0.5, 1e-4);
  }
  // a deep head is worst round the rim: ratio 1/2, R (1 - 1/8) against R/4
  const auto deep = wall_stresses(head(vessel::Ellipsoidal{0.5}, 2000.0, wall), bars(1.0), 0.3);
  EXPECT_NEAR(in_megapascals(*deep.at(0).membrane) / pr_over_t, 0.875, 1e-4);
}

// Source: M of a 6 % knuckle (L/k = 16 2/3) is 1.77 in the code's table, from memory
// [ASME-VIII-1-4].
TEST(WallStresses, OfATorisphericalHeadRateTheKnuckleAboveTheCrown) {
  const auto stress = wall_stresses(
      head(vessel::Torispherical{metres(2.0), metres(0.12)}, 2000.0, 1e-3), bars(1.0), 0.3);
  ASSERT_EQ(stress.size(), 2u);
  EXPECT_NEAR(*stress[1].membrane / *stress[0].membrane, 1.77, 0.005);
}

// Lamé's sphere: equilibrium over the wall, p a^2 = integral of the hoop stress times 2 r dr, hoop
// = A + B/(2 r^3).
TEST(WallStresses, OfAThickHalfBallBalanceThePressure) {
  const double a = 0.5, b = 0.7;
  const auto stress =
      wall_stresses(head(vessel::Hemispherical{}, 1000.0, 200.0), megapascals(1.0), 0.3).at(0);
  const double A = a * a * a / (b * b * b - a * a * a);
  const double B = A * b * b * b;
  EXPECT_NEAR(in_megapascals(*stress.greatest), A + B / (2.0 * a * a * a), 1e-12);
  const double carried = A * (b * b - a * a) + B * (1.0 / a - 1.0 / b);
  EXPECT_NEAR(carried, a * a, 1e-12);
}

// Kirchhoff's plates [Timoshenko-Plates]: clamped edge moment p R^2/8, hinged centre moment (3 +
// nu) p R^2/16, stress 6 M/t^2.
TEST(WallStresses, OfFlatPlatesAreSixTimesTheMomentOverTheWallSquared) {
  const auto clamped =
      wall_stresses(head(vessel::Flat{vessel::PlateEdge::Clamped}, 400.0, 20.0), bars(10.0), 0.3)
          .at(0);
  EXPECT_NEAR(in_megapascals(*clamped.greatest), 6.0 / 8.0 * 200.0 * 200.0 / 400.0, 1e-9);
  EXPECT_FALSE(clamped.membrane);
  const auto hinged =
      wall_stresses(head(vessel::Flat{vessel::PlateEdge::Hinged}, 400.0, 20.0), bars(10.0), 0.3)
          .at(0);
  EXPECT_NEAR(in_megapascals(*hinged.greatest), 6.0 * 3.3 / 16.0 * 200.0 * 200.0 / 400.0, 1e-9);
  const auto stayed =
      wall_stresses(head(vessel::Flat{vessel::PlateEdge::Stayed}, 400.0, 20.0), bars(10.0), 0.3)
          .at(0);
  EXPECT_EQ(stayed.why_not, NoAnswer::StayedPlate);
  EXPECT_FALSE(stayed.greatest);
}

// A thin square frame of side s: M = p s^2/24 in the middle of a side and p s^2/12 at a sharp
// corner (a beam clamped by symmetry).
TEST(WallStresses, OfAThinSquareHeaderAreThoseOfClampedBeams) {
  const double t = 0.01;
  const vessel::SquareHeader h{millimetres(200),
                               millimetres(200),
                               millimetres(0),
                               millimetres(t),
                               metres(1.0),
                               level_metres(0.0),
                               0.0};
  const auto stress = wall_stresses({h}, bars(10.0), 0.3);
  ASSERT_EQ(stress.size(), 2u);
  const double s = 200.0 + t;
  EXPECT_NEAR(in_megapascals(*stress[0].membrane), 100.0 / t, 1e-6);
  EXPECT_NEAR(in_megapascals(*stress[0].greatest), 100.0 / t + 6.0 * s * s / 24.0 / (t * t),
              2e-4 * 6.0 * s * s / 24.0 / (t * t));
  EXPECT_NEAR(in_megapascals(*stress[1].greatest), 6.0 * s * s / 12.0 / (t * t),
              1e-3 * 6.0 * s * s / 12.0 / (t * t));
}

TEST(WallStresses, OfARoundSquareHeaderBendNothing) {
  const vessel::SquareHeader h{millimetres(200),
                               millimetres(200),
                               millimetres(100),
                               millimetres(5),
                               metres(1.0),
                               level_metres(0.0),
                               0.0};
  for (const auto& stress : wall_stresses({h}, bars(10.0), 0.3)) {
    EXPECT_NEAR(in_megapascals(*stress.greatest), 20.0, 1e-9);
    EXPECT_NEAR(in_megapascals(*stress.membrane), 20.0, 1e-9);
  }
}

TEST(WallStresses, OfAFiretubeShellCompressTheFurnace) {
  vessel::FiretubeShell shell{metres(2.0), millimetres(16), metres(4.5), level_metres(1.5), {}};
  shell.rows.push_back(
      {1, metres(0.9), millimetres(14), level_metres(1.05), std::nullopt, true, true});
  shell.rows.push_back(
      {60, millimetres(63.5), millimetres(3.2), level_metres(1.9), std::nullopt, false, true});
  const auto stress = wall_stresses({shell}, bars(15.0), 0.3, {millimetres(15.0), 0.8});
  ASSERT_EQ(stress.size(), 3u);
  EXPECT_NEAR(in_megapascals(*stress[0].membrane), 1.5 * 2015.0 / 30.0 / 0.8, 1e-9);
  EXPECT_EQ(stress[1].place, Place::Furnace);
  EXPECT_EQ(stress[1].row, 1);
  EXPECT_FALSE(stress[1].wall_measured);
  EXPECT_NEAR(in_megapascals(*stress[1].membrane), -1.5 * 886.0 / 28.0, 1e-9);
  EXPECT_EQ(stress[2].place, Place::FlueTube);
  // hoop of Lamé at the bore of a tube under outer pressure: -2 p b^2/(b^2 - a^2)
  EXPECT_NEAR(in_megapascals(*stress[2].greatest),
              -1.5 * 2.0 * 31.75 * 31.75 / (31.75 * 31.75 - 28.55 * 28.55), 1e-9);
}

TEST(ShareOfYield, TellsNothingItCannotKnow) {
  const auto stress = wall_stresses(drum(1000.0, 20.0), bars(50.0), 0.3).at(0);
  EXPECT_EQ(share_of_yield(stress, nullptr, celsius(20)).why_not, NoAnswer::MaterialNotKnown);
  const auto ask = [&](const char* grade, double at_celsius) {
    const auto material = materials::steel(grade);
    return share_of_yield(stress, &*material, celsius(at_celsius)).why_not;
  };
  EXPECT_EQ(ask("boiler steel", 20), NoAnswer::YieldNotStated);
  EXPECT_EQ(ask("SA-285-C", 20), NoAnswer::YieldFromMemory);
  EXPECT_EQ(ask("SA-516-70", 60), NoAnswer::TemperatureOutside);
  EXPECT_EQ(ask("P195GH", 20), NoAnswer::WallTooThickForYield);
  EXPECT_EQ(ask("P235GH", 20), NoAnswer::None);
  const auto unknown_wall = wall_stresses(drum(1000.0, std::nullopt), bars(50.0), 0.3).at(0);
  const auto material = materials::steel("P235GH");
  EXPECT_EQ(share_of_yield(unknown_wall, &*material, celsius(20)).why_not, NoAnswer::WallNotKnown);
}

TEST(ShareOfYield, JudgesBendingWallsByTheirGreatestStress) {
  const auto material = materials::steel("P235GH");
  const auto plate =
      wall_stresses(head(vessel::Flat{vessel::PlateEdge::Clamped}, 400.0, 15.0), bars(10.0), 0.3)
          .at(0);
  EXPECT_TRUE(carries_by_bending(plate.place));
  EXPECT_NEAR(*share_of_yield(plate, &*material, celsius(20)).share,
              in_megapascals(*plate.greatest) / 235.0, 1e-12);
  const auto shell = wall_stresses(drum(1000.0, 16.0), bars(10.0), 0.3).at(0);
  EXPECT_NEAR(*share_of_yield(shell, &*material, celsius(20)).share,
              in_megapascals(*shell.membrane) / 235.0, 1e-12);
}

}  // namespace
}  // namespace steamworthy::strength
