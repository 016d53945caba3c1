// A section of figures as plain text.
#pragma once

#include <string>

#include "words/words.h"
#include "working/section.h"

namespace steamworthy::cli {

/// An empty line, the heading, figures (equal ones of several subjects on one line), notes,
/// cautions. Empty where there is neither figure nor note.
std::string section_text(const working::Section& section, const words::Style& style,
                         bool with_working);

}  // namespace steamworthy::cli
