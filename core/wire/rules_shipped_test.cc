// rules_shipped_test.cc — every rule file that ships reads, evaluates, and is documented.
#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "base/error.h"
#include "rules/check.h"
#include "rules/evaluate.h"
#include "units/makers.h"
#include "wire/shipped_rules_test.h"

namespace steamworthy::wire {
namespace {

using units::bars_gauge;

/// An invented boiler that tells everything that a rule may ask.
rules::Circumstances everything() {
  rules::Circumstances given;
  given.boiler = rules::BoilerKind::Watertube;
  given.work = rules::Work::TubesRenewed;
  given.working_pressure = bars_gauge(40.0);
  given.operating_pressure = bars_gauge(36.0);
  given.lowest_safety_valve = bars_gauge(39.0);
  given.highest_safety_valve = bars_gauge(40.0);
  given.design_pressure = bars_gauge(42.0);
  given.service_loading = bars_gauge(40.5);
  given.boiler_test_pressure = bars_gauge(60.0);
  given.retest_pressure = bars_gauge(50.0);
  given.original_test_pressure = bars_gauge(63.0);
  given.stress_ratio = 1.1;
  given.safety_valves_gagged = true;
  given.authority = "A. Name, inspector";
  return given;
}

TEST(ShippedRules, EachReadsAndIsNamedAfterItsFile) {
  const auto files = shipped::files();
  const auto all = shipped::rules();
  ASSERT_EQ(all.size(), files.size());
  ASSERT_GE(all.size(), 31u);
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(files[i].name, "rules/" + all[i].id + ".toml");
    EXPECT_TRUE(rules::check(all[i]).empty()) << all[i].id;
  }
}

TEST(ShippedRules, EachEvaluatesOnABoilerThatTellsEverything) {
  for (const rules::Rule& rule : shipped::rules()) {
    rules::Circumstances given = everything();
    const auto open = rules::evaluate(rule, given);
    EXPECT_TRUE(open.missing.empty()) << rule.id;
    if (!rule.is_test()) {
      EXPECT_FALSE(open.may_be_preset()) << rule.id;
      continue;
    }
    if (!open.test_pressure.is_known()) {
      given.picked = open.most.is_known() ? units::GaugePressure::from_si(open.most.value->si)
                                          : bars_gauge(38.0);
    }
    const auto result = rules::evaluate(rule, given);
    EXPECT_TRUE(result.may_be_preset()) << rule.id;
    EXPECT_GT(result.test_pressure.value->si, 0.0) << rule.id;
    EXPECT_FALSE(result.test_pressure.working.formula.empty()) << rule.id;
    // Without a name nothing above the working pressure is preset, by whatever rule.
    given.authority.clear();
    const auto unnamed = rules::evaluate(rule, given);
    if (unnamed.may_be_preset()) {
      EXPECT_LE(unnamed.test_pressure.value->si, given.working_pressure->si() * (1.0 + 1e-9))
          << rule.id;
    }
  }
}

TEST(ShippedRules, EachNamesWhatItLacksOnABoilerThatTellsNothing) {
  for (const rules::Rule& rule : shipped::rules()) {
    const auto result = rules::evaluate(rule, {});
    EXPECT_FALSE(result.may_be_preset()) << rule.id;
    if (!rule.pressure.value.empty()) {
      EXPECT_FALSE(result.missing.empty()) << rule.id;
    }
  }
}

TEST(ShippedRules, WriteAndReadAgainAsTheyWere) {
  for (const rules::Rule& rule : shipped::rules()) {
    const std::string text = write_rule(rule);
    EXPECT_EQ(read_rule({"again.toml", text}), rule) << text;
  }
}

TEST(ShippedRules, EachStandsInTheReference) {
  const std::string page =
      shipped::text_of(std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/reference/rules.md");
  for (const rules::Rule& rule : shipped::rules()) {
    EXPECT_NE(page.find("`" + rule.id + "`"), std::string::npos) << rule.id;
    EXPECT_NE(page.find("`" + rule.source.key + "`"), std::string::npos) << rule.source.key;
  }
}

/// Every "rules.something" that the sources of the room and of its reader hold.
std::set<std::string> keys_in_sources() {
  const std::filesystem::path core = std::filesystem::path(STEAMWORTHY_SOURCE_DIR) / "core";
  std::set<std::string> keys;
  for (const char* room : {"rules", "wire"}) {
    for (const auto& entry : std::filesystem::directory_iterator(core / room)) {
      const std::string name = entry.path().filename().string();
      if (name.find("_test.") != std::string::npos) continue;
      if (std::string(room) == "wire" && name.rfind("rule", 0) != 0) continue;
      const std::string text = shipped::text_of(entry.path());
      static const std::regex quoted("\"(rules\\.[a-z_]+)\"");
      for (std::sregex_iterator it(text.begin(), text.end(), quoted), end; it != end; ++it) {
        keys.insert((*it)[1].str());
      }
    }
  }
  return keys;
}

TEST(ShippedRules, EveryCodeAndMessageStandsInTheReference) {
  const std::string page =
      shipped::text_of(std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/reference/rules.md");
  const std::set<std::string> keys = keys_in_sources();
  ASSERT_GT(keys.size(), 80u);
  for (const std::string& key : keys) {
    EXPECT_NE(page.find("`" + key + "`"), std::string::npos) << key;
  }
}

TEST(ShippedRules, EachSourceStandsInTheBibliography) {
  const std::string books =
      shipped::text_of(std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/bibliography.bib");
  const auto expect_entry = [&](const std::string& key, const std::string& id) {
    EXPECT_NE(books.find("{" + key + ","), std::string::npos) << key << " of " << id;
  };
  for (const rules::Rule& rule : shipped::rules()) {
    expect_entry(rule.source.key, rule.id);
    for (const auto& window : rule.windows) {
      if (!window.source.empty()) expect_entry(window.source, rule.id);
    }
    if (!rule.safety_valves.source.empty()) expect_entry(rule.safety_valves.source, rule.id);
  }
}

TEST(SiteRule, TheExampleOfTheReferenceReadsAndWritesEveryField) {
  const std::string path = std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/reference/site-rule.toml";
  const rules::Rule rule = read_rule({"site-rule.toml", shipped::text_of(path)});
  EXPECT_EQ(rule.source.seen, rules::Seen::Site);
  EXPECT_TRUE(rule.gauges && rule.rise && rule.drop && rule.stress_cap);
  EXPECT_EQ(read_rule({"again.toml", write_rule(rule)}), rule);
  rules::Circumstances given = everything();
  given.picked = bars_gauge(38.0);
  const auto result = rules::evaluate(rule, given);
  EXPECT_TRUE(result.may_be_preset());
  EXPECT_TRUE(result.gauge_number.is_known() && result.greatest_rate.is_known());
  EXPECT_FALSE(result.steps.empty());
}

TEST(WriteRule, AQuantityWithoutWordsIsWrittenInSiAndComesBack) {
  rules::Rule rule = shipped::rule("my-first-test");
  rule.pressure.value.branches[0].up_to->text.clear();
  rule.holds[0].at_least->text.clear();
  const rules::Rule again = read_rule({"again.toml", write_rule(rule)});
  EXPECT_EQ(again.pressure.value.branches[0].up_to->value,
            rule.pressure.value.branches[0].up_to->value);
  EXPECT_EQ(again.holds[0].at_least->value, rule.holds[0].at_least->value);
}

TEST(WriteRule, TextWithQuotesAndLinesComesBack) {
  rules::Rule rule = shipped::rule("my-first-test");
  rule.notes = {"a \"quoted\" word, a \\ and\na line\x01", "é °C"};
  EXPECT_EQ(read_rule({"again.toml", write_rule(rule)}).notes, rule.notes);
}

}  // namespace
}  // namespace steamworthy::wire
