// Filling: in what order water goes in, and which vents show it. Part of circuit.h.
#pragma once

#include <vector>

#include "boiler/circuit.h"

namespace steamworthy::boiler {

/// Hanging loops are back-filled first, each with the headers at its ends, through
/// a drain of its outlet header (else of its inlet header), so that water pushes
/// the air ahead of it through the loop; then the rest from below, a step for each
/// level at which a vent runs solid.
///
/// Source  back-filling a hanging superheater first: common practice, no source.
std::vector<FillStep> filling_order(const Boiler& boiler);

}  // namespace steamworthy::boiler
