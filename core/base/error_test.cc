#include "base/error.h"

#include <gtest/gtest.h>

namespace steamworthy {
namespace {

TEST(Problem, SaysWhereWhatWasFoundAndWhatWouldBeAccepted) {
  const Problem problem{"boiler.length",  "one.toml", 12,
                        "part[SD].wall",  "5 kg",     "a length such as \"50 mm\"",
                        "is not a length"};
  EXPECT_EQ(sentence(problem),
            "one.toml:12: part[SD].wall: is not a length (found \"5 kg\"; accepted: a length such "
            "as \"50 mm\")");
}

TEST(Problem, LeavesOutWhatIsNotKnown) {
  EXPECT_EQ(sentence({"a.b", "", 3, "", "", "", "the file ends too early"}),
            "line 3: the file ends too early");
}

TEST(BadInput, CarriesEveryProblemAndSpeaksWithTheFirst) {
  const BadInput error(
      {{"a.first", "", 1, "x", "", "", "first"}, {"a.second", "", 2, "", "", "", "second"}});
  EXPECT_EQ(error.problems().size(), 2u);
  EXPECT_EQ(error.code(), "a.first");
  EXPECT_STREQ(error.what(), "line 1: x: first");
}

}  // namespace
}  // namespace steamworthy
