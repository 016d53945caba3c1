#include "base/utf8.h"

namespace steamworthy {
namespace {

struct Lead {
  int following;       // -1: no character begins so
  unsigned char low;   // least second byte
  unsigned char high;  // greatest second byte
};

/// RFC 3629, section 4: the grammar of a character by its first byte.
Lead lead_of(unsigned char first) {
  if (first <= 0x7f) return {0, 0, 0};
  if (first >= 0xc2 && first <= 0xdf) return {1, 0x80, 0xbf};
  if (first == 0xe0) return {2, 0xa0, 0xbf};
  if (first == 0xed) return {2, 0x80, 0x9f};
  if (first >= 0xe1 && first <= 0xef) return {2, 0x80, 0xbf};
  if (first == 0xf0) return {3, 0x90, 0xbf};
  if (first >= 0xf1 && first <= 0xf3) return {3, 0x80, 0xbf};
  if (first == 0xf4) return {3, 0x80, 0x8f};
  return {-1, 0, 0};
}

}  // namespace

std::optional<int> line_of_bad_utf8(std::string_view text) {
  int line = 1;
  for (std::size_t i = 0; i < text.size();) {
    const auto first = static_cast<unsigned char>(text[i]);
    if (first == '\n') ++line;
    const Lead lead = lead_of(first);
    if (lead.following < 0) return line;
    const auto more = static_cast<std::size_t>(lead.following);
    if (text.size() - i <= more) return line;
    for (std::size_t k = 1; k <= more; ++k) {
      const auto next = static_cast<unsigned char>(text[i + k]);
      const unsigned char low = k == 1 ? lead.low : 0x80;
      const unsigned char high = k == 1 ? lead.high : 0xbf;
      if (next < low || next > high) return line;
    }
    i += more + 1;
  }
  return std::nullopt;
}

}  // namespace steamworthy
