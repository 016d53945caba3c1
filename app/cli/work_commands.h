// steamworthy fitup, repair and raising: plates, leaks, and what must be done before fire.
#pragma once

#include <string>

#include "cli/commands.h"

namespace steamworthy::cli {

/// What is printed. Each throws as its room does; Usage for a wrong word on the command line.
std::string fitup_command(const WorkOptions& options);
std::string repair_command(const WorkOptions& options);
std::string raising_command(const WorkOptions& options);

}  // namespace steamworthy::cli
