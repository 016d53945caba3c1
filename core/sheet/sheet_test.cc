// Checks the test sheet of the example watertube boiler against an independent Python model of
// ours (python3-iapws), trade tables and hand calculation; each source stands beside its check.
#include "sheet/sheet.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "base/error.h"
#include "testing/examples_test.h"
#include "units/makers.h"

namespace steamworthy::sheet {
namespace {

using testing::example_boiler;
using testing::rule_files;

Request ordinary() {
  Request request;
  request.rule_id = "us-marine-ordinary";
  request.work = rules::Work::GasketsOnly;
  request.authority = "the marine inspector";
  request.stated_ceiling = units::bars_gauge(48);
  request.hold = units::minutes(30);
  return request;
}

Sheet watertube(const Request& request = ordinary()) {
  return make_sheet(example_boiler("watertube"), rule_files(), request);
}

double value(const Sheet& sheet, const std::string& key, const std::string& subject = "") {
  const working::Figure* figure = find_figure(sheet, key, subject);
  if (figure == nullptr || !figure->value) {
    ADD_FAILURE() << key << " (" << subject << ") has no value";
    return 0.0;
  }
  return units::at_border(*figure->value);
}

bool says(const std::vector<working::Message>& messages, const std::string& key) {
  for (const auto& message : messages) {
    if (message.key == key) return true;
  }
  return false;
}

const Section& section(const Sheet& sheet, const std::string& key) {
  for (const Section& one : sheet.sections) {
    if (one.key == key) return one;
  }
  throw NotFound("test.section", key);
}

TEST(Sheet, GoesTo125PercentOfTheWorkingPressure) {
  // 46 CFR 61.05-10, ordinary boilers: 1.25 x MAWP; 36 bar gives 45 bar.
  EXPECT_NEAR(value(watertube(), "rules.test_pressure", "us-marine-ordinary"), 45.0, 1e-9);
}

TEST(Sheet, TellsEachGaugeItsOwnReading) {
  // 45 bar is meant at 9.125 m; by hand, rho 999 kg/m3 [physics notes of ours]: 0.0980 bar/m.
  const Sheet sheet = watertube();
  EXPECT_NEAR(value(sheet, "sheet.gauge_go_to", "TG-1"), 45.0 - 0.275 * 0.0980, 1e-3);
  EXPECT_NEAR(value(sheet, "sheet.gauge_never_above", "TG-1"), 48.0 - 0.275 * 0.0980, 1e-3);
}

TEST(Sheet, AgreesWithTheReferenceModel) {
  // The reference counts 45 bar at its gauge, 0.275 m above the level meant here: 0.027 bar of
  // 45, which moves litres by 0.06 % and stiffness by less than 0.01 %.
  const Sheet sheet = watertube();
  EXPECT_NEAR(value(sheet, "sheet.water_to_fill") / 26.8863, 1.0, 2e-6);
  EXPECT_NEAR(value(sheet, "sheet.water_weight") / 262.936, 1.0, 5e-4);
  EXPECT_NEAR(value(sheet, "sheet.ml_per_bar") / 1468.46, 1.0, 5e-4);
  EXPECT_NEAR(value(sheet, "sheet.bar_per_kelvin") / 4.17046, 1.0, 2e-3);
  EXPECT_NEAR(value(sheet, "sheet.ml_per_kelvin") / 6124.16, 1.0, 2e-3);
  EXPECT_NEAR(value(sheet, "sheet.litres_to_stage", "sheet.stage.test") / 66.4337, 1.0, 1e-3);
  EXPECT_NEAR(value(sheet, "sheet.no_effect_temperature"), 5.30968, 0.01);
  EXPECT_NEAR(value(sheet, "sheet.heat_of_compression"), 0.0844158, 1e-4);
}

TEST(Sheet, GivesThePressureAtEachLevelOfTheReference) {
  // reference_table.json, "levels": head over the gauge, 0.001 bar.
  const double levels[][2] = {{8.50, 0.0882}, {2.60, 0.6662}, {1.20, 0.8034}, {1.35, 0.7887},
                              {7.35, 0.2008}, {6.85, 0.2498}, {4.90, 0.4409}, {8.90, 0.0490}};
  const Sheet sheet = watertube();
  const Section& places = section(sheet, "sheet.section.places");
  int found = 0;
  for (const auto& [level, head] : levels) {
    for (const working::Figure& figure : places.figures) {
      const auto& z = figure.working.inputs.back();
      if (std::fabs(z.value.si - level) > 1e-9) continue;
      EXPECT_NEAR(units::at_border(*figure.value), 45.0 + head - 0.0980 * 0.275, 1e-3) << level;
      ++found;
      break;
    }
  }
  EXPECT_EQ(found, 8);
}

TEST(Sheet, LooksAtEveryClosureAndMore) {
  const boiler::Boiler boiler = example_boiler("watertube");
  const Sheet sheet = watertube();
  for (const boiler::Closure& closure : boiler.closures) {
    bool found = false;
    for (const working::Figure& figure : section(sheet, "sheet.section.places").figures) {
      found =
          found || figure.subject == closure.tag || figure.subject.rfind(closure.tag + ".", 0) == 0;
    }
    EXPECT_TRUE(found) << closure.tag;
  }
}

TEST(Sheet, WantsGagsWhereTheTestPassesASetting) {
  const Sheet sheet = watertube();
  EXPECT_TRUE(says(section(sheet, "sheet.section.valves").notes, "sheet.valve_must_be_gagged"));
  Request request = ordinary();
  request.valves_gagged = false;
  EXPECT_TRUE(says(watertube(request).stops, "rules.valves_not_gagged"));
}

TEST(Sheet, KeepsColdWaterOutOfTheWindow) {
  // 46 CFR 61.05-5: watertube boilers, filling water 70 to 160 °F; 65 °F is too cold.
  Request request = ordinary();
  request.water = units::fahrenheit(65);
  EXPECT_TRUE(
      says(section(watertube(request), "sheet.section.temperature").notes, "rules.too_cold"));
  request.water = units::fahrenheit(100);
  EXPECT_FALSE(
      says(section(watertube(request), "sheet.section.temperature").notes, "rules.too_cold"));
}

TEST(Sheet, SaysWhenMetalWillSweat) {
  // 30 °C and 80 % have their dew point at 26.2 °C (Magnus, trade table).
  boiler::Boiler boiler = example_boiler("watertube");
  boiler.house.air_temperature = units::celsius(30);
  boiler.house.relative_humidity = 0.80;
  Request request = ordinary();
  request.metal = units::celsius(27);
  const Sheet sheet = make_sheet(boiler, rule_files(), request);
  EXPECT_NEAR(value(sheet, "sheet.dew_point"), 26.2, 0.05);
  EXPECT_TRUE(says(section(sheet, "sheet.section.temperature").notes, "sheet.metal_will_sweat"));
}

TEST(Sheet, GivesWhatNeedsNoRuleWithoutOne) {
  const Sheet sheet = watertube({});
  EXPECT_TRUE(says(sheet.missing, "sheet.rule_not_told"));
  EXPECT_TRUE(says(sheet.missing, "sheet.work_not_told"));
  EXPECT_FALSE(sheet.is_refused());
  EXPECT_GT(value(sheet, "sheet.ml_per_bar"), 0.0);
  EXPECT_GT(value(sheet, "sheet.water_to_fill"), 0.0);
  const working::Figure* go_to = find_figure(sheet, "sheet.gauge_go_to", "TG-1");
  ASSERT_NE(go_to, nullptr);
  EXPECT_FALSE(go_to->is_known());
  EXPECT_EQ(go_to->cannot_tell.key, "sheet.no_test_pressure");
}

TEST(Sheet, PresetsNothingAboveTheWorkingPressureWithoutANamedAuthority) {
  Request request = ordinary();
  request.authority.clear();
  const Sheet sheet = watertube(request);
  EXPECT_TRUE(says(sheet.stops, "rules.authority_not_named"));
  EXPECT_FALSE(find_figure(sheet, "sheet.gauge_go_to", "TG-1")->is_known());
}

TEST(Sheet, WantsAReasonForAnOwnPressureAndShowsTheRule) {
  Request request = ordinary();
  request.own_pressure = rules::OwnPressure{units::bars_gauge(30), ""};
  EXPECT_TRUE(says(watertube(request).stops, "rules.own_reason_missing"));
  request.own_pressure->reason = "a look at the gaskets below the valves";
  const Sheet sheet = watertube(request);
  EXPECT_FALSE(sheet.is_refused());
  EXPECT_NEAR(value(sheet, "sheet.rule_would_say", "us-marine-ordinary"), 45.0, 1e-9);
}

TEST(Sheet, RefusesAPressureThatYieldsAPart) {
  boiler::Boiler boiler = example_boiler("watertube");
  for (boiler::Part& part : boiler.parts) {
    if (part.tag == "SD") part.measured_wall = units::millimetres(9);
  }
  // By hand: p D_m/(2 t eta) = 4.5 MPa x 1259 mm / (18 mm eta) = 315 MPa / eta, above the yield
  // strength of any carbon drum steel.
  const Sheet sheet = make_sheet(boiler, rule_files(), ordinary());
  EXPECT_TRUE(says(sheet.stops, "sheet.above_stress_cap"));
}

TEST(Sheet, CannotTellStrengthOfAnUnknownMetal) {
  boiler::Boiler boiler = example_boiler("watertube");
  for (boiler::Part& part : boiler.parts) part.material.clear();
  const Sheet sheet = make_sheet(boiler, rule_files(), ordinary());
  const working::Figure* governing = find_figure(sheet, "sheet.governing_share");
  ASSERT_NE(governing, nullptr);
  EXPECT_FALSE(governing->is_known());
}

TEST(Sheet, KnowsABoilerByItsContentAlone) {
  const Sheet sheet = make_sheet(example_boiler("minimal"), rule_files(), {});
  EXPECT_GT(value(sheet, "sheet.water_to_fill"), 0.0);
  EXPECT_GT(value(sheet, "sheet.ml_per_bar"), 0.0);
}

TEST(Sheet, SaysThatAChosenRuleDoesNotApply) {
  Request request = ordinary();
  request.rule_id = "in-after-erection";
  EXPECT_TRUE(says(watertube(request).missing, "sheet.rule_does_not_apply"));
  EXPECT_FALSE(says(watertube().missing, "sheet.rule_does_not_apply"));
}

TEST(Sheet, ServesAFiretubeBoiler) {
  Request request;
  request.rule_id = "us-shore-tightness";
  request.work = rules::Work::GasketsOnly;
  const boiler::Boiler boiler = example_boiler("firetube");
  const Sheet sheet = make_sheet(boiler, rule_files(), request);
  EXPECT_GT(value(sheet, "sheet.water_to_fill"), 1.0);
  // UFC 3-430-07: above normal operating pressure, not above the lowest safety valve's setting.
  units::GaugePressure lowest = units::bars_gauge(1e3);
  for (const boiler::Mounting& mounting : boiler.mountings) {
    if (mounting.setting && *mounting.setting < lowest) lowest = *mounting.setting;
  }
  EXPECT_NEAR(value(sheet, "rules.most_pressure", "us-shore-tightness"),
              units::in_bars_gauge(lowest), 1e-9);
}

TEST(Sheet, RefusesAnUnknownRuleByName) {
  Request request;
  request.rule_id = "no-such-rule";
  try {
    watertube(request);
    FAIL() << "an unknown rule was taken";
  } catch (const NotFound& error) {
    EXPECT_EQ(error.code(), "sheet.unknown_rule");
    EXPECT_NE(std::string(error.what()).find("us-marine-ordinary"), std::string::npos);
  }
}

TEST(Sheet, ShowsTheWorkingOfEveryFigure) {
  for (const Section& one : watertube().sections) {
    for (const working::Figure& figure : one.figures) {
      if (!figure.is_known()) {
        EXPECT_FALSE(figure.cannot_tell.empty()) << figure.key;
        continue;
      }
      EXPECT_FALSE(figure.working.formula.empty()) << figure.key;
    }
  }
}

RC_GTEST_PROP(Sheet, LowerLevelsSeeMorePressure, ()) {
  Request request = ordinary();
  request.water = units::celsius(22 + *rc::gen::inRange(0, 40));
  const Sheet sheet = watertube(request);
  const auto& figures = section(sheet, "sheet.section.places").figures;
  for (std::size_t i = 1; i < figures.size(); ++i) {
    RC_ASSERT(figures[i].value->si >= figures[i - 1].value->si);
  }
}

}  // namespace
}  // namespace steamworthy::sheet
