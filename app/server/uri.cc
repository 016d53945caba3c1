#include "server/uri.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "base/utf8.h"

namespace steamworthy::server {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

bool has_control(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7f;
  });
}

bool may_be_shown(std::string_view text) { return !line_of_bad_utf8(text) && !has_control(text); }

std::optional<std::string> form_decoded(std::string_view text) {
  std::string blanks(text);
  std::replace(blanks.begin(), blanks.end(), '+', ' ');
  return percent_decoded(blanks);
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

/// Cuts the text up to `mark` off its front; all of it if there is no mark.
std::string_view next_part(std::string_view& text, char mark) {
  const std::size_t at = text.find(mark);
  const std::string_view part = text.substr(0, at);
  text = at == std::string_view::npos ? std::string_view() : text.substr(at + 1);
  return part;
}

int base64_value(char c) {
  if (c >= 'A' && c <= 'Z') return c - 'A';
  if (c >= 'a' && c <= 'z') return c - 'a' + 26;
  if (c >= '0' && c <= '9') return c - '0' + 52;
  if (c == '+') return 62;
  if (c == '/') return 63;
  return -1;
}

}  // namespace

std::optional<std::string> percent_decoded(std::string_view text) {
  std::string decoded;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '%') {
      decoded += text[i];
      continue;
    }
    if (i + 2 >= text.size()) return std::nullopt;
    const int high = hex_digit(text[i + 1]);
    const int low = hex_digit(text[i + 2]);
    if (high < 0 || low < 0) return std::nullopt;
    decoded += static_cast<char>(high * 16 + low);
    i += 2;
  }
  return decoded;
}

std::optional<std::vector<std::string>> path_parts(std::string_view path) {
  if (path.empty() || path.front() != '/') return std::nullopt;
  path.remove_prefix(1);
  std::vector<std::string> parts;
  while (!path.empty()) {
    const bool ends_in_slash = path.back() == '/' && path.find('/') + 1 == path.size();
    auto part = percent_decoded(next_part(path, '/'));
    if (!part || part->empty() || *part == "." || *part == ".." || !may_be_shown(*part) ||
        part->find_first_of("/\\") != std::string::npos || ends_in_slash) {
      return std::nullopt;
    }
    parts.push_back(std::move(*part));
  }
  return parts;
}

std::optional<std::vector<std::pair<std::string, std::string>>> query_items(
    std::string_view query) {
  std::vector<std::pair<std::string, std::string>> items;
  while (!query.empty()) {
    std::string_view item = next_part(query, '&');
    if (item.empty()) continue;
    auto name = form_decoded(next_part(item, '='));
    auto value = form_decoded(item);
    if (!name || !value || name->empty() || !may_be_shown(*name) || !may_be_shown(*value)) {
      return std::nullopt;
    }
    for (const auto& [known, other] : items) {
      if (known == *name) return std::nullopt;
    }
    items.emplace_back(std::move(*name), std::move(*value));
  }
  return items;
}

std::string_view cookie(std::string_view header, std::string_view name) {
  std::string_view found;
  bool there = false;
  while (!header.empty()) {
    std::string_view pair = next_part(header, ';');
    if (trimmed(next_part(pair, '=')) != name) continue;
    if (there) return {};
    there = true;
    found = trimmed(pair);
  }
  return found;
}

std::optional<std::string> base64_decoded(std::string_view text) {
  if (text.size() % 4 != 0) return std::nullopt;
  std::size_t padding = 0;
  while (padding < 2 && padding < text.size() && text[text.size() - 1 - padding] == '=') ++padding;
  const std::string_view digits = text.substr(0, text.size() - padding);
  std::string bytes;
  bytes.reserve(text.size() / 4 * 3);
  std::uint32_t held = 0;
  int bits = 0;
  for (const char c : digits) {
    const int value = base64_value(c);
    if (value < 0) return std::nullopt;
    held = (held << 6 | static_cast<std::uint32_t>(value)) & 0xffffffu;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes += static_cast<char>(held >> bits & 0xffu);
    }
  }
  // Bits that are left over must be zero: there is one way to write any bytes.
  if ((held & ((1u << bits) - 1)) != 0) return std::nullopt;
  return bytes;
}

}  // namespace steamworthy::server
