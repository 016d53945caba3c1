// Sections of the sheet about water: temperature, filling, pumping, the hold.
#include <algorithm>
#include <cmath>

#include "boiler/circuit.h"
#include "boiler/content.h"
#include "hold/detectable.h"
#include "rules/judge.h"
#include "sheet/basis.h"
#include "units/makers.h"
#include "water/humid_air.h"
#include "water/water.h"

namespace steamworthy::sheet {
namespace {

using working::Message;
using working::Origin;

Message names(const std::string& key, const std::vector<std::string>& tags) {
  std::string list;
  for (const std::string& tag : tags) list += (list.empty() ? "" : ", ") + tag;
  return {key, {{"tags", list}}};
}

/// A margin over the dew point under which metal may sweat in places; common practice, no source.
constexpr auto sweat_margin = units::TemperatureDifference::from_si(2.0);

void judge_window(const Basis& basis, rules::Stage stage, rules::Medium medium,
                  units::Temperature temperature, Section& section) {
  const rules::WindowJudgement judged =
      rules::judge_temperature(*basis.rule, basis.circumstances.boiler, stage, medium, temperature);
  if (!judged.why.empty() && judged.verdict != rules::WindowVerdict::NotStated) {
    section.notes.push_back(judged.why);
  }
}

/// Smallest step in which a thermometer in the water reads.
std::optional<units::TemperatureDifference> water_resolution(const boiler::Boiler& boiler) {
  std::optional<units::TemperatureDifference> best;
  for (const boiler::Thermometer& one : boiler.thermometers) {
    if (one.on != boiler::ThermometerOn::Water) continue;
    if (!best || one.resolution < *best) best = one.resolution;
  }
  return best;
}

}  // namespace

Section temperature_section(const Basis& basis) {
  Section section{.key = "sheet.section.temperature"};
  section.figures.push_back(
      working::known("sheet.water_temperature", "", units::measure(basis.water),
                     {.formula = "as stated",
                      .inputs = {{"T", "input.water_temperature", units::measure(basis.water),
                                  basis.water_assumed ? Origin::Assumed : Origin::Described}}}));
  if (basis.water_assumed)
    section.notes.push_back(
        {"sheet.water_temperature_assumed", {{"temperature", units::measure(basis.water)}}});
  if (basis.evaluation) {
    for (const rules::WindowFigures& window : basis.evaluation->windows) {
      if (window.from.is_known()) section.figures.push_back(window.from);
      if (window.to.is_known()) section.figures.push_back(window.to);
    }
    for (const auto stage :
         {rules::Stage::Filling, rules::Stage::UnderTest, rules::Stage::Examination}) {
      judge_window(basis, stage, rules::Medium::Water, basis.water, section);
      judge_window(basis, stage, rules::Medium::Metal, basis.metal, section);
    }
  }
  const boiler::House& house = basis.boiler.house;
  if (house.air_temperature && house.relative_humidity && *house.relative_humidity > 0.0) {
    const units::Temperature dew =
        water::dew_point(*house.air_temperature, *house.relative_humidity);
    section.figures.push_back(working::known(
        "sheet.dew_point", "", units::measure(dew),
        {.formula = "t_d = b f/(a - f), f = ln(phi) + a t/(b + t), a = 17.62, b = 243.12 °C",
         .inputs = {{"t", "input.air_temperature", units::measure(*house.air_temperature),
                     Origin::Described},
                    {"phi", "input.relative_humidity",
                     units::measure_percent(*house.relative_humidity), Origin::Described}},
         .sources = {"WMO-8"},
         .method = "water"}));
    section.figures.push_back(
        working::known("sheet.dew_margin", "", units::measure(basis.metal - dew),
                       {.formula = "T_metal - t_d",
                        .inputs = {{"T_metal", "input.metal_temperature",
                                    units::measure(basis.metal), Origin::Stated},
                                   {"t_d", "input.dew_point", units::measure(dew)}},
                        .method = "sheet"}));
    if (basis.metal - dew < sweat_margin) {
      section.notes.push_back({"sheet.metal_will_sweat", {{"dew_point", units::measure(dew)}}});
    } else {
      section.notes.push_back({"sheet.metal_stays_dry", {{"dew_point", units::measure(dew)}}});
    }
  } else {
    section.figures.push_back(
        working::unknown("sheet.dew_point", "", {"sheet.house_not_described", {}}));
  }
  section.cautions.push_back({"caution.brittle", {}});
  section.cautions.push_back({"caution.hot_water", {}});
  return section;
}

Section filling_section(const Basis& basis) {
  Section section{.key = "sheet.section.filling"};
  const boiler::Boiler& boiler = basis.boiler;
  const units::Volume content = boiler::water_content(boiler);
  section.figures.push_back(
      working::known("sheet.water_to_fill", "", units::measure_large_volume(content),
                     {.formula = "V = sum of the parts, at 20 °C and without pressure",
                      .inputs = {{"n", "input.number_of_parts",
                                  units::measure_count(static_cast<double>(boiler.parts.size())),
                                  Origin::Described}},
                      .method = "sheet"}));
  const units::Density rho = water::density({basis.supply, basis.barometer});
  section.figures.push_back(working::known(
      "sheet.water_weight", "", units::measure(rho * content * units::standard_gravity),
      {.formula = "rho V g",
       .inputs = {{"rho", "input.density", units::measure(rho)},
                  {"V", "input.water_content", units::measure_large_volume(content)}},
       .sources = {"IAPWS-R7-97"},
       .method = "sheet"}));
  if (const auto metal = boiler::metal_mass(boiler)) {
    section.figures.push_back(working::known("sheet.metal_mass", "", units::measure(*metal),
                                             {.formula = "sum of metal volumes x density",
                                              .method = "sheet",
                                              .remarks = {{"sheet.nozzles_not_counted", {}}}}));
  }
  if (boiler.house.fill_rate && boiler.house.fill_rate->si() > 0.0) {
    section.figures.push_back(working::known(
        "sheet.fill_time", "", units::measure(content / *boiler.house.fill_rate),
        {.formula = "V / rate",
         .inputs = {{"V", "input.water_content", units::measure_large_volume(content)},
                    {"rate", "input.fill_rate", units::measure_flow(*boiler.house.fill_rate),
                     Origin::Described}},
         .method = "sheet"}));
  } else {
    section.figures.push_back(
        working::unknown("sheet.fill_time", "", {"sheet.fill_rate_not_stated", {}}));
  }

  const units::Temperature target = units::celsius(25.0);
  if (basis.supply < target) {
    const auto cp = water::isobaric_heat_capacity({basis.supply, basis.barometer});
    units::HeatCapacity total = rho * content * cp;
    if (const auto metal = boiler::metal_heat_capacity(boiler)) total += *metal;
    const units::Energy heat = total * (target - basis.supply);
    section.figures.push_back(
        working::known("sheet.heat_to_warm", "", units::measure_energy(heat),
                       {.formula = "(rho V c_p + m c) (25 °C - T_supply)",
                        .inputs = {{"C", "input.heat_capacity_mj_per_k",
                                    units::measure_energy(total * units::kelvin_difference(1.0))},
                                   {"T_supply", "input.supply_temperature",
                                    units::measure(basis.supply), Origin::Described}},
                        .sources = {"IAPWS-R7-97"},
                        .method = "sheet"}));
    if (basis.request.heater && basis.request.heater->si() > 0.0) {
      section.figures.push_back(
          working::known("sheet.time_to_warm", "", units::measure(heat / *basis.request.heater),
                         {.formula = "heat / power, nothing lost",
                          .inputs = {{"P", "input.heater_power",
                                      units::measure(*basis.request.heater), Origin::Stated}},
                          .method = "sheet"}));
    } else {
      section.figures.push_back(
          working::unknown("sheet.time_to_warm", "", {"sheet.heater_not_stated", {}}));
    }
  }

  const boiler::Circuit circuit = boiler::circuit(boiler);
  if (!circuit.described) section.notes.push_back({"sheet.circuit_not_described", {}});
  int number = 0;
  for (const boiler::FillStep& step : circuit.filling) {
    const std::string subject = std::to_string(++number);
    section.figures.push_back(working::known(
        step.kind == boiler::FillKind::BackFill ? "sheet.back_fill" : "sheet.fill", subject,
        units::measure(step.volume),
        {.formula = "volume below the level of this step, less that of the steps before",
         .inputs = {{"z", "input.level", units::measure(step.to_level)}},
         .method = "circuit"}));
    if (!step.parts.empty()) section.notes.push_back(names("sheet.fill_parts", step.parts));
    if (!step.through.empty()) section.notes.push_back(names("sheet.fill_through", step.through));
    if (!step.vents.empty()) section.notes.push_back(names("sheet.fill_vents", step.vents));
  }
  for (const boiler::PartCircuit& part : circuit.parts) {
    if (part.traps_air())
      section.notes.push_back(
          {"sheet.traps_air", {{"part", part.part}, {"volume", units::measure(part.trapped_air)}}});
    if (part.holds_water())
      section.notes.push_back({"sheet.holds_water",
                               {{"part", part.part}, {"volume", units::measure(part.held_water)}}});
  }
  section.cautions.push_back({"caution.vents_manned", {}});
  section.cautions.push_back({"caution.nobody_inside", {}});
  return section;
}

Section pumping_section(const Basis& basis) {
  Section section{.key = "sheet.section.pumping"};
  if (!basis.ruling) {
    section.figures.push_back(
        working::unknown("sheet.ml_per_bar", "", {"sheet.no_working_pressure", {}}));
    return section;
  }
  const hold::FilledBoiler& filled = basis.filled;
  const hold::FilledState state{absolute_at_reference(basis, *basis.ruling), basis.water,
                                basis.water};
  const std::vector<working::Input> at = {
      {"p", "input.pressure_at_reference", units::measure(*basis.ruling)},
      {"T", "input.water_temperature", units::measure(basis.water),
       basis.water_assumed ? Origin::Assumed : Origin::Described}};
  const auto figure = [&](const std::string& key, units::Measure value,
                          const std::string& formula) {
    section.figures.push_back(working::known(key, "", value,
                                             {.formula = formula,
                                              .inputs = at,
                                              .sources = {"IAPWS-R7-97", "Timoshenko-II"},
                                              .method = "water-filled"}));
  };
  figure("sheet.ml_per_bar", units::measure(hold::volume_per_pressure(filled, state)),
         "K = (dm/dP) / rho");
  figure("sheet.bar_per_kelvin", units::measure(hold::pressure_per_kelvin(filled, state)),
         "(dP/dT) at constant mass, water and steel together");
  figure("sheet.ml_per_kelvin", units::measure(hold::volume_per_kelvin(filled, state)),
         "K (dP/dT)");
  if (const auto still = hold::temperature_of_no_effect(state.at_gauge, filled.steel_expansion)) {
    figure("sheet.no_effect_temperature", units::measure(*still), "alpha(P, T) = 3 alpha_s");
  }
  figure("sheet.heat_of_compression",
         units::measure(hold::heat_of_compression(basis.barometer, state.at_gauge, basis.water)),
         "dT = alpha T dP / (rho c_p)");

  for (const Stage& stage : basis.stages) {
    const units::Volume volume = hold::water_to_pump(
        filled, basis.barometer, absolute_at_reference(basis, stage.at_reference), basis.water,
        basis.supply);
    const std::vector<working::Input> inputs = {
        {"p", "input.pressure_at_reference", units::measure(stage.at_reference)},
        {"T", "input.water_temperature", units::measure(basis.water)},
        {"T_s", "input.supply_temperature", units::measure(basis.supply)}};
    section.figures.push_back(working::known("sheet.litres_to_stage", stage.key,
                                             units::measure(volume),
                                             {.formula = "[m(p) - m(vented)] / rho(supply)",
                                              .inputs = inputs,
                                              .sources = {"IAPWS-R7-97", "Timoshenko-II"},
                                              .method = "water-filled",
                                              .remarks = {{"sheet.airless_line", {}}}}));
    const auto& pump = basis.boiler.pump;
    if (pump && pump->stroke && pump->stroke->si() > 0.0) {
      section.figures.push_back(working::known(
          "sheet.strokes_to_stage", stage.key,
          units::measure_count(std::ceil(volume / *pump->stroke)),
          {.formula = "litres / stroke, rounded up",
           .inputs = {{"V", "input.volume_to_pump", units::measure(volume)},
                      {"s", "input.pump_stroke", units::measure(*pump->stroke), Origin::Described}},
           .method = "sheet"}));
    }
    if (pump && pump->rate && pump->rate->si() > 0.0) {
      section.figures.push_back(
          working::known("sheet.time_to_stage", stage.key, units::measure(volume / *pump->rate),
                         {.formula = "litres / rate",
                          .inputs = {{"V", "input.volume_to_pump", units::measure(volume)},
                                     {"rate", "input.pump_rate", units::measure_flow(*pump->rate),
                                      Origin::Described}},
                          .method = "sheet"}));
    }
  }
  section.notes.push_back({"sheet.more_litres_is_air", {}});
  section.cautions.push_back({"caution.air_throws", {}});
  return section;
}

Section hold_section(const Basis& basis) {
  Section section{.key = "sheet.section.hold"};
  if (!basis.hold) {
    section.figures.push_back(
        working::unknown("sheet.smallest_loss", "", {"sheet.hold_not_told", {}}));
  } else {
    section.figures.push_back(
        working::known("sheet.hold_time", "", units::measure(*basis.hold),
                       {.formula = "the longest that the rule asks for, or as stated",
                        .inputs = {{"T", "input.hold", units::measure(*basis.hold),
                                    basis.request.hold ? Origin::Stated : Origin::Rule}}}));
  }
  const auto gauge =
      std::min_element(basis.boiler.gauges.begin(), basis.boiler.gauges.end(),
                       [](const auto& a, const auto& b) { return a.resolution < b.resolution; });
  if (basis.hold && basis.hold->si() > 0.0 && basis.ruling && gauge != basis.boiler.gauges.end()) {
    const hold::FilledState state{absolute_at_reference(basis, *basis.ruling), basis.water,
                                  basis.water};
    hold::HoldLimits limits;
    limits.hold = *basis.hold;
    limits.per_pressure = hold::volume_per_pressure(basis.filled, state);
    const units::Volume content = boiler::water_content(basis.boiler);
    limits.per_temperature = content * water::thermal_expansivity({basis.water, state.at_gauge});
    limits.unseen_drift = hold::usual_unseen_drift(*basis.hold);
    limits.gauge_resolution = gauge->resolution;
    const auto resolution = water_resolution(basis.boiler);
    limits.thermometer_resolution = resolution.value_or(units::kelvin_difference(0.3));
    section.figures.push_back(working::known(
        "sheet.smallest_loss", gauge->tag, units::measure_leakage(hold::detectable_loss(limits)),
        {.formula = "3.3 sigma_q, sigma_q^2 = (theta sigma_r)^2 + 2 (K r/sqrt 12)^2/T^2 + 2 (theta "
                    "r_T/sqrt 12)^2/T^2",
         .inputs =
             {{"K", "input.ml_per_bar", units::measure(limits.per_pressure)},
              {"theta", "input.ml_per_kelvin_of_water", units::measure(limits.per_temperature)},
              {"sigma_r", "input.unseen_drift", units::measure(limits.unseen_drift),
               Origin::Assumed},
              {"r", "input.gauge_resolution",
               units::measure_pressure_difference(limits.gauge_resolution), Origin::Described},
              {"r_T", "input.thermometer_resolution", units::measure(limits.thermometer_resolution),
               resolution ? Origin::Described : Origin::Assumed},
              {"T", "input.hold", units::measure(*basis.hold)}},
         .method = "hold-detectable",
         .remarks = {{"sheet.not_a_limit_of_acceptance", {}}}}));
    if (!resolution) section.notes.push_back({"sheet.no_water_thermometer", {}});
  } else if (basis.hold) {
    section.figures.push_back(
        working::unknown("sheet.smallest_loss", "", {"sheet.no_gauge_described", {}}));
  }
  if (basis.evaluation && basis.test_pressure && basis.evaluation->drop_least.value &&
      basis.evaluation->drop_time.value) {
    const hold::FilledState state{absolute_at_reference(basis, *basis.test_pressure), basis.water,
                                  basis.water};
    const auto fall = units::PressureDifference::from_si(basis.test_pressure->si() -
                                                         basis.evaluation->drop_least.value->si);
    const auto time = units::Duration::from_si(basis.evaluation->drop_time.value->si);
    section.figures.push_back(working::known(
        "sheet.drop_as_loss", "",
        units::measure_leakage(hold::volume_per_pressure(basis.filled, state) * fall / time),
        {.formula = "K dp / t, the water's temperature unchanged",
         .inputs = {{"dp", "input.allowed_fall", units::measure_pressure_difference(fall),
                     Origin::Rule},
                    {"t", "input.allowed_time", units::measure(time), Origin::Rule}},
         .method = "water-filled"}));
    section.notes.push_back({"sheet.drop_is_rule_met_only", {}});
  }
  section.notes.push_back({"sheet.eyes_are_the_proof", {}});
  section.cautions.push_back({"caution.pump_side_hung_open", {}});
  section.cautions.push_back({"caution.shut_solid", {}});
  return section;
}

}  // namespace steamworthy::sheet
