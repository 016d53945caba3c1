// The options that say what is said of a test.
#pragma once

#include <string>

#include "cli/commands.h"
#include "service/said.h"

namespace steamworthy::cli {

/// A wrong word on the command line, as opposed to a wrong file.
struct Usage {
  std::string sentence;
};

/// What the options say, in a fixed order.
service::Said said(const SheetOptions& options);

/// Throws Usage, naming the option, for a word or quantity that is not accepted.
sheet::Request read_request(const SheetOptions& options);

}  // namespace steamworthy::cli
