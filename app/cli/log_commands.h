// The commands `steamworthy log ...`.
#pragma once

#include "cli/commands.h"

namespace steamworthy::cli {

/// Runs the one that was parsed; prints, and returns the exit code.
int log_command(const Commands& commands);

}  // namespace steamworthy::cli
