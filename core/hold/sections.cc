#include "hold/sections.h"

#include <array>
#include <string>

#include "boiler/circuit.h"
#include "units/makers.h"

namespace steamworthy::hold {

namespace {

using units::Kind;
using units::Measure;
using working::Figure;
using working::Input;
using working::Origin;
using working::Section;
using working::Working;

Measure leakage(units::VolumeFlow q) { return {Kind::Leakage, q.si()}; }
Measure difference(units::PressureDifference p) { return {Kind::PressureDifference, p.si()}; }

void put(Section& section, const char* key, Measure value, Working working) {
  section.figures.push_back(working::known(key, "", value, std::move(working)));
}

Input stiffness(const HoldAnswer& answer) {
  return {"K", "input.water_per_pressure",
          Measure{Kind::VolumePerPressure, answer.per_pressure.si()}};
}

Input hold_length(const HoldAnswer& answer) {
  return {"T", "input.hold", Measure{Kind::Duration, answer.hold_end_s - answer.hold_start_s},
          Origin::Stated};
}

Section result_section(const HoldInput& input, const HoldAnswer& answer) {
  Section section{.key = "hold.section.result"};
  section.notes.push_back(
      {"hold.result_is",
       {{"result", working::Term{"gauge_result." + std::string(token(answer.result))}}}});
  section.notes.push_back(answer.reason);
  if (answer.net_loss) {
    Working working{.formula = "L(t) = -[m(t) - m(0)]/rho = c + q x(t) + e",
                    .inputs = {hold_length(answer), stiffness(answer)},
                    .method = "hold"};
    if (input.leak_of_concern) {
      working.inputs.push_back(
          {"q*", "input.leak_of_concern", leakage(*input.leak_of_concern), Origin::Stated});
    }
    put(section, "hold.net_loss", leakage(answer.net_loss->estimate), working);
    put(section, "hold.net_loss_low", leakage(answer.net_loss->low_90), working);
    put(section, "hold.net_loss_high", leakage(answer.net_loss->high_90), working);
    if (answer.loss_at_end) {
      put(section, "hold.loss_at_end", leakage(answer.loss_at_end->estimate), working);
      put(section, "hold.loss_at_end_low", leakage(answer.loss_at_end->low_90), working);
      put(section, "hold.loss_at_end_high", leakage(answer.loss_at_end->high_90), working);
    }
  }
  if (answer.detectable) {
    put(section, "hold.detectable", leakage(*answer.detectable),
        {.formula = "3.3 sigma_q", .inputs = {hold_length(answer)}, .method = "hold-detectable"});
  }
  for (const auto& one : answer.settle_by) section.notes.push_back(one);
  for (const auto& one : answer.notes) section.notes.push_back(one);
  section.cautions.push_back({"sheet.eyes_are_the_proof", {}});
  section.cautions.push_back({"caution.no_wrench_under_pressure", {}});
  section.cautions.push_back({"caution.local_rules", {}});
  return section;
}

Section fall_section(const HoldAnswer& answer) {
  Section section{.key = "hold.section.fall"};
  const FallSplit& s = *answer.split;
  const Working of_readings{
      .formula = "p(start) - p(end)", .inputs = {hold_length(answer)}, .method = "hold"};
  const Working of_model{
      .formula = "dp = dV/K",
      .inputs = {stiffness(answer),
                 {"theta", "input.loss_per_kelvin",
                  Measure{Kind::VolumePerTemperature, answer.per_temperature.si()}}},
      .method = "hold"};
  put(section, "hold.fall", difference(s.fall), of_readings);
  put(section, "hold.fall_cooling", difference(s.cooling), of_model);
  put(section, "hold.fall_relaxing", difference(s.relaxing), of_model);
  put(section, "hold.fall_air", difference(s.air), of_model);
  put(section, "hold.fall_loss", difference(s.loss), of_model);
  put(section, "hold.fall_rest", difference(s.rest), of_model);
  return section;
}

Section rule_section(const HoldInput& input, const HoldAnswer& answer) {
  Section section{.key = "hold.section.rule"};
  const AllowedFallAnswer& allowed = *answer.allowed_fall;
  section.notes.push_back(
      {allowed.met ? "hold.rule_met" : "hold.rule_not_met",
       {{"seen", difference(allowed.seen)}, {"allowed", difference(input.allowed_fall->fall)}}});
  put(section, "hold.allowed_fall_as_loss", leakage(allowed.means),
      {.formula = "q = K dp/T",
       .inputs = {stiffness(answer),
                  {"dp", "input.allowed_fall", difference(input.allowed_fall->fall), Origin::Rule}},
       .method = "hold"});
  section.notes.push_back({"sheet.drop_is_rule_met_only", {}});
  return section;
}

void put_trapping_parts(const boiler::Boiler& boiler, Section& section) {
  for (const boiler::PartCircuit& part : boiler::circuit(boiler).parts) {
    if (!part.traps_air()) continue;
    section.notes.push_back(
        {"hold.air_may_sit",
         {{"part", part.part}, {"volume", Measure{Kind::Volume, part.trapped_air.si()}}}});
  }
}

}  // namespace

std::string_view token(Result result) {
  constexpr std::array<std::string_view, 4> tokens = {"no_loss_seen", "losing", "gaining",
                                                      "cannot_tell"};
  return tokens[static_cast<std::size_t>(result)];
}

std::vector<Section> hold_sections(const HoldInput& input, const HoldAnswer& answer) {
  std::vector<Section> sections = {result_section(input, answer)};
  if (answer.split) sections.push_back(fall_section(answer));
  if (answer.allowed_fall) sections.push_back(rule_section(input, answer));
  return sections;
}

Section pump_up_section(const HoldInput& input, const HoldAnswer& answer,
                        const boiler::Boiler* description) {
  Section section{.key = "hold.section.pump_up"};
  if (!answer.pump_up) {
    section.figures.push_back(working::unknown("hold.trapped_air", "", {"hold.no_pump_up", {}}));
    return section;
  }
  const PumpUpAnswer& up = *answer.pump_up;
  const Working fit{
      .formula = "V_pump = s f1(P, T) + V_a f2(P, T) + q f3 + e",
      .inputs = {{"V", "input.water_content", Measure{Kind::LargeVolume, input.boiler.volume.si()},
                  Origin::Described},
                 {"C", "input.steel_growth",
                  Measure{Kind::Compressibility, input.boiler.growth.si()}, Origin::Described},
                 {"s", "input.scale_found", Measure{Kind::Fraction, up.scale}}},
      .method = "hold"};
  const auto litres = [](units::Volume v) { return Measure{Kind::Volume, v.si()}; };
  put(section, "hold.trapped_air", litres(up.trapped_air.estimate), fit);
  put(section, "hold.trapped_air_low", litres(up.trapped_air.low_90), fit);
  put(section, "hold.trapped_air_high", litres(up.trapped_air.high_90), fit);
  put(section, "hold.pumped", litres(up.points.back().pumped),
      {.formula = "as logged", .method = "hold"});
  put(section, "hold.pumped_airless", litres(up.points.back().airless), fit);
  if (up.known_at) {
    put(section, "hold.air_known_at", {Kind::GaugePressure, (*up.known_at - input.barometer).si()},
        {.formula = "lowest p with 1.645 sd(V_a) < max(V_a/4, V/2000)", .method = "hold"});
  } else {
    section.notes.push_back({"hold.air_never_known", {}});
  }
  if (up.pump_rate && up.venting_costs) {
    put(section, "hold.pump_rate", {Kind::Flow, up.pump_rate->si()},
        {.formula = "water pumped / time with strokes", .method = "hold"});
    put(section, "hold.venting_costs", {Kind::Duration, up.venting_costs->si()},
        {.formula = "(V_pump + s f1)/rate: letting down as fast as pumping, and pumping again",
         .inputs = {{"rate", "input.pump_rate", Measure{Kind::Flow, up.pump_rate->si()}}},
         .method = "hold"});
  }
  if (description != nullptr) put_trapping_parts(*description, section);
  section.cautions.push_back({"caution.air_throws", {}});
  return section;
}

}  // namespace steamworthy::hold
