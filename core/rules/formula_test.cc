// formula_test.cc — checks rules/formula.h form by form.
//
// Sources, as far as the figures come from outside: beside each check. The laws
// themselves, as shipped, are checked in wire/rules_published_test.cc.
#include "rules/formula.h"

#include <gtest/gtest.h>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::rules {
namespace {

using units::bars_gauge;
using units::psi;
using units::psi_gauge;

constexpr double exact_psi = 1e-9;  // the law's figures are exact; rounding of psi to Pa and back

Stated<units::GaugePressure> stated_psi(double value) { return {psi_gauge(value), ""}; }

Formula single(Product product) {
  Formula formula;
  formula.branches = {{std::nullopt, {std::move(product)}, std::nullopt, std::nullopt}};
  return formula;
}

double in_psi(const FormulaResult& result) {
  EXPECT_TRUE(result.figure.is_known());
  return result.figure.value ? result.figure.value->si / units::pascals_per_psi : -1.0;
}

FormulaResult evaluated(const Formula& formula, const Circumstances& circumstances) {
  return evaluate_formula(formula, circumstances, "rules.test", "some-rule", "SOURCE");
}

TEST(Formula, FactorTimesReference) {
  // 46 CFR 61.05-10: 1.25 x MAWP; 600 psi gives 750 psi.
  Circumstances given;
  given.working_pressure = psi_gauge(600.0);
  const auto result = evaluated(single({1.25, Reference::WorkingPressure, false, {}, {}}), given);
  EXPECT_NEAR(in_psi(result), 750.0, exact_psi);
  EXPECT_EQ(result.figure.working.formula, "p = k p_w");
  ASSERT_EQ(result.figure.working.inputs.size(), 2u);
  EXPECT_EQ(result.figure.working.inputs[0].symbol, "p_w");
  EXPECT_EQ(result.figure.working.inputs[0].origin, working::Origin::Described);
  EXPECT_EQ(result.figure.working.inputs[1].symbol, "k");
  EXPECT_EQ(result.figure.working.inputs[1].origin, working::Origin::Rule);
  EXPECT_EQ(result.figure.working.inputs[1].source, "SOURCE");
}

TEST(Formula, EachReferenceReadsItsOwnPressureAndNamesItWhenMissing) {
  Circumstances given;
  given.working_pressure = bars_gauge(11.0);
  given.operating_pressure = bars_gauge(12.0);
  given.lowest_safety_valve = bars_gauge(13.0);
  given.highest_safety_valve = bars_gauge(14.0);
  given.design_pressure = bars_gauge(15.0);
  given.service_loading = bars_gauge(16.0);
  given.boiler_test_pressure = bars_gauge(17.0);
  given.retest_pressure = bars_gauge(18.0);
  given.original_test_pressure = bars_gauge(19.0);
  const std::vector<std::pair<Reference, double>> rows{
      {Reference::WorkingPressure, 11.0},
      {Reference::OperatingPressure, 12.0},
      {Reference::LowestSafetyValve, 13.0},
      {Reference::HighestSafetyValve, 14.0},
      {Reference::LesserOfWorkingAndHighestSafetyValve, 11.0},
      {Reference::DesignPressure, 15.0},
      {Reference::ServiceLoading, 16.0},
      {Reference::BoilerTestPressure, 17.0},
      {Reference::RetestPressure, 18.0},
      {Reference::OriginalTestPressure, 19.0}};
  ASSERT_EQ(rows.size(), reference_tokens().size());
  for (const auto& [reference, bar] : rows) {
    const Formula formula = single({1.0, reference, false, {}, {}});
    const auto known = evaluated(formula, given);
    ASSERT_TRUE(known.figure.is_known()) << token(reference);
    EXPECT_DOUBLE_EQ(known.figure.value->si, bar * 1e5) << token(reference);
    EXPECT_EQ(pressure_of(reference, given), bars_gauge(bar)) << token(reference);
    const auto lacking = evaluated(formula, Circumstances{});
    EXPECT_FALSE(lacking.figure.is_known());
    ASSERT_FALSE(lacking.missing.empty()) << token(reference);
    EXPECT_EQ(lacking.figure.cannot_tell, lacking.missing.front());
    EXPECT_FALSE(pressure_of(reference, Circumstances{})) << token(reference);
  }
}

TEST(Formula, LesserOfTwoNamesEachMissingOne) {
  const Formula formula =
      single({1.5, Reference::LesserOfWorkingAndHighestSafetyValve, false, {}, {}});
  EXPECT_EQ(evaluated(formula, {}).missing.size(), 2u);
  Circumstances given;
  given.working_pressure = psi_gauge(200.0);
  const auto half = evaluated(formula, given);
  ASSERT_EQ(half.missing.size(), 1u);
  EXPECT_EQ(half.missing[0],
            (working::Message{"rules.missing_input",
                              {{"input", working::Term{"input.highest_safety_valve"}}}}));
  // UFC 3-430-07, 6-1.1: 1.5 x the lesser; 200 psi and a valve at 150 psi give 225 psi.
  given.highest_safety_valve = psi_gauge(150.0);
  EXPECT_NEAR(in_psi(evaluated(formula, given)), 225.0, exact_psi);
  given.highest_safety_valve = psi_gauge(250.0);
  EXPECT_NEAR(in_psi(evaluated(formula, given)), 300.0, exact_psi);
}

TEST(Formula, CapAndFloorGovernAndSaySo) {
  Formula formula = single({2.5, Reference::WorkingPressure, false, {}, {}});
  formula.branches[0].cap = stated_psi(60.0);
  Circumstances given;
  given.working_pressure = psi_gauge(28.0);
  const auto capped = evaluated(formula, given);
  EXPECT_NEAR(in_psi(capped), 60.0, exact_psi);
  ASSERT_EQ(capped.figure.working.remarks.size(), 1u);
  EXPECT_EQ(capped.figure.working.remarks[0].key, "rules.cap_governs");
  EXPECT_EQ(capped.figure.working.formula, "p = min(k p_w, p_cap)");
  given.working_pressure = psi_gauge(20.0);
  EXPECT_NEAR(in_psi(evaluated(formula, given)), 50.0, exact_psi);

  formula.branches[0].least = stated_psi(55.0);
  const auto floored = evaluated(formula, given);
  EXPECT_NEAR(in_psi(floored), 55.0, exact_psi);
  EXPECT_EQ(floored.figure.working.remarks[0].key, "rules.least_governs");
  EXPECT_EQ(floored.figure.working.formula, "p = min(max(k p_w, p_min), p_cap)");
}

Formula two_branches() {
  Formula formula;
  formula.branches = {
      {stated_psi(100.0), {{2.0, Reference::WorkingPressure, false, {}, {}}}, {}, {}},
      {std::nullopt,
       {{1.5,
         Reference::WorkingPressure,
         false,
         {},
         Stated<units::PressureDifference>{psi(50.0), ""}}},
       {},
       {}}};
  return formula;
}

TEST(Formula, BranchesMeetAndSayWhichHolds) {
  // Malaysia's shape, second-hand: 2 P to 100 psi, then 1.5 P + 50 psi.
  Circumstances given;
  given.working_pressure = psi_gauge(100.0);
  const auto at_join = evaluated(two_branches(), given);
  EXPECT_NEAR(in_psi(at_join), 200.0, exact_psi);
  EXPECT_EQ(at_join.figure.working.remarks[0].key, "rules.branch_up_to");
  given.working_pressure = psi_gauge(250.0);
  const auto above = evaluated(two_branches(), given);
  EXPECT_NEAR(in_psi(above), 425.0, exact_psi);
  EXPECT_EQ(above.figure.working.remarks[0].key, "rules.branch_above");
  EXPECT_EQ(above.figure.working.formula, "p = k p_w + c");
  EXPECT_FALSE(evaluated(two_branches(), {}).figure.is_known());
}

TEST(Formula, GreatestNeedsEveryMember) {
  Formula formula;
  formula.branches = {{std::nullopt,
                       {{1.25, Reference::ServiceLoading, true, {}, {}},
                        {1.43, Reference::WorkingPressure, false, {}, {}}},
                       {},
                       {}}};
  Circumstances given;
  given.working_pressure = bars_gauge(20.0);
  const auto lacking = evaluated(formula, given);
  EXPECT_FALSE(lacking.figure.is_known()) << "the unknown one might be the greater";
  EXPECT_EQ(lacking.missing.size(), 2u);
  given.service_loading = bars_gauge(20.0);
  given.stress_ratio = 150.0 / 130.0;
  const auto result = evaluated(formula, given);
  EXPECT_NEAR(result.figure.value->si / 1e5, 28.846, 0.0005);  // 25 x 150/130, by arithmetic
  EXPECT_EQ(result.figure.working.formula, "p = max(k_1 p_l r, k_2 p_w)");
  given.stress_ratio = 1.0;
  EXPECT_NEAR(evaluated(formula, given).figure.value->si / 1e5, 28.6, 1e-9);
}

TEST(Formula, StressRatioIsNeverTakenBelowItsFloor) {
  // 46 CFR 54.10-10 (2004): the ratio is never taken below 1.
  const Formula formula = single({1.5, Reference::WorkingPressure, true, 1.0, {}});
  Circumstances given;
  given.working_pressure = psi_gauge(100.0);
  given.stress_ratio = 0.9;
  const auto result = evaluated(formula, given);
  EXPECT_NEAR(in_psi(result), 150.0, exact_psi);
  EXPECT_EQ(result.figure.working.formula, "p = k p_w max(r, r_min)");
  given.stress_ratio = 1.2;
  EXPECT_NEAR(in_psi(evaluated(formula, given)), 180.0, exact_psi);
}

TEST(Formula, RefusesNumbersThatCannotBe) {
  const Formula formula = single({1.5, Reference::WorkingPressure, true, {}, {}});
  Circumstances given;
  given.working_pressure = bars_gauge(-1.0);
  given.stress_ratio = 1.0;
  try {
    evaluated(formula, given);
    FAIL() << "a working pressure below zero was taken";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "rules.negative_pressure");
    EXPECT_STREQ(error.what(),
                 "the working pressure is -1 bar; a rule needs one not below 0 bar gauge");
  }
  given.working_pressure = bars_gauge(10.0);
  given.stress_ratio = 0.0;
  try {
    evaluated(formula, given);
    FAIL() << "a stress ratio of 0 was taken";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "rules.stress_ratio");
    EXPECT_STREQ(error.what(), "the ratio of allowable stresses is 0; it must be above 0");
  }
}

}  // namespace
}  // namespace steamworthy::rules
