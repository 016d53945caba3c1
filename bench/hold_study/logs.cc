#include "hold_study/logs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "hold_study/water_kell.h"

namespace steamworthy::hold_study {
namespace {

constexpr double clock_zero_s = 7 * 3600.0;
constexpr double psi_pa = 6894.757293168;
constexpr double us_gallon_m3 = 3.785411784e-3;
constexpr double concern_ml_per_min = 20.0;

double celsius(double kelvin) { return kelvin - zero_celsius_k; }
double fahrenheit(double kelvin) { return celsius(kelvin) * 1.8 + 32.0; }

std::string clock(double seconds, bool with_seconds) {
  const auto whole = static_cast<long>(clock_zero_s + seconds);
  const std::string minutes = fmt::format("{:02d}:{:02d}", whole / 3600 % 24, whole / 60 % 60);
  return with_seconds ? minutes + fmt::format(":{:02d}", whole % 60) : minutes;
}

std::string with_decimal_commas(std::string row) {
  std::replace(row.begin(), row.end(), '.', ',');
  return row;
}

std::string head(Layout layout) {
  switch (layout) {
    case Layout::Si:
      return "t_s,p_barg,T_metal_C,T_water_C,T_amb_C,V_pumped_L\n";
    case Layout::Us:
      return "Time,Gauge (psig),Water temp (F),Shell temp (F),Air temp (F),Pumped (US gal)\n";
    case Layout::German:
      return "Zeit;Volumen_mL;Druck_kPa;T_Wasser;T_Metall;T_Umgebung\n";
    case Layout::Manual:
      return "time,reading bar,water C,metal C,strokes,remarks\n";
  }
  throw std::invalid_argument("layout");
}

std::string row(const Case& made, Layout layout, std::size_t i) {
  const Log& log = made.log;
  const double t = log.seconds[i];
  const double gauge = log.pressure_pa_gauge[i];
  switch (layout) {
    case Layout::Si:
      return fmt::format("{:.0f},{:.3f},{:.2f},{:.2f},{:.1f},{:.4f}\n", t, gauge / 1e5,
                         celsius(log.metal_k[i]), celsius(log.water_k[i]),
                         celsius(log.ambient_k[i]), log.pumped_m3[i] * 1e3);
    case Layout::Us:
      return fmt::format("{},{:.1f},{:.2f},{:.2f},{:.1f},{:.4f}\n", clock(t, true), gauge / psi_pa,
                         fahrenheit(log.water_k[i]), fahrenheit(log.metal_k[i]),
                         fahrenheit(log.ambient_k[i]), log.pumped_m3[i] / us_gallon_m3);
    case Layout::German:
      return with_decimal_commas(fmt::format("{};{:.0f};{:.1f};{:.2f};{:.2f};{:.1f}\n",
                                             clock(t, true), log.pumped_m3[i] * 1e6, gauge / 1e3,
                                             celsius(log.water_k[i]), celsius(log.metal_k[i]),
                                             celsius(log.ambient_k[i])));
    case Layout::Manual: {
      const double start = made.course.hold_start_s;
      const bool first = t >= start && t - made.instruments.every_s < start;
      return fmt::format("{},{:.1f},{:.1f},{:.1f},{:.0f},{}\n", clock(t, false), gauge / 1e5,
                         celsius(log.water_k[i]), celsius(log.metal_k[i]),
                         log.pumped_m3[i] / made.test.pump.stroke_m3, first ? "hold started" : "");
    }
  }
  throw std::invalid_argument("layout");
}

const char* place(std::size_t group) {
  constexpr const char* places[groups] = {"steam drum", "tube bank", "mud drum"};
  return places[group];
}

double mean_water_celsius(const Case& made, std::size_t second) {
  double sum = 0.0;
  for (std::size_t g = 0; g < groups; ++g) {
    sum += made.test.plant.group[g].volume_m3 * celsius(made.course.water_k[second][g]);
  }
  return sum / made.test.plant.volume_m3();
}

double to_digits(double value, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::round(value * scale) / scale;
}

}  // namespace

const char* name_of(Layout layout) {
  constexpr const char* names[] = {"si", "us", "german", "manual"};
  return names[static_cast<int>(layout)];
}

Layout layout_named(const std::string& token) {
  for (const Layout layout : {Layout::Si, Layout::Us, Layout::German, Layout::Manual}) {
    if (token == name_of(layout)) return layout;
  }
  throw std::invalid_argument("no layout " + token + "; there are si, us, german, manual");
}

std::string csv_text(const Case& made, Layout layout) {
  std::string text = head(layout);
  for (std::size_t i = 0; i < made.log.seconds.size(); ++i) text += row(made, layout, i);
  return text;
}

std::string meta_text(const Case& made, Layout layout, const std::string& file) {
  const Instruments& set = made.instruments;
  nlohmann::ordered_json meta;
  meta["file"] = file;
  meta["volume_m3_nominal"] = to_digits(made.belief.volume_m3, 4);
  meta["shell_compliance_per_Pa_nominal"] = made.belief.growth_per_pa;
  meta["volume_sd_rel"] = 0.02;
  meta["compliance_sd_rel"] = 0.1;
  meta["test_pressure_barg"] = made.test.plan.stages_pa_gauge.back() / 1e5;
  for (const double stage : made.test.plan.stages_pa_gauge) {
    meta["stages_barg"].push_back(to_digits(stage / 1e5, 3));
  }
  meta["hold_start_s"] = made.course.hold_start_s;
  meta["hold_s"] = made.hold_s();
  meta["gauge_resolution_bar"] = set.gauge_step_pa / 1e5;
  meta["gauge_noise_sd_bar"] = set.gauge_noise_pa / 1e5;
  meta["temp_resolution_K"] = set.thermometer_step_k;
  meta["stroke_mL"] = to_digits(made.test.pump.stroke_m3 * 1e6, 3);
  meta["pump_calibration_sd_rel"] = 0.02;
  meta["air_pocket_below_gauge_m"] = to_digits(made.belief.pocket_below_gauge_m, 2);
  if (layout != Layout::Si) meta["clock_zero"] = "07:00:00";
  meta["water_sensor_in"] = place(set.water_group);
  meta["metal_sensor_on"] = place(set.metal_group);
  meta["leak_of_concern_mL_min"] = concern_ml_per_min;
  meta["notes"] = nlohmann::ordered_json::array();
  meta["test_valve_shut"] = made.test.plan.test_valve_shut;
  meta["pump_side_hung_open"] = made.test.plan.test_valve_shut;
  meta["temp_noise_sd_K"] = set.thermometer_noise_k;
  meta["gauge_changed_s"] = nlohmann::ordered_json::array();
  meta["pressure_is"] = "gauge";
  return meta.dump(1) + "\n";
}

std::string truth_text(const Case& made, Layout layout) {
  const Course& course = made.course;
  const auto start = static_cast<std::size_t>(course.hold_start_s);
  const std::size_t end = course.seconds.size() - 1;
  const double mean = made.net_loss_mean() / ml_per_min;
  nlohmann::ordered_json truth;
  truth["leak_mL_min_end"] = to_digits(made.net_loss_at_end() / ml_per_min, 3);
  truth["leak_mL_min_mean_over_hold"] = to_digits(mean, 3);
  truth["leak_mL_min_at_test_pressure"] =
      to_digits(made.test.leak.at_test_pressure_m3_s / ml_per_min, 3);
  truth["inflow_mL_min_at_test_pressure"] =
      to_digits(made.test.inflow.at_test_pressure_m3_s / ml_per_min, 3);
  truth["pump_check_mL_min_at_test_pressure"] =
      to_digits(made.test.pump.check_passes_m3_s / ml_per_min, 3);
  truth["leak_exponent"] = made.test.leak.exponent;
  truth["leak_onset_s_into_hold"] = made.test.leak.begins_in_hold_s;
  truth["trapped_air_L_at_1atm"] = to_digits(made.test.air_m3 * 1e3, 4);
  truth["volume_m3"] = to_digits(made.test.plant.volume_m3(), 5);
  truth["shell_compliance_per_Pa"] = made.test.plant.growth_per_pa();
  truth["pump_scale_error"] = to_digits(made.instruments.pump_scale_error, 5);
  truth["T_bulk_water_C_hold_start"] = to_digits(mean_water_celsius(made, start), 4);
  truth["T_bulk_water_C_end"] = to_digits(mean_water_celsius(made, end), 4);
  truth["P_barg_hold_start"] = to_digits((course.pressure_pa[start] - atmosphere_pa) / 1e5, 4);
  truth["P_barg_end"] = to_digits((course.pressure_pa[end] - atmosphere_pa) / 1e5, 4);
  const double air = course.air_mol.front();
  truth["air_dissolved_fraction_at_end"] =
      air > 0.0 ? to_digits(1.0 - course.air_mol[end] / air, 4) : 0.0;
  truth["layout"] = name_of(layout);
  truth["hold_min"] = made.hold_s() / 60.0;
  truth["simulator"] = fmt::format("bench/hold_study, seed {}", made.seed);
  // Honest: what the sign and size of the net loss allow. That it cannot tell is honest where the
  // instruments are poor; these cases' are good, unless read by hand every five minutes.
  const bool valves = made.test.plan.test_valve_shut;
  const char* plain = mean > 0.5 ? "losing" : mean < -0.5 ? "gaining" : "no_loss_seen";
  nlohmann::ordered_json accept = nlohmann::ordered_json::array();
  if (valves) accept.push_back(plain);
  if (!valves || layout == Layout::Manual) accept.push_back("cannot_tell");
  truth["accept_results"] = accept;
  truth["must_not_say"] = mean < 0.5 ? "losing" : "no_loss_seen";
  truth["truth"] = mean > 0.5 ? "losing" : mean < -0.5 ? "gaining" : "no loss";
  return truth.dump(1) + "\n";
}

Case named_case(const std::string& name, std::uint64_t seed, double every_s) {
  Random random(seed, 0);
  Case made;
  made.seed = seed;
  Trial& test = made.test;
  test.plant = random_plant(random);
  // Small enough for the gauge to tell, and large enough that what passes in over an hour raises
  // the pressure by less than a tenth.
  const double wanted = random.uniform(5.0, 8.0);
  const double scale = wanted / test.plant.volume_m3();
  for (Group& group : test.plant.group) {
    group.volume_m3 *= scale;
    group.steel_kg *= scale;
    group.to_steel_w_per_k *= scale;
    group.to_air_w_per_k *= scale;
  }
  test.plant.mixing_w_per_k *= scale;
  const double test_pa = 1e5 * random.choice({45, 60});
  test.plan.stages_pa_gauge = {0.4 * test_pa, 0.75 * test_pa, test_pa};
  test.start_k = zero_celsius_k + random.uniform(15.0, 30.0);
  const double offset = random.normal(0.0, 2.0);
  const double start = test.start_k;
  test.ambient = [start, offset](double) {
    const double air = start + offset;
    return std::array<double, groups>{air, air, air};
  };
  for (double& each : test.disorder.water_k) each = random.normal(0.0, 0.1);
  test.air_m3 = wanted * random.log_uniform(2e-4, 2e-3);
  test.air_surface_m2 = 0.05;
  test.pump = {random.uniform(2.0, 3.0) * 1e-3 / 60.0, 30e-6, start, 0.0};
  const double main = test_pa + 15e5;
  if (name == "gaining") {
    test.inflow = {30.0 * ml_per_min, main};
  } else if (name == "gaining-hidden") {
    test.inflow = {110.0 * ml_per_min, main};
    test.leak.at_test_pressure_m3_s = 45.0 * ml_per_min;
  } else if (name == "not-bled") {
    test.pump.check_passes_m3_s = 30.0 * ml_per_min;
    test.plan.test_valve_shut = false;
  } else if (name == "losing") {
    test.leak.at_test_pressure_m3_s = 60.0 * ml_per_min;
  } else if (name != "no-loss") {
    throw std::invalid_argument("no case " + name +
                                "; there are gaining, gaining-hidden, not-bled, no-loss, losing");
  }
  Instruments& set = made.instruments;
  set.every_s = every_s;
  const bool by_hand = every_s >= 300.0;
  set.gauge_step_pa = by_hand ? 1e4 : 1e3;
  set.gauge_noise_pa = 1e3;
  set.thermometer_step_k = by_hand ? 0.1 : 0.01;
  set.thermometer_noise_k = 0.01;
  set.pump_scale_error = random.normal(0.0, 0.02);
  set.water_offset_k = random.normal(0.0, 0.2);
  set.metal_offset_k = random.normal(0.0, 0.3);
  set.metal_lag_s = random.uniform(20.0, 120.0);
  made.belief.volume_m3 = wanted * (1.0 + random.normal(0.0, 0.02));
  made.belief.growth_per_pa = test.plant.growth_per_pa() * (1.0 + random.normal(0.0, 0.10));
  made.belief.pocket_below_gauge_m = -test.plant.pocket_level_m + random.normal(0.0, 0.15);
  made.course = simulate(test);
  made.log = observe(made.course, set, random);
  return made;
}

}  // namespace steamworthy::hold_study
