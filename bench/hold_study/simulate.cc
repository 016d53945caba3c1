#include "hold_study/simulate.h"

#include <algorithm>
#include <cmath>

#include "hold_study/water_kell.h"
#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

constexpr double step_s = 1.0;
constexpr double water_heat = 4180.0;
constexpr double air_settles_s = 5.0;  ///< pocket with the steel and water around it

/// A test while it runs.
class March {
 public:
  explicit March(const Trial& test)
      : test_(test), supply_density_(density(atmosphere_pa, test.pump.supply_k)) {
    for (std::size_t g = 0; g < groups; ++g) {
      state_.water_k[g] = test.start_k + test.disorder.water_k[g];
      state_.steel_k[g] = state_.water_k[g] + test.disorder.steel_k[g];
    }
    state_.air_mol = air_mol(test.air_m3, state_.water_k[0]);
    state_.water_kg = mass_at(test.plant, state_, atmosphere_pa);
    record();
  }

  void stand_vented(double seconds) {
    for (double until = now_ + seconds; now_ < until;) {
      exchange_heat(test_.plant, state_, test_.ambient(now_ + step_s / 2), step_s);
      // The vent lets water out or the hose fills up: the gauge stays at zero.
      state_.water_kg = mass_at(test_.plant, state_, atmosphere_pa);
      now_ += step_s;
      record();
    }
    course_.vent_shut_s = now_;
  }

  void pump_to(double gauge_pa, double longest_s) {
    const double until = now_ + longest_s;
    while (gauge() < gauge_pa && now_ < until) advance(stroke_water());
  }

  void wait(double seconds) {
    for (double until = now_ + seconds; now_ < until - 1e-9;) advance(0.0);
  }

  void begin_hold() {
    course_.hold_start_s = now_;
    holding_ = true;
    valve_open_ = !test_.plan.test_valve_shut;
  }

  Course take() { return std::move(course_); }

 private:
  double gauge() const { return pressure_ - atmosphere_pa; }
  double test_pressure() const { return test_.plan.stages_pa_gauge.back(); }

  /// Volume that the pump delivers in this step: whole strokes only.
  double stroke_water() {
    phase_ += test_.pump.rate_m3_s * step_s / test_.pump.stroke_m3;
    const double whole = std::floor(phase_ + 1e-9);
    phase_ -= whole;
    return whole * test_.pump.stroke_m3;
  }

  double share(double exponent) const {
    if (gauge() <= 0.0) return 0.0;
    return numerics::pow(gauge() / test_pressure(), exponent);
  }

  double leaving() const {
    double flow = 0.0;
    const Leak& leak = test_.leak;
    const bool begun = leak.begins_in_hold_s <= 0.0 ||
                       (holding_ && now_ >= course_.hold_start_s + leak.begins_in_hold_s);
    if (begun) flow += leak.at_test_pressure_m3_s * share(leak.exponent);
    if (valve_open_) flow += test_.pump.check_passes_m3_s * share(0.5);
    return flow;
  }

  double entering() const {
    const Inflow& inflow = test_.inflow;
    if (inflow.at_test_pressure_m3_s <= 0.0) return 0.0;
    const double head = (inflow.main_pa_gauge - gauge()) / (inflow.main_pa_gauge - test_pressure());
    return head <= 0.0 ? 0.0 : inflow.at_test_pressure_m3_s * std::sqrt(head);
  }

  void dissolve() {
    if (state_.air_mol <= 0.0) return;
    // Henry's constant of air, and diffusion from a surface since the vent was shut.
    const double henry = 7.8e-6 * (1.0 + 0.02 * (298.15 - test_.start_k));
    const double since = std::max(now_ - course_.vent_shut_s, 1.0);
    const double taken = henry * std::max(gauge(), 0.0) * test_.air_surface_m2 *
                         std::sqrt(2.0e-9 / numerics::pi / since) * step_s;
    state_.air_mol = std::max(state_.air_mol - taken, 0.0);
  }

  /// `pumped` in m3 at the suction.
  void advance(double pumped) {
    const Plant& plant = test_.plant;
    exchange_heat(plant, state_, test_.ambient(now_ + step_s / 2), step_s);
    state_.air_excess_k *= settle_;
    dissolve();

    // Supply water and what passes in arrive at the bottom with their own temperature.
    const double in_kg = (pumped + entering() * step_s) * supply_density_;
    const double heat_capacity = plant.group[2].volume_m3 * density(pressure_, state_.water_k[2]);
    state_.water_k[2] += in_kg / heat_capacity * (test_.pump.supply_k - state_.water_k[2]);

    const double boiler_density = density(pressure_, state_.water_k[1]);
    const double out_m3 = leaving() * step_s;
    const double change_kg = in_kg - out_m3 * boiler_density;
    state_.water_kg += change_kg;
    course_.balance_kg += change_kg;
    pumped_ += pumped;
    lost_ += out_m3 - entering() * step_s * supply_density_ / boiler_density;

    // The pressure moves the temperatures and they move the pressure: the first guess errs by
    // about one part in a hundred of the step, the second by one in ten thousand, and so on.
    const State before = state_;
    double next = pressure_of(plant, before, pressure_);
    for (int turn = 0; turn < 4; ++turn) {
      state_ = before;
      squeeze(plant, state_, next, next - pressure_);
      const double better = pressure_of(plant, state_, next);
      const bool settled = std::fabs(better - next) < 0.1;
      next = better;
      if (settled) break;
    }
    pressure_ = next;
    now_ += step_s;
    record();
  }

  void record() {
    course_.seconds.push_back(now_);
    course_.pressure_pa.push_back(pressure_);
    course_.water_k.push_back(state_.water_k);
    course_.steel_k.push_back(state_.steel_k);
    course_.ambient_k.push_back(test_.ambient(now_));
    course_.pumped_m3.push_back(pumped_);
    course_.lost_m3.push_back(lost_);
    course_.water_kg.push_back(state_.water_kg);
    course_.air_mol.push_back(state_.air_mol);
  }

  const Trial& test_;
  const double supply_density_;
  const double settle_ = numerics::exp(-step_s / air_settles_s);
  State state_;
  Course course_;
  double now_ = 0.0;
  double pressure_ = atmosphere_pa;
  double phase_ = 0.0;
  double pumped_ = 0.0;
  double lost_ = 0.0;
  bool holding_ = false;
  bool valve_open_ = true;
};

double at(const std::vector<double>& seconds, const std::vector<double>& values, double when) {
  const auto next = std::lower_bound(seconds.begin(), seconds.end(), when);
  if (next == seconds.begin()) return values.front();
  if (next == seconds.end()) return values.back();
  const auto i = static_cast<std::size_t>(next - seconds.begin());
  const double share = (when - seconds[i - 1]) / (seconds[i] - seconds[i - 1]);
  return values[i - 1] + share * (values[i] - values[i - 1]);
}

}  // namespace

double Course::mean_loss(double from_s, double to_s) const {
  return (at(seconds, lost_m3, to_s) - at(seconds, lost_m3, from_s)) / (to_s - from_s);
}

Course simulate(const Trial& test) {
  March march(test);
  march.stand_vented(test.plan.vented_s);
  for (std::size_t i = 0; i < test.plan.stages_pa_gauge.size(); ++i) {
    march.pump_to(test.plan.stages_pa_gauge[i], test.plan.longest_pumping_s);
    if (i + 1 < test.plan.stages_pa_gauge.size()) march.wait(test.plan.wait_s);
  }
  march.begin_hold();
  march.wait(test.plan.hold_s);
  return march.take();
}

}  // namespace steamworthy::hold_study
