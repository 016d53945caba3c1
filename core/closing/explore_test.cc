// The proof of docs/safety.md on the small plant: every state up to a depth, and every check missed
// when it is switched off.
//
// STEAMWORTHY_LONG=1 (./check --long) goes to the depths of the second column.
#include "closing/explore_test.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <set>

namespace steamworthy::closing {
namespace {

/// How deep, and how many states there are: a change of the rules or of the moves changes them.
struct Expected {
  const char* name;
  int depth;
  std::size_t states;
  int long_depth;
  std::size_t long_states;
};

// clang-format off
constexpr Expected expected[] = {
    {"opening", 4, 6741, 6, 106723},
    {"entering", 4, 8473, 5, 38684},
    {"inside", 4, 5885, 6, 84883},
    {"filling", 4, 6667, 4, 6667},
    {"bores", 4, 199, 8, 766},
    {"raising", 4, 2513, 6, 32060},
    {"gear", 4, 4573, 6, 51601},
    {"walking", 4, 10827, 4, 10827},
    {"handing back", 4, 4774, 6, 71173},
    {"leaks", 4, 3047, 6, 45784},
    {"alarms", 4, 423, 6, 2539},
    {"shut down", 4, 163, 8, 256},
    {"full", 4, 173, 8, 256},
    {"making ready", 4, 1411, 8, 26846},
    {"holding", 4, 298, 10, 856},
    {"making good", 4, 650, 11, 7560},
};
// clang-format on

const Scenario& named(const std::string& name) {
  for (const Scenario& scenario : scenarios()) {
    if (scenario.name == name) return scenario;
  }
  throw std::logic_error(name);
}

class Exploration : public testing::TestWithParam<Expected> {};

TEST_P(Exploration, FindsNoRuleBrokenInAnyStateUpToItsDepth) {
  const Expected& row = GetParam();
  const bool is_long = std::getenv("STEAMWORTHY_LONG") != nullptr;
  const char* wanted = std::getenv("STEAMWORTHY_DEPTH");
  const int depth = wanted != nullptr ? std::atoi(wanted) : is_long ? row.long_depth : row.depth;
  const auto start = std::chrono::steady_clock::now();
  const Explored explored = explore(named(row.name), small_terms(), depth);
  const double seconds =
      std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  std::cout << row.name << ": " << named(row.name).moves.size() << " moves, depth "
            << explored.depth << ", " << explored.states << " states, " << seconds << " s\n";
  EXPECT_FALSE(explored.broken) << *explored.broken;
  EXPECT_EQ(explored.depth, depth);
  if (wanted != nullptr) return;
  EXPECT_EQ(explored.states, is_long ? row.long_states : row.states);
}

std::string name_of_row(const testing::TestParamInfo<Expected>& row) {
  std::string name = row.param.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(SmallPlant, Exploration, testing::ValuesIn(expected), name_of_row);

/// Checks whose work another check does as well in the small plant, so that the exploration cannot
/// miss them alone; checks_test.cc tries each by itself.
const std::set<std::string_view> never_alone = {
    "s4_order",      // the small plant traps no air
    "s9_temporary",  // what is on was not seen off either
};

/// Where a mutant of each rule is looked for. Depth 0: to the end, where a stretch of the story is
/// told in every order with everything left out in every way, so that there are few states.
struct Place {
  Rule rule;
  const char* scenario;
  int depth;
};
constexpr Place places[] = {
    {Rule::S1, "opening", 3},   {Rule::S1, "shut down", 0},    {Rule::S1, "full", 0},
    {Rule::S2, "entering", 3},  {Rule::S2, "full", 0},         {Rule::S3, "inside", 3},
    {Rule::S4, "filling", 3},   {Rule::S4, "bores", 3},        {Rule::S5, "raising", 3},
    {Rule::S5, "gear", 2},      {Rule::S5, "making ready", 0}, {Rule::S6, "walking", 3},
    {Rule::S6, "holding", 0},   {Rule::S7, "opening", 3},      {Rule::S7, "full", 0},
    {Rule::S8, "opening", 3},   {Rule::S8, "walking", 3},      {Rule::S9, "handing back", 2},
    {Rule::S9, "leaks", 3},     {Rule::S9, "making good", 0},  {Rule::S10, "opening", 3},
    {Rule::S10, "entering", 3}, {Rule::S10, "inside", 3},      {Rule::S10, "raising", 3},
    {Rule::S10, "gear", 3},     {Rule::S11, "alarms", 3},      {Rule::S11, "inside", 3},
    {Rule::S11, "leaks", 2},
};

// One check of each rule, or with STEAMWORTHY_LONG=1 every check: all of them take minutes under
// the sanitizers.
TEST(Mutants, EveryCheckSwitchedOffIsMissed) {
  const bool is_long = std::getenv("STEAMWORTHY_LONG") != nullptr;
  std::set<Rule> missed;
  for (const CheckRow& one : checks()) {
    if (!is_long && missed.count(one.rule) != 0) continue;
    Terms broken = small_terms();
    broken.broken_for_tests = one.check;
    std::optional<std::string> found;
    for (const Place& place : places) {
      if (place.rule != one.rule || found) continue;
      const Scenario& scenario = named(place.scenario);
      const int deepest = place.depth == 0 ? static_cast<int>(scenario.moves.size()) : place.depth;
      found = explore(scenario, broken, deepest).broken;
    }
    if (found) {
      std::cout << one.token << ": " << *found << "\n";
      missed.insert(one.rule);
    }
    EXPECT_EQ(found.has_value(), never_alone.count(one.token) == 0) << one.token;
  }
  for (const Place& place : places) EXPECT_EQ(missed.count(place.rule), 1u) << place.scenario;
}

}  // namespace
}  // namespace steamworthy::closing
