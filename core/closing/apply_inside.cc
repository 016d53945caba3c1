// Making safe to open, going in, who and what is inside.
#include <algorithm>

#include "closing/apply.h"
#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

constexpr Steps wants_zero = bit(StepName::Open) | bit(StepName::Enter) |
                             bit(StepName::BreakJoint) | bit(StepName::Tighten) |
                             bit(StepName::Strike) | bit(StepName::Drain) |
                             bit(StepName::CloseLastWayIn);
constexpr Steps wants_closed = bit(StepName::Fill) | bit(StepName::RaisePressure) |
                               bit(StepName::TakeOver) | bit(StepName::Steam);

void on(State& state, const Told& told, const facts::IsolationMade& body) {
  Isolation& line = state.isolations[body.isolation];
  line.how = body.how;
  put(line.made,
      body.how == facts::IsolatedHow::Blank || body.how == facts::IsolatedHow::TwoValvesAndTellTale,
      told);
}

void on(State& state, const Told& told, const facts::TellTaleSeen& body) {
  Isolation& line = state.isolations[body.isolation];
  put(line.tell_tale_dry, body.dry, told);
  if (body.dry) return;
  take_back(line.tried, told);
  lapse(state, told, Check::S10Isolation, every_step);
}

void on(State& state, const Told& told, const facts::IsolationTried& body) {
  set(state.isolations[body.isolation].tried, told);
}

void on(State& state, const Told& told, const facts::IsolationChanged& body) {
  Isolation& line = state.isolations[body.isolation];
  line.how.reset();
  take_back(line.made, told);
  take_back(line.tell_tale_dry, told);
  take_back(line.tried, told);
  lapse(state, told, Check::S10Isolation, every_step);
}

void on(State& state, const Told& told, const facts::ReadingTaken& body) {
  Gauge& gauge = state.gauges[body.gauge];
  const bool is_zero = body.pressure.value.si() <= 0.0;
  gauge.reading = body.pressure.value;
  put(gauge.at_zero, is_zero, told);
  set(gauge.read_since_hold, told);
  if (!is_zero) lapse(state, told, Check::S10Boiler, wants_zero);
  if (state.sheet && body.pressure.value.si() >
                         greatest_reading(told.terms, body.gauge, state.sheet->never_above.si())) {
    raise_alarm(state, "overshoot:" + name_of(told.stamp()),
                {"alarm.overshoot",
                 {{"gauge", body.gauge}, {"pressure", units::measure(body.pressure.value)}}},
                bit(facts::RoleName::LeadHand) | bit(facts::RoleName::Engineer));
  }
}

void on(State& state, const Told& told, const facts::TemperatureTaken& body) {
  state.temperatures[body.thermometer] = {body.of, body.temperature.value};
  if (body.of == facts::Thing::Air) return;
  if (!is_in_window(state, body.temperature.value)) {
    lapse(state, told, Check::S10Temperature, bit(StepName::RaisePressure));
  }
  const auto limit = told.terms.site().open_below;
  if (body.of == facts::Thing::Metal && limit && body.temperature.value > *limit) {
    lapse(state, told, Check::S10Temperature, bit(StepName::Open));
  }
}

void on(State& state, const Told& told, const facts::VentOpened& body) {
  Vent& vent = state.vents[body.mounting];
  set(vent.open, told);
  take_back(vent.shut, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::RaisePressure));
}

void on(State& state, const Told& told, const facts::VentShut& body) {
  Vent& vent = state.vents[body.mounting];
  take_back(vent.open, told);
  take_back(vent.moving_air, told);
  take_back(vent.manned, told);
  set(vent.shut, told);
  lapse(state, told, Check::S10Boiler,
        bit(StepName::Open) | bit(StepName::BreakJoint) | bit(StepName::Fill) |
            bit(StepName::Drain) | bit(StepName::LeaveFull));
}

void on(State& state, const Told& told, const facts::VentMovingAir& body) {
  set(state.vents[body.mounting].moving_air, told);
}

void on(State& state, const Told& told, const facts::VentRanSolid& body) {
  // Only what is being filled, or is full, can run solid.
  if (state.water_in) set(state.vents[body.mounting].ran_solid, told);
}

void on(State& state, const Told& told, const facts::VentManned& body) {
  Vent& vent = state.vents[body.mounting];
  vent.who = body.who;
  set(vent.manned, told);
}

void on(State& state, const Told& told, const facts::DrainOpened& body) {
  if (state.water_in) note_step(state, told, StepName::Drain, "");
  take_back(state.drains[body.mounting].shut, told);
  lapse(state, told, Check::S10Boiler, bit(StepName::Fill) | bit(StepName::RaisePressure));
}

void on(State& state, const Told& told, const facts::DrainShut& body) {
  Drain& drain = state.drains[body.mounting];
  set(drain.shut, told);
}

void on(State& state, const Told& told, const facts::DrainProved& body) {
  set(state.drains[body.mounting].proved, told);
}

void on(State& state, const Told& told, const facts::WayInOpened& body) {
  take_back(state.doors[body.way_in], told);
  const auto way = told.terms.layout().ways_in.find(body.way_in);
  const std::string space =
      way == told.terms.layout().ways_in.end() ? body.way_in : way->second.space;
  note_entry(state, told, space);
  lapse(state, told, Check::S10Entry, bit(StepName::CloseLastWayIn), space);
  lapse(state, told, Check::S10Entry, wants_closed);
}

void on(State& state, const Told& told, const facts::WayInShut& body) {
  set(state.doors[body.way_in], told);
  const auto way = told.terms.layout().ways_in.find(body.way_in);
  if (way != told.terms.layout().ways_in.end()) note_shut(state, told, way->second.space);
}

template <class Value>
std::optional<double> number(const std::optional<Value>& measured) {
  return measured ? std::optional<double>(measured->value) : std::nullopt;
}

void on(State& state, const Told& told, const facts::AirRead& body) {
  Air air;
  air.stamp = told.stamp();
  const auto all = {body.oxygen_top.value, body.oxygen_middle.value, body.oxygen_bottom.value};
  air.oxygen_top = body.oxygen_top.value;
  air.oxygen_middle = body.oxygen_middle.value;
  air.oxygen_bottom = body.oxygen_bottom.value;
  air.least_oxygen = std::min(all);
  air.greatest_oxygen = std::max(all);
  air.flammable = number(body.flammable);
  air.carbon_monoxide = number(body.carbon_monoxide);
  air.hydrogen_sulfide = number(body.hydrogen_sulfide);
  air.explained = !body.why_low.empty();
  const bool is_good = is_within_limits(air, told.terms);
  put(state.spaces[body.space].air_good, is_good, told);
  if (!is_good) {
    lapse(state, told, Check::S10Air, bit(StepName::Enter) | bit(StepName::WalkFireSide),
          body.space);
  }
  state.spaces[body.space].air = std::move(air);
}

void on(State& state, const Told& told, const facts::AttendantPosted& body) {
  SpaceState& space = state.spaces[body.space];
  space.attendant = body.who;
  set(space.attended, told);
}

void on(State& state, const Told& told, const facts::AttendantRelieved& body) {
  take_back(state.spaces[body.space].attended, told);
  lapse(state, told, Check::S10Air, bit(StepName::Enter) | bit(StepName::WalkFireSide), body.space);
}

/// Somebody or something goes in while water or pressure is on.
void alarm_if_in_danger(State& state, const Told& told, const std::string& space,
                        const std::string& who) {
  const bool at_fire = is_fire_side(told.terms, space) &&
                       (state.pump_runs || has_given(state, StepName::RaisePressure));
  const bool in_water = is_water_side(told.terms, space) &&
                        (state.filling || state.water_in || has_given(state, StepName::Fill));
  if (!at_fire && !in_water) return;
  raise_alarm(state, "inside:" + name_of(told.stamp()),
              {"alarm.inside", {{"who", who}, {"space", space}}},
              bit(facts::RoleName::LeadHand) | bit(facts::RoleName::Engineer));
}

/// Somebody goes in, to work or to walk the fire side.
void note_going_in(State& state, const Told& told, const std::string& space) {
  const bool walks = is_fire_side(told.terms, space) && state.was_raised;
  if (walks && has_given(state, StepName::WalkFireSide, space)) return;
  if (has_given(state, StepName::Enter, space)) return;
  note_step(state, told, walks ? StepName::WalkFireSide : StepName::Enter, space);
}

void go_in(State& state, const Told& told, const std::string& space, const std::string& who) {
  alarm_if_in_danger(state, told, space, who);
  note_entry(state, told, space);
  take_back(state.people_clear, told);
  lapse(state, told, Check::S10Entry, bit(StepName::CloseLastWayIn), space);
  lapse(state, told, Check::S10Entry, wants_closed);
}

void on(State& state, const Told& told, const facts::TallyIn& body) {
  note_going_in(state, told, body.space);
  go_in(state, told, body.space, body.who);
  take_back(state.spaces[body.space].people[body.who], told);
}

void on(State& state, const Told& told, const facts::TallyOut& body) {
  set(state.spaces[body.space].people[body.who], told);
}

void on(State& state, const Told& told, const facts::ToolIn& body) {
  go_in(state, told, body.space, body.tool);
  take_back(state.spaces[body.space].things[body.tool], told);
}

void on(State& state, const Told& told, const facts::ToolOut& body) {
  set(state.spaces[body.space].things[body.tool], told);
}

void on(State& state, const Told& told, const facts::SpaceCounted& body) {
  SpaceState& space = state.spaces[body.space];
  Count count;
  count.stamp = told.stamp();
  count.people = body.people_inside;
  count.things = body.tools_inside;
  count.two_names = !body.second.empty() && body.second != told.person();
  count.looked_in = body.looked_in;
  count.called = body.called;
  count.valid = told.has_seen(space.entries);
  count.heard = {told.fact().device};
  if (count.people != 0 || count.things != 0) {
    told.put_into(space.entries);  // another count must have seen this one
    lapse(state, told, Check::S10Entry, bit(StepName::CloseLastWayIn), body.space);
    lapse(state, told, Check::S10Entry, wants_closed);
  }
  space.count = std::move(count);
}

}  // namespace

bool apply_inside(State& state, const Told& told) { return STEAMWORTHY_DISPATCH(state, told); }

}  // namespace steamworthy::closing
