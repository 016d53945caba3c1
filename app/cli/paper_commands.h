// The commands that make papers: read files, call `service`, write files, say which.
#pragma once

#include <string>

#include "cli/commands.h"

namespace steamworthy::cli {

/// Each returns the names of the files written, one a line.
/// Throws  BadInput "cli.no_such_format" for a name that ends in none of the formats,
///         NotFound "cli.cannot_write".
std::string draw_command(const PaperOptions& options);
/// A sheet with a stop is printed all the same, the stop at its top.
std::string paper_command(const PaperOptions& options);
std::string record_command(const PaperOptions& options);
std::string table_command(const PaperOptions& options);

}  // namespace steamworthy::cli
