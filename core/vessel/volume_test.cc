// Checks vessel/volume.h: laws that hold for every body, numerical integration, printed tanks.
#include "vessel/volume.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "vessel/bodies_test.h"

namespace steamworthy::vessel {
namespace {

using namespace steamworthy::vessel::testing;
using units::level_metres;
using units::metres;

constexpr double rounding = 1e-12;  // of the body's volume: promised in volume.h

units::Level at_fraction(const Body& body, double fraction) {
  return bottom(body) + fraction * (top(body) - bottom(body));
}

// Laws.

RC_GTEST_PROP(VolumeBelow, IsNothingAtTheBottomAndEverythingAtTheTop, ()) {
  const Body body = any_body();
  const double whole = volume(body).si();
  RC_ASSERT(std::fabs(volume_below(body, bottom(body)).si()) <= rounding * whole);
  RC_ASSERT(std::fabs(volume_below(body, top(body)).si() - whole) <= rounding * whole);
  RC_ASSERT(volume_below(body, bottom(body) - metres(1.0)).si() == 0.0);
  RC_ASSERT(std::fabs(volume_below(body, top(body) + metres(1.0)).si() - whole) <=
            rounding * whole);
}

RC_GTEST_PROP(VolumeBelow, NeverFallsAsTheLevelRises, ()) {
  const Body body = any_body();
  const double low = between(-0.05, 1.05);
  const double step = *rc::gen::element(1e-9, 1e-5, 0.01, 0.3);
  const double rise = (volume_below(body, at_fraction(body, low + step)) -
                       volume_below(body, at_fraction(body, low)))
                          .si();
  RC_ASSERT(rise >= -rounding * volume(body).si());
}

RC_GTEST_PROP(VolumeBelow, OfAStraightBodyIsTheSameFromAboveAndBelow, ()) {
  Body body{any_cylinder()};
  if (*rc::gen::arbitrary<bool>()) body.shape = any_header();
  const double fraction = between(0.0, 1.0);
  const double both = (volume_below(body, at_fraction(body, fraction)) +
                       volume_below(body, at_fraction(body, 1.0 - fraction)))
                          .si();
  RC_ASSERT(std::fabs(both - volume(body).si()) <= rounding * volume(body).si());
}

RC_GTEST_PROP(VolumeBelow, OfAHeadIsWhatIsAboveInTheHeadTurnedOver, ()) {
  Head head = any_head();
  Head over = head;
  over.slope_rad = -head.slope_rad;
  const units::Length d = head.inner_diameter * between(-0.6, 0.6);
  const double both =
      (volume_below({head}, head.centre + d) + volume_below({over}, over.centre - d)).si();
  RC_ASSERT(std::fabs(both - volume({head}).si()) <= rounding * volume({head}).si());
}

RC_GTEST_PROP(VolumeBelow, OfACylinderIsThatOfItsTwoHalves, ()) {
  const Cylinder whole = any_cylinder();
  Cylinder low = whole;
  low.length = whole.length * between(0.1, 0.9);
  Cylinder high = whole;
  high.length = whole.length - low.length;
  // lying and standing exactly, as the room takes slopes this close to upright
  const double s = whole.slope_rad == pi / 2.0 ? 1.0 : std::sin(whole.slope_rad);
  low.middle = whole.middle - (whole.length - low.length) / 2.0 * s;
  high.middle = whole.middle + (whole.length - high.length) / 2.0 * s;
  const units::Level level = at_fraction({whole}, between(0.0, 1.0));
  const double parts = (volume_below({low}, level) + volume_below({high}, level)).si();
  RC_ASSERT(std::fabs(parts - volume_below({whole}, level).si()) <=
            10.0 * rounding * volume({whole}).si());
}

RC_GTEST_PROP(SurfaceAt, IsTheSlopeOfTheVolume, ()) {
  const Body body = any_body();
  const double fraction = between(0.02, 0.98);
  const double half_step = 1e-5;
  const units::Level level = at_fraction(body, fraction);
  const units::Length h = half_step * (top(body) - bottom(body));
  const double slope =
      (volume_below(body, level + h) - volume_below(body, level - h)).si() / (2.0 * h.si());
  const double mean = 0.5 * (surface_at(body, level + h) + surface_at(body, level - h)).si();
  const double scale = volume(body).si() / (top(body) - bottom(body)).si();
  // the surface may jump within the step (a firetube row, an end of a standing body)
  RC_ASSERT(std::fabs(slope - mean) <= 2e-2 * scale ||
            std::fabs(slope - surface_at(body, level).si()) <= 2e-2 * scale);
}

RC_GTEST_PROP(Centroid, IsTheMeanHeightOfTheWater, ()) {
  const Body body = any_body();
  const double b = bottom(body).si();
  const double t = top(body).si();
  const double whole = volume(body).si();
  // integral of z dV by parts
  const double mean =
      t - integral([&](double z) { return volume_below(body, level_metres(z)).si(); }, b, t,
                   1e-9 * whole * (t - b)) /
              whole;
  RC_ASSERT(std::fabs(mean - centroid(body).si()) <= 1e-7 * (t - b));
}

// Numerical integration along the axis.

double straight_by_integration(double length, double slope, double d,
                               const std::function<double(double)>& below) {
  const auto section = [&](double x) { return below((d - x * std::sin(slope)) / std::cos(slope)); };
  return integral(section, -length / 2.0, length / 2.0, 1e-13);
}

TEST(VolumeBelow, OfAnInclinedCylinderAgreesWithIntegration) {
  for (const double slope : {1e-6, 1e-3, 0.02, 0.3, 0.9, 1.3, 1.55}) {
    for (const double fraction : {0.001, 0.05, 0.3, 0.5, 0.77, 0.98}) {
      const Cylinder c{metres(1.2),       std::nullopt, metres(3.0),
                       level_metres(5.0), slope,        Ends::Closed};
      const units::Level level = at_fraction({c}, fraction);
      const double expected = straight_by_integration(3.0, slope, level.si() - 5.0,
                                                      [](double u) { return disc_below(0.6, u); });
      EXPECT_NEAR(volume_below({c}, level).si(), expected, 1e-9 * std::max(expected, 1e-3))
          << slope << " " << fraction;
    }
  }
}

// Source: worked example of docs/methods/vessel-cylinder.md.
TEST(VolumeBelow, OfAnInclinedPipeGivesTheWorkedExample) {
  const Cylinder pipe{metres(0.3),       std::nullopt, metres(2.0),
                      level_metres(5.0), pi / 6.0,     Ends::Closed};
  EXPECT_NEAR(units::in_litres(volume_below({pipe}, level_metres(5.2))), 98.960, 0.0005);
}

TEST(VolumeBelow, OfASquareHeaderAgreesWithIntegration) {
  const double w = 0.2, h = 0.3, r = 0.04;
  const auto width_at = [&](double y) {  // of the section, at y above its centre
    const double v = std::fabs(y) - (h / 2.0 - r);
    return v > r ? 0.0 : v <= 0.0 ? w : w - 2.0 * r + 2.0 * std::sqrt(r * r - v * v);
  };
  const auto below = [&](double u) {
    return u <= -h / 2.0 ? 0.0 : integral(width_at, -h / 2.0, std::min(u, h / 2.0), 1e-12);
  };
  for (const double slope : {0.0, 0.4, 1.2}) {
    for (const double fraction : {0.03, 0.2, 0.6, 0.95}) {
      const SquareHeader header{metres(w),   metres(h),         metres(r), std::nullopt,
                                metres(1.5), level_metres(0.0), slope};
      const units::Level level = at_fraction({header}, fraction);
      const auto section = [&](double x) {
        return below((level.si() - x * std::sin(slope)) / std::cos(slope));
      };
      const double expected =
          slope == 0.0 ? 1.5 * below(level.si()) : integral(section, -0.75, 0.75, 1e-11);
      EXPECT_NEAR(volume_below({header}, level).si(), expected, 2e-9 * volume({header}).si())
          << slope << " " << fraction;
    }
  }
}

// A head as discs along its axis; `radius` is its outline.
double head_by_integration(double depth, double slope, double d,
                           const std::function<double(double)>& radius) {
  const auto disc = [&](double x) {
    return disc_below(radius(x), (d - x * std::sin(slope)) / std::cos(slope));
  };
  return integral(disc, 0.0, depth, 1e-13);
}

TEST(VolumeBelow, OfEllipsoidalHeadsAgreesWithIntegration) {
  for (const double ratio : {0.8, 1.0, 2.0, 3.0}) {
    for (const double slope : {-1.5, -0.7, -1e-4, 0.0, 1e-4, 0.2, 1.1, 1.5}) {
      for (const double fraction : {0.004, 0.1, 0.35, 0.5, 0.8, 0.99}) {
        const Head head{Ellipsoidal{ratio}, metres(2.0), std::nullopt, level_metres(0.0), slope};
        const double depth = 1.0 / ratio;
        const units::Level level = at_fraction({head}, fraction);
        const double expected = head_by_integration(depth, slope, level.si(), [&](double x) {
          return std::sqrt(std::max(0.0, 1.0 - x * x / (depth * depth)));
        });
        EXPECT_NEAR(volume_below({head}, level).si(), expected, 1e-9 * std::max(expected, 1e-3))
            << ratio << " " << slope << " " << fraction;
      }
    }
  }
}

TEST(VolumeBelow, OfTorisphericalHeadsAgreesWithIntegration) {
  const double R = 0.8, L = 1.6, k = 0.16;
  const double sine = (R - k) / (L - k);
  const double reach = k * std::sqrt(1.0 - sine * sine);
  const double depth = L - std::sqrt((L - k) * (L - k) - (R - k) * (R - k));
  const auto outline = [&](double x) {
    if (x < reach) return R - k + std::sqrt(k * k - x * x);
    const double y = x - (depth - L);
    return std::sqrt(std::max(0.0, L * L - y * y));
  };
  for (const double slope : {-1.4, -0.3, 0.0, 1e-5, 0.15, 0.6, 1.2}) {
    for (const double fraction : {0.01, 0.2, 0.4999, 0.5, 0.5001, 0.8, 0.99}) {
      const Head head{Torispherical{metres(L), metres(k)}, metres(2.0 * R), std::nullopt,
                      level_metres(0.0), slope};
      const units::Level level = at_fraction({head}, fraction);
      const double expected = head_by_integration(depth, slope, level.si(), outline);
      EXPECT_NEAR(volume_below({head}, level).si(), expected, 1e-9 * std::max(expected, 1e-3))
          << slope << " " << fraction;
    }
  }
  const Head head{Torispherical{metres(L), metres(k)}, metres(2.0 * R), std::nullopt,
                  level_metres(0.0), 0.0};
  EXPECT_NEAR(volume({head}).si(),
              integral([&](double x) { return pi * outline(x) * outline(x); }, 0.0, depth), 1e-9);
}

TEST(VolumeBelow, OfAStandingTorisphericalHeadJoinsThatOfALeaningOne) {
  const auto head = [](double slope) {
    return Body{Head{Torispherical{metres(2.0), metres(0.2)}, metres(2.0), std::nullopt,
                     level_metres(1.0), slope}};
  };
  for (const double d : {0.02, 0.1, 0.25, 0.35}) {
    const double standing = volume_below(head(pi / 2.0), level_metres(1.0 + d)).si();
    EXPECT_NEAR(volume_below(head(pi / 2.0 - 1e-6), level_metres(1.0 + d)).si(), standing,
                1e-5 * standing);
    EXPECT_NEAR(volume_below(head(-pi / 2.0), level_metres(1.0 - d)).si(),
                volume(head(0)).si() - standing, 1e-12);
  }
}

TEST(VolumeBelow, OfAFiretubeShellLeavesOutWhatTheTubesTake) {
  FiretubeShell shell{metres(2.0), metres(0.015), metres(4.0), level_metres(1.5), {}};
  shell.rows.push_back(
      {1, metres(0.8), metres(0.012), level_metres(1.1), std::nullopt, true, true});
  shell.rows.push_back(
      {20, metres(0.06), metres(0.003), level_metres(1.9), std::nullopt, false, true});
  const auto by_hand = [&](double z) {
    return 4.0 *
           (disc_below(1.0, z - 1.5) - disc_below(0.4, z - 1.1) - 20.0 * disc_below(0.03, z - 1.9));
  };
  for (const double z : {0.6, 0.9, 1.1, 1.5, 1.88, 1.92, 2.3}) {
    EXPECT_NEAR(volume_below({shell}, level_metres(z)).si(), by_hand(z), 1e-12);
  }
  EXPECT_NEAR(volume({shell}).si(), 4.0 * pi * (1.0 - 0.16 - 20.0 * 0.0009), 1e-12);
}

// Printed tanks. Source: a public page of tank formulas, ellipsoidal heads: lying tank, 40 in
// across, 100 in long between two 2:1 heads: 616.5 US gallons, 228.7 at 16 in; shares of volume by
// depth [TANK-2TO1].
class PrintedTank : public ::testing::Test {
 protected:
  static double gallons_below(double depth_in) {
    const Cylinder shell{units::inches(40), std::nullopt, units::inches(100),
                         level_metres(0.0), 0.0,          Ends::Closed};
    const Head head{Ellipsoidal{2.0}, units::inches(40), std::nullopt, level_metres(0.0), 0.0};
    const units::Level level = level_metres(0.0) + units::inches(depth_in - 20.0);
    return units::in_us_gallons(volume_below({shell}, level) + volume_below({head, 2}, level));
  }
};

TEST_F(PrintedTank, HoldsThePrintedGallons) {
  EXPECT_NEAR(gallons_below(40.0), 616.5, 0.05);
  EXPECT_NEAR(gallons_below(16.0), 228.7, 0.05);
}

TEST_F(PrintedTank, FillsByThePrintedShares) {
  constexpr struct {
    double depth_percent, printed_percent;
  } rows[] = {{10, 4.9}, {25, 19.1}, {50, 50.0}, {75, 80.9}, {90, 95.1}};
  for (const auto& row : rows) {
    EXPECT_NEAR(100.0 * gallons_below(0.4 * row.depth_percent) / gallons_below(40.0),
                row.printed_percent, 0.05);
  }
}

// Surfaces: sphere 4 pi r^2; a flat ellipsoid turns into a disc; a torispherical head of one radius
// into a half ball.
TEST(WettedArea, HasTheKnownLimits) {
  const auto head = [](HeadForm form) {
    return Body{Head{form, metres(2.0), std::nullopt, level_metres(0.0), 0.0}};
  };
  EXPECT_NEAR(wetted_area(head(Hemispherical{})).si(), 2.0 * pi, 1e-12);
  EXPECT_NEAR(wetted_area(head(Ellipsoidal{1.0001})).si() / (2.0 * pi), 1.0, 1e-4);
  EXPECT_NEAR(wetted_area(head(Ellipsoidal{1e4})).si(), pi, 1e-6);
  EXPECT_NEAR(wetted_area(head(Torispherical{metres(1.0), metres(0.3)})).si(), 2.0 * pi, 1e-12);
  EXPECT_NEAR(volume(head(Torispherical{metres(1.0), metres(0.3)})).si(), 2.0 / 3.0 * pi, 1e-12);
  // the half surface of the oblate spheroid 2:1, pi R^2 [1 + (1 - e^2) atanh(e)/e], by integration
  const double by_integration = integral(
      [](double t) {
        return 2.0 * pi * std::sin(t) *
               std::sqrt(std::cos(t) * std::cos(t) + 0.25 * std::sin(t) * std::sin(t));
      },
      0.0, pi / 2.0);
  EXPECT_NEAR(wetted_area(head(Ellipsoidal{2.0})).si(), by_integration, 1e-9);
}

TEST(Metal, WeighsWhatAPlateOfItsWallWeighs) {
  const Cylinder c{metres(1.0), metres(0.001), metres(2.0), level_metres(0.0), 0.0, Ends::Closed};
  EXPECT_NEAR(metal_volume({c})->si(), pi * 1.001 * 0.001 * 2.0, 1e-15);
  EXPECT_NEAR(units::in_kilograms(*metal_mass({c, 3}, units::kilograms_per_cubic_metre(7850.0))),
              3.0 * 7850.0 * pi * 1.001 * 0.002, 1e-9);
  Cylinder unknown = c;
  unknown.wall.reset();
  EXPECT_FALSE(metal_volume({unknown}));
  EXPECT_FALSE(metal_mass({unknown}, units::kilograms_per_cubic_metre(7850.0)));
}

}  // namespace
}  // namespace steamworthy::vessel
