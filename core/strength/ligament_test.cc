// Checks strength/ligament.h. The forms are from memory [ASME-I-PG-52]; the numbers below are those
// of the code's own figures as recalled, recomputed by arithmetic.
#include "strength/ligament.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::strength {
namespace {

using units::inches;
using units::millimetres;

TEST(Ligament, GivesTheRecalledFigures) {
  EXPECT_DOUBLE_EQ(ligament_equal_pitch(inches(5.25), inches(3.28125)), 0.375);
  EXPECT_NEAR(ligament_uneven_pitch(inches(12.0), 2, inches(3.28125)), 0.4531, 0.00005);
  EXPECT_NEAR(ligament_uneven_pitch(inches(29.25), 5, inches(3.28125)), 0.4391, 0.00005);
}

TEST(Ligament, OfOneHoleARepeatIsThatOfTheEqualPitch) {
  EXPECT_DOUBLE_EQ(ligament_uneven_pitch(millimetres(90), 1, millimetres(50.8)),
                   ligament_equal_pitch(millimetres(90), millimetres(50.8)));
}

// Limits that need no table: holes in line along the drum; holes almost in line around it, where
// the axial stress is half.
RC_GTEST_PROP(DiagonalLigament, MeetsBothPlainLigaments, ()) {
  const double d = *rc::gen::inRange(20, 90);
  const double p = d * (1.02 + *rc::gen::inRange(0, 300) / 100.0);
  RC_ASSERT(std::fabs(ligament_diagonal(millimetres(p), millimetres(0), millimetres(d)) -
                      ligament_equal_pitch(millimetres(p), millimetres(d))) < 1e-12);
  RC_ASSERT(std::fabs(ligament_diagonal(millimetres(p * 1e-6), millimetres(p), millimetres(d)) -
                      ligament_around(millimetres(p), millimetres(d))) < 1e-9);
}

RC_GTEST_PROP(DiagonalLigament, StaysBetweenNothingAndOneAndWeakensWithTheHole, ()) {
  const double along = *rc::gen::inRange(10, 200);
  const double around = *rc::gen::inRange(0, 200);
  const double pitch = std::sqrt(along * along + around * around);
  const double d = pitch * *rc::gen::inRange(1, 90) / 100.0;
  const double efficiency =
      ligament_diagonal(millimetres(along), millimetres(around), millimetres(d));
  RC_ASSERT(efficiency > 0.0 && efficiency <= 1.0);
  RC_ASSERT(ligament_diagonal(millimetres(along), millimetres(around), millimetres(d * 1.05)) <=
            efficiency);
}

TEST(Ligament, RefusesHolesThatLeaveNothing) {
  const auto code = [](auto f) {
    try {
      f();
    } catch (const OutOfRange& error) {
      return error.code();
    }
    return std::string();
  };
  EXPECT_EQ(code([] { ligament_equal_pitch(millimetres(50), millimetres(50)); }),
            "strength.ligament");
  EXPECT_EQ(code([] { ligament_uneven_pitch(millimetres(100), 0, millimetres(20)); }),
            "strength.ligament");
  EXPECT_EQ(code([] { ligament_uneven_pitch(millimetres(100), 5, millimetres(20)); }),
            "strength.ligament");
  EXPECT_EQ(code([] { ligament_diagonal(millimetres(0), millimetres(60), millimetres(20)); }),
            "strength.ligament");
  EXPECT_EQ(code([] { ligament_around(millimetres(60), millimetres(0)); }), "strength.ligament");
}

}  // namespace
}  // namespace steamworthy::strength
