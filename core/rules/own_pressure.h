// The user's own test pressure: allowed with a reason, beside what the rules say.
#pragma once

#include <string>
#include <vector>

#include "rules/circumstances.h"
#include "rules/evaluate.h"
#include "rules/rule.h"

namespace steamworthy::rules {

struct OwnPressure {
  units::GaugePressure pressure;
  std::string reason;  ///< in the user's words; must say something
};

struct OwnVerdict {
  bool accepted = false;
  working::Figure pressure;  ///< "rules.own_pressure"; without a value when refused
  /// Never to be passed: the user's own ceiling, else the own pressure itself.
  working::Figure ceiling;
  std::vector<working::Message> refusals;
  std::vector<working::Message> remarks;  ///< how it stands to each rule
  std::vector<Evaluation> rules_say;      ///< one for each candidate rule, in their order
};

/// Judges a pressure that the user sets instead of a rule's.
///
/// Refused: a reason that says nothing ("rules.own_reason_missing"); a pressure that is not
/// above zero ("rules.own_not_positive"); one above the working pressure without a rule that
/// applies ("rules.own_without_rule"), above what every such rule allows
/// ("rules.own_above_every_rule") or without a named authority ("rules.authority_not_named");
/// and any pressure while the working pressure is not known ("rules.working_pressure_not_told").
/// Below the rule is never refused, and always said ("rules.own_below_rule").
OwnVerdict judge_own_pressure(const OwnPressure& own, const std::vector<Rule>& rules,
                              const Circumstances& circumstances);

}  // namespace steamworthy::rules
