// The answer of the analysis as figures that show their working.
#pragma once

#include <vector>

#include "boiler/boiler.h"
#include "hold/answer.h"
#include "hold/input.h"
#include "working/section.h"

namespace steamworthy::hold {

/// What the gauge says: result with its reason, loss with its interval, what would have
/// shown, the fall and its parts, the rule's allowed fall.
std::vector<working::Section> hold_sections(const HoldInput& input, const HoldAnswer& answer);

/// The pump-up: the air with its interval, the airless line, when it could be known, what
/// venting costs, and, of a described boiler, where air stays when it is filled.
working::Section pump_up_section(const HoldInput& input, const HoldAnswer& answer,
                                 const boiler::Boiler* description);

/// "no_loss_seen", "losing", "gaining", "cannot_tell".
std::string_view token(Result result);

}  // namespace steamworthy::hold
