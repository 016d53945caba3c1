#include "sheet/sheet.h"

#include "rules/choose.h"
#include "sheet/basis.h"

namespace steamworthy::sheet {
namespace {

void append(std::vector<working::Message>& to, const std::vector<working::Message>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

/// What keeps the sheet from having a test pressure.
void say_what_is_missing(const Basis& basis, Sheet& sheet) {
  if (basis.own) {
    append(sheet.stops, basis.own->refusals);
    return;
  }
  if (!basis.request.work) sheet.missing.push_back({"sheet.work_not_told", {}});
  if (!basis.evaluation) {
    sheet.missing.push_back({"sheet.rule_not_told", {}});
    append(sheet.missing, basis.choice.remarks);
    return;
  }
  const rules::Candidate candidate = rules::applies(*basis.rule, basis.circumstances);
  if (candidate.applies == rules::Applies::No) {
    sheet.missing.push_back({"sheet.rule_does_not_apply", {{"rule", basis.rule->id}}});
  }
  append(sheet.missing, candidate.reasons);
  append(sheet.missing, basis.evaluation->missing);
  append(sheet.stops, basis.evaluation->stops);
}

}  // namespace

Sheet make_sheet(const boiler::Boiler& boiler, const std::vector<rules::Rule>& rules,
                 const Request& request) {
  const Basis basis = gather(boiler, rules, request);

  Sheet sheet;
  sheet.boiler_tag = boiler.tag;
  sheet.boiler_name = boiler.name;
  if (basis.rule != nullptr) {
    sheet.rule_id = basis.rule->id;
    sheet.rule_title = basis.rule->title;
    sheet.rule_edition = basis.rule->edition;
  }
  say_what_is_missing(basis, sheet);

  sheet.sections.push_back(pressure_section(basis));
  sheet.sections.push_back(gauge_section(basis));
  sheet.sections.push_back(valve_section(basis));
  sheet.sections.push_back(preparation_section(basis));
  sheet.sections.push_back(temperature_section(basis));
  sheet.sections.push_back(filling_section(basis));
  sheet.sections.push_back(pumping_section(basis));
  sheet.sections.push_back(hold_section(basis));
  sheet.sections.push_back(part_section(basis));
  sheet.sections.push_back(strength_section(basis, sheet.stops));
  sheet.sections.push_back(place_section(basis));
  sheet.sections.push_back(after_section(basis));
  return sheet;
}

const working::Figure* find_figure(const Sheet& sheet, const std::string& key,
                                   const std::string& subject) {
  for (const Section& section : sheet.sections) {
    for (const working::Figure& figure : section.figures) {
      if (figure.key == key && figure.subject == subject) return &figure;
    }
  }
  return nullptr;
}

}  // namespace steamworthy::sheet
