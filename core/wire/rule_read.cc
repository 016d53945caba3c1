#include <fmt/format.h>

#include <algorithm>

#include "rules/check.h"
#include "wire/rule.h"
#include "wire/rule_table.h"

namespace steamworthy::wire {
namespace {

using rules::Rule;

constexpr std::size_t longest_file = 64 * 1024;  // bytes; the longest that ships has 2 kB

rules::Product read_product(RuleTable& table) {
  rules::Product product;
  table.require("factor", "a number such as 1.5");
  table.require("of", "what it is of, such as \"working pressure\"");
  product.factor = table.number("factor").value_or(1.0);
  product.of = table.word("of", &rules::reference_of, &rules::reference_tokens)
                   .value_or(rules::Reference::WorkingPressure);
  product.times_stress_ratio = table.yes_or_no("times_stress_ratio").value_or(false);
  product.least_stress_ratio = table.number("least_stress_ratio");
  product.plus =
      table.quantity<units::PressureDifference>("plus", &units::parse_pressure_difference);
  return product;
}

/// Products and bounds of one branch; its table may be the formula's own.
rules::Branch read_branch(RuleTable& table) {
  rules::Branch branch;
  std::vector<RuleTable> several = table.tables("greatest_of");
  if (several.size() == 1) {
    table.fault("rules.only_one", "greatest_of", "one",
                "two or more, or factor and of by themselves", "the greatest of one is that one");
  }
  for (RuleTable& one : several) {
    branch.greatest_of.push_back(read_product(one));
    one.refuse_unknown_keys();
  }
  if (several.empty()) branch.greatest_of.push_back(read_product(table));
  branch.least = table.quantity<units::GaugePressure>("least", &units::parse_gauge_pressure);
  branch.cap = table.quantity<units::GaugePressure>("cap", &units::parse_gauge_pressure);
  return branch;
}

rules::Formula read_formula(RuleTable& table) {
  rules::Formula formula;
  std::vector<RuleTable> branches = table.tables("branches");
  if (branches.size() == 1) {
    table.fault("rules.only_one", "branches", "one", "two or more, or factor and of by themselves",
                "one branch needs no list");
  }
  if (!branches.empty()) {
    formula.switched_by = table.word("switched_by", &rules::reference_of, &rules::reference_tokens)
                              .value_or(rules::Reference::WorkingPressure);
  }
  for (RuleTable& one : branches) {
    const auto up_to = one.quantity<units::GaugePressure>("up_to", &units::parse_gauge_pressure);
    rules::Branch branch = read_branch(one);
    branch.up_to = up_to;
    formula.branches.push_back(std::move(branch));
    one.refuse_unknown_keys();
  }
  if (branches.empty()) formula.branches.push_back(read_branch(table));
  return formula;
}

rules::Demand read_demand(RuleTable& table) {
  rules::Demand demand;
  table.require("sense", "one of exactly, at-least, at-most, between, named-by-authority");
  demand.sense =
      table.word("sense", &rules::sense_of, &rules::sense_tokens).value_or(rules::Sense::Exactly);
  // Where an authority names the pressure there is no formula to ask for; one that stands
  // there all the same is read, and refused by rules::check().
  const bool stated = table.has("factor") || table.has("greatest_of") || table.has("branches");
  if (demand.sense != rules::Sense::NamedByAuthority || stated) demand.value = read_formula(table);
  if (auto above = table.table("above")) {
    demand.above = read_formula(*above);
    above->refuse_unknown_keys();
  }
  table.refuse_unknown_keys();
  return demand;
}

std::vector<rules::Case> read_cases(RuleTable& rule, const char* key) {
  std::vector<rules::Case> cases;
  for (RuleTable& table : rule.tables(key)) {
    rules::Case one;
    one.boilers = table.words("boilers", &rules::boiler_kind_of, &rules::boiler_kind_tokens);
    one.works = table.words("works", &rules::work_of, &rules::work_tokens);
    for (const std::string_view trait : rules::trait_tokens()) {
      // Tokens are literals, so each ends with a zero.
      if (const auto value = table.yes_or_no(trait.data())) {
        one.traits.emplace_back(*rules::trait_of(trait), *value);
      }
    }
    one.working_above =
        table.quantity<units::GaugePressure>("working_above", &units::parse_gauge_pressure);
    one.working_not_above =
        table.quantity<units::GaugePressure>("working_not_above", &units::parse_gauge_pressure);
    table.refuse_unknown_keys();
    cases.push_back(std::move(one));
  }
  return cases;
}

void read_source(RuleTable& rule_table, Rule& rule) {
  rule_table.require("source", "a table: [source]");
  auto table = rule_table.table("source");
  if (!table) return;
  table->require("key", "a key of the bibliography");
  table->require("kind",
                 "one of law, historic-law, standard, manual, handbook, common-practice, "
                 "site-rule");
  table->require("seen", "one of seen, second-hand, from-memory, site");
  rule.source.key = table->text("key");
  rule.source.kind = table->word("kind", &rules::source_kind_of, &rules::source_kind_tokens)
                         .value_or(rule.source.kind);
  rule.source.seen =
      table->word("seen", &rules::seen_of, &rules::seen_tokens).value_or(rule.source.seen);
  table->refuse_unknown_keys();
}

void read_windows(RuleTable& rule_table, Rule& rule) {
  for (RuleTable& table : rule_table.tables("windows")) {
    rules::Window window;
    table.require("stage", "one of filling, under-test, examination");
    table.require("medium", "one of water, metal");
    window.stage = table.word("stage", &rules::stage_of, &rules::stage_tokens)
                       .value_or(rules::Stage::UnderTest);
    window.medium = table.word("medium", &rules::medium_of, &rules::medium_tokens)
                        .value_or(rules::Medium::Water);
    window.boilers = table.words("boilers", &rules::boiler_kind_of, &rules::boiler_kind_tokens);
    window.from = table.quantity<units::Temperature>("from", &units::parse_temperature);
    window.to = table.quantity<units::Temperature>("to", &units::parse_temperature);
    window.source = table.text("source");
    table.refuse_unknown_keys();
    rule.windows.push_back(std::move(window));
  }
}

void read_holds_and_drop(RuleTable& rule_table, Rule& rule) {
  for (RuleTable& table : rule_table.tables("holds")) {
    rules::Hold hold;
    hold.at_least = table.quantity<units::Duration>("at_least", &units::parse_duration);
    hold.at = table.word("at", &rules::hold_at_of, &rules::hold_at_tokens)
                  .value_or(rules::HoldAt::TestPressure);
    hold.words = table.text("words");
    table.refuse_unknown_keys();
    rule.holds.push_back(std::move(hold));
  }
  if (auto table = rule_table.table("drop")) {
    table->require("share", "a share such as \"10 %\"");
    table->require("within", "a time such as \"15 min\"");
    const auto share = table->share("share");
    const auto within = table->quantity<units::Duration>("within", &units::parse_duration);
    if (share && within) rule.drop = rules::AllowedDrop{*share, *within, table->text("source")};
    table->text("source");
    table->refuse_unknown_keys();
  }
}

void read_gauges(RuleTable& rule_table, Rule& rule) {
  auto table = rule_table.table("gauges");
  if (!table) return;
  rules::GaugeDemand gauges;
  gauges.number = table->whole("number");
  gauges.range_from = table->number("range_from");
  gauges.range_to = table->number("range_to");
  gauges.graduation =
      table->quantity<units::PressureDifference>("graduation", &units::parse_pressure_difference);
  gauges.accuracy = table->share("accuracy");
  gauges.words = table->text("words");
  table->refuse_unknown_keys();
  rule.gauges = std::move(gauges);
}

void read_conduct(RuleTable& rule_table, Rule& rule) {
  if (auto table = rule_table.table("ceiling")) {
    table->require("factor", "a number such as 1.06");
    rules::Ceiling ceiling;
    ceiling.factor = table->number("factor").value_or(1.0);
    ceiling.of_original_test_pressure =
        table->yes_or_no("of_original_test_pressure").value_or(false);
    table->refuse_unknown_keys();
    rule.ceiling = ceiling;
  }
  if (auto table = rule_table.table("examination")) {
    const rules::Product product = read_product(*table);
    if (product.times_stress_ratio || product.least_stress_ratio || product.plus) {
      rule_table.fault("rules.idle", "examination", "", "factor and of, nothing else",
                       "an examination pressure is a factor of another pressure");
    }
    table->refuse_unknown_keys();
    rule.examination = rules::Examination{product.factor, product.of};
  }
  if (auto table = rule_table.table("safety_valves")) {
    table->require("treatment",
                   "one of not-stated, must-be-gagged, removed-or-clamped, "
                   "may-be-gagged");
    rule.safety_valves.treatment =
        table->word("treatment", &rules::valve_treatment_of, &rules::valve_treatment_tokens)
            .value_or(rules::ValveTreatment::NotStated);
    rule.safety_valves.words = table->text("words");
    rule.safety_valves.source = table->text("source");
    table->refuse_unknown_keys();
  }
  if (auto table = rule_table.table("rise")) {
    rules::Rise rise;
    rise.not_faster =
        table->quantity<units::PressureRate>("not_faster", &units::parse_pressure_rate);
    rise.first_step = table->share("first_step");
    rise.next_steps = table->share("next_steps");
    rise.words = table->text("words");
    rise.source = table->text("source");
    table->refuse_unknown_keys();
    rule.rise = std::move(rise);
  }
}

Rule read_table(RuleTable& table) {
  Rule rule;
  table.require("purpose", "one of tightness, strength, working, limit, interval, history");
  rule.id = table.text("id");
  rule.title = table.text("title");
  rule.jurisdiction = table.text("jurisdiction");
  rule.edition = table.text("edition");
  rule.date = table.text("date");
  rule.purpose = table.word("purpose", &rules::purpose_of, &rules::purpose_tokens)
                     .value_or(rules::Purpose::Strength);
  auto subjects = table.words("subjects", &rules::subject_of, &rules::subject_tokens);
  if (table.has("subjects")) rule.subjects = std::move(subjects);
  rule.boilers = table.words("boilers", &rules::boiler_kind_of, &rules::boiler_kind_tokens);
  rule.works = table.words("works", &rules::work_of, &rules::work_tokens);
  rule.witness = table.text("witness");
  rule.months_between = table.whole("months_between");
  rule.stress_cap = table.share("stress_cap");
  rule.preparations = table.texts("preparations");
  rule.notes = table.texts("notes");
  read_source(table, rule);
  rule.applies = read_cases(table, "applies");
  rule.unless = read_cases(table, "unless");
  table.require("pressure", "a table: [pressure]");
  if (auto pressure = table.table("pressure")) rule.pressure = read_demand(*pressure);
  read_windows(table, rule);
  read_holds_and_drop(table, rule);
  read_gauges(table, rule);
  read_conduct(table, rule);
  table.refuse_unknown_keys();
  return rule;
}

/// Reads one file; without a rule where there are faults, which are added to `problems`.
std::optional<Rule> read(const RuleFile& file, std::vector<Problem>& problems) {
  RuleFaults faults{std::string(file.name)};
  std::optional<Rule> rule;
  if (file.text.size() > longest_file) {
    faults.add("rules.too_long", "", fmt::format("{} bytes", file.text.size()),
               fmt::format("{} bytes at most", longest_file), "this is too long for a rule");
  } else {
    try {
      const toml::table parsed = toml::parse(file.text);
      RuleTable table(parsed, "", faults);
      rule = read_table(table);
      for (Problem& problem : rules::check(*rule)) {
        // What was not read cannot be checked: one fault a field.
        if (!faults.has_fault_in(problem.field)) faults.add(std::move(problem));
      }
    } catch (const toml::parse_error& error) {
      rule.reset();
      faults.add({"rules.not_toml", "", static_cast<int>(error.source().begin.line), "", "",
                  "a TOML file", std::string(error.description())});
    }
  }
  if (faults.problems.empty()) return rule;
  std::stable_sort(faults.problems.begin(), faults.problems.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  problems.insert(problems.end(), faults.problems.begin(), faults.problems.end());
  return std::nullopt;
}

}  // namespace

Rule read_rule(const RuleFile& file) {
  std::vector<Problem> problems;
  std::optional<Rule> rule = read(file, problems);
  if (!rule) throw BadInput(std::move(problems));
  return std::move(*rule);
}

std::vector<Rule> read_rules(const std::vector<RuleFile>& files) {
  std::vector<Problem> problems;
  std::vector<Rule> rules;
  std::vector<std::string_view> from;
  for (const RuleFile& file : files) {
    std::optional<Rule> rule = read(file, problems);
    if (!rule) continue;
    const auto twin = std::find_if(rules.begin(), rules.end(),
                                   [&](const Rule& other) { return other.id == rule->id; });
    if (twin != rules.end()) {
      problems.push_back({"rules.same_id", std::string(file.name), 0, "id", rule->id,
                          "an id that no other rule has",
                          fmt::format("{} has this id too",
                                      from[static_cast<std::size_t>(twin - rules.begin())])});
      continue;
    }
    rules.push_back(std::move(*rule));
    from.push_back(file.name);
  }
  if (!problems.empty()) throw BadInput(std::move(problems));
  return rules;
}

}  // namespace steamworthy::wire
