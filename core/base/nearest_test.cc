#include "base/nearest.h"

#include <gtest/gtest.h>

namespace steamworthy {
namespace {

// Classic pairs of the edit distance, from memory: kitten/sitting 3, saturday/sunday 3.
TEST(EditDistance, AgreesWithTheClassicPairs) {
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
  EXPECT_EQ(edit_distance("saturday", "sunday"), 3U);
  EXPECT_EQ(edit_distance("", "abc"), 3U);
  EXPECT_EQ(edit_distance("wall", "wlal"), 1U);
}

TEST(Nearest, FindsASlipOfThePenAndNothingFarOff) {
  const std::vector<std::string_view> known{"wall", "length", "outer_diameter"};
  EXPECT_EQ(nearest("lenght", known), "length");
  EXPECT_EQ(nearest("Wal", known), "wall");
  EXPECT_EQ(nearest("outer_diamter", known), "outer_diameter");
  EXPECT_EQ(nearest("colour", known), "");
  EXPECT_EQ(nearest(std::string(100000, 'w'), known), "");
}

}  // namespace
}  // namespace steamworthy
