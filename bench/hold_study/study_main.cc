// Runs the study of the hold analysis and prints its tables as Markdown; tools/hold_study.sh puts
// them into docs/methods/hold.md.
//
//   hold_study [--seed N] [--cases N] [--harsh N] [--not-bled N] [--first N] [--worst N] [--csv
//   FILE]
//
// --worst adds the worst cases on standard error; --csv keeps one line a case of the ordinary set.
#include <fmt/format.h>

#include <cstdio>
#include <cstring>
#include <fstream>
#include <map>
#include <string>

#include "hold_study/tables.h"

namespace {

using namespace steamworthy::hold_study;

int usage(const std::string& what) {
  fmt::print(stderr,
             "{}\nusage: hold_study [--seed N] [--cases N] [--harsh N] [--not-bled N] [--first N] "
             "[--worst N] [--csv FILE]\n",
             what);
  return 2;
}

void show_worst(const char* name, const std::vector<Outcome>& outcomes, std::size_t count) {
  if (count > 0 && !outcomes.empty()) {
    fmt::print(stderr, "== worst of the {} set\n{}", name, worst(outcomes, count));
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::map<std::string, std::uint64_t> numbers{{"--seed", study_seed}, {"--cases", 500},
                                               {"--harsh", 250},       {"--not-bled", 50},
                                               {"--first", 1},         {"--worst", 0}};
  std::string csv;
  for (int i = 1; i < argc; i += 2) {
    if (i + 1 == argc) return usage(fmt::format("{} needs a value", argv[i]));
    const auto number = numbers.find(argv[i]);
    if (std::strcmp(argv[i], "--csv") == 0) {
      csv = argv[i + 1];
    } else if (number == numbers.end()) {
      return usage(fmt::format("unknown option {}", argv[i]));
    } else {
      char* end = nullptr;
      number->second = std::strtoull(argv[i + 1], &end, 10);
      if (*end != '\0') return usage(fmt::format("{} is not a number", argv[i + 1]));
    }
  }
  Study study;
  study.seed = numbers["--seed"];
  const std::uint64_t first = numbers["--first"];
  Spread harsh;
  harsh.thermal_disorder = 2.5;
  Spread not_bled;
  not_bled.pump_side_open = false;
  study.ordinary = run_cases(study.seed, first, numbers["--cases"], {});
  study.harsh = run_cases(study.seed, first + 10000, numbers["--harsh"], harsh);
  study.not_bled = run_cases(study.seed, first + 20000, numbers["--not-bled"], not_bled);
  fmt::print("{}", tables(study));
  show_worst("ordinary", study.ordinary, numbers["--worst"]);
  show_worst("harsh", study.harsh, numbers["--worst"]);
  if (!csv.empty()) {
    std::ofstream file(csv);
    file << as_csv(study.ordinary);
    file.close();
    if (!file) {
      fmt::print(stderr, "cannot write {}\n", csv);
      return 1;
    }
  }
  return 0;
}
