// The closing itself: devices, shifts, clearances, alarms, what was issued and signed.
#include <algorithm>

#include "closing/apply.h"

namespace steamworthy::closing {
namespace {

using facts::RoleName;

void on(State& state, const Told& told, const facts::ClosingStarted& body) {
  // Two beginnings contradict each other; the first in order counts.
  if (!state.boiler.empty()) return;
  state.boiler = body.boiler;
  state.description_sha256 = body.description_sha256;
  state.pen = told.fact().device;
}

void on(State& state, const Told&, const facts::PenHandedOn& body) { state.pen = body.to_device; }

void on(State& state, const Told&, const facts::DeviceJoined& body) {
  state.devices[body.device].joined = true;
}

void on(State&, const Told&, const facts::DeviceReported&) {}

void on(State& state, const Told& told, const facts::DeviceLeft&) {
  // Any later entry of the device takes it back: note_device().
  state.devices[told.fact().device].left = true;
}

void on(State& state, const Told& told, const facts::DeviceLost& body) {
  if (body.second.empty() || body.second == told.person()) return;  // two names, or it is not so
  state.devices[body.device].lost = told.stamp();
  note_entry_everywhere(state, told);
  lapse(state, told, Check::S10Entry, bit(facts::StepName::CloseLastWayIn));
}

void on(State& state, const Told& told, const facts::ShiftHandedOver&) {
  note_entry_everywhere(state, told);
  take_back(state.people_clear, told);
  take_back(state.stop_word, told);
  state.overrides.clear();
  lapse(state, told, Check::S10Shift, every_step);
}

void on(State& state, const Told& told, const facts::EntryWithdrawn&) {
  // The fold leaves the withdrawn entry out; here it is only shown.
  state.withdrawn.push_back(told.stamp());
}

void on(State&, const Told&, const facts::ClearanceAsked&) {}

void on(State& state, const Told& told, const facts::ClearanceGiven& body) {
  give(state, told, body);
}

void on(State& state, const Told&, const facts::ClearanceLapsed& body) {
  for (Given& given : state.given) {
    if (given.step == body.step && given.subject == body.subject && !given.lapsed) {
      given.lapsed = Check::S10Boiler;
      given.taken_back = true;
    }
  }
}

void on(State& state, const Told& told, const facts::ClearanceOverridden& body) {
  const CheckRow* about = find_check(body.check);
  if (about == nullptr) return;
  const bool may = (about->override_by & bit(body.role)) != 0 &&
                   told.terms.has_role(told.person(), bit(body.role));
  if (may) state.overrides.push_back({body.step, about->check, body.subject});
}

void on(State& state, const Told&, const facts::AlarmRaised& body) {
  raise_alarm(state, body.alarm,
              {"alarm.raised_before", {{"why", working::Term{body.why + ".before"}}}},
              bit(RoleName::LeadHand) | bit(RoleName::Engineer));
}

void on(State& state, const Told& told, const facts::AlarmTaken& body) {
  const auto alarm = state.alarms.find(body.alarm);
  if (alarm == state.alarms.end()) return;
  const bool may = (alarm->second.may_take & bit(body.role)) != 0 &&
                   told.terms.has_role(told.person(), bit(body.role));
  alarm->second.taken = alarm->second.taken || may;
}

template <class Value>
std::optional<Value> value_of_measured(const std::optional<facts::Measured<Value>>& measured) {
  return measured ? std::optional<Value>(measured->value) : std::nullopt;
}

void on(State& state, const Told& told, const facts::SheetIssued& body) {
  state.sheet = Sheet{body.test_pressure.value,
                      body.never_above.value,
                      value_of_measured(body.examination_pressure),
                      value_of_measured(body.safety_valves_in_place_below),
                      value_of_measured(body.coldest),
                      value_of_measured(body.warmest),
                      value_of_measured(body.hold),
                      body.rule,
                      body.sheet_sha256};
  lapse(state, told, Check::S10Boiler, bit(facts::StepName::RaisePressure));
}

void on(State& state, const Told&, const facts::ResultAccepted& body) {
  state.accepted = body.answer;
}

void on(State&, const Told&, const facts::SignatureGiven&) {}

// The plant's own feed tells nothing of a closing; Terms hold what follows from it.
void on(State&, const Told&, const facts::PersonEnrolled&) {}
void on(State&, const Told&, const facts::PersonLeft&) {}
void on(State&, const Told&, const facts::DeviceEnrolled&) {}
void on(State&, const Told&, const facts::DeviceRevoked&) {}
void on(State&, const Told&, const facts::RuleAdopted&) {}
void on(State&, const Told&, const facts::SiteLimitsSet&) {}

}  // namespace

bool apply_closing(State& state, const Told& told) { return STEAMWORTHY_DISPATCH(state, told); }

}  // namespace steamworthy::closing
