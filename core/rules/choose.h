// Which rules apply: candidates with what they hang on, and the others with why not.
//
// Nothing is preferred silently. Where two rules apply, both are candidates;
// where a rule hangs on something nobody has said (is there a lap seam?), it
// stays a candidate and says so.
#pragma once

#include <cstddef>
#include <vector>

#include "rules/circumstances.h"
#include "rules/rule.h"
#include "working/message.h"

namespace steamworthy::rules {

enum class Applies { Yes, Depends, No };

struct Candidate {
  std::size_t rule = 0;  ///< index into the rules that were asked
  Applies applies = Applies::Yes;
  /// What must be told before it is certain ("rules.depends_on"), or why it does
  /// not apply ("rules.other_jurisdiction", "rules.other_work", ...).
  std::vector<working::Message> reasons;
};

struct Choice {
  /// Those that apply, then those that depend; in each, own words seen before
  /// second-hand ones, then by id. The order is for reading, it is no preference.
  std::vector<Candidate> candidates;
  std::vector<Candidate> others;
  /// "rules.none_applies", "rules.more_than_one", "rules.jurisdiction_not_told", ...
  std::vector<working::Message> remarks;
};

/// Whether one rule applies, and why not or on what it hangs.
Candidate applies(const Rule& rule, const Circumstances& circumstances);

/// Every rule put to the circumstances (jurisdictions, subject, boiler kind, work, traits).
Choice choose(const std::vector<Rule>& rules, const Circumstances& circumstances);

}  // namespace steamworthy::rules
