#include "hold/analyse.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "hold/decide.h"
#include "hold/pump_answer.h"
#include "numerics/math.h"
#include "units/makers.h"

namespace steamworthy::hold {

namespace {

constexpr std::size_t most_pump_rows = 60;

using units::Kind;
using units::Measure;

void check_boiler(const BoilerKnown& boiler) {
  const auto require = [](bool good, const char* name, double value, const char* accepted) {
    if (!good) {
      throw OutOfRange("hold.boiler", fmt::format("the boiler's {} is {}, which is not {}", name,
                                                  value, accepted));
    }
  };
  const auto fraction = [](double x) { return x >= 0.0 && x <= 1.0; };
  require(boiler.volume.si() > 1e-6 && boiler.volume.si() < 1e5, "volume in m3", boiler.volume.si(),
          "above zero");
  require(boiler.growth.si() >= 0.0 && boiler.growth.si() < 1e-6, "growth per pressure in 1/Pa",
          boiler.growth.si(), "from zero to 1e-6");
  require(fraction(boiler.volume_sd_fraction), "deviation of the volume", boiler.volume_sd_fraction,
          "a fraction of one");
  require(fraction(boiler.growth_sd_fraction), "deviation of the growth", boiler.growth_sd_fraction,
          "a fraction of one");
  require(boiler.steel_expansion.si() >= 0.0 && boiler.steel_expansion.si() < 1e-4,
          "steel's expansion in 1/K", boiler.steel_expansion.si(), "from zero to 1e-4");
}

units::VolumeFlow flow(double ml_min) { return units::millilitres_per_minute(ml_min); }

Estimate<units::VolumeFlow> estimate(const Spread& s) {
  return {flow(s.mean), flow(s.low), flow(s.high)};
}

// What is not known of the water per pressure, as a fraction of it.
double stiffness_doubt(const HoldInput& input, const HoldRows& rows,
                       const std::optional<PumpFit>& pump) {
  if (pump) return 0.03;
  const double k_m3_pa = rows.k_ml_per_pa * 1e-6;
  const double share = input.boiler.growth.si() * input.boiler.volume.si() / k_m3_pa;
  const double mean_pa = rows.pressure_pa.mean();
  // air that nobody measured: 2 mL a litre of boiler, usual after a hasty filling (from memory)
  const double air =
      0.002 * input.boiler.volume.si() * input.barometer.si() / (mean_pa * mean_pa) / k_m3_pa;
  return std::sqrt(input.boiler.volume_sd_fraction * input.boiler.volume_sd_fraction +
                   share * share * input.boiler.growth_sd_fraction *
                       input.boiler.growth_sd_fraction +
                   air * air);
}

FallSplit split_of(const HoldRows& rows, const InstrumentsUsed& used,
                   const std::vector<LossCell>& cells, double mean_ml_min) {
  const Eigen::Index last = rows.pressure_pa.size() - 1;
  const double k = rows.k_ml_per_pa;
  const double warming =
      (rows.water_k(last) - rows.water_k(0)) + used.metal_weight * rows.apart_k(last);
  const double steel = rows.steel_k(last) - rows.steel_k(0);
  double relaxing = 0.0, air = 0.0, unseen = 0.0;
  for (const LossCell& c : cells) {
    relaxing += c.weight * c.relaxing_pa;
    air += c.weight * c.air_pa;
    unseen += c.weight * c.unseen_cooling_pa;
  }
  const double fall = rows.whole_fall_pa;
  const double cooling =
      -(rows.theta_ml_per_k * warming - rows.steel_ml_per_k * steel) / k + unseen;
  const double loss = mean_ml_min * rows.whole_s / 60.0 / k;
  // to a ten-thousandth of a bar: no gauge shows more
  const auto pa = [](double x) {
    return units::PressureDifference::from_si(10.0 * std::floor(x / 10.0 + 0.5));
  };
  FallSplit split{pa(fall), pa(cooling), pa(relaxing), pa(air), pa(loss), {}};
  split.rest = split.fall - split.cooling - split.relaxing - split.air - split.loss;
  return split;
}

void judge_allowed_fall(const HoldInput& input, const CleanRecord& record, const HoldRows& rows,
                        HoldAnswer& answer) {
  if (!input.allowed_fall) return;
  const double start = answer.hold_start_s;
  const double hold = answer.hold_end_s - start;
  const double within = input.allowed_fall->within ? input.allowed_fall->within->si() : hold;
  if (!(within > 0.0) || within > hold + 60.0) {
    answer.notes.push_back(
        {"hold.hold_shorter_than_rule",
         {{"hold", Measure{Kind::Duration, hold}}, {"asked", Measure{Kind::Duration, within}}}});
    return;
  }
  std::optional<double> first;
  double last = 0.0;
  for (std::size_t i = 0; i < record.size(); ++i) {
    if (record.seconds[i] < start || record.seconds[i] > start + within + 1e-6) continue;
    if (!first) first = record.pressure_pa[i];
    last = record.pressure_pa[i];
  }
  if (!first) return;
  AllowedFallAnswer allowed;
  allowed.seen = units::PressureDifference::from_si(*first - last);
  allowed.met = allowed.seen.si() <= input.allowed_fall->fall.si() + 1e-6;
  allowed.means = flow(input.allowed_fall->fall.si() * rows.k_ml_per_pa / (within / 60.0));
  answer.allowed_fall = allowed;
}

void note_record(const HoldInput& input, const CleanRecord& record, const InstrumentsUsed& used,
                 HoldAnswer& answer) {
  auto& notes = answer.notes;
  if (record.out_of_range > 0) {
    notes.push_back(
        {"hold.rows_out_of_range", {{"rows", Measure{Kind::Count, double(record.out_of_range)}}}});
  }
  if (record.pumped_falls) notes.push_back({"hold.pumped_total_falls", {}});
  if (record.water == CleanRecord::Source::Metal) {
    notes.push_back({"hold.metal_stands_in_for_water", {}});
  }
  if (record.water == CleanRecord::Source::Constant) notes.push_back({"hold.no_thermometer", {}});
  if (!input.gauge.changed_at_s.empty()) notes.push_back({"hold.gauge_changed", {}});
  if (used.step_assumed && used.gauge_step_pa > 0.0) {
    notes.push_back({"hold.gauge_step_assumed",
                     {{"step", Measure{Kind::PressureDifference, used.gauge_step_pa}}}});
  }
  if (!input.hold_start_s) notes.push_back({"hold.start_from_record", {}});
}

void note_pump_up(const std::optional<PumpRows>& rows, const std::optional<PumpFit>& fit,
                  HoldAnswer& answer) {
  if (!fit) {
    answer.notes.push_back({"hold.no_pump_up", {}});
    return;
  }
  if (!rows->from_vented) answer.notes.push_back({"hold.pump_up_not_from_vented", {}});
  if (rows->let_down_before) answer.notes.push_back({"hold.let_down_before", {}});
  if (std::fabs(fit->scale - 1.0) > 0.10) {
    answer.notes.push_back(
        {"hold.scale_far_from_description", {{"scale", Measure{Kind::Fraction, fit->scale}}}});
  }
}

void note_hold(const HoldRows& rows, units::AbsolutePressure barometer, HoldAnswer& answer) {
  const Eigen::Index last = rows.pressure_pa.size() - 1;
  const double start = rows.pressure_pa(0) - barometer.si();
  const double end = rows.pressure_pa(last) - barometer.si();
  if (rows.fell_suddenly) answer.notes.push_back({"hold.fell_suddenly", {}});
  if (rows.pressure_gone) answer.notes.push_back({"hold.pressure_gone", {}});
  if (rows.gauge_steps.empty() && end < 0.9 * start) {
    answer.notes.push_back({"hold.fell_far",
                            {{"from", Measure{Kind::GaugePressure, start}},
                             {"to", Measure{Kind::GaugePressure, end}}}});
  }
  if (rows.gauge_steps.empty() && end > start * 1.01) {
    answer.notes.push_back({"hold.pressure_rises", {}});
  }
}

bool sane(const PumpFit& fit) { return fit.scale > 0.8 && fit.scale < 1.25; }

// Twice through: the hold's loss corrects the pump-up, the pump-up the hold.
struct Passes {
  std::optional<PumpRows> pump_rows;
  std::optional<PumpFit> pump;
  LossPrior loss_prior;
  std::optional<HoldRows> rows;
  std::vector<LossCell> cells;
};

Passes run(const HoldInput& input, const CleanRecord& record, const InstrumentsUsed& used,
           const HoldBounds& bounds) {
  const Lump lump = Lump::of(input.boiler, input.barometer);
  Passes passes;
  passes.pump_rows = pump_rows(input, record, used, bounds.start_s, most_pump_rows);
  const bool counts = input.valves.test_valve_shut && input.valves.pump_side_hung_open;
  for (int pass = 0; pass < 2; ++pass) {
    if (passes.pump_rows) {
      passes.pump = fit_pump_up(input, *passes.pump_rows, used, lump, passes.loss_prior);
    }
    const bool use = passes.pump && sane(*passes.pump);
    const double scale = use ? passes.pump->scale : 1.0;
    const double air = use ? std::max(passes.pump->air_m3, 0.0) : 0.0;
    passes.rows = hold_rows(input, record, lump, bounds, scale, air);
    if (!passes.rows || !counts) break;
    LossOptions options;
    options.onsets = pass == 1;
    if (use && pass == 1) {
      const double most_air = std::max(passes.pump->air_m3 + 1.6449 * passes.pump->air_sd_m3, 0.0);
      options.dissolving_air_m3 =
          most_air * lump.barometer_pa / passes.rows->pressure_pa.maxCoeff();
    }
    passes.cells = loss_cells(*passes.rows, used, options);
    if (passes.cells.empty()) break;
    const Spread loss = spread_while_running(passes.cells);
    if (pass == 0) {
      const double mean = std::max(loss.mean, 0.0);
      const double sd = std::max({loss.sd, 1.0, 0.15 * std::fabs(loss.mean)});
      passes.loss_prior = {0.9 * flow(mean).si(), 1.3 * flow(sd).si()};
    }
  }
  return passes;
}

void answer_hold(const HoldInput& input, const InstrumentsUsed& used, const Passes& passes,
                 HoldAnswer& answer) {
  const HoldRows& rows = *passes.rows;
  const double doubt = stiffness_doubt(input, rows, passes.pump);
  Judged judged;
  // Once the pressure was gone nothing more was lost: the mean is over the whole hold.
  judged.mean = scaled(widened(spread_of_mean(passes.cells), doubt), rows.used_share);
  judged.running = widened(spread_while_running(passes.cells), doubt);
  judged.detectable_ml_min = 3.3 * spread_of_mean(passes.cells).sd;
  judged.concern_ml_min =
      input.leak_of_concern ? units::in_millilitres_per_minute(*input.leak_of_concern) : 0.0;
  judged.readings = rows.reading_count;
  const bool set = judged.concern_ml_min > 0.0;
  const double scale = set ? judged.concern_ml_min : judged.detectable_ml_min;
  judged.chances = chances(passes.cells, 5.0 * scale, scale);
  for (const LossCell& c : passes.cells) {
    if (c.onset > 0.0) answer.began_within_probability += c.weight;
  }
  answer.net_loss = estimate(judged.mean);
  if (answer.began_within_probability > 0.5) {
    answer.loss_at_end = estimate(widened(spread_at_end(passes.cells), doubt));
  }
  answer.detectable = flow(judged.detectable_ml_min);
  answer.no_loss_probability = judged.chances.nothing;
  answer.split = split_of(rows, used, passes.cells, judged.mean.mean);
  decide(judged, answer);
}

}  // namespace

HoldAnswer analyse(const HoldInput& input) {
  check_boiler(input.boiler);
  const CleanRecord record = clean(input.record);
  HoldAnswer answer;
  answer.notes = input.notes;
  if (record.size() < 2) {
    answer.reason = {"hold.no_readings", {}};
    answer.settle_by.push_back({"hold.read_every_minute", {}});
    return answer;
  }
  const HoldBounds bounds{input.hold_start_s.value_or(inferred_hold_start(record)),
                          input.hold_end_s};
  const InstrumentsUsed used = instruments_used(input, record, bounds.start_s);
  const Passes passes = run(input, record, used, bounds);
  note_record(input, record, used, answer);
  note_pump_up(passes.pump_rows, passes.pump, answer);
  if (passes.pump) {
    answer.pump_up =
        pump_up_answer(input, *passes.pump_rows, used, Lump::of(input.boiler, input.barometer),
                       *passes.pump, passes.loss_prior);
  }
  answer.hold_start_s = bounds.start_s;
  answer.hold_end_s = bounds.start_s;
  if (!passes.rows) {
    answer.reason = {"hold.too_few_readings", {{"readings", Measure{Kind::Count, 0.0}}}};
    answer.settle_by.push_back({"hold.read_every_minute", {}});
    return answer;
  }
  const HoldRows& rows = *passes.rows;
  answer.hold_end_s = rows.end_s;
  answer.readings = rows.reading_count;
  answer.per_pressure = units::millilitres_per_bar(rows.k_ml_per_pa * 1e5);
  answer.per_temperature = units::millilitres_per_kelvin(rows.theta_ml_per_k - rows.steel_ml_per_k);
  note_hold(rows, input.barometer, answer);
  judge_allowed_fall(input, record, rows, answer);
  if (!input.valves.test_valve_shut) {
    answer.reason = {"hold.test_valve_not_shut", {}};
    answer.settle_by.push_back({"hold.shut_and_hang_open", {}});
  } else if (!input.valves.pump_side_hung_open) {
    answer.reason = {"hold.pump_side_not_hung_open", {}};
    answer.settle_by.push_back({"hold.shut_and_hang_open", {}});
  } else if (passes.cells.empty()) {
    answer.reason = {"hold.nothing_can_be_told", {}};
    answer.settle_by.push_back({"hold.read_every_minute", {}});
  } else {
    answer_hold(input, used, passes, answer);
  }
  return answer;
}

}  // namespace steamworthy::hold
