// Files for the command line: whole files in, whole files out, faults in words.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace steamworthy::cli {

/// The bytes of a file; "-" is standard input.
/// Throws NotFound "cli.cannot_read" with the name and the system's reason, and
/// BadInput "cli.too_large" above 256 MiB.
std::string read_file(const std::string& name);

/// Gives a file of any length to `take`, piece by piece; "-" is standard input. `size` is called
/// first where the file's length is known. Throws NotFound "cli.cannot_read".
void read_pieces(const std::string& name, const std::function<void(std::size_t)>& size,
                 const std::function<void(std::string_view)>& take);

/// Writes the bytes to a new file or over an old one; "-" is standard output.
/// Throws NotFound "cli.cannot_write" with the name and the system's reason.
void write_file(const std::string& name, const std::string& bytes);

/// The last part of a path: what people call the file.
std::string base_name(const std::string& path);

/// `name` as seen from the folder in which `file` lies; an absolute one as it is.
std::string beside(const std::string& file, const std::string& name);

}  // namespace steamworthy::cli
