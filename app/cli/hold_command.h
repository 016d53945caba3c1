// steamworthy hold and steamworthy pumpup: what the gauge says, and what trapped air.
#pragma once

#include <string>

#include "cli/commands.h"

namespace steamworthy::cli {

/// What is printed, and the exit code: 0 no loss seen, 3 losing or gaining, 4 cannot tell.
struct Printed {
  std::string text;
  int code = 0;
};

/// Throws BadInput where log, test file or description cannot be read.
Printed hold_command(const TraceOptions& options);
/// Exit code 4 where the air cannot be told.
Printed pump_up_command(const TraceOptions& options);

}  // namespace steamworthy::cli
