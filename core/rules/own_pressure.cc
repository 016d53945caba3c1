#include "rules/own_pressure.h"

#include "rules/choose.h"
#include "rules/input_names.h"
#include "rules/rounding.h"
#include "units/measure.h"

namespace steamworthy::rules {
namespace {

using units::GaugePressure;
using units::measure;
using working::Message;
using working::Origin;

GaugePressure value_of(const working::Figure& figure) {
  return GaugePressure::from_si(figure.value->si);
}

Message compared(const std::string& key, const Evaluation& rule, GaugePressure own,
                 const working::Figure& bound) {
  return {key, {{"rule", rule.rule}, {"pressure", measure(own)}, {"rule_pressure", *bound.value}}};
}

/// How the own pressure stands to one rule's bounds, in one message.
Message stands_to(const Evaluation& rule, GaugePressure own) {
  if (rule.most.is_known() && above(own, value_of(rule.most))) {
    return compared("rules.own_above_rule", rule, own, rule.most);
  }
  if (rule.least.is_known() && (below(own, value_of(rule.least)) ||
                                (rule.least_must_be_passed && same(own, value_of(rule.least))))) {
    return compared("rules.own_below_rule", rule, own, rule.least);
  }
  const bool compares = rule.least.is_known() || rule.most.is_known();
  return {compares ? "rules.own_within_rule" : "rules.own_rule_names_none", {{"rule", rule.rule}}};
}

/// Whether this rule can carry a pressure above the working pressure.
bool allows(const Evaluation& rule, GaugePressure own) {
  if (rule.source.seen == Seen::FromMemory) return false;
  if (rule.most.is_known()) return !above(own, value_of(rule.most));
  return rule.sense == Sense::NamedByAuthority ||
         (rule.sense == Sense::AtLeast && rule.least.is_known());
}

}  // namespace

OwnVerdict judge_own_pressure(const OwnPressure& own, const std::vector<Rule>& rules,
                              const Circumstances& circumstances) {
  OwnVerdict verdict;
  const GaugePressure pressure = own.pressure;
  const auto refuse = [&](Message message) { verdict.refusals.push_back(std::move(message)); };

  Circumstances asked = circumstances;
  asked.picked.reset();  // what the rules say by themselves
  bool one_applies = false;
  bool one_allows = false;
  for (const Candidate& candidate : choose(rules, asked).candidates) {
    Evaluation says = evaluate(rules[candidate.rule], asked);
    verdict.remarks.push_back(stands_to(says, pressure));
    if (candidate.applies == Applies::Yes) {
      one_applies = true;
      one_allows = one_allows || allows(says, pressure);
    } else {
      verdict.remarks.push_back({"rules.own_rule_not_certain", {{"rule", says.rule}}});
    }
    verdict.rules_say.push_back(std::move(says));
  }

  if (!says_something(own.reason)) refuse({"rules.own_reason_missing", {}});
  if (pressure <= GaugePressure{}) {
    refuse({"rules.own_not_positive", {{"pressure", measure(pressure)}}});
  }
  if (!circumstances.working_pressure) {
    refuse({"rules.working_pressure_not_told", {}});
  } else if (above(pressure, *circumstances.working_pressure)) {
    const std::vector<std::pair<std::string, working::Value>> values{
        {"pressure", measure(pressure)},
        {"working_pressure", measure(*circumstances.working_pressure)}};
    if (!one_applies) refuse({"rules.own_without_rule", values});
    if (one_applies && !one_allows) refuse({"rules.own_above_every_rule", values});
    if (!says_something(circumstances.authority)) refuse({"rules.authority_not_named", values});
  }
  if (circumstances.lowest_safety_valve && !below(pressure, *circumstances.lowest_safety_valve)) {
    const std::vector<std::pair<std::string, working::Value>> values{
        {"pressure", measure(pressure)},
        {"lowest_safety_valve", measure(*circumstances.lowest_safety_valve)}};
    if (circumstances.safety_valves_gagged == false) refuse({"rules.valves_not_gagged", values});
    if (!circumstances.safety_valves_gagged) {
      verdict.remarks.push_back({"rules.gags_needed", values});
    }
  }
  const GaugePressure never = circumstances.stated_ceiling.value_or(pressure);
  if (below(never, pressure)) {
    refuse({"rules.above_ceiling", {{"pressure", measure(pressure)}, {"ceiling", measure(never)}}});
  }

  working::Working working;
  working.formula = "p = p_own";
  working.method = "rules";
  working.inputs = {{"p_own", "input.own_pressure", measure(pressure), Origin::Stated, ""}};
  if (!verdict.refusals.empty()) {
    verdict.pressure =
        working::unknown("rules.own_pressure", "", verdict.refusals.front(), working);
    verdict.ceiling = working::unknown("rules.ceiling", "", verdict.refusals.front());
    return verdict;
  }
  working.remarks = {{"rules.own_reason", {{"reason", own.reason}}}};
  verdict.accepted = true;
  verdict.pressure =
      working::known("rules.own_pressure", "", measure(pressure), std::move(working));
  working::Working of_ceiling;
  of_ceiling.formula = circumstances.stated_ceiling ? "p_never = p_stated" : "p_never = p_own";
  of_ceiling.method = "rules";
  of_ceiling.inputs = {
      {circumstances.stated_ceiling ? "p_stated" : "p_own",
       circumstances.stated_ceiling ? "input.stated_ceiling" : "input.own_pressure", measure(never),
       Origin::Stated, ""}};
  verdict.ceiling = working::known("rules.ceiling", "", measure(never), std::move(of_ceiling));
  return verdict;
}

}  // namespace steamworthy::rules
