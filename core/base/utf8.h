// UTF-8: is a text valid, and on which line does it stop being so.
#pragma once

#include <optional>
#include <string_view>

namespace steamworthy {

/// The line, counted from 1, of the first byte that belongs to no valid
/// character (RFC 3629: no overlong forms, no surrogates, nothing above
/// U+10FFFF); nothing if all are valid.
std::optional<int> line_of_bad_utf8(std::string_view text);

}  // namespace steamworthy
