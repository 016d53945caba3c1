// The checks of S6's pressure, S7 tighten, strike, break, and S8 let down, drain, leave full.
#include <algorithm>

#include "boiler/content.h"
#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

constexpr double gravity = 9.80665;      // m/s2, standard
constexpr double least_density = 985.0;  // kg/m3: water at 55 degrees C, warmer than any walkdown
constexpr double most_density = 1010.0;  // kg/m3: at 5 degrees C under 200 bar

bool is_below(const State& state, const boiler::Closure* closure) {
  if (state.drained.holds) return true;
  if (closure == nullptr || !state.level || !state.level_known.holds) return false;
  return state.level->si() < closure->level.si() - closure->opening.height.si() / 2.0;
}

bool has_open_vent(const State& state) {
  return std::any_of(state.vents.begin(), state.vents.end(),
                     [](const auto& vent) { return vent.second.open.holds; });
}

bool is_manned(const State& state, facts::Post post) {
  const auto found = state.posts.find(post);
  return found != state.posts.end() && found->second.manned.holds;
}

}  // namespace

double greatest_reading(const Terms& terms, const std::string& gauge, double pressure) {
  for (const boiler::Gauge& described : terms.boiler().gauges) {
    if (described.tag != gauge) continue;
    const double below = boiler::reference_level(terms.boiler()).si() - described.level.si();
    const double density = below > 0.0 ? least_density : most_density;
    return pressure + density * gravity * below + described.resolution.si();
  }
  return pressure;
}

bool is_at_examination(const State& state, const Terms& terms) {
  if (!state.sheet || !state.sheet->examination_pressure) return false;
  bool any = false;
  for (const auto& [tag, gauge] : state.gauges) {
    if (!gauge.fitted.holds) continue;
    if (!gauge.reading || !gauge.read_since_hold.holds) return false;
    if (gauge.reading->si() >
        greatest_reading(terms, tag, state.sheet->examination_pressure->si())) {
      return false;
    }
    any = true;
  }
  return any;
}

void check_wrench(Collector& into) {
  const State& state = into.state;
  if (is_at_zero(state)) return;
  const auto limit = into.terms.site().tighten_below;
  bool is_low = limit.has_value() && !state.pump_runs;
  bool any = false;
  for (const auto& [tag, gauge] : state.gauges) {
    if (!gauge.reading) continue;
    any = true;
    is_low = is_low && *gauge.reading <= *limit;
  }
  if (!any || !is_low) into.add(Check::S7Pressure, into.clearance.subject);
}

void check_break(Collector& into) {
  const State& state = into.state;
  const std::string& tag = into.clearance.subject;
  if (!is_at_zero(state)) into.add(Check::S7Zero, tag);
  if (!has_vent_moving_air(state, into.terms)) into.add(Check::S7Vent, tag);
  const auto described = into.terms.layout().closures.find(tag);
  const boiler::Closure* closure =
      described == into.terms.layout().closures.end() ? nullptr : described->second;
  if (!is_below(state, closure)) into.add(Check::S7Water, tag);
}

void check_let_down(Collector& into) {
  if (!is_manned(into.state, facts::Post::LetDown)) into.add(Check::S8Valve);
}

void check_drain(Collector& into) {
  if (!is_at_zero(into.state)) into.add(Check::S8Zero);
  if (!has_open_vent(into.state)) into.add(Check::S8Vent);
}

void check_leave_full(Collector& into) {
  if (!has_open_vent(into.state) && !is_manned(into.state, facts::Post::Lookout)) {
    into.add(Check::S8ShutSolid);
  }
}

}  // namespace steamworthy::closing
