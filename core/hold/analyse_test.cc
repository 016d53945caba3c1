// Checks hold/analyse.h on records made from the state equation, where the truth is known.
// The simulated logs of tests/traces and the study of bench/hold_study are the harder checks.
#include "hold/analyse.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "hold/made_record_test.h"

namespace steamworthy::hold {
namespace {

bool notes(const HoldAnswer& answer, const char* key) {
  return std::any_of(answer.notes.begin(), answer.notes.end(),
                     [&](const working::Message& m) { return m.key == key; });
}

TEST(Analyse, SeesNoLossWhereNoneIs) {
  const HoldAnswer answer = analyse(made_record({}));
  EXPECT_EQ(answer.result, Result::NoLossSeen);
  ASSERT_TRUE(answer.net_loss);
  EXPECT_NEAR(ml_min(answer.net_loss->estimate), 0.0, 1.0);
  EXPECT_LT(ml_min(answer.net_loss->high_90), 20.0);
  ASSERT_TRUE(answer.detectable);
  EXPECT_LT(ml_min(*answer.detectable), 20.0);
}

TEST(Analyse, FindsALossWithItsSize) {
  for (const double loss : {30.0, 60.0, 120.0}) {
    Truth truth;
    truth.loss_ml_min = loss;
    double lost_ml = 0.0;
    const HoldAnswer answer = analyse(made_record(truth, &lost_ml));
    const double mean = lost_ml / truth.hold_min;
    EXPECT_EQ(answer.result, Result::Losing) << loss;
    ASSERT_TRUE(answer.net_loss);
    EXPECT_NEAR(ml_min(answer.net_loss->estimate), mean, 0.03 * mean);
    EXPECT_LT(ml_min(answer.net_loss->low_90), mean);
    EXPECT_GT(ml_min(answer.net_loss->high_90), mean);
  }
}

TEST(Analyse, SeesWaterThatComesIn) {
  Truth truth;
  truth.loss_ml_min = -40.0;
  const HoldAnswer answer = analyse(made_record(truth));
  EXPECT_EQ(answer.result, Result::Gaining);
  ASSERT_TRUE(answer.net_loss);
  EXPECT_NEAR(ml_min(answer.net_loss->estimate), -40.0, 2.0);
  EXPECT_TRUE(notes(answer, "hold.pressure_rises"));
}

TEST(Analyse, DoesNotTakeCoolingForALoss) {
  Truth truth;
  truth.cooling_k_per_h = 0.5;
  const HoldAnswer answer = analyse(made_record(truth));
  EXPECT_EQ(answer.result, Result::NoLossSeen);
  ASSERT_TRUE(answer.split);
  EXPECT_GT(units::in_bars(answer.split->fall), 1.0);
  EXPECT_NEAR(units::in_bars(answer.split->cooling), units::in_bars(answer.split->fall), 0.2);
}

TEST(Analyse, WarmingDoesNotHideALoss) {
  Truth truth;
  truth.cooling_k_per_h = -0.3;
  truth.loss_ml_min = 40.0;
  const HoldAnswer answer = analyse(made_record(truth));
  EXPECT_EQ(answer.result, Result::Losing);
  ASSERT_TRUE(answer.split);
  EXPECT_LT(units::in_bars(answer.split->cooling), -0.5);
}

TEST(Analyse, TellsWhenALossBegan) {
  Truth truth;
  truth.loss_ml_min = 100.0;
  truth.begins_min = 30.0;
  double lost_ml = 0.0;
  const HoldInput input = made_record(truth, &lost_ml);
  const HoldAnswer answer = analyse(input);
  EXPECT_EQ(answer.result, Result::Losing);
  EXPECT_GT(answer.began_within_probability, 0.9);
  ASSERT_TRUE(answer.loss_at_end && answer.net_loss);
  const double end_bar = (input.record.pressure_pa_abs.back() - 101325.0) / 1e5;
  const double at_end = 100.0 * std::sqrt(end_bar / truth.test_bar);
  EXPECT_NEAR(ml_min(answer.loss_at_end->estimate), at_end, 0.08 * at_end);
  EXPECT_NEAR(ml_min(answer.net_loss->estimate), lost_ml / truth.hold_min, 2.0);
}

TEST(Analyse, SplitsTheFallWithoutARemainder) {
  Truth truth;
  truth.loss_ml_min = 25.0;
  truth.cooling_k_per_h = 0.3;
  truth.air_l = 10.0;
  const auto split = analyse(made_record(truth)).split;
  ASSERT_TRUE(split);
  EXPECT_NEAR((split->cooling + split->relaxing + split->air + split->loss + split->rest).si(),
              split->fall.si(), 1e-6);
}

TEST(Analyse, FindsTrappedAirInThePumpUp) {
  for (const double air : {0.0, 5.0, 30.0}) {
    Truth truth;
    truth.air_l = air;
    const HoldAnswer answer = analyse(made_record(truth));
    ASSERT_TRUE(answer.pump_up);
    const auto& found = answer.pump_up->trapped_air;
    EXPECT_NEAR(units::in_litres(found.estimate), air, 0.02 * air + 0.2);
    EXPECT_LE(units::in_litres(found.low_90), air);
    EXPECT_GE(units::in_litres(found.high_90), air);
    EXPECT_TRUE(answer.pump_up->known_at);
    ASSERT_TRUE(answer.pump_up->pump_rate);
    EXPECT_TRUE(answer.pump_up->venting_costs);
  }
}

TEST(Analyse, AnswersNothingWhileTheValvesWereNotSeenSet) {
  for (const ValvesSeen valves : {ValvesSeen{false, false}, {true, false}, {false, true}}) {
    HoldInput input = made_record({});
    input.valves = valves;
    const HoldAnswer answer = analyse(input);
    EXPECT_EQ(answer.result, Result::CannotTell);
    EXPECT_FALSE(answer.net_loss);
    EXPECT_EQ(answer.reason.key,
              valves.test_valve_shut ? "hold.pump_side_not_hung_open" : "hold.test_valve_not_shut");
  }
}

TEST(Analyse, NeverRulesOutALeakThatNobodyNamed) {
  HoldInput input = made_record({});
  input.leak_of_concern.reset();
  EXPECT_EQ(analyse(input).result, Result::CannotTell);
  EXPECT_EQ(analyse(input).reason.key, "hold.no_leak_of_concern");
  Truth truth;
  truth.loss_ml_min = 80;
  input = made_record(truth);
  input.leak_of_concern.reset();
  EXPECT_EQ(analyse(input).result, Result::Losing);
}

TEST(Analyse, ThreeReadingsGiveAnIntervalAndNoResult) {
  Truth truth;
  truth.every_s = 1200.0;
  truth.hold_min = 58.0;
  const HoldAnswer answer = analyse(made_record(truth));
  EXPECT_EQ(answer.readings, 3);
  EXPECT_EQ(answer.result, Result::CannotTell);
  EXPECT_EQ(answer.reason.key, "hold.too_few_readings");
  EXPECT_TRUE(answer.net_loss);
}

TEST(Analyse, WithoutAThermometerALargeBoilerCannotBeTold) {
  Truth truth;
  truth.volume_m3 = 27.0;
  HoldInput input = made_record(truth);
  input.record.water_temperature_k.clear();
  input.record.metal_temperature_k.clear();
  const HoldAnswer answer = analyse(input);
  EXPECT_EQ(answer.result, Result::CannotTell);
  ASSERT_TRUE(answer.net_loss);
  EXPECT_GT(ml_min(answer.net_loss->high_90), 20.0);
  EXPECT_TRUE(notes(answer, "hold.no_thermometer"));
}

TEST(Analyse, MetalStandsInForWaterAndSaysSo) {
  HoldInput input = made_record({});
  input.record.water_temperature_k.clear();
  const HoldAnswer with_metal = analyse(input);
  EXPECT_TRUE(notes(with_metal, "hold.metal_stands_in_for_water"));
  ASSERT_TRUE(with_metal.net_loss);
  const auto width = [](const HoldAnswer& a) {
    return ml_min(a.net_loss->high_90 - a.net_loss->low_90);
  };
  EXPECT_GT(width(with_metal), width(analyse(made_record({}))));
}

TEST(Analyse, AChangeOfTheGaugeIsNoLoss) {
  Truth truth;
  truth.loss_ml_min = 30.0;
  HoldInput input = made_record(truth);
  const double changed = *input.hold_start_s + 1500.0;
  for (std::size_t i = 0; i < input.record.seconds.size(); ++i) {
    if (input.record.seconds[i] >= changed) input.record.pressure_pa_abs[i] -= 1.5e5;
  }
  input.gauge.changed_at_s = {changed};
  const HoldAnswer answer = analyse(input);
  ASSERT_TRUE(answer.net_loss);
  EXPECT_LT(ml_min(answer.net_loss->low_90), 30.0);
  EXPECT_GT(ml_min(answer.net_loss->high_90), 30.0);
  EXPECT_NEAR(ml_min(answer.net_loss->estimate), 30.0, 5.0);
  EXPECT_TRUE(notes(answer, "hold.gauge_changed"));
}

TEST(Analyse, AFallThatTheRuleAllowsMeansALoss) {
  Truth truth;
  truth.loss_ml_min = 30.0;
  HoldInput input = made_record(truth);
  input.allowed_fall = AllowedFall{units::bars(10), std::nullopt};
  const HoldAnswer answer = analyse(input);
  ASSERT_TRUE(answer.allowed_fall);
  EXPECT_TRUE(answer.allowed_fall->met);
  // 10 bar in the hour, at the boiler's own mL a bar
  const double expected = 10.0 * units::in_millilitres_per_bar(answer.per_pressure) / 60.0;
  EXPECT_NEAR(ml_min(answer.allowed_fall->means), expected, 0.03 * expected);
  EXPECT_EQ(answer.result, Result::Losing);  // the rule is met, and water is lost all the same
  input.allowed_fall = AllowedFall{units::bars(1), std::nullopt};
  EXPECT_FALSE(analyse(input).allowed_fall->met);
  input.allowed_fall = AllowedFall{units::bars(1), units::hours(8)};
  EXPECT_FALSE(analyse(input).allowed_fall);
  EXPECT_TRUE(notes(analyse(input), "hold.hold_shorter_than_rule"));
}

TEST(Analyse, TakesTheEndOfPumpingForAStartThatIsNotStated) {
  HoldInput input = made_record({});
  const double stated = *input.hold_start_s;
  input.hold_start_s.reset();
  const HoldAnswer answer = analyse(input);
  EXPECT_NEAR(answer.hold_start_s, stated, 31.0);
  EXPECT_TRUE(notes(answer, "hold.start_from_record"));
}

TEST(Analyse, SaysWhereAirCannotBeTold) {
  HoldInput input = made_record({});
  for (double& p : input.record.pumped_m3) p = 0.0;
  EXPECT_TRUE(notes(analyse(input), "hold.no_pump_up"));
  input.record.pumped_m3.clear();
  EXPECT_TRUE(notes(analyse(input), "hold.no_pump_up"));
  input = made_record({});
  input.record.pumped_m3.back() = 0.0;
  EXPECT_TRUE(notes(analyse(input), "hold.pumped_total_falls"));
}

TEST(Analyse, ALogThatBeginsUnderPressureSaysLittleOfTheAir) {
  Truth truth;
  truth.air_l = 10.0;
  HoldInput input = made_record(truth);
  Record cut;
  for (std::size_t i = 14; i < input.record.seconds.size(); ++i) {
    cut.seconds.push_back(input.record.seconds[i]);
    cut.pressure_pa_abs.push_back(input.record.pressure_pa_abs[i]);
    cut.water_temperature_k.push_back(input.record.water_temperature_k[i]);
    cut.metal_temperature_k.push_back(input.record.metal_temperature_k[i]);
    cut.pumped_m3.push_back(input.record.pumped_m3[i]);
  }
  const auto whole = analyse(input).pump_up->trapped_air;
  input.record = cut;
  const HoldAnswer answer = analyse(input);
  ASSERT_TRUE(answer.pump_up);
  EXPECT_FALSE(answer.pump_up->from_vented);
  EXPECT_TRUE(notes(answer, "hold.pump_up_not_from_vented"));
  const auto& air = answer.pump_up->trapped_air;
  EXPECT_GT((air.high_90 - air.low_90).si(), 1.3 * (whole.high_90 - whole.low_90).si());
}

// One stroke in, the gauge still near zero: the air that was squeezed first is not in the log.
TEST(Analyse, ALogThatBeginsWithTheFirstStrokesIsNoVentedStart) {
  Truth truth;
  truth.air_l = 10.0;
  HoldInput input = made_record(truth);
  for (auto* column :
       {&input.record.seconds, &input.record.pressure_pa_abs, &input.record.water_temperature_k,
        &input.record.metal_temperature_k, &input.record.pumped_m3}) {
    column->erase(column->begin(), column->begin() + 5);
  }
  ASSERT_GT(input.record.pumped_m3.front(), 0.0);
  ASSERT_LT(input.record.pressure_pa_abs.front(), 101325.0 + 0.1e5);
  const HoldAnswer answer = analyse(input);
  ASSERT_TRUE(answer.pump_up);
  EXPECT_FALSE(answer.pump_up->from_vented);
  EXPECT_LE(units::in_litres(answer.pump_up->trapped_air.low_90), 10.0);
  EXPECT_GE(units::in_litres(answer.pump_up->trapped_air.high_90), 10.0);
}

TEST(Analyse, RefusesWhatIsNoRecordAndNoBoiler) {
  HoldInput input = made_record({});
  input.record.pressure_pa_abs.pop_back();
  EXPECT_THROW(analyse(input), OutOfRange);
  input = made_record({});
  input.boiler.volume = units::cubic_metres(0);
  EXPECT_THROW(analyse(input), OutOfRange);
  EXPECT_EQ(analyse([] {
              HoldInput empty;
              empty.boiler.volume = units::cubic_metres(1);
              empty.boiler.growth = units::per_pascal(1e-10);
              return empty;
            }())
                .reason.key,
            "hold.no_readings");
}

}  // namespace
}  // namespace steamworthy::hold
