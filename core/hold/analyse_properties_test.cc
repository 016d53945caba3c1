// Invariants of hold/analyse.h: what must not matter does not, and nothing breaks it.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

#include "hold/made_record_test.h"

namespace steamworthy::hold {
namespace {

Truth any_truth() {
  const auto in = [](int low, int high) { return *rc::gen::inRange(low, high); };
  Truth truth;
  truth.volume_m3 = in(15, 300) / 10.0;
  truth.test_bar = in(10, 120);
  truth.loss_ml_min = in(-60, 200);
  truth.air_l = in(0, 30);
  truth.celsius = in(10, 45);
  truth.cooling_k_per_h = in(-10, 10) / 10.0;
  truth.hold_min = in(20, 40);
  truth.every_s = in(30, 120);
  truth.step_bar = in(0, 2) * 0.1;
  return truth;
}

void expect_same(const HoldAnswer& a, const HoldAnswer& b, double tolerance) {
  RC_ASSERT(a.result == b.result);
  RC_ASSERT(a.net_loss.has_value() == b.net_loss.has_value());
  if (!a.net_loss) return;
  const double size = 1.0 + std::fabs(ml_min(a.net_loss->estimate));
  RC_ASSERT(std::fabs(ml_min(a.net_loss->estimate - b.net_loss->estimate)) < tolerance * size);
  RC_ASSERT(std::fabs(ml_min(a.net_loss->low_90 - b.net_loss->low_90)) < tolerance * size);
  RC_ASSERT(std::fabs(ml_min(a.net_loss->high_90 - b.net_loss->high_90)) < tolerance * size);
}

RC_GTEST_PROP(AnalyseProperties, AnotherClockChangesNothing, ()) {
  HoldInput input = made_record(any_truth());
  const HoldAnswer before = analyse(input);
  const double shift = 60.0 * *rc::gen::inRange(-5000, 5000);
  for (double& s : input.record.seconds) s += shift;
  *input.hold_start_s += shift;
  *input.hold_end_s += shift;
  expect_same(before, analyse(input), 1e-6);
}

RC_GTEST_PROP(AnalyseProperties, TheOrderOfTheRowsChangesNothing, ()) {
  HoldInput input = made_record(any_truth());
  const HoldAnswer before = analyse(input);
  std::vector<std::size_t> order(input.record.seconds.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::mt19937 random(*rc::gen::arbitrary<unsigned>());
  std::shuffle(order.begin(), order.end(), random);
  const Record sorted = input.record;
  for (std::size_t k = 0; k < order.size(); ++k) {
    input.record.seconds[k] = sorted.seconds[order[k]];
    input.record.pressure_pa_abs[k] = sorted.pressure_pa_abs[order[k]];
    input.record.water_temperature_k[k] = sorted.water_temperature_k[order[k]];
    input.record.metal_temperature_k[k] = sorted.metal_temperature_k[order[k]];
    input.record.pumped_m3[k] = sorted.pumped_m3[order[k]];
  }
  expect_same(before, analyse(input), 0.0 + 1e-12);
}

RC_GTEST_PROP(AnalyseProperties, AReadingWrittenTwiceChangesNothing, ()) {
  HoldInput input = made_record(any_truth());
  const HoldAnswer before = analyse(input);
  Record& r = input.record;
  const std::size_t row = *rc::gen::inRange<std::size_t>(0, r.seconds.size());
  for (auto* column : {&r.seconds, &r.pressure_pa_abs, &r.water_temperature_k,
                       &r.metal_temperature_k, &r.pumped_m3}) {
    column->insert(column->begin() + static_cast<std::ptrdiff_t>(row), (*column)[row]);
  }
  expect_same(before, analyse(input), 1e-9);
}

RC_GTEST_PROP(AnalyseProperties, MoreLossMovesTheEstimateUp, ()) {
  Truth truth = any_truth();
  // so much that the pressure falls by 2 to 30 % in the hold, twice that at most
  const double ml_per_bar = truth.volume_m3 * (4.5e-10 + truth.growth_per_pa) * 1e5 * 1e6;
  truth.loss_ml_min =
      *rc::gen::inRange(2, 30) / 100.0 * truth.test_bar * ml_per_bar / truth.hold_min;
  truth.step_bar = 0.0;
  const HoldAnswer once = analyse(made_record(truth));
  truth.loss_ml_min *= 2.0;
  const HoldAnswer twice = analyse(made_record(truth));
  RC_ASSERT(once.net_loss && twice.net_loss);
  RC_ASSERT(twice.net_loss->estimate > once.net_loss->estimate);
}

RC_GTEST_PROP(AnalyseProperties, TheIntervalHoldsItsEstimateAndThePartsTheFall, ()) {
  const HoldAnswer answer = analyse(made_record(any_truth()));
  RC_ASSERT(answer.net_loss && answer.split);
  RC_ASSERT(answer.net_loss->low_90 <= answer.net_loss->estimate);
  RC_ASSERT(answer.net_loss->estimate <= answer.net_loss->high_90);
  const FallSplit& s = *answer.split;
  const double sum = (s.cooling + s.relaxing + s.air + s.loss + s.rest).si();
  RC_ASSERT(std::fabs(sum - s.fall.si()) < 1e-6 * (1.0 + std::fabs(s.fall.si()) + 1e5));
}

bool finite(const HoldAnswer& a) {
  const auto good = [](double x) { return std::isfinite(x); };
  bool all = good(a.hold_start_s) && good(a.per_pressure.si()) && good(a.per_temperature.si());
  if (a.net_loss) {
    all = all && good(a.net_loss->low_90.si()) && good(a.net_loss->estimate.si()) &&
          good(a.net_loss->high_90.si()) && good(a.detectable->si());
  }
  if (a.split) {
    all = all && good(a.split->cooling.si()) && good(a.split->rest.si()) && good(a.split->air.si());
  }
  if (a.pump_up) {
    all = all && good(a.pump_up->trapped_air.estimate.si()) &&
          good(a.pump_up->trapped_air.high_90.si()) && good(a.pump_up->scale);
  }
  return all;
}

// Any columns of finite numbers within what a log could hold, however senseless.
RC_GTEST_PROP(AnalyseProperties, NothingMakesItPrintNoNumber, ()) {
  const auto rows = *rc::gen::inRange<std::size_t>(0, 40);
  const auto column = [&](int low, int high, double unit) {
    std::vector<double> values;
    for (std::size_t i = 0; i < rows; ++i) values.push_back(*rc::gen::inRange(low, high) * unit);
    return values;
  };
  HoldInput input;
  input.record.seconds = column(-100, 4000, 1.0);
  input.record.pressure_pa_abs = column(-10, 450, 1e5);
  if (*rc::gen::arbitrary<bool>()) input.record.water_temperature_k = column(260, 380, 1.0);
  if (*rc::gen::arbitrary<bool>()) input.record.metal_temperature_k = column(200, 600, 1.0);
  if (*rc::gen::arbitrary<bool>()) {
    input.record.pumped_m3 = column(0, 100, 1e-3);
    std::sort(input.record.pumped_m3.begin(), input.record.pumped_m3.end());
    std::sort(input.record.seconds.begin(), input.record.seconds.end());
  }
  input.boiler.volume = units::cubic_metres(*rc::gen::inRange(1, 500) * 0.1);
  input.boiler.growth = units::per_pascal(*rc::gen::inRange(0, 30) * 1e-11);
  if (*rc::gen::arbitrary<bool>()) input.hold_start_s = *rc::gen::inRange(-200, 5000);
  if (*rc::gen::arbitrary<bool>()) input.hold_end_s = *rc::gen::inRange(-200, 5000);
  if (*rc::gen::arbitrary<bool>()) input.gauge.resolution = units::bars(*rc::gen::inRange(0, 20));
  if (*rc::gen::arbitrary<bool>()) input.gauge.changed_at_s = column(-200, 5000, 1.0);
  if (*rc::gen::arbitrary<bool>()) input.leak_of_concern = units::millilitres_per_minute(20);
  input.valves = {true, true};
  input.pocket_below_gauge = units::metres(*rc::gen::inRange(-20, 20));
  const HoldAnswer answer = analyse(input);
  RC_ASSERT(finite(answer));
  RC_ASSERT(!answer.reason.empty());
}

}  // namespace
}  // namespace steamworthy::hold
