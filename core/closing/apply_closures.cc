// Headers, tubes, findings, plates, internals, closures, temporaries, mountings.
#include <algorithm>

#include "closing/apply.h"
#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

constexpr Steps after_plates = bit(StepName::Fill) | bit(StepName::RaisePressure) |
                               bit(StepName::WalkFireSide) | bit(StepName::LeaveFull) |
                               bit(StepName::TakeOver) | bit(StepName::Steam);
constexpr Steps handing_back = bit(StepName::TakeOver) | bit(StepName::Steam);
constexpr int most_tubes = 10'000;  ///< in one row

void on(State& state, const Told& told, const facts::HeaderLookedInto& body) {
  set(state.headers[body.part].looked_into, told);
}

void on(State& state, const Told& told, const facts::HeaderSealed& body) {
  set(state.headers[body.part].sealed, told);
}

void break_seal(State& state, const Told& told, const std::string& part) {
  Header& header = state.headers[part];
  header.opened = true;
  take_back(header.looked_into, told);
  take_back(header.sealed, told);
}

void on(State& state, const Told& told, const facts::HeaderSealBroken& body) {
  break_seal(state, told, body.part);
  lapse(state, told, Check::S10Boiler, bit(StepName::Fill));
}

void on(State& state, const Told& told, const facts::TubesBalled& body) {
  Bank& bank = state.banks[body.bank];
  bank.balls_out += body.balls_in - body.balls_back;
  if (body.last < body.first || body.last - body.first > most_tubes) {
    state.unread.push_back(told.stamp());  // no bank has such a row
    return;
  }
  for (int tube = body.first; tube <= body.last; ++tube) {
    const bool passed = body.result == facts::BallResult::Passed;
    put(bank.troubled[{body.row, tube}], passed, told);
    if (!passed) lapse(state, told, Check::S10Boiler, bit(StepName::Fill));
  }
}

void on(State& state, const Told& told, const facts::FindingMade& body) {
  state.findings[body.finding] = {body.where, body.what, body.severity, std::nullopt};
  if (body.severity != facts::Severity::Note) {
    lapse(state, told, Check::S10Boiler, bit(StepName::Fill) | handing_back);
  }
}

void on(State& state, const Told& told, const facts::FindingDecided& body) {
  const auto finding = state.findings.find(body.finding);
  constexpr Roles may = bit(facts::RoleName::Engineer) | bit(facts::RoleName::Inspector);
  if (finding == state.findings.end() || (may & bit(body.role)) == 0 ||
      !told.terms.has_role(told.person(), bit(body.role))) {
    return;
  }
  finding->second.disposition = body.disposition;
  if (body.disposition == facts::Disposition::StopTheJob) {
    lapse(state, told, Check::S10Boiler, bit(StepName::Fill) | handing_back);
  }
}

void on(State& state, const Told& told, const facts::InternalOut& body) {
  take_back(state.internals[body.internal], told);
  lapse(state, told, Check::S10Boiler, bit(StepName::Fill));
}

void on(State& state, const Told& told, const facts::InternalIn& body) {
  set(state.internals[body.internal], told);
}

/// A boiler is opened, or a joint broken that has had test water behind it.
void note_opening(State& state, const Told& told, const std::string& closure) {
  if (has_given(state, StepName::Open) || has_given(state, StepName::BreakJoint, closure)) return;
  if (state.water_in) {
    note_step(state, told, StepName::BreakJoint, closure);
  } else {
    note_step(state, told, StepName::Open, "");
  }
}

/// A wrench or hammer on a closure under pressure.
void note_wrench(State& state, const Told& told, StepName step, const std::string& closure) {
  if (!is_at_zero(state)) note_step(state, told, step, closure);
}

void on(State& state, const Told& told, const facts::ClosureOpened& body) {
  note_opening(state, told, body.closure);
  ClosureState& closure = state.closures[body.closure];
  closure.opened = true;
  state.left_safe = false;
  closure.wrong_plate = closure.gaps_to_report = false;
  for (Condition* undone :
       {&closure.nipped_up, &closure.cleaned, &closure.looked_at, &closure.matches, &closure.gasket,
        &closure.gaps_good, &closure.hardened_up, &closure.untouched, &state.dry[body.closure],
        &state.hold_met}) {
    take_back(*undone, told);
  }
  const Layout& layout = told.terms.layout();
  if (const auto way = layout.way_of_closure.find(body.closure);
      way != layout.way_of_closure.end()) {
    const std::string& space = layout.ways_in.at(way->second).space;
    note_entry(state, told, space);
    lapse(state, told, Check::S10Plate, bit(StepName::CloseLastWayIn), space);
  }
  if (const auto header = layout.header_of_closure.find(body.closure);
      header != layout.header_of_closure.end()) {
    break_seal(state, told, header->second);
  }
  lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::ClosureNotOpened& body) {
  set(state.closures[body.closure].known_not_opened, told);
}

void on(State& state, const Told& told, const facts::ClosureCleaned& body) {
  set(state.closures[body.closure].cleaned, told);
}

void on(State& state, const Told& told, const facts::ClosureLookedAt& body) {
  set(state.closures[body.closure].looked_at, told);
}

void on(State& state, const Told& told, const facts::PlateMatched& body) {
  ClosureState& closure = state.closures[body.closure];
  put(closure.matches, body.matches, told);
  closure.wrong_plate = !body.matches;
  if (!body.matches) lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::GasketFitted& body) {
  set(state.closures[body.closure].gasket, told);
}

void on(State& state, const Told& told, const facts::ClosureNippedUp& body) {
  ClosureState& closure = state.closures[body.closure];
  closure.opened = true;  // or there would be nothing to nip up
  set(closure.nipped_up, told);
  take_back(closure.untouched, told);
  take_back(closure.gaps_good, told);  // the plate may have moved
  closure.gaps_to_report = false;
  const Layout& layout = told.terms.layout();
  const auto way = layout.way_of_closure.find(body.closure);
  if (way != layout.way_of_closure.end()) {
    note_shut(state, told, layout.ways_in.at(way->second).space);
  }
  lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::GapsMeasured& body) {
  ClosureState& closure = state.closures[body.closure];
  closure.gaps_said = true;
  const bool is_good = body.verdict == facts::GapVerdict::Good;
  put(closure.gaps_good, is_good, told);
  closure.gaps_to_report = !is_good;
  if (!is_good) lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::ClosureHardenedUp& body) {
  note_wrench(state, told, StepName::Tighten, body.closure);
  ClosureState& closure = state.closures[body.closure];
  closure.opened = true;
  set(closure.hardened_up, told);
  const auto dry = state.dry.find(body.closure);
  if (dry != state.dry.end() && dry->second.holds) closure.look_on_steam = true;
  lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::ClosureTouched& body) {
  const bool struck = body.how == facts::TouchedHow::Struck;
  note_wrench(state, told, struck ? StepName::Strike : StepName::Tighten, body.closure);
  ClosureState& closure = state.closures[body.closure];
  take_back(closure.untouched, told);
  if (body.how == facts::TouchedHow::Slackened) {
    closure.opened = true;
    take_back(closure.nipped_up, told);
    take_back(closure.hardened_up, told);
    take_back(closure.gaps_good, told);
    closure.gaps_to_report = false;
  }
  lapse(state, told, Check::S10Plate, after_plates);
}

void on(State& state, const Told& told, const facts::TemporaryOn& body) {
  Temporary& temporary = state.temporaries[body.temporary];
  temporary.where = body.where;
  temporary.was_on = true;
  set(temporary.on, told);
  take_back(temporary.off, told);
  take_back(temporary.seen_off, told);
  lapse(state, told, Check::S10Boiler, handing_back);
}

void on(State& state, const Told& told, const facts::TemporaryOff& body) {
  Temporary& temporary = state.temporaries[body.temporary];
  take_back(temporary.on, told);
  set(temporary.off, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

void on(State& state, const Told& told, const facts::TemporarySeenOff& body) {
  // Seeing it off before it is off is seeing another one.
  Temporary& temporary = state.temporaries[body.temporary];
  if (temporary.off.holds) set(temporary.seen_off, told);
}

void on(State& state, const Told& told, const facts::MountingIsolated& body) {
  Fitting& fitting = state.fittings[body.mounting];
  fitting.was_isolated = true;
  set(fitting.isolated, told);
  take_back(fitting.back, told);
  take_back(fitting.proved, told);
  lapse(state, told, Check::S10Boiler, handing_back);
}

void on(State& state, const Told& told, const facts::MountingPutBack& body) {
  Fitting& fitting = state.fittings[body.mounting];
  take_back(fitting.isolated, told);
  set(fitting.back, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

void on(State& state, const Told& told, const facts::MountingProved& body) {
  set(state.fittings[body.mounting].proved, told);
}

void on(State& state, const Told& told, const facts::HangersPinned&) {
  state.hangers_said = true;
  set(state.hangers_pinned, told);
  take_back(state.hangers_free, told);
  lapse(state, told, Check::S10Boiler, handing_back);
}

void on(State& state, const Told& told, const facts::HangersFreed&) {
  take_back(state.hangers_pinned, told);
  set(state.hangers_free, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

}  // namespace

bool apply_closures(State& state, const Told& told) { return STEAMWORTHY_DISPATCH(state, told); }

}  // namespace steamworthy::closing
