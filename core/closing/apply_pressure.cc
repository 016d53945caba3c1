// Filling, posts, raising, hold, walkdown, leaks, letting down, handing back.
#include <algorithm>

#include "closing/apply.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

constexpr Roles lead = bit(facts::RoleName::LeadHand) | bit(facts::RoleName::Engineer);
constexpr Steps wants_dry = bit(StepName::Open) | bit(StepName::Enter) |
                            bit(StepName::CloseLastWayIn) | bit(StepName::BreakJoint) |
                            bit(StepName::Drain);
constexpr Steps handing_back = bit(StepName::TakeOver) | bit(StepName::Steam);
constexpr Steps wants_rest = wants_dry | handing_back | bit(StepName::Fill) |
                             bit(StepName::Tighten) | bit(StepName::Strike) |
                             bit(StepName::WalkFireSide) | bit(StepName::LeaveFull);

/// A step was taken for which no clearance stood.
void alarm_without(State& state, const Told& told, StepName step) {
  if (has_given(state, step)) return;
  raise_alarm(state, "without:" + name_of(told.stamp()),
              {"alarm.without_clearance",
               {{"step", working::Term{"clearance." + std::string(facts::token(step))}}}},
              lead);
}

/// Pressure may rise: no gauge is known to stand at zero.
void forget_zero(State& state, const Told& told) {
  for (auto& [tag, gauge] : state.gauges) {
    take_back(gauge.at_zero, told);
    take_back(gauge.read_since_hold, told);
  }
}

void on(State& state, const Told& told, const facts::FillingOrderAgreed&) {
  set(state.order_agreed, told);
}

void on(State& state, const Told& told, const facts::FillingStarted&) {
  alarm_without(state, told, StepName::Fill);
  for (const auto& [tag, space] : state.spaces) {
    for (const std::string& who : inside(space.people)) {
      if (!is_water_side(told.terms, tag)) continue;
      raise_alarm(state, "inside:" + name_of(told.stamp()) + ":" + who,
                  {"alarm.inside", {{"who", who}, {"space", tag}}}, lead);
    }
  }
  state.filling = true;
  state.water_in = true;
  state.left_full = state.left_safe = state.laid_up = false;
  take_back(state.drained, told);
  take_back(state.full, told);
  take_back(state.level_known, told);
  for (auto& [tag, vent] : state.vents) {
    take_back(vent.ran_solid, told);
    take_back(vent.moving_air, told);
  }
  for (const std::string& tag : told.terms.layout().drains) {
    take_back(state.drains[tag].proved, told);
  }
  lapse(state, told, Check::S10Boiler, wants_dry);
}

void on(State& state, const Told& told, const facts::FillingStopped& body) {
  state.filling = false;
  put(state.full, body.full, told);
}

void on(State& state, const Told& told, const facts::LevelSeen& body) {
  state.level = body.level.value;
  set(state.level_known, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::BreakJoint));
}

void on(State& state, const Told& told, const facts::GaugeFitted& body) {
  set(state.gauges[body.gauge].fitted, told);
}

void on(State& state, const Told& told, const facts::GaugeRemoved& body) {
  Gauge& gauge = state.gauges[body.gauge];
  take_back(gauge.fitted, told);
  gauge.reading.reset();
  take_back(gauge.at_zero, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure) | bit(StepName::WalkFireSide));
}

void on(State& state, const Told& told, const facts::ReliefTried& body) {
  state.relief = body.lifted_at.value;
  set(state.relief_tried, told);
}

void on(State& state, const Told& told, const facts::PostTaken& body) {
  PostState& post = state.posts[body.post];
  post.who = body.who;
  set(post.manned, told);
}

void on(State& state, const Told& told, const facts::PostLeft& body) {
  take_back(state.posts[body.post].manned, told);
  lapse(state, told, Check::S10Boiler,
        bit(StepName::RaisePressure) | bit(StepName::LetDown) | bit(StepName::LeaveFull));
}

void on(State& state, const Told& told, const facts::StopWordChecked&) {
  set(state.stop_word, told);
}

void on(State& state, const Told& told, const facts::PeopleClear&) {
  set(state.people_clear, told);
}

void on(State& state, const Told& told, const facts::ContactLost& body) {
  take_back(state.posts[body.post].in_contact, told);
  state.posts[body.post].contact_said = true;
  if (state.pump_runs || state.was_raised) {
    raise_alarm(state, "contact:" + name_of(told.stamp()),
                {"alarm.contact",
                 {{"post", working::Term{"post." + std::string(facts::token(body.post))}}}},
                lead | bit(facts::RoleName::PumpHand));
  }
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure) | bit(StepName::LetDown));
}

void on(State& state, const Told& told, const facts::ContactRegained& body) {
  set(state.posts[body.post].in_contact, told);
}

void on(State& state, const Told& told, const facts::RaisingStarted&) {
  alarm_without(state, told, StepName::RaisePressure);
  for (const auto& [tag, space] : state.spaces) {
    for (const std::string& who : inside(space.people)) {
      raise_alarm(state, "inside:" + name_of(told.stamp()) + ":" + who,
                  {"alarm.inside", {{"who", who}, {"space", tag}}}, lead);
    }
  }
  state.pump_runs = true;
  state.was_raised = true;
  state.holding = false;
  state.left_full = state.left_safe = state.laid_up = false;
  forget_zero(state, told);
  lapse(state, told, Check::S10Boiler, wants_rest);
}

void on(State& state, const Told&, const facts::RaisingStopped&) { state.pump_runs = false; }

void on(State& state, const Told& told, const facts::TestValveShut&) {
  set(state.test_valve_shut, told);
}
void on(State& state, const Told& told, const facts::TestValveOpened&) {
  take_back(state.test_valve_shut, told);
}
void on(State& state, const Told& told, const facts::PumpSideHungOpen&) {
  set(state.pump_side_open, told);
}

void on(State& state, const Told&, const facts::HoldStarted& body) {
  state.pump_runs = false;
  state.holding = true;
  // With the pump still on the boiler a hold proves nothing.
  state.hold_is_high = state.test_valve_shut.holds && state.pump_side_open.holds && state.sheet &&
                       body.pressure.value >= state.sheet->test_pressure;
}

void on(State& state, const Told& told, const facts::HoldEnded& body) {
  const bool was_holding = state.holding;
  state.holding = false;
  const bool counts =
      body.rule_met && was_holding && state.hold_is_high && state.test_valve_shut.holds;
  put(state.hold_met, counts, told);
  for (auto& [tag, gauge] : state.gauges) take_back(gauge.read_since_hold, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
  if (!counts) lapse(state, told, Check::S10Boiler, bit(StepName::WalkFireSide) | handing_back);
}

void on(State&, const Told&, const facts::TraceAdded&) {}

void on(State& state, const Told& told, const facts::PlaceSeenDry& body) {
  const bool under_pressure = state.sheet && state.sheet->examination_pressure &&
                              body.pressure.value >= *state.sheet->examination_pressure;
  if (!under_pressure) return;
  set(state.dry[body.place], told);
  if (told.terms.layout().closures.count(body.place) != 0 ||
      state.closures.count(body.place) != 0) {
    ClosureState& closure = state.closures[body.place];
    set(closure.untouched, told);
    closure.look_on_steam = false;
  }
  for (auto& [number, leak] : state.leaks) {
    if (leak.place == body.place && leak.repaired.holds) set(leak.seen_dry, told);
  }
}

void on(State& state, const Told& told, const facts::LeakFound& body) {
  Leak& leak = state.leaks[body.leak];
  leak.place = body.place;
  leak.at = body.at;
  leak.passes = body.passes;
  leak.drops_per_min = body.drops ? std::optional<double>(body.drops->value) : std::nullopt;
  take_back(leak.repaired, told);
  take_back(leak.seen_dry, told);
  take_back(leak.watched_hot, told);
  take_back(state.dry[body.place], told);
  if (body.passes == facts::Passing::In) take_back(state.hold_met, told);
  lapse(state, told, Check::S10Boiler, handing_back);
}

void on(State& state, const Told& told, const facts::LeakRepaired& body) {
  const auto leak = state.leaks.find(body.leak);
  if (leak == state.leaks.end()) return;
  take_back(leak->second.seen_dry, told);
  set(leak->second.repaired, told);
}

void on(State& state, const Told& told, const facts::LeakWatchedHot& body) {
  const auto leak = state.leaks.find(body.leak);
  constexpr Roles may = bit(facts::RoleName::Engineer) | bit(facts::RoleName::Inspector);
  if (leak != state.leaks.end() && (may & bit(body.role)) != 0 &&
      told.terms.has_role(told.person(), bit(body.role))) {
    set(leak->second.watched_hot, told);
  }
}

void on(State& state, const Told& told, const facts::BoilerLetDown&) {
  state.pump_runs = false;
  state.was_raised = false;
  state.holding = false;
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure) | bit(StepName::WalkFireSide));
}

void on(State& state, const Told& told, const facts::BoilerDrained&) {
  state.filling = false;
  state.water_in = false;
  state.left_full = state.left_safe = false;
  set(state.drained, told);
  take_back(state.full, told);
  take_back(state.level_known, told);
  for (auto& [tag, vent] : state.vents) take_back(vent.ran_solid, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure) | bit(StepName::LeaveFull));
}

void on(State& state, const Told& told, const facts::BoilerLeftFull& body) {
  alarm_without(state, told, StepName::LeaveFull);
  state.left_full = true;
  state.looked_after_by = body.looked_after_by;
}

void on(State& state, const Told& told, const facts::BoilerLeftSafe& body) {
  state.left_safe = true;
  state.call = body.call;
  state.pump_runs = false;
  state.holding = false;
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

void on(State& state, const Told& told, const facts::BoilerNormalised&) {
  set(state.normalised, told);
}

void on(State& state, const Told&, const facts::BoilerLaidUp&) { state.laid_up = true; }

void on(State& state, const Told& told, const facts::BoilerGiven&) {
  if (told.terms.has_role(told.person(), lead)) state.given_by = told.person();
}

void on(State& state, const Told& told, const facts::BoilerReceived&) {
  note_step(state, told, StepName::TakeOver, "");
  constexpr Roles may = bit(facts::RoleName::WatchEngineer) | bit(facts::RoleName::Engineer);
  if (told.terms.has_role(told.person(), may)) state.received_by = told.person();
}

void on(State& state, const Told& told, const facts::FireLit&) {
  alarm_without(state, told, StepName::Steam);
  state.fire_lit = true;
  forget_zero(state, told);
  lapse(state, told, Check::S10Boiler, wants_rest & ~bit(StepName::Steam));
}

void on(State&, const Told&, const facts::SteamLookedRound&) {}

void on(State& state, const Told&, const facts::ClosureSeenOnSteam& body) {
  state.closures[body.closure].look_on_steam = false;
}

void on(State& state, const Told& told, const facts::TestStopped&) {
  state.pump_runs = false;
  state.holding = false;
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

void on(State&, const Told&, const facts::RemarkMade&) {}

}  // namespace

bool apply_pressure(State& state, const Told& told) { return STEAMWORTHY_DISPATCH(state, told); }

}  // namespace steamworthy::closing
