// Explores the small plant of core/closing deeper than ./check does, and holds the number of states
// to what it was: a change of the rules or of the moves changes it.
//
//   exploration [--depth N] [SCENARIO ...]
//
// With --depth counts are printed and not compared. Exit
// code 1: a rule was found broken, or a count differs.
#include <fmt/format.h>

#include <array>
#include <atomic>
#include <chrono>
#include <cstdlib>
#include <cstring>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "closing/explore_test.h"

namespace {

using namespace steamworthy::closing;

struct Expected {
  const char* name;
  int depth;
  std::size_t states;
};

// clang-format off
constexpr std::array<Expected, 16> expected = {{
    {"opening", 8, 897306},
    {"entering", 8, 1282548},
    {"inside", 8, 572938},
    {"filling", 8, 1580547},
    {"bores", 8, 766},
    {"raising", 8, 219944},
    {"gear", 8, 300029},
    {"walking", 8, 4331098},
    {"handing back", 8, 562087},
    {"leaks", 8, 371487},
    {"alarms", 8, 10034},
    {"shut down", 8, 256},
    {"full", 8, 256},
    {"making ready", 8, 26846},
    {"holding", 10, 856},
    {"making good", 11, 7560},
}};
// clang-format on

std::size_t states_of(const Scenario& scenario) {
  for (const Expected& row : expected) {
    if (scenario.name == row.name) return row.states;
  }
  return 0;
}

int depth_of(const Scenario& scenario, int wanted) {
  for (const Expected& row : expected) {
    if (wanted == 0 && scenario.name == row.name) return row.depth;
  }
  return wanted;
}

struct Work {
  std::vector<const Scenario*> scenarios;
  int depth = 0;  ///< 0: each to its own
  std::atomic<std::size_t> next{0};
  std::atomic<bool> failed{false};
  std::mutex printing;
};

void explore_all(Work& work) {
  for (std::size_t i = work.next++; i < work.scenarios.size(); i = work.next++) {
    const Scenario& scenario = *work.scenarios[i];
    const int depth = depth_of(scenario, work.depth);
    const auto start = std::chrono::steady_clock::now();
    const Explored explored = explore(scenario, small_terms(), depth);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    const std::lock_guard<std::mutex> lock(work.printing);
    fmt::print("{:<14} {:3} moves  depth {:2}  {:9} states  {:8.1f} s\n", scenario.name,
               scenario.moves.size(), explored.depth, explored.states, took.count());
    std::fflush(stdout);
    if (explored.broken) {
      fmt::print("  broken: {}\n", *explored.broken);
      work.failed = true;
    } else if (work.depth == 0 && explored.states != states_of(scenario)) {
      fmt::print("  {} states were expected\n", states_of(scenario));
      work.failed = true;
    }
  }
}

}  // namespace

int main(int argc, char** argv) {
  Work work;
  std::vector<std::string> names;
  for (int i = 1; i < argc; ++i) {
    if (std::strcmp(argv[i], "--depth") == 0 && i + 1 < argc) {
      work.depth = std::atoi(argv[++i]);
    } else {
      names.emplace_back(argv[i]);
    }
  }
  for (const Scenario& scenario : scenarios()) {
    bool wanted = names.empty();
    for (const std::string& name : names) wanted = wanted || name == scenario.name;
    if (wanted) work.scenarios.push_back(&scenario);
  }
  if (work.scenarios.empty() || (work.depth == 0 && scenarios().size() != expected.size())) {
    fmt::print(stderr, "usage: exploration [--depth N] [SCENARIO ...]\n");
    return 2;
  }
  std::vector<std::thread> threads;
  for (int i = 0; i < 2; ++i) threads.emplace_back([&] { explore_all(work); });
  for (std::thread& thread : threads) thread.join();
  return work.failed ? 1 : 0;
}
