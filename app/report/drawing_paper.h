// Drawing paper: the boiler to scale, then what is on each part.
#pragma once

#include "report/context.h"

namespace steamworthy::report {

/// Sheets with two elevations each (front and right, rear and left), levels ruled at the side; then
/// detail sheets with every closure and mounting of each part by its tag.
paper::Document drawing_paper(const Context& context);

}  // namespace steamworthy::report
