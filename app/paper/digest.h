// Digest: a short name for bytes, which anybody can compute again.
#pragma once

#include <string>
#include <string_view>

namespace steamworthy::paper {

/// SHA-256 of the bytes in 64 hexadecimal digits, as `sha256sum` prints it.
std::string sha256(std::string_view bytes);

}  // namespace steamworthy::paper
