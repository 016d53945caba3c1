// The options that say what is said of a test, as a request.
#pragma once

#include <string>

#include "cli/commands.h"
#include "sheet/sheet.h"

namespace steamworthy::cli {

/// A wrong word on the command line, as opposed to a wrong file.
struct Usage {
  std::string sentence;
};

/// Throws Usage for a word that is not accepted.
sheet::Request read_request(const SheetOptions& options);

/// The same as text, one "option=value" a line in a fixed order; only what was given.
std::string said(const SheetOptions& options);

}  // namespace steamworthy::cli
