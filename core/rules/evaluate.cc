#include "rules/evaluate.h"

#include "rules/demands.h"
#include "rules/input_names.h"
#include "rules/rounding.h"

namespace steamworthy::rules {
namespace {

using units::GaugePressure;
using working::Figure;
using working::Message;
using working::Origin;
using working::Working;

Message not_stated() { return {"rules.not_stated", {}}; }

units::Measure measure_of(GaugePressure p) { return units::measure(p); }

GaugePressure value_of(const Figure& figure) { return GaugePressure::from_si(figure.value->si); }

class Evaluator {
 public:
  Evaluator(const Rule& rule, const Circumstances& circumstances)
      : rule_(rule), given_(circumstances) {}

  Evaluation run() {
    out_.rule = rule_.id;
    out_.title = rule_.title;
    out_.purpose = rule_.purpose;
    out_.sense = rule_.pressure.sense;
    out_.source = rule_.source;
    bounds();
    const std::optional<GaugePressure> target = rule_.is_test() ? test_pressure() : no_test();
    ceiling(target);
    if (target) guard(*target);
    settle();
    examination();
    put_other_demands(rule_, given_, target, out_);
    remark_source();
    return std::move(out_);
  }

 private:
  Figure bound(const Formula& formula, const std::string& key) {
    FormulaResult result = evaluate_formula(formula, given_, key, rule_.id, rule_.source.key);
    for (Message& message : result.missing) add_once(out_.missing, std::move(message));
    return std::move(result.figure);
  }

  void bounds() {
    out_.least = working::unknown("rules.least_pressure", rule_.id, not_stated());
    out_.most = working::unknown("rules.most_pressure", rule_.id, not_stated());
    switch (rule_.pressure.sense) {
      case Sense::Exactly:
        out_.least = bound(rule_.pressure.value, "rules.least_pressure");
        out_.most = bound(rule_.pressure.value, "rules.most_pressure");
        break;
      case Sense::AtLeast:
        out_.least = bound(rule_.pressure.value, "rules.least_pressure");
        break;
      case Sense::AtMost:
        out_.most = bound(rule_.pressure.value, "rules.most_pressure");
        break;
      case Sense::Between:
        out_.least = bound(rule_.pressure.above, "rules.least_pressure");
        out_.least_must_be_passed = true;
        out_.most = bound(rule_.pressure.value, "rules.most_pressure");
        break;
      case Sense::NamedByAuthority:
        break;
    }
  }

  std::optional<GaugePressure> no_test() {
    refuse({"rules.not_a_test", {{"purpose", term("purpose", token(rule_.purpose))}}});
    out_.test_pressure = working::unknown("rules.test_pressure", rule_.id, out_.stops.front());
    return std::nullopt;
  }

  /// The pressure that the rule, or the user within the rule, goes to.
  std::optional<GaugePressure> test_pressure() {
    out_.test_pressure = working::unknown("rules.test_pressure", rule_.id, not_stated());
    if (!out_.missing.empty()) {
      out_.test_pressure.cannot_tell = out_.missing.front();
      return std::nullopt;
    }
    const Sense sense = rule_.pressure.sense;
    if (sense == Sense::Between && !below(value_of(out_.least), value_of(out_.most))) {
      refuse({"rules.empty_interval", {{"least", *out_.least.value}, {"most", *out_.most.value}}});
      return std::nullopt;
    }
    if (given_.picked) {
      judge_pick(*given_.picked);
      Working working;
      working.formula = "p = p_picked";
      working.method = "rules";
      working.sources = {rule_.source.key};
      working.inputs = {
          {"p_picked", "input.picked_pressure", measure_of(*given_.picked), Origin::Stated, ""}};
      working.remarks = {within()};
      put_target(*given_.picked, std::move(working));
      return given_.picked;
    }
    if (sense == Sense::Exactly || sense == Sense::AtLeast) {
      put_target(value_of(out_.least), out_.least.working);
      return value_of(out_.least);
    }
    out_.test_pressure.cannot_tell = within();
    return std::nullopt;
  }

  /// Between what the rule lets the user pick.
  Message within() const {
    if (rule_.pressure.sense == Sense::NamedByAuthority) {
      return {"rules.authority_names_pressure", {{"witness", rule_.witness}}};
    }
    Message message{"rules.pick_within", {}};
    if (out_.least.is_known()) message.values.emplace_back("least", *out_.least.value);
    if (out_.most.is_known()) message.values.emplace_back("most", *out_.most.value);
    return message;
  }

  void judge_pick(GaugePressure picked) {
    const units::Measure found = measure_of(picked);
    if (picked <= GaugePressure{}) {
      refuse({"rules.picked_not_positive", {{"picked", found}}});
      return;
    }
    if (rule_.pressure.sense == Sense::NamedByAuthority && !says_something(given_.authority)) {
      refuse({"rules.authority_names_pressure", {{"witness", rule_.witness}}});
    }
    if (rule_.pressure.sense == Sense::Exactly) {
      if (!same(picked, value_of(out_.least))) {
        refuse({"rules.picked_is_not_the_rules",
                {{"picked", found}, {"demanded", *out_.least.value}}});
      }
      return;
    }
    if (out_.least.is_known() &&
        (below(picked, value_of(out_.least)) ||
         (out_.least_must_be_passed && same(picked, value_of(out_.least))))) {
      refuse({"rules.picked_below", {{"picked", found}, {"least", *out_.least.value}}});
    }
    if (out_.most.is_known() && above(picked, value_of(out_.most))) {
      refuse({"rules.picked_above", {{"picked", found}, {"most", *out_.most.value}}});
    }
  }

  void put_target(GaugePressure target, Working working) {
    out_.test_pressure =
        working::known("rules.test_pressure", rule_.id, measure_of(target), std::move(working));
  }

  /// Nothing above the working pressure without a rule that was seen and a named person.
  void guard(GaugePressure target) {
    if (target <= GaugePressure{} && out_.stops.empty()) {
      refuse({"rules.target_not_positive", {{"pressure", measure_of(target)}}});
    }
    if (!given_.working_pressure) {
      refuse({"rules.working_pressure_not_told", {}});
    } else if (above(target, *given_.working_pressure)) {
      const units::Measure at = measure_of(target);
      const units::Measure working = measure_of(*given_.working_pressure);
      if (rule_.source.seen == Seen::FromMemory) {
        refuse({"rules.from_memory", {{"pressure", at}, {"working_pressure", working}}});
      }
      if (!says_something(given_.authority)) {
        refuse({"rules.authority_not_named",
                {{"pressure", at}, {"working_pressure", working}, {"witness", rule_.witness}}});
      }
    }
    if (given_.lowest_safety_valve && !below(target, *given_.lowest_safety_valve)) {
      const std::vector<std::pair<std::string, working::Value>> values{
          {"pressure", measure_of(target)},
          {"lowest_safety_valve", measure_of(*given_.lowest_safety_valve)}};
      if (given_.safety_valves_gagged == false) refuse({"rules.valves_not_gagged", values});
      if (!given_.safety_valves_gagged) out_.remarks.push_back({"rules.gags_needed", values});
    }
    if (out_.ceiling.is_known() && above(target, value_of(out_.ceiling))) {
      refuse({"rules.above_ceiling",
              {{"pressure", measure_of(target)}, {"ceiling", *out_.ceiling.value}}});
    }
  }

  /// A pressure that may not be preset is not shown as the one to go to.
  void settle() {
    if (out_.stops.empty() || !out_.test_pressure.is_known()) return;
    out_.test_pressure.value.reset();
    out_.test_pressure.cannot_tell = out_.stops.front();
  }

  void ceiling(std::optional<GaugePressure> target) {
    out_.ceiling = working::unknown("rules.ceiling", rule_.id, {"rules.ceiling_not_stated", {}});
    if (!rule_.is_test()) return;
    if (rule_.purpose == Purpose::Strength) {
      overshoot(target);
    } else {
      upper_bound();
    }
    lower_ceiling();
  }

  void overshoot(std::optional<GaugePressure> target) {
    if (!rule_.ceiling) return;
    Working working;
    working.method = "rules";
    working.sources = {rule_.source.key};
    working.inputs = {{"k_over", "input.overshoot", units::measure_fraction(rule_.ceiling->factor),
                       Origin::Rule, rule_.source.key}};
    std::optional<GaugePressure> base = target;
    if (rule_.ceiling->of_original_test_pressure) {
      working.formula = "p_never = k_over p_0";
      base = given_.original_test_pressure;
      if (!base) {
        add_once(out_.missing, missing_input(token(Reference::OriginalTestPressure)));
        out_.ceiling.cannot_tell = missing_input(token(Reference::OriginalTestPressure));
        out_.ceiling.working = std::move(working);
        return;
      }
      working.inputs.push_back(
          {"p_0", "input.original_test_pressure", measure_of(*base), given_.pressures_from, ""});
    } else {
      working.formula = "p_never = k_over p";
      if (!base) {
        out_.ceiling.cannot_tell = out_.test_pressure.cannot_tell;
        out_.ceiling.working = std::move(working);
        return;
      }
      working.inputs.push_back(
          {"p", "rules.test_pressure", measure_of(*base), Origin::Computed, ""});
    }
    if (given_.safety_valves_gagged != true) working.remarks = {{"rules.ceiling_only_gagged", {}}};
    const GaugePressure never = GaugePressure{} + rule_.ceiling->factor * base->from_origin();
    out_.ceiling = working::known("rules.ceiling", rule_.id, measure_of(never), std::move(working));
  }

  /// Of a tightness test the rule's own bound is the ceiling: there is no overshoot.
  void upper_bound() {
    if (!out_.most.is_known()) {
      if (!out_.most.cannot_tell.empty() && out_.most.cannot_tell.key != "rules.not_stated") {
        out_.ceiling.cannot_tell = out_.most.cannot_tell;
      }
      return;
    }
    out_.ceiling = out_.most;
    out_.ceiling.key = "rules.ceiling";
    out_.ceiling.working.remarks.push_back({"rules.ceiling_is_the_rule", {}});
  }

  void lower_to(GaugePressure limit, const std::string& symbol, const std::string& name,
                Origin origin) {
    if (out_.ceiling.is_known() && value_of(out_.ceiling) <= limit) return;
    Working working;
    working.method = "rules";
    working.formula = "p_never = " + symbol;
    working.inputs = {{symbol, name, measure_of(limit), origin, ""}};
    if (out_.ceiling.is_known()) {
      working.formula = "p_never = min(p_rule, " + symbol + ")";
      working.sources = {rule_.source.key};
      working.inputs.push_back(
          {"p_rule", "rules.ceiling", *out_.ceiling.value, Origin::Computed, ""});
    }
    out_.ceiling = working::known("rules.ceiling", rule_.id, measure_of(limit), std::move(working));
  }

  /// Ungagged valves and the user's own limit come before the rule's.
  void lower_ceiling() {
    if (given_.safety_valves_gagged == false && given_.lowest_safety_valve) {
      lower_to(*given_.lowest_safety_valve, "p_low", "input.lowest_safety_valve",
               given_.pressures_from);
      out_.ceiling.working.remarks.push_back({"rules.ungagged_at_valve_height", {}});
    }
    if (given_.stated_ceiling) {
      lower_to(*given_.stated_ceiling, "p_stated", "input.stated_ceiling", Origin::Stated);
    }
  }

  void examination() {
    out_.examination_pressure =
        working::unknown("rules.examination_pressure", rule_.id, not_stated());
    if (!rule_.examination) return;
    Formula formula;
    formula.branches = {{std::nullopt,
                         {{rule_.examination->factor, rule_.examination->of, false, {}, {}}},
                         std::nullopt,
                         std::nullopt}};
    out_.examination_pressure = bound(formula, "rules.examination_pressure");
  }

  void remark_source() {
    const working::Value source = rule_.source.key;
    if (rule_.source.seen == Seen::SecondHand) {
      out_.remarks.push_back({"rules.second_hand", {{"source", source}}});
    }
    if (rule_.source.seen == Seen::FromMemory) {
      out_.remarks.push_back({"rules.check_your_copy", {{"source", source}}});
    }
    if (rule_.source.kind == SourceKind::HistoricLaw) {
      out_.remarks.push_back({"rules.historic_law", {{"source", source}}});
    }
  }

  void refuse(Message message) { out_.stops.push_back(std::move(message)); }

  const Rule& rule_;
  const Circumstances& given_;
  Evaluation out_;
};

}  // namespace

Evaluation evaluate(const Rule& rule, const Circumstances& circumstances) {
  return Evaluator(rule, circumstances).run();
}

}  // namespace steamworthy::rules
