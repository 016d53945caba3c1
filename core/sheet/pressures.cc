// Sections of the sheet that say pressures: rule, gauges, parts, places, valves.
#include <algorithm>

#include "boiler/places.h"
#include "sheet/basis.h"
#include "units/makers.h"

namespace steamworthy::sheet {
namespace {

using working::Figure;
using working::Message;
using working::Origin;

void push_if_stated(Section& section, const Figure& figure) {
  if (figure.is_known()) section.figures.push_back(figure);
}

Figure at_level_or_unknown(const Basis& basis, const std::string& key, const std::string& subject,
                           std::optional<units::GaugePressure> at_reference, units::Level level) {
  if (!at_reference) return working::unknown(key, subject, no_test_pressure());
  return pressure_figure(basis, key, subject, *at_reference, level);
}

/// Is a gauge fit to read that pressure? Limits of range from memory [ASME-I-PG-99]; the
/// rule's own demands first.
void judge_gauge(const Basis& basis, const boiler::Gauge& gauge, units::GaugePressure reading,
                 Section& section) {
  const double share = gauge.range.si() / reading.si();
  section.figures.push_back(working::known(
      "sheet.gauge_range_share", gauge.tag, units::measure_fraction(share),
      {.formula = "range / reading",
       .inputs = {{"range", "input.gauge_range", units::measure(gauge.range), Origin::Described},
                  {"reading", "input.gauge_reading", units::measure(reading)}},
       .method = "sheet"}));
  double least = 1.5;
  double most = 4.0;
  bool by_rule = false;
  if (basis.evaluation) {
    if (const auto& from = basis.evaluation->gauge_range_from.value; from && basis.rule->gauges) {
      least = basis.rule->gauges->range_from.value_or(least);
      by_rule = basis.rule->gauges->range_from.has_value();
    }
    if (basis.rule->gauges) most = basis.rule->gauges->range_to.value_or(most);
  }
  if (share < least || share > most) {
    section.notes.push_back({by_rule ? "sheet.gauge_range_unfit" : "sheet.gauge_range_unusual",
                             {{"gauge", gauge.tag},
                              {"share", units::measure_fraction(share)},
                              {"least", units::measure_fraction(least)},
                              {"most", units::measure_fraction(most)}}});
  }
  if (gauge.calibrated_until.empty()) {
    section.notes.push_back({"sheet.gauge_calibration_unknown", {{"gauge", gauge.tag}}});
  } else {
    section.notes.push_back(
        {"sheet.gauge_calibrated_until", {{"gauge", gauge.tag}, {"date", gauge.calibrated_until}}});
  }
}

}  // namespace

Section pressure_section(const Basis& basis) {
  Section section{.key = "sheet.section.pressure"};
  if (basis.own) {
    section.figures.push_back(basis.own->pressure);
    push_if_stated(section, basis.own->ceiling);
    section.notes.insert(section.notes.end(), basis.own->remarks.begin(), basis.own->remarks.end());
    for (const rules::Evaluation& one : basis.own->rules_say) {
      Figure said = one.test_pressure;
      said.key = "sheet.rule_would_say";
      said.subject = one.rule;
      section.figures.push_back(said);
    }
  } else if (basis.evaluation) {
    const rules::Evaluation& rule = *basis.evaluation;
    section.figures.push_back(rule.test_pressure);
    push_if_stated(section, rule.least);
    push_if_stated(section, rule.most);
    section.figures.push_back(rule.ceiling);
    section.figures.push_back(rule.examination_pressure);
    for (const rules::HoldFigures& hold : rule.holds) section.figures.push_back(hold.at_least);
    push_if_stated(section, rule.drop_share);
    push_if_stated(section, rule.drop_time);
    push_if_stated(section, rule.drop_least);
    push_if_stated(section, rule.greatest_rate);
    push_if_stated(section, rule.stress_cap);
    section.notes.insert(section.notes.end(), rule.remarks.begin(), rule.remarks.end());
    section.notes.push_back({"sheet.witness", {{"witness", rule.witness}}});
    for (const std::string& note : rule.notes)
      section.notes.push_back({"sheet.rule_note", {{"note", note}}});
  } else {
    section.figures.push_back(working::unknown("rules.test_pressure", "", no_test_pressure()));
    for (const rules::Candidate& candidate : basis.choice.candidates) {
      section.notes.insert(section.notes.end(), candidate.reasons.begin(), candidate.reasons.end());
    }
  }
  section.notes.push_back({"sheet.reference_level", {{"level", units::measure(basis.reference)}}});
  if (basis.barometer_assumed) {
    section.notes.push_back(
        {"sheet.barometer_assumed", {{"pressure", units::measure(basis.barometer)}}});
  }
  for (const Stage& stage : basis.stages) {
    section.figures.push_back(working::known(
        "sheet.stage_pressure", stage.key, units::measure(stage.at_reference),
        {.formula = "stages: a quarter (10 bar at most), half, working pressure, test pressure",
         .inputs = {{"p_test", "input.test_pressure", units::measure(*basis.test_pressure)}},
         .method = "sheet",
         .remarks = {{"sheet.common_practice", {}}}}));
  }
  section.cautions.push_back({"caution.local_rules", {}});
  section.cautions.push_back({"caution.pump_attended", {}});
  section.cautions.push_back({"caution.fire_side_empty", {}});
  section.cautions.push_back({"caution.overshoot", {}});
  return section;
}

Section gauge_section(const Basis& basis) {
  Section section{.key = "sheet.section.gauges"};
  const boiler::Boiler& boiler = basis.boiler;
  for (const boiler::Gauge& gauge : boiler.gauges) {
    section.figures.push_back(at_level_or_unknown(basis, "sheet.gauge_go_to", gauge.tag,
                                                  basis.test_pressure, gauge.level));
    if (basis.never_above) {
      section.figures.push_back(pressure_figure(basis, "sheet.gauge_never_above", gauge.tag,
                                                *basis.never_above, gauge.level));
    } else {
      section.figures.push_back(
          working::unknown("sheet.gauge_never_above", gauge.tag, {"sheet.no_ceiling", {}}));
    }
    if (basis.examination) {
      section.figures.push_back(pressure_figure(basis, "sheet.gauge_examination", gauge.tag,
                                                *basis.examination, gauge.level));
    }
    if (basis.test_pressure) {
      judge_gauge(basis, gauge, pressure_at(basis, *basis.test_pressure, gauge.level), section);
    }
  }
  const double number = static_cast<double>(boiler.gauges.size());
  const double wanted = basis.evaluation && basis.evaluation->gauge_number.value
                            ? basis.evaluation->gauge_number.value->si
                            : 2.0;
  if (number < wanted) {
    section.notes.push_back(
        {"sheet.too_few_gauges",
         {{"number", units::measure_count(number)}, {"wanted", units::measure_count(wanted)}}});
  }
  if (boiler.pump && boiler.pump->relief && basis.never_above &&
      *boiler.pump->relief > *basis.never_above) {
    section.notes.push_back({"sheet.pump_relief_high",
                             {{"relief", units::measure(*boiler.pump->relief)},
                              {"ceiling", units::measure(*basis.never_above)}}});
  } else if (!boiler.pump || !boiler.pump->relief) {
    section.notes.push_back({"sheet.pump_relief_unknown", {}});
  }
  return section;
}

Section part_section(const Basis& basis) {
  Section section{.key = "sheet.section.parts"};
  for (const boiler::Part& part : basis.boiler.parts) {
    const units::Level bottom = boiler::lowest(part);
    section.figures.push_back(
        at_level_or_unknown(basis, "sheet.part_pressure", part.tag, basis.test_pressure, bottom));
    const auto working_pressure = boiler::working_pressure(basis.boiler, part);
    if (!basis.test_pressure || !working_pressure || working_pressure->si() <= 0.0) continue;
    const units::GaugePressure here = pressure_at(basis, *basis.test_pressure, bottom);
    section.figures.push_back(
        working::known("sheet.part_share_of_working", part.tag,
                       units::measure_percent(here.si() / working_pressure->si()),
                       {.formula = "p(part) / p_w(part)",
                        .inputs = {{"p", "input.pressure_at_part", units::measure(here)},
                                   {"p_w", "input.working_pressure",
                                    units::measure(*working_pressure), Origin::Described}},
                        .method = "sheet"}));
  }
  section.notes.push_back({"sheet.parts_lowest_point", {}});
  return section;
}

Section place_section(const Basis& basis) {
  Section section{.key = "sheet.section.places"};
  std::vector<boiler::PlaceToLook> places = boiler::places_to_look(basis.boiler);
  std::stable_sort(places.begin(), places.end(),
                   [](const auto& a, const auto& b) { return a.level > b.level; });
  const auto pressure = basis.examination ? basis.examination : basis.test_pressure;
  for (const boiler::PlaceToLook& place : places) {
    section.figures.push_back(
        at_level_or_unknown(basis, "sheet.place_pressure", place.tag, pressure, place.level));
  }
  section.notes.push_back(
      {basis.examination ? "sheet.places_at_examination" : "sheet.places_at_test",
       {{"number", units::measure_count(static_cast<double>(places.size()))}}});
  section.cautions.push_back({"caution.walkdown", {}});
  section.cautions.push_back({"caution.no_wrench_under_pressure", {}});
  return section;
}

Section valve_section(const Basis& basis) {
  Section section{.key = "sheet.section.valves"};
  for (const boiler::Mounting& valve : basis.boiler.mountings) {
    if (valve.kind != boiler::MountingKind::SafetyValve) continue;
    section.figures.push_back(at_level_or_unknown(basis, "sheet.valve_pressure", valve.tag,
                                                  basis.test_pressure, valve.level));
    if (!valve.setting) {
      section.notes.push_back({"sheet.valve_setting_unknown", {{"valve", valve.tag}}});
      continue;
    }
    if (!basis.test_pressure) continue;
    const units::GaugePressure here = pressure_at(basis, *basis.test_pressure, valve.level);
    section.figures.push_back(working::known(
        "sheet.valve_margin", valve.tag, units::measure_pressure_difference(*valve.setting - here),
        {.formula = "p_set - p(z)",
         .inputs = {{"p_set", "input.valve_setting", units::measure(*valve.setting),
                     Origin::Described},
                    {"p", "input.pressure_at_valve", units::measure(here)}},
         .method = "sheet"}));
    if (here >= *valve.setting) {
      section.notes.push_back({"sheet.valve_must_be_gagged",
                               {{"valve", valve.tag},
                                {"setting", units::measure(*valve.setting)},
                                {"pressure", units::measure(here)}}});
    } else {
      section.notes.push_back(
          {"sheet.valve_may_stay",
           {{"valve", valve.tag}, {"setting", units::measure(*valve.setting)}}});
    }
  }
  section.cautions.push_back({"caution.gags", {}});
  return section;
}

}  // namespace steamworthy::sheet
