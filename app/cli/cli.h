// The command line: reads arguments and files, calls `service`, prints.
#pragma once

namespace steamworthy::cli {

/// Runs one command. Returns the exit code: 0 done, 1 refused or failed, 2 usage.
int run(int argc, char** argv);

}  // namespace steamworthy::cli
