// S10 and S11 as properties of the facts; see rules_test.h.
#include "closing/rules_test.h"
#include "closing/world_test.h"

namespace steamworthy::closing {

using namespace facts;  // the bodies

std::optional<std::string> wrongly_standing(const Past& past, const Given& given) {
  const auto& facts = past.facts();
  std::size_t at = 0;
  while (at < facts.size() && !(facts[at].device == given.stamp.device &&
                                facts[at].device_seq == given.stamp.device_seq)) {
    ++at;
  }
  if (at == facts.size()) return "a clearance that nobody gave";
  const bool to_raise = given.step == StepName::RaisePressure;
  const bool after_plates = to_raise || given.step == StepName::Fill ||
                            given.step == StepName::TakeOver || given.step == StepName::Steam;
  const bool to_enter = given.step == StepName::Enter || given.step == StepName::WalkFireSide;
  const std::string space = given.subject;
  const auto wet = is<TellTaleSeen>([](const TellTaleSeen& t) { return !t.dry; });
  const auto out_of_window = is<TemperatureTaken>([](const TemperatureTaken& t) {
    return t.temperature.value < units::celsius(20) || t.temperature.value > units::celsius(50);
  });
  const auto bad_air = is<AirRead>([=](const AirRead& a) {
    return a.space == space && (a.oxygen_top.value < 0.195 || a.oxygen_top.value > 0.235);
  });
  if (!past.knew_all(at, is<ShiftHandedOver>())) return "S10 shift";
  if (!past.knew_all(at, is<IsolationChanged>() || wet)) return "S10 isolation";
  if (after_plates && !past.knew_all(at, is<ClosureTouched>() || is<ClosureOpened>())) {
    return "S10 plate";
  }
  if (after_plates && !past.knew_all(at, is<TallyIn>() || is<ToolIn>())) return "S10 entry";
  if (given.step == StepName::CloseLastWayIn &&
      !past.knew_all(at, is<TallyIn>(of_space(space)) || is<ToolIn>(of_space(space)))) {
    return "S10 entry";
  }
  if (to_raise && !past.knew_all(at, out_of_window)) return "S10 temperature";
  if (to_enter && !past.knew_all(at, bad_air || is<AttendantRelieved>(of_space(space)))) {
    return "S10 air";
  }
  if (to_raise && !past.knew_all(at, is<VentOpened>() || is<GaugeRemoved>() || is<PostLeft>() ||
                                         is<TemporaryOff>() || is<MountingPutBack>() ||
                                         is<HangersFreed>() || is<ContactLost>())) {
    return "S10 boiler";
  }
  return std::nullopt;
}

/// How the names of alarms begin that are of this clearance, or of another of its step and subject.
std::vector<std::string> alarms_of(const Past& past, const ClearanceGiven& given) {
  std::vector<std::string> names;
  for (const Fact& fact : past.facts()) {
    const auto* other = as<ClearanceGiven>(fact);
    if (other != nullptr && other->step == given.step && other->subject == given.subject) {
      names.push_back("late:" + fact.device + "/" + std::to_string(fact.device_seq) + ":");
    }
  }
  return names;
}

std::optional<std::string> without_alarm(const Past& past, const State& state) {
  const auto& facts = past.facts();
  for (std::size_t g = 0; g < facts.size(); ++g) {
    const auto* given = as<ClearanceGiven>(facts[g]);
    if (given == nullptr) continue;
    for (std::size_t e = 0; e < facts.size(); ++e) {
      const auto* in = as<TallyIn>(facts[e]);
      if (in == nullptr || past.knew(g, e) || past.knew(e, g)) continue;
      const bool is_against =
          (given->step == StepName::CloseLastWayIn && in->space == given->subject) ||
          (given->step == StepName::RaisePressure && in->space == "FU") ||
          (given->step == StepName::Fill && in->space != "FU");
      if (!is_against) continue;
      bool has_alarm = false;
      for (const std::string& name : alarms_of(past, *given)) {
        const auto at = state.alarms.lower_bound(name);
        has_alarm =
            has_alarm || (at != state.alarms.end() && at->first.substr(0, name.size()) == name);
      }
      if (!has_alarm) return "S11 late";
    }
    const auto* pen_holder = as<ClosingStarted>(facts.front());
    const bool none_stops = std::none_of(state.alarms.begin(), state.alarms.end(),
                                         [](const auto& alarm) { return alarm.second.stops; });
    if (pen_holder != nullptr && facts[g].device != facts.front().device && none_stops) {
      return "S11 pen";
    }
  }
  // An alarm is taken only by a fact of somebody with the role.
  for (const auto& [key, alarm] : state.alarms) {
    if (!alarm.taken) continue;
    bool by_right_role = false;
    for (const Fact& fact : facts) {
      const auto* taken = as<AlarmTaken>(fact);
      by_right_role = by_right_role || (taken != nullptr && taken->alarm == key &&
                                        (fact.person == "L" || fact.person == "E"));
    }
    if (!by_right_role) return "S11 taken";
  }
  return std::nullopt;
}

}  // namespace steamworthy::closing
