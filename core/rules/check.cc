#include "rules/check.h"

#include <fmt/format.h>

#include <algorithm>

#include "rules/input_names.h"
#include "units/makers.h"

namespace steamworthy::rules {
namespace {

// Bounds that no test rule has a reason to pass: beyond them a slip is more
// likely (a factor of 125 for 125 %, an overshoot of 106).
constexpr double greatest_factor = 5.0;
constexpr double greatest_overshoot = 1.25;

bool is_id(const std::string& text) {
  if (text.empty() || text.size() > 64 || text.front() == '-' || text.back() == '-') return false;
  return std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
}

bool is_source_key(const std::string& text) {
  return !text.empty() && text.size() <= 64 && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '.' || c == '_';
  });
}

class Checker {
 public:
  explicit Checker(const Rule& rule) : rule_(rule) {}

  std::vector<Problem> run() {
    names();
    cases("applies", rule_.applies);
    cases("unless", rule_.unless);
    demand();
    ceiling();
    windows();
    time();
    gauges();
    rise();
    if (rule_.stress_cap) share("stress_cap", *rule_.stress_cap, true);
    if (rule_.months_between && *rule_.months_between < 1) {
      fault("rules.not_positive", "months_between", fmt::format("{}", *rule_.months_between),
            "a whole number above 0", "a time between tests must be above 0");
    }
    return std::move(problems_);
  }

 private:
  void fault(std::string code, std::string field, std::string found, std::string accepted,
             std::string message) {
    problems_.push_back({std::move(code), "", 0, std::move(field), std::move(found),
                         std::move(accepted), std::move(message)});
  }

  void needs_text(const std::string& field, const std::string& text) {
    if (says_something(text)) return;
    fault("rules.missing", field, text, "some words", "the rule must say this");
  }

  void names() {
    if (!is_id(rule_.id)) {
      fault("rules.bad_id", "id", rule_.id, "lower-case letters, digits and hyphens, 64 at most",
            "this cannot be the name of a rule");
    }
    if (!is_id(rule_.jurisdiction)) {
      fault("rules.bad_id", "jurisdiction", rule_.jurisdiction,
            "lower-case letters, digits and hyphens, 64 at most",
            "this cannot be the name of a jurisdiction");
    }
    needs_text("title", rule_.title);
    needs_text("edition", rule_.edition);
    if (!is_source_key(rule_.source.key)) {
      fault("rules.bad_source", "source.key", rule_.source.key,
            "a key of the bibliography such as \"CFR-46-61.05-10\"", "a rule must name its source");
    }
    if (rule_.subjects.empty()) {
      fault("rules.missing", "subjects", "", "at least one, such as \"boiler\"",
            "the rule must say what it is about");
    }
    const bool site_kind = rule_.source.kind == SourceKind::SiteRule;
    if (site_kind != (rule_.source.seen == Seen::Site)) {
      fault("rules.site_mismatch", "source.seen", std::string(token(rule_.source.seen)),
            "\"site\" together with kind \"site-rule\", and only then",
            "kind and seen must agree on whether this is the site's own rule");
    }
  }

  void cases(const std::string& field, const std::vector<Case>& list) {
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Case& one = list[i];
      const std::string here = fmt::format("{}[{}]", field, i + 1);
      if (one == Case{}) {
        fault("rules.empty_case", here, "", "at least one condition", "this case asks nothing");
      }
      if (one.working_above && one.working_not_above &&
          one.working_above->value >= one.working_not_above->value) {
        fault("rules.order", here + ".working_not_above", one.working_not_above->text,
              "a pressure above working_above", "no working pressure can meet both limits");
      }
    }
  }

  void factor(const std::string& field, double value) {
    if (value > 0.0 && value <= greatest_factor) return;
    fault("rules.bad_factor", field, fmt::format("{}", value),
          fmt::format("above 0 and not above {}", greatest_factor),
          "this cannot be the factor of a test pressure");
  }

  void share(const std::string& field, double value, bool one_allowed) {
    if (value > 0.0 && (value < 1.0 || (one_allowed && value == 1.0))) return;
    fault("rules.bad_share", field, fmt::format("{} %", value * 100.0),
          one_allowed ? "above 0 % and not above 100 %" : "above 0 % and below 100 %",
          "this cannot be a share");
  }

  void formula(const std::string& field, const Formula& formula) {
    const bool many = formula.branches.size() > 1;
    for (std::size_t i = 0; i < formula.branches.size(); ++i) {
      const std::string here = many ? fmt::format("{}.branches[{}]", field, i + 1) : field;
      const Branch& branch = formula.branches[i];
      const bool last = i + 1 == formula.branches.size();
      if (!last && !branch.up_to) {
        fault("rules.branch_without_end", here + ".up_to", "", "a pressure",
              "only the last branch may go on for ever");
      }
      if (last && branch.up_to) {
        fault("rules.branch_ends", here + ".up_to", branch.up_to->text, "nothing",
              "the last branch must hold for every higher pressure");
      }
      if (i > 0 && branch.up_to && formula.branches[i - 1].up_to &&
          branch.up_to->value <= formula.branches[i - 1].up_to->value) {
        fault("rules.order", here + ".up_to", branch.up_to->text,
              "a pressure above that of the branch before", "branches must rise");
      }
      terms(here, branch);
      for (const auto& [name, end] :
           {std::pair{".up_to", branch.up_to}, {".least", branch.least}, {".cap", branch.cap}}) {
        if (end && end->value <= units::GaugePressure{}) {
          fault("rules.not_positive", here + name, end->text, "a pressure above 0",
                "no test is made at such a pressure");
        }
      }
      if (branch.least && branch.cap && branch.least->value > branch.cap->value) {
        fault("rules.order", here + ".cap", branch.cap->text, "a pressure not below least",
              "the least is above the cap");
      }
    }
  }

  void terms(const std::string& here, const Branch& branch) {
    const bool many = branch.greatest_of.size() > 1;
    if (branch.greatest_of.empty()) {
      fault("rules.missing", here + ".factor", "", "a factor and what it is of",
            "the rule must say this");
    }
    for (std::size_t k = 0; k < branch.greatest_of.size(); ++k) {
      const Product& product = branch.greatest_of[k];
      const std::string there = many ? fmt::format("{}.greatest_of[{}]", here, k + 1) : here;
      factor(there + ".factor", product.factor);
      if (product.least_stress_ratio && !product.times_stress_ratio) {
        fault("rules.idle", there + ".least_stress_ratio",
              fmt::format("{}", *product.least_stress_ratio), "times_stress_ratio = true beside it",
              "a least stress ratio says nothing where the ratio is not used");
      }
      if (product.plus && product.plus->value < units::PressureDifference{}) {
        fault("rules.not_positive", there + ".plus", product.plus->text, "0 or more",
              "a constant is added, never taken off");
      }
      if (product.least_stress_ratio && !(*product.least_stress_ratio > 0.0)) {
        fault("rules.not_positive", there + ".least_stress_ratio",
              fmt::format("{}", *product.least_stress_ratio), "a number above 0",
              "a ratio of stresses must be above 0");
      }
    }
  }

  void demand() {
    const Demand& demand = rule_.pressure;
    const bool none = demand.sense == Sense::NamedByAuthority;
    if (rule_.purpose == Purpose::Interval && (!none || !demand.value.empty())) {
      fault("rules.idle", "pressure", std::string(token(demand.sense)), "no pressure at all",
            "a rule about how often names no pressure");
    }
    if (rule_.purpose == Purpose::Interval && !rule_.months_between) {
      fault("rules.missing", "months_between", "", "months", "a rule about how often must say it");
    }
    if (none && !demand.value.empty()) {
      fault("rules.idle", "pressure.factor", "", "nothing",
            "where an authority names the pressure, the rule states none");
    }
    if (!none && demand.value.empty()) {
      fault("rules.missing", "pressure.factor", "", "a factor and what it is of",
            "the rule must say this");
    }
    if ((demand.sense == Sense::Between) == demand.above.empty()) {
      fault(demand.above.empty() ? "rules.missing" : "rules.idle", "pressure.above", "",
            "what must be passed, with sense = \"between\" and only then",
            "an interval needs both its ends, and nothing else has two");
    }
    formula("pressure", demand.value);
    formula("pressure.above", demand.above);
    if (rule_.is_test() && none && !says_something(rule_.witness)) {
      fault("rules.missing", "witness", rule_.witness, "who names the pressure",
            "the rule must say this");
    }
  }

  void ceiling() {
    if (!rule_.ceiling) return;
    if (rule_.purpose != Purpose::Strength) {
      fault("rules.ceiling_not_strength", "ceiling", fmt::format("{}", rule_.ceiling->factor),
            "no ceiling here, or purpose = \"strength\"",
            "an overshoot belongs to strength tests: of any other test the rule itself, the gags "
            "and the pump's relief are the ceiling");
    }
    if (rule_.ceiling->factor < 1.0 || !(rule_.ceiling->factor <= greatest_overshoot)) {
      fault("rules.bad_ceiling", "ceiling.factor", fmt::format("{}", rule_.ceiling->factor),
            fmt::format("1 to {}, such as 1.06 for 106 %", greatest_overshoot),
            "this cannot be a ceiling");
    }
  }

  void windows() {
    const auto freezing = units::celsius(0.0);
    const auto boiling = units::celsius(100.0);
    for (std::size_t i = 0; i < rule_.windows.size(); ++i) {
      const Window& window = rule_.windows[i];
      const std::string here = fmt::format("windows[{}]", i + 1);
      if (!window.from && !window.to) {
        fault("rules.missing", here + ".from", "", "from, to or both",
              "a temperature window needs an end");
      }
      for (const auto& [name, end] : {std::pair{".from", window.from}, {".to", window.to}}) {
        if (end && (end->value < freezing || end->value > boiling)) {
          fault("rules.bad_temperature", here + name, end->text, "0 °C to 100 °C",
                "water for a test is liquid and open to the air while it is filled");
        }
      }
      if (window.from && window.to && window.from->value >= window.to->value) {
        fault("rules.order", here + ".to", window.to->text, "a temperature above from",
              "nothing can lie within this window");
      }
    }
  }

  void time() {
    for (std::size_t i = 0; i < rule_.holds.size(); ++i) {
      const auto& time = rule_.holds[i].at_least;
      if (time && time->value <= units::Duration{}) {
        fault("rules.not_positive", fmt::format("holds[{}].at_least", i + 1), time->text,
              "a time above 0", "a hold must last");
      }
    }
    if (!rule_.drop) return;
    share("drop.share", rule_.drop->fraction, false);
    if (rule_.drop->within.value <= units::Duration{}) {
      fault("rules.not_positive", "drop.within", rule_.drop->within.text, "a time above 0",
            "a drop is allowed within a time");
    }
  }

  void gauges() {
    if (rule_.examination) factor("examination.factor", rule_.examination->factor);
    if (!rule_.gauges) return;
    const GaugeDemand& demand = *rule_.gauges;
    if (demand.number && *demand.number < 1) {
      fault("rules.not_positive", "gauges.number", fmt::format("{}", *demand.number), "1 or more",
            "a test needs a gauge");
    }
    for (const auto& [name, end] : {std::pair{"gauges.range_from", demand.range_from},
                                    {"gauges.range_to", demand.range_to}}) {
      if (end && !(*end >= 1.0 && *end <= 10.0)) {
        fault("rules.bad_range", name, fmt::format("{}", *end), "1 to 10 times the test pressure",
              "a gauge must at least reach the test pressure");
      }
    }
    if (demand.range_from && demand.range_to && *demand.range_from > *demand.range_to) {
      fault("rules.order", "gauges.range_to", fmt::format("{}", *demand.range_to),
            "not below range_from", "no gauge can have this range");
    }
    if (demand.graduation && demand.graduation->value <= units::PressureDifference{}) {
      fault("rules.not_positive", "gauges.graduation", demand.graduation->text,
            "a pressure above 0", "a graduation must be above 0");
    }
    if (demand.accuracy) share("gauges.accuracy", *demand.accuracy, false);
  }

  void rise() {
    if (!rule_.rise) return;
    const Rise& rise = *rule_.rise;
    if (rise.not_faster && rise.not_faster->value <= units::PressureRate{}) {
      fault("rules.not_positive", "rise.not_faster", rise.not_faster->text, "a rate above 0",
            "pressure must be allowed to rise");
    }
    if (rise.first_step.has_value() != rise.next_steps.has_value()) {
      fault("rules.missing", rise.first_step ? "rise.next_steps" : "rise.first_step", "",
            "both first_step and next_steps, or neither", "a stepped rise needs both");
    }
    if (rise.first_step) share("rise.first_step", *rise.first_step, true);
    if (rise.next_steps) {
      share("rise.next_steps", *rise.next_steps, true);
      if (*rise.next_steps > 0.0 && *rise.next_steps < 0.01) {
        fault("rules.bad_share", "rise.next_steps", fmt::format("{} %", *rise.next_steps * 100.0),
              "1 % or more", "steps as small as this are no steps");
      }
    }
  }

  const Rule& rule_;
  std::vector<Problem> problems_;
};

}  // namespace

std::vector<Problem> check(const Rule& rule) { return Checker(rule).run(); }

}  // namespace steamworthy::rules
