#include "sheet/basis.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "boiler/content.h"
#include "boiler/metal.h"
#include "units/makers.h"
#include "vessel/growth.h"
#include "vessel/volume.h"
#include "water/water.h"

namespace steamworthy::sheet {
namespace {

using boiler::Boiler;
using boiler::BoilerKind;
using boiler::MountingKind;
using boiler::PartKind;

std::optional<rules::BoilerKind> kind_of(const Boiler& boiler) {
  switch (boiler.kind) {
    case BoilerKind::Watertube:
      return rules::BoilerKind::Watertube;
    case BoilerKind::Firetube:
      return rules::BoilerKind::Firetube;
    case BoilerKind::Other:
      return std::nullopt;
  }
  return std::nullopt;
}

/// That of the drum or shell; where there is neither, the lowest of all sections.
std::optional<units::GaugePressure> boiler_working_pressure(const Boiler& boiler) {
  for (const boiler::Part& part : boiler.parts) {
    if (part.kind == PartKind::Drum || part.kind == PartKind::Shell) {
      if (const auto pressure = boiler::working_pressure(boiler, part)) return pressure;
    }
  }
  std::optional<units::GaugePressure> lowest;
  for (const boiler::Section& section : boiler.sections) {
    if (!lowest || section.working_pressure < *lowest) lowest = section.working_pressure;
  }
  return lowest;
}

/// Gagged or blanked if each safety valve has a gag or blank in the register.
std::optional<bool> gags_described(const Boiler& boiler) {
  std::optional<bool> all;
  for (const boiler::Mounting& mounting : boiler.mountings) {
    if (mounting.kind != MountingKind::SafetyValve) continue;
    const bool covered = std::any_of(
        boiler.temporaries.begin(), boiler.temporaries.end(), [&](const boiler::Temporary& one) {
          return one.where == mounting.tag && one.kind != boiler::TemporaryKind::TestGear;
        });
    all = all.value_or(true) && covered;
  }
  return all;
}

rules::Circumstances circumstances_of(const Boiler& boiler, const Request& request) {
  rules::Circumstances given;
  if (!boiler.jurisdiction.empty()) given.jurisdictions = {boiler.jurisdiction};
  given.boiler = kind_of(boiler);
  given.work = request.work;
  given.traits = request.traits;
  given.working_pressure = boiler_working_pressure(boiler);
  for (const boiler::Mounting& mounting : boiler.mountings) {
    if (mounting.kind != MountingKind::SafetyValve || !mounting.setting) continue;
    if (!given.lowest_safety_valve || *mounting.setting < *given.lowest_safety_valve) {
      given.lowest_safety_valve = mounting.setting;
    }
    if (!given.highest_safety_valve || *mounting.setting > *given.highest_safety_valve) {
      given.highest_safety_valve = mounting.setting;
    }
  }
  given.safety_valves_gagged =
      request.valves_gagged ? request.valves_gagged : gags_described(boiler);
  given.authority = request.authority;
  given.picked = request.picked;
  given.stated_ceiling = request.stated_ceiling;
  return given;
}

const rules::Rule* find_rule(const std::vector<rules::Rule>& rules, const std::string& id) {
  for (const rules::Rule& rule : rules) {
    if (rule.id == id) return &rule;
  }
  std::string ids;
  for (const rules::Rule& rule : rules) ids += (ids.empty() ? "" : ", ") + rule.id;
  throw NotFound("sheet.unknown_rule",
                 fmt::format("there is no rule \"{}\"; the rules at hand are {}", id, ids));
}

hold::FilledBoiler model_of(const Boiler& boiler, units::Level reference,
                            units::AbsolutePressure barometer) {
  hold::FilledBoiler filled;
  filled.gauge = reference;
  filled.barometer = barometer;
  filled.steel_expansion = boiler::metal(boiler, "").material.expansion.value;
  if (boiler.bulk) {
    const units::Length half = 0.5 * (boiler.bulk->top_level - boiler.bulk->bottom_level);
    filled.pieces.push_back(
        {boiler.bulk->water_content, boiler.bulk->growth, boiler.bulk->bottom_level + half});
    return filled;
  }
  for (const boiler::Part& part : boiler.parts) {
    const units::Volume content = boiler::water_content(part);
    if (content.si() <= 0.0) continue;
    units::Quantity<0, 4, 0, 0> moment;
    for (const vessel::Body& body : boiler::bodies(part)) {
      moment += vessel::volume(body) * vessel::centroid(body).from_origin();
    }
    filled.pieces.push_back(
        {content, boiler::growth(boiler, part).value, units::Level{} + moment / content});
  }
  return filled;
}

/// Common practice, no source: judge trapped air early and low, then half the
/// test, the working pressure, the test, and down to look.
std::vector<Stage> stages_of(const Basis& basis) {
  std::vector<Stage> stages;
  if (!basis.test_pressure) return stages;
  const units::GaugePressure test = *basis.test_pressure;
  const units::GaugePressure zero{};
  const auto low = std::min(units::bars_gauge(10.0), zero + 0.25 * test.from_origin());
  stages.push_back({"sheet.stage.air_check", low});
  const auto half = zero + 0.5 * test.from_origin();
  if (half > low) stages.push_back({"sheet.stage.half", half});
  const auto working = basis.circumstances.working_pressure;
  if (working && *working > half && *working < test) {
    stages.push_back({"sheet.stage.working", *working});
  }
  stages.push_back({"sheet.stage.test", test});
  return stages;
}

void apply_rule(Basis& basis, const std::vector<rules::Rule>& rules) {
  basis.choice = rules::choose(rules, basis.circumstances);
  if (basis.request.rule_id) {
    basis.rule = find_rule(rules, *basis.request.rule_id);
  } else if (basis.request.work && basis.choice.candidates.size() == 1 &&
             basis.choice.candidates.front().applies == rules::Applies::Yes) {
    basis.rule = &rules[basis.choice.candidates.front().rule];
  }
  if (basis.rule != nullptr) basis.evaluation = rules::evaluate(*basis.rule, basis.circumstances);

  if (basis.request.own_pressure) {
    const std::vector<rules::Rule> compared =
        basis.rule != nullptr ? std::vector<rules::Rule>{*basis.rule} : rules;
    basis.own =
        rules::judge_own_pressure(*basis.request.own_pressure, compared, basis.circumstances);
    if (basis.own->accepted && basis.own->pressure.value) {
      basis.test_pressure = units::GaugePressure::from_si(basis.own->pressure.value->si);
      if (basis.own->ceiling.value) {
        basis.never_above = units::GaugePressure::from_si(basis.own->ceiling.value->si);
      }
    }
    return;
  }
  if (!basis.evaluation || !basis.evaluation->may_be_preset()) return;
  const auto pressure = [](const working::Figure& figure) -> std::optional<units::GaugePressure> {
    if (!figure.value) return std::nullopt;
    return units::GaugePressure::from_si(figure.value->si);
  };
  basis.test_pressure = pressure(basis.evaluation->test_pressure);
  basis.never_above = pressure(basis.evaluation->ceiling);
  basis.examination = pressure(basis.evaluation->examination_pressure);
  for (const rules::HoldFigures& hold : basis.evaluation->holds) {
    if (!hold.at_least.value || basis.request.hold) continue;
    const auto duration = units::Duration::from_si(hold.at_least.value->si);
    if (!basis.hold || *basis.hold < duration) basis.hold = duration;
  }
}

}  // namespace

Basis gather(const Boiler& boiler, const std::vector<rules::Rule>& rules, const Request& request) {
  Basis basis{.boiler = boiler, .request = request};
  basis.circumstances = circumstances_of(boiler, request);
  basis.reference = boiler::reference_level(boiler);
  basis.barometer = boiler.house.barometer.value_or(units::standard_atmosphere);
  basis.barometer_assumed = !boiler.house.barometer;

  const auto stated = request.water ? request.water : boiler.house.supply_water_temperature;
  basis.water = stated.value_or(units::celsius(20.0));
  basis.water_assumed = !stated;
  basis.supply = boiler.house.supply_water_temperature.value_or(basis.water);
  basis.metal = request.metal.value_or(basis.water);
  basis.hold = request.hold;

  apply_rule(basis, rules);
  basis.ruling = basis.test_pressure ? basis.test_pressure : basis.circumstances.working_pressure;
  basis.stages = stages_of(basis);
  basis.filled = model_of(boiler, basis.reference, basis.barometer);
  basis.water_density = water::density(
      {basis.water, absolute_at_reference(basis, basis.ruling.value_or(units::GaugePressure{}))});
  return basis;
}

units::AbsolutePressure absolute_at_reference(const Basis& basis, units::GaugePressure gauge) {
  return units::absolute(gauge, basis.barometer);
}

units::GaugePressure pressure_at(const Basis& basis, units::GaugePressure at_reference,
                                 units::Level level) {
  return at_reference + basis.water_density * units::standard_gravity * (basis.reference - level);
}

working::Figure pressure_figure(const Basis& basis, const std::string& key,
                                const std::string& subject, units::GaugePressure at_reference,
                                units::Level level) {
  using working::Origin;
  return working::known(
      key, subject, units::measure(pressure_at(basis, at_reference, level)),
      {.formula = "p(z) = p_ref + rho g (z_ref - z)",
       .inputs = {{"p_ref", "input.pressure_at_reference", units::measure(at_reference)},
                  {"rho", "input.density", units::measure(basis.water_density)},
                  {"z_ref", "input.reference_level", units::measure(basis.reference)},
                  {"z", "input.level", units::measure(level), Origin::Described}},
       .sources = {"IAPWS-R7-97"},
       .method = "sheet"});
}

working::Message no_test_pressure() { return {"sheet.no_test_pressure", {}}; }

}  // namespace steamworthy::sheet
