#include "rules/choose.h"

#include <algorithm>

#include "rules/input_names.h"
#include "units/measure.h"

namespace steamworthy::rules {
namespace {

using working::Message;

template <class T>
bool contains(const std::vector<T>& list, const T& value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

/// Three-valued: a case holds, does not, or hangs on what nobody has said.
struct CaseResult {
  Applies holds = Applies::Yes;
  std::vector<Message> depends_on;
  Message conditions{"rules.excluded_by", {}};  ///< what it asks, for saying that it holds
};

Message depends_on(std::string_view token) {
  return {"rules.depends_on", {{"input", term("input", token)}}};
}

CaseResult examine(const Case& wanted, const Circumstances& circumstances) {
  CaseResult result;
  bool refuted = false;
  const auto condition = [&](working::Value value) {
    result.conditions.values.emplace_back(
        "condition_" + std::to_string(result.conditions.values.size() + 1), std::move(value));
  };
  if (!wanted.boilers.empty()) {
    if (!circumstances.boiler) {
      result.depends_on.push_back(depends_on("boiler kind"));
    } else if (!contains(wanted.boilers, *circumstances.boiler)) {
      refuted = true;
    } else {
      condition(term("boiler_kind", token(*circumstances.boiler)));
    }
  }
  if (!wanted.works.empty()) {
    if (!circumstances.work) {
      result.depends_on.push_back(depends_on("work"));
    } else if (!contains(wanted.works, *circumstances.work)) {
      refuted = true;
    } else {
      condition(term("work", token(*circumstances.work)));
    }
  }
  for (const auto& [trait, value] : wanted.traits) {
    const auto known = known_trait(trait, circumstances);
    if (!known) {
      result.depends_on.push_back(depends_on(token(trait)));
    } else if (*known != value) {
      refuted = true;
    } else {
      condition(term(value ? "trait" : "trait_not", token(trait)));
    }
  }
  if (wanted.working_above || wanted.working_not_above) {
    const auto& pressure = circumstances.working_pressure;
    if (!pressure) {
      result.depends_on.push_back(depends_on(token(Reference::WorkingPressure)));
    } else if ((wanted.working_above && *pressure <= wanted.working_above->value) ||
               (wanted.working_not_above && *pressure > wanted.working_not_above->value)) {
      refuted = true;
    } else {
      condition(units::measure(*pressure));
    }
  }
  if (refuted) {
    result.holds = Applies::No;
  } else if (!result.depends_on.empty()) {
    result.holds = Applies::Depends;
  }
  return result;
}

/// What rules a rule out, and what it hangs on; each list empty when nothing does.
struct Reasons {
  std::vector<Message> against;
  std::vector<Message> depends_on;
};

void ask_where_and_what(const Rule& rule, const Circumstances& circumstances, Reasons& reasons) {
  if (circumstances.jurisdictions.empty()) {
    reasons.depends_on.push_back(depends_on("jurisdiction"));
  } else if (!contains(circumstances.jurisdictions, rule.jurisdiction)) {
    reasons.against.push_back({"rules.other_jurisdiction", {{"jurisdiction", rule.jurisdiction}}});
  }
  if (!contains(rule.subjects, circumstances.subject)) {
    reasons.against.push_back(
        {"rules.other_subject", {{"subject", term("subject", token(circumstances.subject))}}});
  }
  if (!rule.is_test()) {
    reasons.against.push_back(
        {"rules.not_a_test", {{"purpose", term("purpose", token(rule.purpose))}}});
  }
}

void ask_boiler_and_work(const Rule& rule, const Circumstances& circumstances, Reasons& reasons) {
  if (!rule.boilers.empty()) {
    if (!circumstances.boiler) {
      reasons.depends_on.push_back(depends_on("boiler kind"));
    } else if (!contains(rule.boilers, *circumstances.boiler)) {
      reasons.against.push_back(
          {"rules.other_boiler",
           {{"boiler_kind", term("boiler_kind", token(*circumstances.boiler))}}});
    }
  }
  if (!rule.works.empty()) {
    if (!circumstances.work) {
      reasons.depends_on.push_back(depends_on("work"));
    } else if (!contains(rule.works, *circumstances.work)) {
      reasons.against.push_back(
          {"rules.other_work", {{"work", term("work", token(*circumstances.work))}}});
    }
  }
}

void ask_cases(const Rule& rule, const Circumstances& circumstances, Reasons& reasons) {
  bool one_holds = rule.applies.empty();
  std::vector<Message> open;
  for (const Case& wanted : rule.applies) {
    const CaseResult result = examine(wanted, circumstances);
    if (result.holds == Applies::Yes) one_holds = true;
    if (result.holds == Applies::Depends) {
      for (const Message& message : result.depends_on) add_once(open, message);
    }
  }
  if (!one_holds && open.empty()) reasons.against.push_back({"rules.no_case_holds", {}});
  if (!one_holds) {
    for (Message& message : open) add_once(reasons.depends_on, std::move(message));
  }
  for (const Case& unwanted : rule.unless) {
    CaseResult result = examine(unwanted, circumstances);
    if (result.holds == Applies::Yes) reasons.against.push_back(std::move(result.conditions));
    if (result.holds == Applies::Depends) {
      for (Message& message : result.depends_on) add_once(reasons.depends_on, std::move(message));
    }
  }
}

}  // namespace

Candidate applies(const Rule& rule, const Circumstances& circumstances) {
  Reasons reasons;
  ask_where_and_what(rule, circumstances, reasons);
  ask_boiler_and_work(rule, circumstances, reasons);
  ask_cases(rule, circumstances, reasons);
  if (!reasons.against.empty()) return {0, Applies::No, std::move(reasons.against)};
  if (!reasons.depends_on.empty()) return {0, Applies::Depends, std::move(reasons.depends_on)};
  return {0, Applies::Yes, {}};
}

Choice choose(const std::vector<Rule>& rules, const Circumstances& circumstances) {
  Choice choice;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    Candidate candidate = applies(rules[i], circumstances);
    candidate.rule = i;
    (candidate.applies == Applies::No ? choice.others : choice.candidates)
        .push_back(std::move(candidate));
  }
  const auto reading_order = [&](const Candidate& a, const Candidate& b) {
    if (a.applies != b.applies) return a.applies < b.applies;
    const Rule& left = rules[a.rule];
    const Rule& right = rules[b.rule];
    if (left.source.seen != right.source.seen) return left.source.seen < right.source.seen;
    return left.id < right.id;
  };
  std::stable_sort(choice.candidates.begin(), choice.candidates.end(), reading_order);
  std::stable_sort(choice.others.begin(), choice.others.end(), reading_order);

  for (const std::string& jurisdiction : circumstances.jurisdictions) {
    const bool known = std::any_of(rules.begin(), rules.end(), [&](const Rule& rule) {
      return rule.jurisdiction == jurisdiction;
    });
    if (!known) {
      choice.remarks.push_back({"rules.no_rule_of_jurisdiction", {{"jurisdiction", jurisdiction}}});
    }
  }
  if (circumstances.jurisdictions.empty()) {
    choice.remarks.push_back({"rules.jurisdiction_not_told", {}});
  }
  if (!circumstances.work) choice.remarks.push_back({"rules.work_not_told", {}});
  const auto certain =
      std::count_if(choice.candidates.begin(), choice.candidates.end(),
                    [](const Candidate& candidate) { return candidate.applies == Applies::Yes; });
  if (choice.candidates.empty()) choice.remarks.push_back({"rules.none_applies", {}});
  if (certain > 1) {
    choice.remarks.push_back(
        {"rules.more_than_one", {{"count", units::measure_count(static_cast<double>(certain))}}});
  }
  return choice;
}

}  // namespace steamworthy::rules
