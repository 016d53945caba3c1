#include "closing/stage.h"

#include <algorithm>
#include <array>

#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

bool is_every_place_settled(const State& state, const Terms& terms) {
  const auto& places = terms.layout().places;
  return std::all_of(places.begin(), places.end(),
                     [&](const std::string& tag) { return is_settled(state, tag); });
}

bool has_open_leak(const State& state) {
  return std::any_of(state.leaks.begin(), state.leaks.end(), [&](const auto& one) {
    return !is_closed(state, one.second) && !one.second.watched_hot.holds;
  });
}

StepName next_step(const State& state, const Terms& terms) {
  switch (stage(state, terms)) {
    case Stage::ShutDown:
      return StepName::Open;
    case Stage::Opened:
    case Stage::ClosingUp:
    case Stage::Closed:
      return StepName::Fill;
    case Stage::Filled:
    case Stage::UnderTest:
      return StepName::RaisePressure;
    case Stage::Repairing:
    case Stage::LeftSafe:
      return state.full.holds ? StepName::RaisePressure : StepName::Fill;
    case Stage::Passed:
    case Stage::Normalised:
      return StepName::TakeOver;
    case Stage::TakenOver:
      break;
  }
  return StepName::Steam;
}

}  // namespace

std::string_view token(Stage stage) {
  constexpr std::array<std::string_view, 11> tokens = {
      "shut_down", "opened",    "closing_up", "closed",     "filled",    "under_test",
      "repairing", "left_safe", "passed",     "normalised", "taken_over"};
  return tokens[static_cast<std::size_t>(stage)];
}

Stage stage(const State& state, const Terms& terms) {
  if (!state.given_by.empty() && !state.received_by.empty()) return Stage::TakenOver;
  const bool is_passed =
      state.hold_met.holds && is_every_place_settled(state, terms) && !has_open_leak(state);
  if (is_passed && state.normalised.holds) return Stage::Normalised;
  if (is_passed) return Stage::Passed;
  if (state.left_safe) return Stage::LeftSafe;
  const auto is_plate_off = [](const auto& one) {
    return one.second.opened && !one.second.nipped_up.holds;
  };
  const bool any_off = std::any_of(state.closures.begin(), state.closures.end(), is_plate_off);
  // Raised once and then found leaking: until every leak is seen dry.
  if (has_open_leak(state) && !state.pump_runs && !state.was_raised) return Stage::Repairing;
  if (state.pump_runs || state.was_raised || state.holding) return Stage::UnderTest;
  if (state.full.holds && !any_off) return Stage::Filled;
  const bool any_opened = std::any_of(state.closures.begin(), state.closures.end(),
                                      [](const auto& one) { return one.second.opened; });
  if (!any_opened) return Stage::ShutDown;
  if (!any_off) return Stage::Closed;
  const bool any_set = std::any_of(state.closures.begin(), state.closures.end(),
                                   [](const auto& one) { return one.second.nipped_up.holds; });
  return any_set ? Stage::ClosingUp : Stage::Opened;
}

Clearance next_clearance(const State& state, const Terms& terms) {
  Clearance next{next_step(state, terms), "", std::nullopt};
  if (next.step == StepName::RaisePressure && state.sheet) next.up_to = state.sheet->test_pressure;
  return next;
}

}  // namespace steamworthy::closing
