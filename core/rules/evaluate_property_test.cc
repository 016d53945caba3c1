// evaluate_property_test.cc — what must hold of every rule and every boiler.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "rules/check.h"
#include "rules/evaluate.h"
#include "rules/own_pressure.h"
#include "rules/rounding.h"
#include "rules/sample_rules_test.h"

namespace steamworthy::rules {
namespace {

using units::bars_gauge;

double some(int from_hundredths, int to_hundredths) {
  return *rc::gen::inRange(from_hundredths, to_hundredths + 1) / 100.0;
}

Stated<units::GaugePressure> stated_bar(double bar) { return {bars_gauge(bar), ""}; }

Product some_product() {
  Product product;
  product.factor = some(10, 300);
  product.of = *rc::gen::element(Reference::WorkingPressure, Reference::HighestSafetyValve,
                                 Reference::LesserOfWorkingAndHighestSafetyValve,
                                 Reference::DesignPressure, Reference::ServiceLoading);
  product.times_stress_ratio = *rc::gen::arbitrary<bool>();
  if (product.times_stress_ratio && *rc::gen::arbitrary<bool>()) product.least_stress_ratio = 1.0;
  if (*rc::gen::arbitrary<bool>()) {
    product.plus = Stated<units::PressureDifference>{units::bars(some(0, 500)), ""};
  }
  return product;
}

Rule some_rule() {
  Rule rule = samples::strength();
  rule.purpose = *rc::gen::element(Purpose::Strength, Purpose::Tightness, Purpose::Working);
  rule.pressure.sense = *rc::gen::element(Sense::Exactly, Sense::AtLeast, Sense::AtMost);
  Branch branch;
  branch.greatest_of.push_back(some_product());
  if (*rc::gen::arbitrary<bool>()) branch.greatest_of.push_back(some_product());
  if (*rc::gen::arbitrary<bool>()) branch.least = stated_bar(some(1, 2000));
  if (*rc::gen::arbitrary<bool>()) branch.cap = stated_bar(some(2000, 9000));
  rule.pressure.value.branches = {branch};
  rule.ceiling.reset();
  if (rule.purpose == Purpose::Strength && *rc::gen::arbitrary<bool>()) {
    rule.ceiling = Ceiling{some(100, 110), *rc::gen::arbitrary<bool>()};
  }
  return rule;
}

Circumstances some_boiler() {
  Circumstances given = samples::boiler();
  const double working = some(10, 10000);
  given.working_pressure = bars_gauge(working);
  given.highest_safety_valve = bars_gauge(working * some(80, 103));
  given.lowest_safety_valve = bars_gauge(given.highest_safety_valve->si() / 1e5 * some(90, 100));
  given.design_pressure = bars_gauge(working * some(100, 120));
  given.service_loading = bars_gauge(working * some(100, 105));
  given.original_test_pressure = bars_gauge(working * some(120, 200));
  given.stress_ratio = some(80, 150);
  given.safety_valves_gagged = *rc::gen::element(std::optional<bool>(), std::optional<bool>(true),
                                                 std::optional<bool>(false));
  if (*rc::gen::arbitrary<bool>()) given.authority.clear();
  if (*rc::gen::arbitrary<bool>()) given.picked = bars_gauge(working * some(50, 200));
  if (*rc::gen::arbitrary<bool>()) given.stated_ceiling = bars_gauge(working * some(50, 250));
  return given;
}

RC_GTEST_PROP(EvaluateProperty, APresetKeepsEveryBoundOfItsRule, ()) {
  const Rule rule = some_rule();
  RC_ASSERT(check(rule).empty());
  const Circumstances given = some_boiler();
  const Evaluation result = evaluate(rule, given);
  RC_CLASSIFY(result.may_be_preset());
  if (!result.may_be_preset()) {
    RC_ASSERT(!result.test_pressure.is_known());
    RC_ASSERT(!result.test_pressure.cannot_tell.empty());
    return;
  }
  const double p = result.test_pressure.value->si;
  RC_ASSERT(p > 0.0);
  if (result.least.is_known()) RC_ASSERT(p >= result.least.value->si * (1.0 - same_to));
  if (result.most.is_known()) RC_ASSERT(p <= result.most.value->si * (1.0 + same_to));
  if (result.ceiling.is_known()) RC_ASSERT(p <= result.ceiling.value->si * (1.0 + same_to));
  if (given.stated_ceiling) RC_ASSERT(result.ceiling.value->si <= given.stated_ceiling->si());
  if (p > given.working_pressure->si() * (1.0 + same_to)) RC_ASSERT(!given.authority.empty());
  if (given.safety_valves_gagged == false) RC_ASSERT(p < given.lowest_safety_valve->si());
  // Never below what each product of the formula asks, save for a cap that the rule itself sets.
  const Branch& branch = rule.pressure.value.branches[0];
  if (rule.pressure.sense == Sense::Exactly || rule.pressure.sense == Sense::AtLeast) {
    for (const Product& product : branch.greatest_of) {
      double asked = product.factor * pressure_of(product.of, given)->si();
      if (product.times_stress_ratio) {
        asked *= std::max(*given.stress_ratio, product.least_stress_ratio.value_or(0.0));
      }
      if (product.plus) asked += product.plus->value.si();
      if (branch.cap) asked = std::min(asked, branch.cap->value.si());
      RC_ASSERT(p >= asked * (1.0 - same_to));
    }
    if (branch.least) RC_ASSERT(p >= branch.least->value.si() * (1.0 - same_to));
  }
}

RC_GTEST_PROP(EvaluateProperty, AHigherWorkingPressureNeverAsksForLess, ()) {
  Rule rule = some_rule();
  for (Product& product : rule.pressure.value.branches[0].greatest_of) {
    product.of = Reference::WorkingPressure;
  }
  Circumstances given = some_boiler();
  const Evaluation lower = evaluate(rule, given);
  given.working_pressure = *given.working_pressure + units::bars(some(0, 5000));
  const Evaluation higher = evaluate(rule, given);
  const bool bounds_least = rule.pressure.sense != Sense::AtMost;
  const auto& before = bounds_least ? lower.least : lower.most;
  const auto& after = bounds_least ? higher.least : higher.most;
  RC_ASSERT(before.is_known() && after.is_known());
  RC_ASSERT(after.value->si >= before.value->si);
}

RC_GTEST_PROP(EvaluateProperty, NothingIsKnownOfWhatNobodyTold, ()) {
  const Rule rule = some_rule();
  const Evaluation result = evaluate(rule, Circumstances{});
  RC_ASSERT(!result.missing.empty());
  RC_ASSERT(!result.may_be_preset());
  RC_ASSERT(!result.least.is_known() && !result.most.is_known());
}

RC_GTEST_PROP(OwnPressureProperty, NeverAboveWorkingPressureWithoutRuleAndName, ()) {
  const Circumstances given = some_boiler();
  std::vector<Rule> rules;
  if (*rc::gen::arbitrary<bool>()) rules.push_back(some_rule());
  const OwnPressure own{bars_gauge(given.working_pressure->si() / 1e5 * some(-10, 300)),
                        "a reason"};
  const OwnVerdict verdict = judge_own_pressure(own, rules, given);
  RC_CLASSIFY(verdict.accepted);
  RC_ASSERT(verdict.accepted == verdict.refusals.empty());
  RC_ASSERT(verdict.accepted == verdict.pressure.is_known());
  if (!verdict.accepted) return;
  RC_ASSERT(verdict.ceiling.value->si >= own.pressure.si() * (1.0 - same_to));
  if (above(own.pressure, *given.working_pressure)) {
    RC_ASSERT(!rules.empty() && !given.authority.empty());
    const Evaluation& says = verdict.rules_say.front();
    if (says.most.is_known()) RC_ASSERT(own.pressure.si() <= says.most.value->si * (1.0 + same_to));
  }
}

}  // namespace
}  // namespace steamworthy::rules
