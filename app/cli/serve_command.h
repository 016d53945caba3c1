// The command serve.
#pragma once

#include "cli/commands.h"

namespace steamworthy::cli {

int serve_command(const ServeOptions& options);

}  // namespace steamworthy::cli
