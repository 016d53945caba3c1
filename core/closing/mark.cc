#include "closing/mark.h"

#include <algorithm>
#include <array>

#include "closing/collector.h"

namespace steamworthy::closing {

std::string_view token(Mark mark) {
  constexpr std::array<std::string_view, 8> tokens = {"not_opened",  "open",         "cleaned",
                                                      "nipped_up",   "gap_measured", "seen_dry",
                                                      "hardened_up", "touched"};
  return tokens[static_cast<std::size_t>(mark)];
}

Mark mark(const State& state, const std::string& tag) {
  const ClosureState& closure = of(state.closures, tag);
  if (of(state.dry, tag).holds) {
    if (!closure.untouched.holds) return Mark::Touched;
    return closure.hardened_up.holds ? Mark::HardenedUp : Mark::SeenDry;
  }
  if (!closure.opened) return Mark::NotOpened;
  if (closure.nipped_up.holds) {
    return closure.gaps_good.holds ? Mark::GapMeasured : Mark::NippedUp;
  }
  return closure.cleaned.holds && closure.looked_at.holds ? Mark::Cleaned : Mark::Open;
}

Signs signs(const State& state, const std::string& tag) {
  Signs signs;
  for (const auto& [number, leak] : state.leaks) {
    if (leak.place == tag && signs.leak.empty() && !is_closed(state, leak)) signs.leak = number;
  }
  const ClosureState& closure = of(state.closures, tag);
  signs.decide = closure.gaps_to_report || closure.wrong_plate ||
                 std::any_of(state.findings.begin(), state.findings.end(), [&](const auto& one) {
                   return one.second.where == tag && one.second.is_undecided();
                 });
  return signs;
}

}  // namespace steamworthy::closing
