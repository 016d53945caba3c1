#include "closing/apply.h"

#include <algorithm>
#include <cassert>

#include "closing/collector.h"
#include "facts/table.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

constexpr Roles lead = bit(facts::RoleName::LeadHand) | bit(facts::RoleName::Engineer);

/// What every fact says whatever its kind: who exists, who was heard, that a clock was ahead.
void note_device(State& state, const Told& told) {
  const facts::Fact& fact = told.fact();
  Device& own = state.devices[fact.device];
  if (fact.device_seq > own.last + 1) own.has_gap = true;
  own.last = std::max(own.last, fact.device_seq);
  own.claimed = std::max(own.claimed, fact.device_seq);
  own.left = false;
  for (const facts::Head& head : fact.seen) {
    if (head.device == fact.device) continue;
    int& claimed = state.devices[head.device].claimed;
    claimed = std::max(claimed, head.device_seq);
  }
  for (auto& [tag, space] : state.spaces) {
    if (space.count && told.has_seen(space.count->stamp)) space.count->heard.insert(fact.device);
  }
  if (fact.recorded_at_ms >= state.latest_ms) {
    state.latest_ms = fact.recorded_at_ms;
    return;
  }
  // An earlier fact was dated later than this one, which has seen it: it cannot have been.
  const auto cap = [&](Stamp& stamp) {
    if (stamp.at_ms > fact.recorded_at_ms && told.has_seen(stamp)) {
      stamp.at_ms = fact.recorded_at_ms;
    }
  };
  for (auto& [tag, space] : state.spaces) {
    if (space.air) cap(space.air->stamp);
    if (space.count) cap(space.count->stamp);
  }
}

bool covers(const Given& given, Steps steps, const std::string& subject) {
  return (bit(given.step) & steps) != 0 && (subject.empty() || given.subject == subject);
}

/// The first that made it lapse is remembered.
void lapse_by(Given& given, Check by, const std::string& about) {
  if (given.lapsed) return;
  given.lapsed = by;
  given.about = about;
}

void raise_late(State& state, const Terms& terms, const Given& given, Check check,
                const std::string& about) {
  if (!terms.is_on(Check::S11Late)) return;
  const std::string token(row(check).token);
  working::Message why{
      "alarm.clearance_wrong",
      {{"step", working::Term{"clearance." + std::string(facts::token(given.step))}},
       {"check", working::Term{"outstanding." + token}}}};
  if (!given.subject.empty()) why.values.emplace_back("for", given.subject);
  if (!about.empty()) why.values.emplace_back("subject", about);
  raise_alarm(state,
              "late:" + name_of(given.stamp) + ":" + token + (about.empty() ? "" : ":") + about,
              std::move(why), lead);
}

}  // namespace

std::string name_of(const Stamp& stamp) {
  return stamp.device + "/" + std::to_string(stamp.device_seq);
}

void raise_alarm(State& state, const std::string& name, working::Message why, Roles may_take,
                 bool stops) {
  state.alarms.emplace(name, Alarm{name, std::move(why), may_take, false, stops});
}

void note_step(State& state, const Told& told, StepName step, const std::string& subject) {
  if (!told.terms.is_on(Check::S11Late) || has_given(state, step, subject)) return;
  working::Message why{"alarm.without_clearance",
                       {{"step", working::Term{"clearance." + std::string(facts::token(step))}}}};
  if (!subject.empty()) why.values.emplace_back("for", subject);
  for (const auto& [name, alarm] : state.alarms) {
    if (!alarm.taken && alarm.why == why) return;
  }
  raise_alarm(state, "without:" + name_of(told.stamp()), std::move(why), lead, false);
}

void lapse(State& state, const Told& told, Check by, Steps steps, const std::string& subject) {
  if (!told.terms.is_on(by)) return;
  Lapser& lapser =
      state.lapsers[std::string(row(by).token) + ":" + std::to_string(steps) + ":" + subject];
  lapser.by = by;
  lapser.steps = steps;
  lapser.subject = subject;
  told.put_into(lapser.heads);
  for (Given& given : state.given) {
    if (!covers(given, steps, subject)) continue;
    lapse_by(given, by, subject);
    if (!told.has_seen(given.stamp)) raise_late(state, told.terms, given, by, subject);
  }
}

void give(State& state, const Told& told, const facts::ClearanceGiven& body) {
  Given given;
  given.step = body.step;
  given.subject = body.subject;
  if (body.up_to) given.up_to = body.up_to->value;
  given.stamp = told.stamp();
  given.by = told.person();
  given.second = body.second;
  for (const Override& one : state.overrides) {
    if (one.step == body.step) given.overrides.push_back(one);
  }
  std::erase_if(state.overrides, [&](const Override& one) { return one.step == body.step; });
  const auto against = outstanding_with(state, told.terms, {given.step, given.subject, given.up_to},
                                        told.at_ms(), given.overrides);
  for (const Outstanding& item : against) {
    lapse_by(given, item.check, item.subject);
    // An alarm that stands is on every screen already; were each to raise another for every
    // clearance given all the same, their number would double each time.
    if (item.check == Check::S11Alarm) continue;
    raise_late(state, told.terms, given, item.check, item.subject);
  }
  for (const auto& [key, lapser] : state.lapsers) {
    if (!covers(given, lapser.steps, lapser.subject) || told.has_seen(lapser.heads)) continue;
    lapse_by(given, lapser.by, lapser.subject);
    raise_late(state, told.terms, given, lapser.by, lapser.subject);
  }
  const bool has_names = state.pen == told.fact().device && !body.second.empty() &&
                         body.second != told.person() && told.terms.has_role(told.person(), lead);
  if (!has_names && told.terms.is_on(Check::S11Names)) {
    given.lapsed = Check::S11Names;
    given.about.clear();
    raise_late(state, told.terms, given, Check::S11Names, "");
  }
  std::erase_if(state.given, [&](const Given& old) {
    return old.step == given.step && old.subject == given.subject;
  });
  state.given.push_back(std::move(given));
}

bool is_water_side(const Terms& terms, const std::string& space) {
  const auto known = terms.layout().spaces.find(space);
  return known == terms.layout().spaces.end() || known->second.is_water_side();
}

bool is_fire_side(const Terms& terms, const std::string& space) {
  const auto known = terms.layout().spaces.find(space);
  return known == terms.layout().spaces.end() || !known->second.is_water_side();
}

bool has_given(const State& state, StepName step) {
  return std::any_of(state.given.begin(), state.given.end(),
                     [&](const Given& g) { return g.step == step && !g.lapsed; });
}

bool has_given(const State& state, StepName step, const std::string& subject) {
  return std::any_of(state.given.begin(), state.given.end(), [&](const Given& g) {
    return g.step == step && g.subject == subject && !g.lapsed;
  });
}

void note_entry(State& state, const Told& told, const std::string& tag) {
  SpaceState& space = state.spaces[tag];
  told.put_into(space.entries);
  space.was_open = true;
  take_back(space.closed, told);
  if (space.count) space.count->valid = false;
}

void note_entry_everywhere(State& state, const Told& told) {
  for (const auto& [tag, space] : told.terms.layout().spaces) state.spaces[tag];
  for (auto& [tag, space] : state.spaces) {
    told.put_into(space.entries);
    if (space.count) space.count->valid = false;
  }
}

void note_shut(State& state, const Told& told, const std::string& tag) {
  const auto described = told.terms.layout().spaces.find(tag);
  if (described == told.terms.layout().spaces.end()) return;
  for (const std::string& way : described->second.ways_in) {
    if (is_way_open(state, told.terms.layout().ways_in.at(way))) return;
  }
  const Given* clearance = nullptr;
  for (const Given& given : state.given) {
    if (given.step == StepName::CloseLastWayIn && given.subject == tag && !given.lapsed) {
      clearance = &given;
    }
  }
  if (clearance == nullptr) {
    const auto space = state.spaces.find(tag);
    const bool is_closed = space != state.spaces.end() && space->second.closed.holds;
    if (!is_closed) note_step(state, told, StepName::CloseLastWayIn, tag);
    return;
  }
  if (!told.has_seen(clearance->stamp)) return;
  const auto against =
      outstanding_with(state, told.terms, {StepName::CloseLastWayIn, tag, std::nullopt},
                       told.at_ms(), clearance->overrides);
  if (against.empty()) set(state.spaces[tag].closed, told);
}

void apply(State& state, const Told& told) {
  note_device(state, told);
  const facts::Fact& fact = told.fact();
  if (std::holds_alternative<facts::Unread>(fact.body)) {
    state.unread.push_back(told.stamp());
    return;
  }
  if (fact.version > facts::kind_of(fact.body).version) state.unread.push_back(told.stamp());
  const bool is_known = apply_closing(state, told) || apply_inside(state, told) ||
                        apply_closures(state, told) || apply_pressure(state, told);
  assert(is_known);  // every kind is of one family; apply_test.cc tries each
  static_cast<void>(is_known);
}

}  // namespace steamworthy::closing
