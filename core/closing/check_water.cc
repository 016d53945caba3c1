// The checks of S4 fill and S5 raise pressure.
#include <algorithm>

#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

std::set<std::string> closures_of(const Collector& from) {
  std::set<std::string> tags;
  for (const auto& [tag, closure] : from.terms.layout().closures) tags.insert(tag);
  for (const auto& [tag, closure] : from.state.closures) tags.insert(tag);
  return tags;
}

/// The plate has a gasket of its own, or needs none.
bool has_gasket(const Collector& from, const std::string& tag, const ClosureState& closure) {
  const auto described = from.terms.layout().closures.find(tag);
  const bool needs_none = described != from.terms.layout().closures.end() &&
                          described->second->gasket &&
                          described->second->gasket->kind == boiler::GasketKind::MetalToMetal;
  return needs_none || closure.gasket.holds;
}

bool needs_gaps(const Collector& from, const std::string& tag) {
  const auto described = from.terms.layout().closures.find(tag);
  return described != from.terms.layout().closures.end() &&
         described->second->kind == boiler::ClosureKind::Manhole;
}

void check_closures(Collector& into) {
  for (const std::string& tag : closures_of(into)) {
    const ClosureState& closure = of(into.state.closures, tag);
    if (!closure.opened) {
      if (!closure.known_not_opened.holds) into.add(Check::S4Closure, tag);
      continue;
    }
    if (!closure.nipped_up.holds) into.add(Check::S4Closure, tag);
    if (!closure.matches.holds || !closure.looked_at.holds || !has_gasket(into, tag, closure)) {
      into.add(Check::S4Plate, tag);
    }
    if ((needs_gaps(into, tag) || closure.gaps_said) && !closure.gaps_good.holds) {
      into.add(Check::S4Gap, tag);
    }
  }
}

void check_spaces(Collector& into) {
  const Layout& layout = into.terms.layout();
  for (const auto& [tag, space] : into.state.spaces) {
    const auto known = layout.spaces.find(tag);
    const bool is_dry_side = known != layout.spaces.end() && !known->second.is_water_side();
    if (is_dry_side) continue;
    if (!is_empty(space) || (space.was_open && !space.closed.holds)) {
      into.add(Check::S4Space, tag);
    }
  }
}

bool is_gagged(const State& state, const std::string& valve) {
  return std::any_of(state.temporaries.begin(), state.temporaries.end(), [&](const auto& one) {
    return one.second.where == valve && one.second.on.holds;
  });
}

void check_pressure_gear(Collector& into) {
  const State& state = into.state;
  const auto up_to = into.clearance.up_to;
  int gauges = 0;
  for (const auto& [tag, gauge] : state.gauges) gauges += gauge.fitted.holds ? 1 : 0;
  if (gauges < 2) into.add(Check::S5Gauges);
  for (const boiler::Mounting* valve : into.terms.layout().safety_valves) {
    const bool may_stay = up_to && state.sheet && state.sheet->safety_valves_in_place_below &&
                          *up_to <= *state.sheet->safety_valves_in_place_below;
    if (!may_stay && !is_gagged(state, valve->tag)) into.add(Check::S5SafetyValve, valve->tag);
  }
  const bool is_relief_good = state.relief_tried.holds && state.relief && state.sheet &&
                              *state.relief <= state.sheet->never_above;
  if (!is_relief_good) into.add(Check::S5Relief);
  for (const boiler::Mounting* mounting : into.terms.layout().limited) {
    const bool can_take_it = up_to && *up_to <= *mounting->test_limit;
    if (!can_take_it && !of(state.fittings, mounting->tag).isolated.holds) {
      into.add(Check::S5Instrument, mounting->tag);
    }
  }
  if (into.terms.site().spring_hangers && !state.hangers_pinned.holds) into.add(Check::S5Hangers);
}

void check_people(Collector& into) {
  const State& state = into.state;
  for (const auto& [tag, space] : into.terms.layout().spaces) {
    if (!space.is_water_side() && !fails_of_count(state, into.terms, tag, into.now_ms).empty()) {
      into.add(Check::S5FireSide, tag);
    }
  }
  for (const auto& [tag, space] : state.spaces) {
    if (into.terms.layout().spaces.count(tag) == 0 && !inside(space.people).empty()) {
      into.add(Check::S5FireSide, tag);
    }
  }
  const auto pump = state.posts.find(facts::Post::Pump);
  if (pump == state.posts.end() || !pump->second.manned.holds) into.add(Check::S5Pump);
  for (const auto& [post, stands] : state.posts) {
    if (stands.is_lost()) into.add(Check::S5Contact, std::string(facts::token(post)));
  }
  if (!state.people_clear.holds) into.add(Check::S5People);
  if (!state.stop_word.holds) into.add(Check::S5StopWord);
}

void check_temperatures(Collector& into) {
  const State& state = into.state;
  for (const facts::Thing thing : {facts::Thing::Water, facts::Thing::Metal}) {
    bool is_known = false;
    bool is_inside = true;
    for (const auto& [tag, reading] : state.temperatures) {
      if (reading.of != thing) continue;
      is_known = true;
      is_inside = is_inside && is_in_window(state, reading.temperature);
    }
    if (!is_known || !is_inside) {
      into.add(Check::S5Temperature, std::string(facts::token(thing)));
    }
  }
}

}  // namespace

bool is_in_window(const State& state, units::Temperature temperature) {
  if (!state.sheet) return false;
  const auto& sheet = *state.sheet;
  return (!sheet.coldest || temperature >= *sheet.coldest) &&
         (!sheet.warmest || temperature <= *sheet.warmest);
}

void check_findings(Collector& into, Check check) {
  for (const auto& [number, finding] : into.state.findings) {
    if (finding.is_undecided()) into.add(check, number);
  }
}

void check_fill(Collector& into) {
  const State& state = into.state;
  check_spaces(into);
  check_closures(into);
  for (const auto& [tag, internal] : state.internals) {
    if (!internal.holds) into.add(Check::S4Internal, tag);
  }
  for (const auto& [tag, header] : state.headers) {
    if (header.opened && !(header.looked_into.holds && header.sealed.holds)) {
      into.add(Check::S4Header, tag);
    }
  }
  for (const auto& [tag, bank] : state.banks) {
    const bool is_clear = std::all_of(bank.troubled.begin(), bank.troubled.end(),
                                      [](const auto& tube) { return tube.second.holds; });
    if (!is_clear || bank.balls_out != 0) {
      into.add(Check::S4Tubes, tag);
    }
  }
  check_findings(into, Check::S4Finding);
  for (const std::string& tag : into.terms.layout().drains) {
    if (!of(state.drains, tag).shut.holds) into.add(Check::S4Drain, tag);
  }
  for (const std::string& tag : into.terms.layout().vents) {
    const Vent& vent = of(state.vents, tag);
    if (!vent.open.holds) into.add(Check::S4Vent, tag);
    if (!vent.manned.holds) into.add(Check::S4VentManned, tag);
  }
  if (into.terms.layout().traps_air && !state.order_agreed.holds) into.add(Check::S4Order);
}

void check_raise(Collector& into) {
  const State& state = into.state;
  const auto up_to = into.clearance.up_to;
  check_people(into);
  if (!state.sheet || !up_to) into.add(Check::S5Sheet);
  if (state.sheet && up_to && *up_to > state.sheet->test_pressure) into.add(Check::S5Above);
  if (!state.full.holds) into.add(Check::S5Filled);
  for (const std::string& tag : closures_of(into)) {
    const ClosureState& closure = of(state.closures, tag);
    if (closure.opened && !closure.nipped_up.holds) into.add(Check::S5Filled, tag);
  }
  for (const std::string& tag : into.terms.layout().vents) {
    const Vent& vent = of(state.vents, tag);
    if (!vent.ran_solid.holds || !vent.shut.holds) into.add(Check::S5Vent, tag);
  }
  check_temperatures(into);
  check_pressure_gear(into);
}

}  // namespace steamworthy::closing
