// Checks strength/thickness.h. The formulas are from memory [ASME-I-PG-27] [ASME-I-PG-29]; inputs
// of the tube and pipe cases were seen on public pages of worked examples [WALL-EXAMPLES], the
// answers recomputed by arithmetic.
#include "strength/thickness.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::strength {
namespace {

using units::in_inches;
using units::in_psi;
using units::inches;
using units::millimetres;
using units::psi;

constexpr TubeWall tube(double expanded_in) {
  return {inches(2.75), psi(11800), inches(expanded_in)};
}

TEST(TubeWall, GivesTheWorkedCases) {
  EXPECT_NEAR(in_inches(required_wall(tube(0.0), psi(580))), 0.07971, 0.00001);
  EXPECT_NEAR(in_inches(required_wall(tube(0.04), psi(580))), 0.11971, 0.00001);
  EXPECT_NEAR(in_psi(pressure_of_wall(tube(0.0), inches(0.105))), 809.97, 0.005);
}

TEST(DrumWall, GivesTheWorkedPipe) {
  DrumWall pipe;
  pipe.diameter = inches(10.77);
  pipe.allowable = psi(13800);
  const double wall = in_inches(required_wall(pipe, psi(900)));
  EXPECT_NEAR(wall, 0.34227, 0.00001);
  EXPECT_NEAR(wall / 0.875, 0.39116, 0.00001);  // with a mill tolerance of 12.5 %
}

TEST(DrumWall, GivesTheWorkedDrum) {
  DrumWall drum;
  drum.diameter = inches(48.0);
  drum.inside = true;
  drum.allowable = psi(17500);
  const auto wall = [&](double efficiency) {
    drum.efficiency = efficiency;
    return in_inches(required_wall(drum, psi(700)));
  };
  EXPECT_NEAR(wall(1.0), 0.984, 0.0005);
  EXPECT_NEAR(wall(0.453), 2.238, 0.0005);
  EXPECT_NEAR(wall(0.375), 2.7350, 0.00005);
}

TEST(DishedHeadWall, GivesTheWorkedHead) {
  EXPECT_NEAR(in_inches(required_wall(DishedHeadWall{inches(60.0), psi(17500), 1.0}, psi(250))),
              0.8929, 0.00005);
}

// The inside form and the outside form of one drum agree where the wall is thin.
TEST(DrumWall, IsTheSameByInsideAndOutsideWhenThin) {
  DrumWall outside{inches(48.0), false, psi(17500), 1.0, 0.4, {}};
  const units::Length wall = required_wall(outside, psi(10));
  DrumWall inside = outside;
  inside.inside = true;
  inside.diameter = outside.diameter - 2.0 * wall;
  EXPECT_NEAR(required_wall(inside, psi(10)) / wall, 1.0, 1e-3);
}

template <class Form>
void round_trip(const Form& form, double pressure_psi) {
  RC_ASSERT(std::fabs(in_psi(pressure_of_wall(form, required_wall(form, psi(pressure_psi)))) -
                      pressure_psi) < 1e-9 * pressure_psi);
}

RC_GTEST_PROP(PressureOfWall, IsTheInverseOfTheRequiredWall, ()) {
  const double pressure = *rc::gen::inRange(1, 2000);
  const double efficiency = *rc::gen::inRange(20, 101) / 100.0;
  round_trip(tube(*rc::gen::element(0.0, 0.04)), pressure);
  DrumWall drum{inches(*rc::gen::inRange(5, 80)),
                *rc::gen::arbitrary<bool>(),
                psi(15000),
                efficiency,
                0.4,
                millimetres(1.0)};
  round_trip(drum, pressure);
  round_trip(DishedHeadWall{inches(50), psi(15000), efficiency}, pressure);
  round_trip(HemisphereWall{inches(30), psi(15000), efficiency}, pressure);
}

TEST(PressureOfWall, IsZeroWhereTheAllowancesEatTheWall) {
  EXPECT_EQ(in_psi(pressure_of_wall(tube(0.04), inches(0.05))), 0.0);
  const DrumWall thin{inches(40), true, psi(15000), 1.0, 0.4, millimetres(3.0)};
  EXPECT_EQ(in_psi(pressure_of_wall(thin, millimetres(2.0))), 0.0);
}

TEST(WallFormulas, RefuseWhatTheyWereNotMadeFor) {
  const auto code = [](auto f) {
    try {
      f();
    } catch (const OutOfRange& error) {
      return error.code();
    }
    return std::string();
  };
  const std::string refused = "strength.wall_inputs";
  EXPECT_EQ(code([] { required_wall(TubeWall{inches(5.1), psi(11800), {}}, psi(500)); }), refused);
  EXPECT_EQ(code([] { required_wall(tube(-0.01), psi(500)); }), refused);
  EXPECT_EQ(code([] { required_wall(tube(0.0), psi(-1)); }), refused);
  EXPECT_EQ(code([] { pressure_of_wall(tube(0.0), inches(0.0)); }), refused);
  EXPECT_EQ(code([] {
              required_wall(DrumWall{inches(40), true, psi(0), 1.0, 0.4, {}}, psi(100));
            }),
            refused);
  EXPECT_EQ(code([] {
              required_wall(DrumWall{inches(40), true, psi(1000), 0.5, 0.4, {}}, psi(900));
            }),
            refused);
  EXPECT_EQ(code([] {
              required_wall(DishedHeadWall{inches(40), psi(1000), 1.1}, psi(9));
            }),
            refused);
  EXPECT_EQ(code([] {
              required_wall(HemisphereWall{inches(0), psi(1000), 1.0}, psi(9));
            }),
            refused);
}

TEST(AllowedPressure, IsPrintedOnlyWhenItIsLower) {
  const auto lower = allowed_pressure(psi(540), units::psi_gauge(600));
  ASSERT_TRUE(lower.lower_figure);
  EXPECT_NEAR(units::in_psi_gauge(*lower.lower_figure), 540.0, 1e-9);
  EXPECT_FALSE(lower.for_engineer_and_inspector);
  for (const double worked_out : {600.0, 810.0}) {
    const auto higher = allowed_pressure(psi(worked_out), units::psi_gauge(600));
    EXPECT_FALSE(higher.lower_figure) << "a worked-out pressure never raises the stamped one";
    EXPECT_TRUE(higher.for_engineer_and_inspector);
  }
  EXPECT_TRUE(allowed_pressure(psi(540), std::nullopt).for_engineer_and_inspector);
}

}  // namespace
}  // namespace steamworthy::strength
