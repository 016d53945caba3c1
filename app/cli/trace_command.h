// steamworthy trace: what was understood of a pressure log.
#pragma once

#include <string>

#include "cli/commands.h"

namespace steamworthy::cli {

/// What is printed. Throws BadInput where the log cannot be read, with all reasons; in text, what
/// was understood of it then goes to standard output first.
std::string trace_command(const TraceOptions& options);

}  // namespace steamworthy::cli
