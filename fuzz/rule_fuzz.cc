// Any bytes as a rule file: it is read or refused with faults, and a rule that
// is read makes sense, comes back as it was written, and can be evaluated.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "base/error.h"
#include "rules/check.h"
#include "rules/choose.h"
#include "rules/evaluate.h"
#include "rules/judge.h"
#include "rules/own_pressure.h"
#include "rules/rounding.h"
#include "units/makers.h"
#include "wire/rule.h"

namespace {

using namespace steamworthy;

void demand(bool condition) {
  if (!condition) std::abort();
}

rules::Circumstances everything() {
  rules::Circumstances given;
  given.jurisdictions = {"site"};
  given.boiler = rules::BoilerKind::Watertube;
  given.work = rules::Work::TubesRenewed;
  given.working_pressure = units::bars_gauge(40.0);
  given.operating_pressure = units::bars_gauge(36.0);
  given.lowest_safety_valve = units::bars_gauge(39.0);
  given.highest_safety_valve = units::bars_gauge(40.0);
  given.design_pressure = units::bars_gauge(42.0);
  given.service_loading = units::bars_gauge(40.5);
  given.boiler_test_pressure = units::bars_gauge(60.0);
  given.retest_pressure = units::bars_gauge(50.0);
  given.original_test_pressure = units::bars_gauge(63.0);
  given.stress_ratio = 1.1;
  given.safety_valves_gagged = true;
  given.authority = "A. Name";
  return given;
}

void use(const rules::Rule& rule) {
  const rules::Circumstances given = everything();
  const rules::Evaluation result = rules::evaluate(rule, given);
  if (result.may_be_preset()) {
    const double pressure = result.test_pressure.value->si;
    demand(pressure > 0.0);
    demand(!result.least.is_known() || pressure >= result.least.value->si * (1.0 - rules::same_to));
    demand(!result.most.is_known() || pressure <= result.most.value->si * (1.0 + rules::same_to));
    demand(!result.ceiling.is_known() ||
           pressure <= result.ceiling.value->si * (1.0 + rules::same_to));
    demand(rule.source.seen != rules::Seen::FromMemory ||
           pressure <= given.working_pressure->si() * (1.0 + rules::same_to));
  }
  demand(!rules::evaluate(rule, {}).may_be_preset());
  const rules::Choice choice = rules::choose({rule}, given);
  demand(choice.candidates.size() + choice.others.size() == 1);
  rules::judge_own_pressure({units::bars_gauge(45.0), "a reason"}, {rule}, given);
  for (const auto stage : {rules::Stage::Filling, rules::Stage::Examination}) {
    rules::judge_temperature(rule, std::nullopt, stage, rules::Medium::Water, units::celsius(20.0));
  }
  rules::judge_drop(rule, units::bars_gauge(50.0), units::bars_gauge(49.0), units::minutes(15.0));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  rules::Rule rule;
  try {
    rule = wire::read_rule({"fuzz.toml", text});
  } catch (const BadInput& error) {
    demand(!error.problems().empty());
    for (const Problem& problem : error.problems()) demand(!sentence(problem).empty());
    return 0;
  }
  demand(rules::check(rule).empty());
  demand(wire::read_rule({"again.toml", wire::write_rule(rule)}) == rule);
  use(rule);
  return 0;
}
