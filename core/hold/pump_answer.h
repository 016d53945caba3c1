// What the pump-up says, for a page: air, the airless line, when it could be known.
#pragma once

#include "hold/answer.h"
#include "hold/pump_fit.h"

namespace steamworthy::hold {

PumpUpAnswer pump_up_answer(const HoldInput& input, const PumpRows& rows,
                            const InstrumentsUsed& used, const Lump& lump, const PumpFit& fit,
                            const LossPrior& loss);

}  // namespace steamworthy::hold
