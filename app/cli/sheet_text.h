// The test sheet as plain text for a terminal.
#pragma once

#include <string>

#include "sheet/sheet.h"
#include "words/words.h"

namespace steamworthy::cli {

/// Sections under their headings; with_working unfolds each figure. Neighbours that say the
/// same of several places are drawn together on one line.
std::string sheet_text(const sheet::Sheet& sheet, const words::Style& style, bool with_working);

}  // namespace steamworthy::cli
