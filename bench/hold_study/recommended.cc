#include "hold_study/recommended.h"

#include "hold/analyse.h"
#include "hold_study/water_kell.h"
#include "units/makers.h"

namespace steamworthy::hold_study {
namespace {

template <class Quantity>
Interval interval(const hold::Estimate<Quantity>& estimate, double unit) {
  return {estimate.estimate.si() / unit, estimate.low_90.si() / unit, estimate.high_90.si() / unit};
}

Says says(hold::Result result) {
  switch (result) {
    case hold::Result::NoLossSeen:
      return Says::NoLoss;
    case hold::Result::Losing:
      return Says::Losing;
    case hold::Result::Gaining:
      return Says::Gaining;
    case hold::Result::CannotTell:
      break;
  }
  return Says::CannotTell;
}

}  // namespace

hold::HoldInput input_of(const Case& made) {
  const Instruments& set = made.instruments;
  hold::HoldInput input;
  input.record.seconds = made.log.seconds;
  for (const double gauge : made.log.pressure_pa_gauge) {
    input.record.pressure_pa_abs.push_back(gauge + atmosphere_pa);
  }
  input.record.water_temperature_k = made.log.water_k;
  input.record.metal_temperature_k = made.log.metal_k;
  input.record.pumped_m3 = made.log.pumped_m3;
  input.hold_start_s = made.course.hold_start_s;
  input.boiler.volume = units::Volume::from_si(made.belief.volume_m3);
  input.boiler.growth = units::Compressibility::from_si(made.belief.growth_per_pa);
  input.gauge.resolution = units::PressureDifference::from_si(set.gauge_step_pa);
  input.gauge.noise = units::PressureDifference::from_si(set.gauge_noise_pa);
  input.thermometers.resolution = units::TemperatureDifference::from_si(set.thermometer_step_k);
  input.thermometers.noise = units::TemperatureDifference::from_si(set.thermometer_noise_k);
  input.thermometers.in_one_space = set.water_group == set.metal_group;
  input.valves.test_valve_shut = made.test.plan.test_valve_shut;
  input.valves.pump_side_hung_open = made.test.plan.test_valve_shut;
  input.pocket_below_gauge = units::Length::from_si(made.belief.pocket_below_gauge_m);
  input.leak_of_concern = units::millilitres_per_minute(leak_of_concern_ml_per_min);
  return input;
}

Answer recommended(const Case& made) {
  Answer answer;
  try {
    const hold::HoldAnswer said = hold::analyse(input_of(made));
    answer.says = says(said.result);
    answer.reason = said.reason.key;
    answer.used_until_s = said.hold_end_s - made.course.hold_start_s;
    if (said.net_loss) answer.net_loss = interval(*said.net_loss, ml_per_min);
    if (said.loss_at_end) answer.loss_at_end = interval(*said.loss_at_end, ml_per_min);
    if (said.detectable) answer.detectable = said.detectable->si() / ml_per_min;
    if (said.pump_up) answer.air_l = interval(said.pump_up->trapped_air, 1e-3);
  } catch (const std::exception& refusal) {
    answer.refused = refusal.what();
  }
  return answer;
}

}  // namespace steamworthy::hold_study
