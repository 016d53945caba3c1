// Stage: where a closing stands, in one word of design's section 2.
#pragma once

#include <string_view>

#include "closing/outstanding.h"
#include "closing/state.h"
#include "closing/terms.h"

namespace steamworthy::closing {

enum class Stage {
  ShutDown,
  Opened,
  ClosingUp,
  Closed,
  Filled,
  UnderTest,
  Repairing,
  LeftSafe,
  Passed,
  Normalised,
  TakenOver,
};

/// "shut_down"; its English is stage.TOKEN.
std::string_view token(Stage stage);

/// Follows from the state alone: the last that applies of those above, but for repairing, which
/// comes before under test, and left safe, which lasts until somebody goes on.
Stage stage(const State& state, const Terms& terms);

/// The clearance that the closing waits for next, for the lead hand's page; to raise pressure: up
/// to the test pressure of the sheet.
Clearance next_clearance(const State& state, const Terms& terms);

}  // namespace steamworthy::closing
