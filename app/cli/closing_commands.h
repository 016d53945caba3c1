// steamworthy log state, outstanding and clear: where a closing stands, and permission.
#pragma once

#include "cli/commands.h"

namespace steamworthy::cli {

int state_command(const LogOptions& options);
int outstanding_command(const LogOptions& options);
/// 1 if something stands in the way.
int clear_command(const LogOptions& options);

}  // namespace steamworthy::cli
