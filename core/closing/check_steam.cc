// The checks of S9: handing over and raising steam.
#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

bool may_weep(facts::LeakKind at) {
  return at == facts::LeakKind::Gasket || at == facts::LeakKind::Gland;
}

void check_leaks(Collector& into) {
  for (const auto& [number, leak] : into.state.leaks) {
    if (is_closed(into.state, leak)) continue;
    if (!may_weep(leak.at)) {
      into.add(Check::S9Leak, number);
    } else if (!leak.watched_hot.holds) {
      into.add(Check::S9Weep, number);
    }
  }
}

/// A place with a weep that somebody signed for need not be dry.
bool is_watched(const State& state, const std::string& place) {
  for (const auto& [number, leak] : state.leaks) {
    if (leak.place == place && may_weep(leak.at) && leak.watched_hot.holds) return true;
  }
  return false;
}

void check_places(Collector& into) {
  const State& state = into.state;
  for (const std::string& tag : into.terms.layout().places) {
    if (!is_settled(state, tag)) into.add(Check::S9NotSeen, tag);
  }
  for (const auto& [tag, closure] : state.closures) {
    if (of(state.dry, tag).holds && !closure.untouched.holds) into.add(Check::S9Touched, tag);
    if (closure.opened && !closure.hardened_up.holds) into.add(Check::S9Hardened, tag);
  }
}

void check_inside(Collector& into) {
  const Layout& layout = into.terms.layout();
  for (const auto& [tag, space] : layout.spaces) {
    const SpaceState& known = of(into.state.spaces, tag);
    const bool is_proved = space.is_water_side()
                               ? is_empty(known) && (!known.was_open || known.closed.holds)
                               : fails_of_count(into.state, into.terms, tag, into.now_ms).empty();
    if (!is_proved) into.add(Check::S9Inside, tag);
  }
  for (const auto& [tag, space] : into.state.spaces) {
    if (layout.spaces.count(tag) == 0 && !is_empty(space)) into.add(Check::S9Inside, tag);
  }
}

}  // namespace

bool is_settled(const State& state, const std::string& place) {
  return of(state.dry, place).holds || is_watched(state, place);
}

bool is_closed(const State& state, const Leak& leak) {
  // What passes in shows at no place; a hold that is met after the repair shows it.
  return leak.repaired.holds &&
         (leak.passes == facts::Passing::In ? state.hold_met.holds : leak.seen_dry.holds);
}

void check_take_over(Collector& into) {
  const State& state = into.state;
  check_inside(into);
  for (const auto& [number, temporary] : state.temporaries) {
    if (!temporary.was_on) continue;
    if (!temporary.off.holds) into.add(Check::S9Temporary, number);
    if (!temporary.seen_off.holds) into.add(Check::S9SeenOff, number);
  }
  if (!state.hold_met.holds) into.add(Check::S9Hold);
  check_places(into);
  check_leaks(into);
  for (const boiler::Mounting* mounting : into.terms.layout().protection) {
    const Fitting& fitting = of(state.fittings, mounting->tag);
    if ((fitting.was_isolated && !fitting.back.holds) || !fitting.proved.holds) {
      into.add(Check::S9Protection, mounting->tag);
    }
  }
  if (state.hangers_said && !state.hangers_free.holds) into.add(Check::S9Hangers);
  if (!state.normalised.holds) into.add(Check::S9Normalised);
  check_findings(into, Check::S9Finding);
}

void check_steam(Collector& into) {
  check_take_over(into);
  const State& state = into.state;
  if (state.given_by.empty() || state.received_by.empty() || state.given_by == state.received_by) {
    into.add(Check::S9TakenOver);
  }
}

}  // namespace steamworthy::closing
