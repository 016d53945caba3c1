// Sentences: what was understood of a log, as messages.
#pragma once

#include <string>

#include "trace/trace.h"

namespace steamworthy::trace {

/// Fills Understanding::sentences and Column::sentence from what stands beside them.
void say(Understanding& understanding);

/// "column 2 (p_barg)", for the field of a problem.
std::string field_of(const Column& column);

/// What would be accepted as the unit of such a column.
std::string accepted_units(Meaning meaning);

}  // namespace steamworthy::trace
