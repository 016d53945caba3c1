// Addresses, queries and cookies: what is written in them, or that it cannot be read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace steamworthy::server {

/// %41 -> A. Nothing for a % without two hexadecimal digits.
std::optional<std::string> percent_decoded(std::string_view text);

/// The parts of a path between its slashes, decoded: "/a/b%20c" -> {"a", "b c"}; "/" -> {}.
/// Nothing for a path that does not begin with a slash, or with a part that is empty, "." or "..",
/// not UTF-8, or that holds a slash, a backslash or a control character.
std::optional<std::vector<std::string>> path_parts(std::string_view path);

/// "a=1&b=x+y" -> {{"a", "1"}, {"b", "x y"}}. Nothing where a part cannot be decoded, is not UTF-8,
/// holds a control character, or a name stands twice.
std::optional<std::vector<std::pair<std::string, std::string>>> query_items(std::string_view query);

/// The value of a cookie in the text of a header "Cookie"; empty if it is not there, or stands
/// there twice.
std::string_view cookie(std::string_view header, std::string_view name);

/// Bytes of base64 with padding; nothing for any other text.
std::optional<std::string> base64_decoded(std::string_view text);

}  // namespace steamworthy::server
