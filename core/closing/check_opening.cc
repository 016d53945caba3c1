// The checks of S1 open, S2 enter, S3 close the last way in.
#include <algorithm>

#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

void check_isolations(Collector& into, Check check, bool must_be_tried) {
  std::set<std::string> lines(into.terms.layout().isolations.begin(),
                              into.terms.layout().isolations.end());
  for (const auto& [tag, line] : into.state.isolations) lines.insert(tag);
  for (const std::string& tag : lines) {
    const Isolation& line = of(into.state.isolations, tag);
    if (!is_shut_off_twice(line) || (must_be_tried && !line.tried.holds)) into.add(check, tag);
  }
}

}  // namespace

bool is_within_limits(const Air& air, const Terms& terms) {
  const AirLimits& limits = terms.air();
  const Site& site = terms.site();
  const auto reaches = [](std::optional<double> value, std::optional<double> alarm) {
    return value && (!alarm || *value >= *alarm);
  };
  return air.least_oxygen >= limits.least_oxygen && air.greatest_oxygen <= limits.greatest_oxygen &&
         air.flammable.value_or(0.0) <= limits.greatest_flammable &&
         !(air.carbon_monoxide.value_or(0.0) > 0.0 &&
           reaches(air.carbon_monoxide, site.carbon_monoxide_alarm)) &&
         !(air.hydrogen_sulfide.value_or(0.0) > 0.0 &&
           reaches(air.hydrogen_sulfide, site.hydrogen_sulfide_alarm));
}

bool is_shut_off_twice(const Isolation& line) {
  if (!line.made.holds || !line.how) return false;
  if (*line.how == facts::IsolatedHow::Blank) return true;
  return *line.how == facts::IsolatedHow::TwoValvesAndTellTale && line.tell_tale_dry.holds;
}

bool is_at_zero(const State& state) {
  bool any = false;
  for (const auto& [tag, gauge] : state.gauges) {
    if (!gauge.reading) continue;
    if (!gauge.at_zero.holds) return false;
    any = true;
  }
  return any && !state.pump_runs;
}

bool has_vent_moving_air(const State& state, const Terms&) {
  return std::any_of(state.vents.begin(), state.vents.end(), [](const auto& vent) {
    return vent.second.open.holds && vent.second.moving_air.holds;
  });
}

void check_open(Collector& into) {
  const State& state = into.state;
  if (!is_at_zero(state)) into.add(Check::S1Pressure);
  if (!has_vent_moving_air(state, into.terms)) into.add(Check::S1Vent);
  check_isolations(into, Check::S1Isolation, false);
  bool is_metal_known = false;
  bool is_cool = true;
  for (const auto& [tag, reading] : state.temperatures) {
    if (reading.of != facts::Thing::Metal) continue;
    is_metal_known = true;
    is_cool = is_cool && into.terms.site().open_below &&
              reading.temperature <= *into.terms.site().open_below;
  }
  if (!is_metal_known || !is_cool) into.add(Check::S1Hot);
  for (const std::string& drain : into.terms.layout().drains) {
    if (!of(state.drains, drain).proved.holds) into.add(Check::S1Drained, drain);
  }
}

void check_air(Collector& into) {
  const std::string& space = into.clearance.subject;
  const SpaceState& inside = of(into.state.spaces, space);
  if (!inside.attended.holds) into.add(Check::S2Attendant, space);
  if (!inside.air) {
    into.add(Check::S2Air, space);
    return;
  }
  const Air& air = *inside.air;
  if (is_old(air.stamp.at_ms, into.now_ms, into.terms.site().air_minutes)) {
    into.add(Check::S2AirOld, space);
  }
  if (!inside.air_good.holds) into.add(Check::S2AirLimits, space);
  if (air.least_oxygen < into.terms.air().fresh_oxygen && !air.explained) {
    into.add(Check::S2AirLow, space);
  }
}

void check_enter(Collector& into) {
  check_isolations(into, Check::S2Isolation, true);
  check_air(into);
  const auto known = into.terms.layout().spaces.find(into.clearance.subject);
  const bool is_dry_side =
      known != into.terms.layout().spaces.end() && !known->second.is_water_side();
  const State& state = into.state;
  if (state.filling || state.pump_runs || state.was_raised || (state.water_in && !is_dry_side)) {
    into.add(Check::S2Pressure, into.clearance.subject);
  }
}

std::vector<std::string> inside(const ByTag<Condition>& tally) {
  std::vector<std::string> names;
  for (const auto& [name, out] : tally) {
    if (!out.holds) names.push_back(name);
  }
  return names;
}

std::vector<std::pair<Check, std::string>> fails_of_count(const State& state, const Terms& terms,
                                                          const std::string& space,
                                                          std::int64_t now_ms) {
  std::vector<std::pair<Check, std::string>> fails;
  const SpaceState& known = of(state.spaces, space);
  for (const std::string& who : inside(known.people)) fails.emplace_back(Check::S3Inside, who);
  for (const std::string& thing : inside(known.things)) fails.emplace_back(Check::S3Inside, thing);
  const bool has_count = known.count && known.count->valid && known.count->two_names &&
                         known.count->looked_in && known.count->called;
  if (!has_count) {
    fails.emplace_back(Check::S3Count, space);
  } else {
    if (known.count->people != 0 || known.count->things != 0) {
      fails.emplace_back(Check::S3Inside, space);
    }
    if (is_old(known.count->stamp.at_ms, now_ms, terms.site().count_minutes)) {
      fails.emplace_back(Check::S3CountOld, space);
    }
  }
  for (const auto& [name, device] : state.devices) {
    if (device.is_missing_entries() && !device.lost) fails.emplace_back(Check::S3Missing, name);
    const bool is_silent = !device.left && !device.lost;
    if (is_silent && (!known.count || known.count->heard.count(name) == 0)) {
      fails.emplace_back(Check::S3Device, name);
    }
  }
  return fails;
}

bool is_way_open(const State& state, const WayIn& way) {
  if (way.closure.empty()) {
    const auto door = state.doors.find(way.tag);
    return door != state.doors.end() && !door->second.holds;
  }
  const ClosureState& closure = of(state.closures, way.closure);
  return closure.opened && !closure.nipped_up.holds;
}

void check_close_last_way_in(Collector& into) {
  for (const auto& [check, subject] :
       fails_of_count(into.state, into.terms, into.clearance.subject, into.now_ms)) {
    into.add(check, subject);
  }
}

void check_walk_fire_side(Collector& into) {
  const State& state = into.state;
  check_isolations(into, Check::S2Isolation, true);
  check_air(into);
  const bool may_be_raised =
      state.pump_runs || std::any_of(state.given.begin(), state.given.end(), [](const Given& g) {
        return g.step == facts::StepName::RaisePressure && !g.lapsed;
      });
  if (may_be_raised) into.add(Check::S6Raising);
  if (!state.hold_met.holds) into.add(Check::S6Hold);
  if (!is_at_examination(state, into.terms)) into.add(Check::S6Pressure);
}

}  // namespace steamworthy::closing
