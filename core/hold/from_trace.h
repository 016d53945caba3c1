// From a pressure log and what the crew knows to what the analysis is given.
#pragma once

#include <optional>

#include "boiler/boiler.h"
#include "hold/input.h"
#include "trace/test_facts.h"
#include "trace/trace.h"

namespace steamworthy::hold {

/// The analysis' input.
///
/// Rows without a pressure are left out; a temperature that is missing between two that
/// are there is taken on the straight line between them; a pumped total stands until the
/// next one. Several thermometers in the water, or on metal, count as their mean. The
/// boiler is what the facts state, else what `description` computes to.
///
/// Throws  NotFound "hold.no_boiler" where neither says volume and growth,
///         NotFound "hold.no_such_gauge" where the facts name a column that is not there.
HoldInput input_from(const trace::Trace& trace, const trace::TestFacts& facts,
                     const boiler::Boiler* description);

}  // namespace steamworthy::hold
