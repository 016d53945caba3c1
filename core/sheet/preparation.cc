// What must be gagged, blanked, vented, drained and isolated before; what comes off after.
#include <algorithm>

#include "sheet/basis.h"

namespace steamworthy::sheet {
namespace {

using boiler::MountingKind;
using working::Message;

Message about(const std::string& key, const std::string& tag, const std::string& where = "") {
  return {key, {{"tag", tag}, {"where", where}}};
}

}  // namespace

Section preparation_section(const Basis& basis) {
  Section section{.key = "sheet.section.preparation"};
  const boiler::Boiler& boiler = basis.boiler;
  for (const boiler::Isolation& isolation : boiler.isolations) {
    section.notes.push_back(
        {isolation.how == boiler::IsolationKind::Blank ? "sheet.isolate_by_blank"
                                                       : "sheet.isolate_by_two_valves",
         {{"tag", isolation.tag}, {"pipe", isolation.pipe}, {"behind", isolation.behind}}});
  }
  for (const boiler::Temporary& temporary : boiler.temporaries) {
    section.notes.push_back(about("sheet.fit_temporary", temporary.tag, temporary.where));
  }
  for (const boiler::Mounting& mounting : boiler.mountings) {
    if (mounting.kind == MountingKind::Vent)
      section.notes.push_back(about("sheet.open_vent", mounting.tag));
    if (mounting.kind == MountingKind::Drain || mounting.kind == MountingKind::Blowdown) {
      section.notes.push_back(about("sheet.shut_drain", mounting.tag));
    }
    if (!mounting.test_limit || !basis.never_above) continue;
    const units::GaugePressure here = pressure_at(basis, *basis.never_above, mounting.level);
    if (here > *mounting.test_limit) {
      section.notes.push_back({"sheet.isolate_instrument",
                               {{"tag", mounting.tag},
                                {"limit", units::measure(*mounting.test_limit)},
                                {"pressure", units::measure(here)}}});
    }
  }
  if (basis.evaluation) {
    for (const std::string& words : basis.evaluation->preparations) {
      section.notes.push_back({"sheet.rule_note", {{"note", words}}});
    }
    if (!basis.evaluation->safety_valves.words.empty()) {
      section.notes.push_back(
          {"sheet.rule_note", {{"note", basis.evaluation->safety_valves.words}}});
    }
  }
  section.notes.push_back({"sheet.hangers_pinned", {}});
  section.cautions.push_back({"caution.isolation", {}});
  section.cautions.push_back({"caution.nobody_inside", {}});
  return section;
}

Section after_section(const Basis& basis) {
  Section section{.key = "sheet.section.after"};
  for (const boiler::Temporary& temporary : basis.boiler.temporaries) {
    section.notes.push_back(about("sheet.take_off_temporary", temporary.tag, temporary.where));
  }
  section.notes.push_back({"sheet.harden_up_after", {}});
  section.cautions.push_back({"caution.let_down_slowly", {}});
  section.cautions.push_back({"caution.temporaries_off_before_steam", {}});
  return section;
}

}  // namespace steamworthy::sheet
