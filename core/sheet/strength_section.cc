// What the weakest part sees at test pressure, as a share of its yield strength.
#include "boiler/content.h"
#include "boiler/metal.h"
#include "sheet/basis.h"
#include "strength/stress.h"
#include "units/makers.h"

namespace steamworthy::sheet {
namespace {

using working::Figure;
using working::Message;
using working::Origin;

/// Common cap of codes, 90 % of yield, from memory; the rule's own goes first.
constexpr double cap_from_memory = 0.9;

std::string reason_key(strength::NoAnswer why) {
  switch (why) {
    case strength::NoAnswer::None:
      return "";
    case strength::NoAnswer::WallNotKnown:
      return "sheet.wall_not_known";
    case strength::NoAnswer::WallGone:
      return "sheet.wall_gone";
    case strength::NoAnswer::MaterialNotKnown:
      return "sheet.material_not_known";
    case strength::NoAnswer::YieldNotStated:
      return "sheet.yield_not_stated";
    case strength::NoAnswer::YieldFromMemory:
      return "sheet.yield_from_memory";
    case strength::NoAnswer::TemperatureOutside:
      return "sheet.yield_temperature_outside";
    case strength::NoAnswer::WallTooThickForYield:
      return "sheet.yield_wall_too_thick";
    case strength::NoAnswer::StayedPlate:
      return "sheet.stayed_plate";
  }
  return "";
}

std::string place_key(strength::Place place) {
  switch (place) {
    case strength::Place::Shell:
      return "sheet.at.shell";
    case strength::Place::HeadCrown:
      return "sheet.at.head_crown";
    case strength::Place::HeadKnuckle:
      return "sheet.at.head_knuckle";
    case strength::Place::Tube:
      return "sheet.at.tube";
    case strength::Place::FlueTube:
      return "sheet.at.flue_tube";
    case strength::Place::Furnace:
      return "sheet.at.furnace";
    case strength::Place::HeaderSide:
      return "sheet.at.header_side";
    case strength::Place::HeaderCorner:
      return "sheet.at.header_corner";
    case strength::Place::FlatPlate:
      return "sheet.at.flat_plate";
  }
  return "sheet.at.shell";
}

struct Judged {
  std::optional<double> share;
  std::string subject;
};

Figure stress_figure(const strength::WallStress& stress, const std::string& subject,
                     units::GaugePressure here) {
  const bool bending = strength::carries_by_bending(stress.place);
  const auto value = bending ? stress.greatest : stress.membrane;
  if (!value) {
    return working::unknown("sheet.wall_stress", subject, {reason_key(stress.why_not), {}});
  }
  working::Working how{
      .formula = std::string(bending ? stress.greatest_formula : stress.membrane_formula),
      .inputs = {{"p", "input.pressure_at_part", units::measure(here)},
                 {"eta", "input.ligament_efficiency",
                  units::measure_fraction(stress.ligament_efficiency), Origin::Described}},
      .sources = {"Timoshenko-II"},
      .method = "strength",
      .remarks = {{place_key(stress.place), {}}}};
  if (stress.wall) {
    how.inputs.push_back({"t", stress.wall_measured ? "input.measured_wall" : "input.nominal_wall",
                          units::measure_size(*stress.wall), Origin::Described});
  }
  return working::known("sheet.wall_stress", subject, units::measure_stress(*value), how);
}

void judge_body(const Basis& basis, const boiler::Part& part, const vessel::Body& body,
                const std::string& label, Section& section, std::vector<Judged>& all) {
  const units::GaugePressure here = pressure_at(basis, *basis.test_pressure, boiler::lowest(part));
  const boiler::Metal metal = boiler::metal(basis.boiler, part);
  const bool is_head = std::holds_alternative<vessel::Head>(body.shape);
  strength::WallState state;
  if (!is_head) {
    state.measured = part.measured_wall;
    state.ligament_efficiency = part.ligament_efficiency.value_or(1.0);
  }
  const auto stresses =
      strength::wall_stresses(body, here.from_origin(), metal.material.elasticity().poisson, state);
  // The place that governs the body: by share, and by stress where no share can be told.
  const strength::WallStress* worst = nullptr;
  double size = -1.0;
  for (const strength::WallStress& one : stresses) {
    const auto value = strength::carries_by_bending(one.place) ? one.greatest : one.membrane;
    const double here_size = value ? units::abs(*value).si() : 0.0;
    if (here_size > size) {
      size = here_size;
      worst = &one;
    }
  }
  if (worst == nullptr) return;
  section.figures.push_back(stress_figure(*worst, label, here));
  const auto share =
      strength::share_of_yield(*worst, metal.known ? &metal.material : nullptr, basis.metal);
  if (!share.share) {
    const auto why = worst->why_not != strength::NoAnswer::None ? worst->why_not : share.why_not;
    section.figures.push_back(
        working::unknown("sheet.share_of_yield", label, {reason_key(why), {}}));
  } else {
    working::Input yield{"R_e", "input.yield", units::measure_stress(*share.yield),
                         Origin::Published, share.yield_provenance.source};
    if (share.yield_provenance.trust == materials::Trust::User) yield.origin = Origin::Stated;
    section.figures.push_back(working::known(
        "sheet.share_of_yield", label, units::measure_percent(*share.share),
        {.formula = "|sigma| / R_e(T)",
         .inputs = {{"sigma", "input.wall_stress", *section.figures.back().value},
                    yield,
                    {"T", "input.metal_temperature", units::measure(basis.metal), Origin::Stated}},
         .method = "strength"}));
  }
  all.push_back({share.share, label});
}

}  // namespace

Section strength_section(const Basis& basis, std::vector<Message>& stops) {
  Section section{.key = "sheet.section.strength"};
  if (!basis.test_pressure) {
    section.figures.push_back(working::unknown("sheet.governing_share", "", no_test_pressure()));
    return section;
  }
  std::vector<Judged> all;
  for (const boiler::Part& part : basis.boiler.parts) {
    int heads = 0;
    for (const vessel::Body& body : boiler::bodies(part)) {
      const bool head = std::holds_alternative<vessel::Head>(body.shape);
      const std::string label = head ? part.tag + " head " + std::to_string(++heads) : part.tag;
      judge_body(basis, part, body, label, section, all);
    }
  }
  const bool by_rule = basis.rule != nullptr && basis.rule->stress_cap.has_value();
  const double cap = by_rule ? *basis.rule->stress_cap : cap_from_memory;
  const Judged* governing = nullptr;
  int untold = 0;
  for (const Judged& one : all) {
    if (!one.share) {
      ++untold;
    } else if (governing == nullptr || *one.share > *governing->share) {
      governing = &one;
    }
  }
  if (governing != nullptr) {
    section.figures.insert(
        section.figures.begin(),
        working::known("sheet.governing_share", governing->subject,
                       units::measure_percent(*governing->share),
                       {.formula = "greatest of |sigma| / R_e(T) over the parts that can be told",
                        .inputs = {{"cap", "input.stress_cap", units::measure_percent(cap),
                                    by_rule ? Origin::Rule : Origin::Remembered}},
                        .method = "strength"}));
    if (*governing->share > cap) {
      stops.push_back({"sheet.above_stress_cap",
                       {{"part", governing->subject},
                        {"share", units::measure_percent(*governing->share)},
                        {"cap", units::measure_percent(cap)}}});
    }
  } else {
    section.figures.insert(section.figures.begin(), working::unknown("sheet.governing_share", "",
                                                                     {"sheet.no_share_told", {}}));
  }
  if (untold > 0) {
    section.notes.push_back({"sheet.shares_not_told",
                             {{"number", units::measure_count(untold)},
                              {"of", units::measure_count(static_cast<double>(all.size()))}}});
  }
  section.notes.push_back({"sheet.strength_is_no_rating", {}});
  section.cautions.push_back({"caution.yielding", {}});
  return section;
}

}  // namespace steamworthy::sheet
