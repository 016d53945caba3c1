// Every wrong description and the exact sentences that it gets. The table is
// tests/wrong/descriptions.txt, which spoils tests/wrong/base.toml.
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "wire/description.h"
#include "wire/spoiled_file_test.h"

namespace steamworthy::wire {
namespace {

TEST(WrongDescriptions, TheBaseItselfIsRight) {
  const Description read = read_boiler_toml(source_file("tests/wrong/base.toml"), "base.toml");
  for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
  EXPECT_TRUE(read.boiler.has_value());
}

TEST(WrongDescriptions, EachGetsExactlyItsSentences) {
  const std::vector<std::string> base = split(source_file("tests/wrong/base.toml"));
  const std::vector<Case> all = wrong_cases("descriptions.txt");
  EXPECT_GE(all.size(), 40U);
  for (const Case& one : all) {
    SCOPED_TRACE(one.title);
    const Description read = read_boiler_toml(spoiled(base, one), "base.toml");
    std::vector<std::string> told;
    for (const Problem& problem : read.problems) {
      told.push_back(sentence(problem));
      EXPECT_FALSE(problem.code.empty());
      EXPECT_GT(problem.line, 0);
    }
    EXPECT_FALSE(one.expected.empty());
    EXPECT_EQ(joined(told), joined(one.expected));
    EXPECT_FALSE(read.boiler.has_value());
  }
}

}  // namespace
}  // namespace steamworthy::wire
