// Sections of the test sheet on paper: figures in a table, then how they were come by.
#pragma once

#include <string>

#include "report/context.h"
#include "sheet/sheet.h"

namespace steamworthy::report {

/// The value with its unit, or "cannot tell: why".
std::string value_text(const Context& context, const working::Figure& figure);

/// Heading, figures, workings, notes and cautions; nothing for an empty section.
void sheet_section(const Context& context, paper::Flow& flow, const sheet::Section& section);

}  // namespace steamworthy::report
