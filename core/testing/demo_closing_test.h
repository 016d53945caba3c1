// For tests: the facts of the demo closing and what it is judged by, from the example files.
#pragma once

#include <string>
#include <vector>

#include "closing/terms.h"
#include "facts/fact.h"
#include "testing/examples_test.h"
#include "units/makers.h"
#include "wire/fact_line.h"

namespace steamworthy::testing {

inline const std::vector<facts::Fact>& demo_facts() {
  static const std::vector<facts::Fact> facts =
      wire::read_fact_lines(source_file("examples/demo-closing.jsonl"), "demo-closing.jsonl").facts;
  return facts;
}

/// The boiler as described, the people of the plant, the limits of the story's site.
inline closing::Terms demo_terms() {
  closing::Site site;
  site.air_minutes = 30;
  site.count_minutes = 20;
  site.open_below = units::celsius(45);
  closing::Terms terms(example_boiler("watertube"), site);
  const auto plant =
      wire::read_fact_lines(source_file("examples/demo-plant.jsonl"), "demo-plant.jsonl");
  for (const facts::Fact& fact : plant.facts) {
    const auto* person = std::get_if<facts::PersonEnrolled>(&fact.body);
    if (person == nullptr) continue;
    for (const std::string& role : person->roles)
      terms.let(person->who, *facts::value_of<facts::RoleName>(role));
  }
  return terms;
}

}  // namespace steamworthy::testing
