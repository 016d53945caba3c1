#include "boiler/tokens.h"

#include <gtest/gtest.h>

#include <set>

namespace steamworthy::boiler {
namespace {

template <class Enum>
class Tokens : public testing::Test {};

using Enumerations =
    testing::Types<BoilerKind, PartKind, HeadKind, Axis, Run, InsideKind, ThermalGroup, ClosureKind,
                   OpeningShape, GasketKind, Side, SpaceSide, MountingKind, IsolationKind,
                   TemporaryKind, OffBefore, PlaceKind, ThermometerOn>;
TYPED_TEST_SUITE(Tokens, Enumerations);

// The enumerators run from 0 without gaps, so one left out in the middle of a
// table shows as a gap.
TYPED_TEST(Tokens, EveryValueHasAWordOfItsOwnThatReadsBack) {
  const auto all = Words<TypeParam>::all();
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto value = Words<TypeParam>::value_of(all[i]);
    ASSERT_TRUE(value.has_value()) << all[i];
    EXPECT_EQ(static_cast<std::size_t>(*value), i) << all[i];
    EXPECT_EQ(token(*value), all[i]);
    EXPECT_TRUE(seen.insert(all[i]).second) << all[i];
  }
}

TEST(TokenReading, TakesBlanksHyphensAndCapitals) {
  EXPECT_EQ(Words<MountingKind>::value_of("Safety valve"), MountingKind::SafetyValve);
  EXPECT_EQ(Words<MountingKind>::value_of("low-water-cut-out"), MountingKind::LowWaterCutOut);
  EXPECT_EQ(Words<MountingKind>::value_of("whistle"), std::nullopt);
}

}  // namespace
}  // namespace steamworthy::boiler
