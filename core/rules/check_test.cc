// check_test.cc — rules that make no sense in themselves, each with the fault it gets.
//
// Wrong rule files with their lines are in wire/rule_faults_test.cc.
#include "rules/check.h"

#include <gtest/gtest.h>

#include <functional>

#include "rules/sample_rules_test.h"

namespace steamworthy::rules {
namespace {

using samples::strength;
using samples::times;
using units::bars_gauge;
using units::celsius;
using units::minutes;

struct Row {
  const char* what;
  std::function<void(Rule&)> spoil;
  const char* code;
  const char* field;
};

const Row rows[] = {
    {"id", [](Rule& r) { r.id = "Bad Id"; }, "rules.bad_id", "id"},
    {"id with a hyphen at its end", [](Rule& r) { r.id = "a-"; }, "rules.bad_id", "id"},
    {"jurisdiction", [](Rule& r) { r.jurisdiction = ""; }, "rules.bad_id", "jurisdiction"},
    {"title", [](Rule& r) { r.title = " "; }, "rules.missing", "title"},
    {"edition", [](Rule& r) { r.edition = ""; }, "rules.missing", "edition"},
    {"about nothing", [](Rule& r) { r.subjects.clear(); }, "rules.missing", "subjects"},
    {"source", [](Rule& r) { r.source.key = "no spaces"; }, "rules.bad_source", "source.key"},
    {"a law as the site's own", [](Rule& r) { r.source.seen = Seen::Site; }, "rules.site_mismatch",
     "source.seen"},
    {"empty case", [](Rule& r) { r.applies = {Case{}}; }, "rules.empty_case", "applies[1]"},
    {"case without room",
     [](Rule& r) {
       r.unless = {{{}, {}, {}, {{bars_gauge(3.0), "3 bar"}}, {{bars_gauge(2.0), "2 bar"}}}};
     },
     "rules.order", "unless[1].working_not_above"},
    {"percent as factor",
     [](Rule& r) { r.pressure.value = times(150.0, Reference::WorkingPressure); },
     "rules.bad_factor", "pressure.factor"},
    {"no factor", [](Rule& r) { r.pressure.value = {}; }, "rules.missing", "pressure.factor"},
    {"one end of an interval", [](Rule& r) { r.pressure.sense = Sense::Between; }, "rules.missing",
     "pressure.above"},
    {"two ends of no interval",
     [](Rule& r) { r.pressure.above = times(1.0, Reference::OperatingPressure); }, "rules.idle",
     "pressure.above"},
    {"a named pressure with a factor", [](Rule& r) { r.pressure.sense = Sense::NamedByAuthority; },
     "rules.idle", "pressure.factor"},
    {"nobody to name the pressure",
     [](Rule& r) {
       r.pressure = {Sense::NamedByAuthority, {}, {}};
       r.witness = "";
     },
     "rules.missing", "witness"},
    {"branch without end",
     [](Rule& r) { r.pressure.value.branches.push_back(r.pressure.value.branches[0]); },
     "rules.branch_without_end", "pressure.branches[1].up_to"},
    {"last branch ends",
     [](Rule& r) {
       r.pressure.value.branches[0].up_to = {bars_gauge(1.0), ""};
     },
     "rules.branch_ends", "pressure.up_to"},
    {"branches fall",
     [](Rule& r) {
       Branch branch = r.pressure.value.branches[0];
       branch.up_to = {bars_gauge(5.0), ""};
       r.pressure.value.branches.insert(r.pressure.value.branches.begin(), {branch, branch});
     },
     "rules.order", "pressure.branches[2].up_to"},
    {"least above cap",
     [](Rule& r) {
       r.pressure.value.branches[0].least = {bars_gauge(5.0), ""};
       r.pressure.value.branches[0].cap = {bars_gauge(4.0), ""};
     },
     "rules.order", "pressure.cap"},
    {"constant taken off",
     [](Rule& r) {
       r.pressure.value.branches[0].greatest_of[0].plus =
           Stated<units::PressureDifference>{units::bars(-1.0), "-1 bar"};
     },
     "rules.not_positive", "pressure.plus"},
    {"cap of 0",
     [](Rule& r) {
       r.pressure.value.branches[0].cap = {bars_gauge(0.0), "0 bar"};
     },
     "rules.not_positive", "pressure.cap"},
    {"idle least ratio",
     [](Rule& r) { r.pressure.value.branches[0].greatest_of[0].least_stress_ratio = 1.0; },
     "rules.idle", "pressure.least_stress_ratio"},
    {"least ratio of 0",
     [](Rule& r) {
       r.pressure.value.branches[0].greatest_of[0].times_stress_ratio = true;
       r.pressure.value.branches[0].greatest_of[0].least_stress_ratio = 0.0;
     },
     "rules.not_positive", "pressure.least_stress_ratio"},
    {"overshoot of a tightness test", [](Rule& r) { r.purpose = Purpose::Tightness; },
     "rules.ceiling_not_strength", "ceiling"},
    {"percent as overshoot",
     [](Rule& r) {
       r.ceiling = Ceiling{106.0, false};
     },
     "rules.bad_ceiling", "ceiling.factor"},
    {"ceiling below the test",
     [](Rule& r) {
       r.ceiling = Ceiling{0.99, false};
     },
     "rules.bad_ceiling", "ceiling.factor"},
    {"window without end", [](Rule& r) { r.windows = {Window{}}; }, "rules.missing",
     "windows[1].from"},
    {"boiling",
     [](Rule& r) {
       r.windows = {{{}, {}, {}, {}, {{celsius(101.0), "101 °C"}}, ""}};
     },
     "rules.bad_temperature", "windows[1].to"},
    {"window without room",
     [](Rule& r) {
       r.windows = {{{}, {}, {}, {{celsius(50.0), ""}}, {{celsius(20.0), ""}}, ""}};
     },
     "rules.order", "windows[1].to"},
    {"hold of nothing",
     [](Rule& r) {
       r.holds = {{Stated<units::Duration>{minutes(0.0), "0 min"}, HoldAt::TestPressure, ""}};
     },
     "rules.not_positive", "holds[1].at_least"},
    {"drop of all",
     [](Rule& r) {
       r.drop = AllowedDrop{1.0, {minutes(15.0), ""}, ""};
     },
     "rules.bad_share", "drop.share"},
    {"drop in no time",
     [](Rule& r) {
       r.drop = AllowedDrop{0.1, {minutes(0.0), ""}, ""};
     },
     "rules.not_positive", "drop.within"},
    {"no gauge", [](Rule& r) { r.gauges = GaugeDemand{0, {}, {}, {}, {}, ""}; },
     "rules.not_positive", "gauges.number"},
    {"gauge that cannot show it", [](Rule& r) { r.gauges = GaugeDemand{{}, 0.5, {}, {}, {}, ""}; },
     "rules.bad_range", "gauges.range_from"},
    {"range without room", [](Rule& r) { r.gauges = GaugeDemand{{}, 4.0, 1.5, {}, {}, ""}; },
     "rules.order", "gauges.range_to"},
    {"graduation of 0",
     [](Rule& r) {
       r.gauges = GaugeDemand{{}, {}, {}, Stated<units::PressureDifference>{}, {}, ""};
     },
     "rules.not_positive", "gauges.graduation"},
    {"accuracy of 0", [](Rule& r) { r.gauges = GaugeDemand{{}, {}, {}, {}, 0.0, ""}; },
     "rules.bad_share", "gauges.accuracy"},
    {"examination at 5000 %",
     [](Rule& r) {
       r.examination = Examination{50.0, Reference::WorkingPressure};
     },
     "rules.bad_factor", "examination.factor"},
    {"rate of 0",
     [](Rule& r) {
       r.rise = Rise{Stated<units::PressureRate>{}, {}, {}, "", ""};
     },
     "rules.not_positive", "rise.not_faster"},
    {"half a stepped rise",
     [](Rule& r) {
       r.rise = Rise{{}, 0.5, {}, "", ""};
     },
     "rules.missing", "rise.next_steps"},
    {"a million steps",
     [](Rule& r) {
       r.rise = Rise{{}, 0.5, 1e-6, "", ""};
     },
     "rules.bad_share", "rise.next_steps"},
    {"stress above yield", [](Rule& r) { r.stress_cap = 1.1; }, "rules.bad_share", "stress_cap"},
    {"every 0 months", [](Rule& r) { r.months_between = 0; }, "rules.not_positive",
     "months_between"},
    {"how often, without saying",
     [](Rule& r) {
       r.purpose = Purpose::Interval;
       r.pressure = {Sense::NamedByAuthority, {}, {}};
       r.ceiling.reset();
     },
     "rules.missing", "months_between"},
    {"how often, with a pressure",
     [](Rule& r) {
       r.purpose = Purpose::Interval;
       r.months_between = 36;
       r.ceiling.reset();
     },
     "rules.idle", "pressure"},
};

TEST(Check, ASoundRuleHasNoFault) {
  EXPECT_TRUE(check(strength()).empty());
  EXPECT_TRUE(check(samples::tightness()).empty());
}

TEST(Check, EachFaultIsFoundWhereItIs) {
  for (const Row& row : rows) {
    Rule rule = strength();
    row.spoil(rule);
    const std::vector<Problem> problems = check(rule);
    ASSERT_EQ(problems.size(), 1u) << row.what;
    EXPECT_EQ(problems[0].code, row.code) << row.what;
    EXPECT_EQ(problems[0].field, row.field) << row.what;
    EXPECT_FALSE(problems[0].message.empty()) << row.what;
    EXPECT_FALSE(problems[0].accepted.empty()) << row.what;
  }
}

TEST(Check, AllFaultsAtOnce) {
  Rule rule = strength();
  rule.id = "";
  rule.title = "";
  rule.stress_cap = 2.0;
  EXPECT_EQ(check(rule).size(), 3u);
}

}  // namespace
}  // namespace steamworthy::rules
