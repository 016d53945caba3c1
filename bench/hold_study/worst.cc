#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "hold_study/tables.h"
#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

bool is_false(const Outcome& o) {
  const Answer& answer = o.answers[0];
  return !answer.refused.empty() || (answer.says == Says::NoLoss && o.loses_concern()) ||
         (answer.says == Says::Losing && o.loses_nothing()) ||
         (answer.says == Says::Gaining && o.gains_nothing());
}

/// Half-widths between truth and estimate, on the side where the truth is.
double away(const std::optional<Interval>& said, double truth) {
  if (!said) return 0.0;
  const double half =
      truth > said->estimate ? said->high - said->estimate : said->estimate - said->low;
  return std::fabs(truth - said->estimate) / std::max(half, 1e-6);
}

double badness(const Outcome& o) {
  const double miss = o.made.begins_within() ? 0.0 : away(o.answers[0].net_loss, o.net_mean);
  return (is_false(o) ? 1e6 : 0.0) + miss;
}

std::string range(const std::optional<Interval>& said) {
  return said ? fmt::format("{:.1f} [{:.1f}, {:.1f}]", said->estimate, said->low, said->high)
              : "none";
}

std::string described(const Outcome& o) {
  const Trial& test = o.made.test;
  const Instruments& set = o.made.instruments;
  const Answer& answer = o.answers[0];
  return fmt::format(
      "case {}{}: says {}{} {} (away {:.1f} half-widths), truth mean {:.1f} end {:.1f} mL/min\n"
      "    V {:.1f} m3, {:.0f} bar, {:.0f} C, hold {:.0f} min, every {:g} s, steps {:g} bar {:g} "
      "K, "
      "noise {:g} bar {:g} K, sensors {}/{}\n"
      "    leak {:.1f} n {:g} begins {:.0f} s, inflow {:.1f}, check {:.1f}, bulk drift {:+.2f} "
      "K/h, "
      "pump error {:+.1f} %, V {:+.1f} %, C {:+.1f} %\n"
      "    air says {} truth {:.2f} L; readings used to {:.0f} s into the hold\n",
      o.made.number, is_false(o) ? " FALSE" : "", name_of(answer.says),
      answer.refused.empty() ? "" : " REFUSED " + answer.refused, range(answer.net_loss),
      away(answer.net_loss, o.net_mean), o.net_mean, o.net_at_end, test.plant.volume_m3(),
      test.plan.stages_pa_gauge.back() / 1e5, test.start_k - zero_celsius_k,
      test.plan.hold_s / 60.0, set.every_s, set.gauge_step_pa / 1e5, set.thermometer_step_k,
      set.gauge_noise_pa / 1e5, set.thermometer_noise_k, set.water_group, set.metal_group,
      test.leak.at_test_pressure_m3_s / ml_per_min, test.leak.exponent, test.leak.begins_in_hold_s,
      test.inflow.at_test_pressure_m3_s / ml_per_min, test.pump.check_passes_m3_s / ml_per_min,
      o.bulk_drift_k_per_h, 100.0 * set.pump_scale_error,
      100.0 * (o.made.belief.volume_m3 / test.plant.volume_m3() - 1.0),
      100.0 * (o.made.belief.growth_per_pa / test.plant.growth_per_pa() - 1.0), range(answer.air_l),
      o.air_l, answer.used_until_s);
}

std::string columns(const std::optional<Interval>& said) {
  return said ? fmt::format("{:.3f},{:.3f},{:.3f}", said->estimate, said->low, said->high) : ",,";
}

}  // namespace

std::string worst(const std::vector<Outcome>& outcomes, std::size_t count) {
  std::vector<std::size_t> order(outcomes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return badness(outcomes[a]) > badness(outcomes[b]);
  });
  std::string text;
  for (std::size_t i = 0; i < std::min(count, order.size()); ++i) {
    text += described(outcomes[order[i]]);
  }
  return text;
}

std::string as_csv(const std::vector<Outcome>& outcomes) {
  std::string text =
      "case,volume_m3,test_bar,start_celsius,hold_min,every_s,gauge_step_bar,thermometer_step_k,"
      "one_space,leak,exponent,begins_s,inflow,check,net_mean,net_at_end,drift_k_per_h,air_l,says,"
      "q,q_low,q_high,end,end_low,end_high,air,air_low,air_high,detectable,reason,seconds\n";
  for (const Outcome& o : outcomes) {
    const Trial& test = o.made.test;
    const Instruments& set = o.made.instruments;
    const Answer& answer = o.answers[0];
    text += fmt::format(
        "{},{:.3f},{:g},{:.2f},{:g},{:g},{:g},{:g},{},{:.3f},{:g},{:.0f},{:.3f},{:.3f},{:.3f},{:."
        "3f},"
        "{:.4f},{:.4f},{},{},{},{},{},{},{:.4f}\n",
        o.made.number, test.plant.volume_m3(), test.plan.stages_pa_gauge.back() / 1e5,
        test.start_k - zero_celsius_k, test.plan.hold_s / 60.0, set.every_s,
        set.gauge_step_pa / 1e5, set.thermometer_step_k, set.water_group == set.metal_group ? 1 : 0,
        test.leak.at_test_pressure_m3_s / ml_per_min, test.leak.exponent,
        test.leak.begins_in_hold_s, test.inflow.at_test_pressure_m3_s / ml_per_min,
        test.pump.check_passes_m3_s / ml_per_min, o.net_mean, o.net_at_end, o.bulk_drift_k_per_h,
        o.air_l, name_of(answer.says), columns(answer.net_loss), columns(answer.loss_at_end),
        columns(answer.air_l), answer.detectable ? fmt::format("{:.3f}", *answer.detectable) : "",
        answer.reason, o.seconds);
  }
  return text;
}

}  // namespace steamworthy::hold_study
