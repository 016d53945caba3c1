// Checks vessel/shapes.h: what cannot be is refused, all of it at once.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <limits>

#include "vessel/bodies_test.h"
#include "vessel/volume.h"

namespace steamworthy::vessel {
namespace {

using namespace steamworthy::vessel::testing;
using units::level_metres;
using units::metres;

std::vector<std::string> codes(const Body& body) {
  std::vector<std::string> found;
  for (const Problem& problem : faults(body)) found.push_back(problem.code);
  return found;
}
using Codes = std::vector<std::string>;

Cylinder drum() {
  return {metres(1.0), metres(0.02), metres(3.0), level_metres(2.0), 0.0, Ends::Closed};
}

RC_GTEST_PROP(Faults, AreNoneInBodiesThatCanBeBuilt, ()) { RC_ASSERT(faults(any_body()).empty()); }

TEST(Faults, NameEverySizeThatIsNotAboveZero) {
  Cylinder bad = drum();
  bad.inner_diameter = metres(0.0);
  bad.wall = metres(-0.01);
  bad.length = metres(std::numeric_limits<double>::quiet_NaN());
  EXPECT_EQ(codes({bad, 0}),
            (Codes{"vessel.count", "vessel.inner_diameter", "vessel.wall", "vessel.length"}));
}

TEST(Faults, SayWhatWasFoundAndWhatWouldBeAccepted) {
  const TubeBank bank{10,          metres(0.05),      metres(0.03),
                      metres(3.0), level_metres(1.0), level_metres(1.0),
                      Ends::Closed};
  const auto found = faults({bank});
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(
      sentence(found[0]),
      "wall: leaves no bore (found \"30 mm\"; accepted: less than half the outer diameter, 25 mm)");
  EXPECT_EQ(sentence(found[1]),
            "top: is not above the bottom (found \"1 m\"; accepted: above the bottom, 1 m; tubes "
            "that lie level are a cylinder "
            "with a count)");
}

TEST(Faults, OfHeadsFollowTheForm) {
  Head head{Torispherical{metres(0.4), metres(0.6)}, metres(1.0), std::nullopt, level_metres(0.0),
            2.0};
  EXPECT_EQ(codes({head}), (Codes{"vessel.slope", "vessel.crown_radius", "vessel.knuckle_radius"}));
  head.slope_rad = -pi / 2.0;
  head.form = Ellipsoidal{0.0};
  EXPECT_EQ(codes({head}), (Codes{"vessel.head_ratio"}));
  Cylinder downward = drum();
  downward.slope_rad = -0.1;
  EXPECT_EQ(codes({downward}), (Codes{"vessel.slope"}));
}

TEST(Faults, OfASquareHeaderHoldTheCornerToTheSides) {
  const SquareHeader header{metres(0.2), metres(0.1),       metres(0.06), std::nullopt,
                            metres(1.0), level_metres(0.0), 0.0};
  EXPECT_EQ(codes({header}), (Codes{"vessel.corner_radius"}));
}

TEST(Faults, OfAFiretubeShellNameTheRow) {
  FiretubeShell shell{metres(2.0), metres(0.01), metres(4.0), level_metres(1.0), {}};
  shell.rows.push_back(
      {1, metres(0.8), metres(0.012), level_metres(0.9), std::nullopt, true, true});
  shell.rows.push_back(
      {10, metres(0.06), metres(0.003), level_metres(2.0), metres(5.0), false, true});
  const auto found = faults({shell});
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].field, "row[2].length");
  EXPECT_EQ(found[1].code, "vessel.row_outside_shell");
  shell.rows[1] = {2000, metres(0.06), metres(0.003), level_metres(1.5), std::nullopt, false, true};
  EXPECT_EQ(codes({shell}), (Codes{"vessel.rows_fill_shell"}));
}

TEST(RequireSound, StopsEveryQuestionAboutABodyThatCannotBe) {
  Cylinder bad = drum();
  bad.length = metres(0.0);
  EXPECT_THROW(volume({bad}), BadInput);
  EXPECT_THROW(volume_below({bad}, level_metres(0.0)), BadInput);
  EXPECT_THROW(top({bad}), BadInput);
}

}  // namespace
}  // namespace steamworthy::vessel
