// The program's own analysis, asked about a simulated log as a crew would ask it.
#pragma once

#include "hold/input.h"
#include "hold_study/outcome.h"

namespace steamworthy::hold_study {

/// What the crew knows: its belief of the boiler, the instruments' steps and noise, the instant at
/// which the test valve was shut; nothing of the truth.
hold::HoldInput input_of(const Case& made);

Answer recommended(const Case& made);

}  // namespace steamworthy::hold_study
