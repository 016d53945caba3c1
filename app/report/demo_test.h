// For tests of this room: the demo closing, as far as wanted, and papers filled from it.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "report/filled.h"
#include "testing/demo_closing_test.h"

namespace steamworthy::report {

using testing::demo_facts;
using testing::demo_terms;

/// The closing up to the first fact of that kind, itself included; all of it for an empty kind.
struct DemoClosing {
  explicit DemoClosing(const std::string& until = "") : fold(demo_terms()) {
    for (const facts::Fact& fact : demo_facts()) {
      fold.add(fact);
      if (facts::kind_of(fact.body).token == until) break;
    }
    filled = std::make_unique<Filled>(fold, "B1-2026-11",
                                      std::vector<FeedHead>{{"node", 900, std::string(64, 'a')},
                                                            {"tablet", 9, std::string(64, 'b')}});
  }
  closing::Fold fold;
  std::unique_ptr<Filled> filled;
};

}  // namespace steamworthy::report
