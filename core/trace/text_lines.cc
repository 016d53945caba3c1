#include "trace/text_lines.h"

#include <algorithm>
#include <array>

namespace steamworthy::trace {
namespace {

void append_utf8(std::string& out, char32_t c) {
  const auto byte = [&out](char32_t b) { out += static_cast<char>(static_cast<unsigned char>(b)); };
  if (c < 0x80) {
    byte(c);
  } else if (c < 0x800) {
    byte(0xc0 | (c >> 6));
    byte(0x80 | (c & 0x3f));
  } else if (c < 0x10000) {
    byte(0xe0 | (c >> 12));
    byte(0x80 | ((c >> 6) & 0x3f));
    byte(0x80 | (c & 0x3f));
  } else {
    byte(0xf0 | (c >> 18));
    byte(0x80 | ((c >> 12) & 0x3f));
    byte(0x80 | ((c >> 6) & 0x3f));
    byte(0x80 | (c & 0x3f));
  }
}

// Windows-1252 0x80 to 0x9f; 0 where no character stands.
constexpr std::array<char32_t, 32> windows_1252 = {
    0x20ac, 0,      0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017d, 0,      0,      0x2018, 0x2019, 0x201c, 0x201d, 0x2022,
    0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0,      0x017e, 0x0178};

bool is_plain(std::string_view text) {
  return std::none_of(text.begin(), text.end(),
                      [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

constexpr char32_t replacement = 0xfffd;

}  // namespace

bool is_utf8(std::string_view text) {
  std::size_t at = 0;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  while (at < text.size()) {
    const unsigned char lead = byte(at);
    const std::size_t n = lead < 0x80   ? 1
                          : lead < 0xc2 ? 0
                          : lead < 0xe0 ? 2
                          : lead < 0xf0 ? 3
                          : lead < 0xf5 ? 4
                                        : 0;
    if (n == 0 || at + n > text.size()) return false;
    for (std::size_t i = 1; i < n; ++i) {
      if ((byte(at + i) & 0xc0) != 0x80) return false;
    }
    if ((lead == 0xe0 && byte(at + 1) < 0xa0) || (lead == 0xed && byte(at + 1) >= 0xa0) ||
        (lead == 0xf0 && byte(at + 1) < 0x90) || (lead == 0xf4 && byte(at + 1) >= 0x90)) {
      return false;
    }
    at += n;
  }
  return true;
}

/// The chunk as bytes of lines: the mark at the very beginning is taken off.
std::string_view LineDecoder::decoded(std::string_view bytes) {
  if (coding_ == Coding::Bytes) return bytes;
  if (coding_ != Coding::Unseen) return from_utf16(bytes);
  constexpr std::size_t longest_mark = 3;
  head_ += bytes;
  if (head_.size() < longest_mark) return {};
  return remainder();
}

/// What waited for more bytes than came.
std::string_view LineDecoder::remainder() {
  if (coding_ != Coding::Unseen) return {};
  std::string_view all = head_;
  coding_ = Coding::Bytes;
  if (all.substr(0, 3) == "\xef\xbb\xbf") return all.substr(3);
  if (all.substr(0, 2) == "\xff\xfe") {
    coding_ = Coding::Utf16Little;
    return from_utf16(all.substr(2));
  }
  if (all.substr(0, 2) == "\xfe\xff") {
    coding_ = Coding::Utf16Big;
    return from_utf16(all.substr(2));
  }
  return all;
}

std::string_view LineDecoder::from_utf16(std::string_view bytes) {
  odd_ += bytes;
  decoded_.clear();
  const auto unit = [this](std::size_t at) {
    const auto first = static_cast<unsigned char>(odd_[at]);
    const auto second = static_cast<unsigned char>(odd_[at + 1]);
    return coding_ == Coding::Utf16Little ? static_cast<char32_t>(first | (second << 8))
                                          : static_cast<char32_t>((first << 8) | second);
  };
  std::size_t at = 0;
  while (at + 2 <= odd_.size()) {
    const char32_t high = unit(at);
    if (high >= 0xd800 && high < 0xdc00) {
      if (at + 4 > odd_.size()) break;
      const char32_t low = unit(at + 2);
      const bool is_pair = low >= 0xdc00 && low < 0xe000;
      append_utf8(decoded_,
                  is_pair ? 0x10000 + ((high - 0xd800) << 10) + (low - 0xdc00) : replacement);
      at += is_pair ? 4 : 2;
    } else {
      append_utf8(decoded_, high >= 0xdc00 && high < 0xe000 ? replacement : high);
      at += 2;
    }
  }
  odd_.erase(0, at);
  return decoded_;
}

void LineDecoder::keep(std::string_view part) {
  const std::size_t room = longest_line - std::min(longest_line, kept_.size());
  if (part.size() > room) is_cut_ = true;
  kept_ += part.substr(0, room);
}

std::string_view LineDecoder::as_utf8(std::string_view line) {
  if (is_plain(line) || is_utf8(line)) return line;
  // A cut line may end within a character: it is bad in any case.
  was_windows_1252_ = was_windows_1252_ || !is_cut_;
  recoded_.clear();
  for (const char c : line) {
    const auto byte = static_cast<unsigned char>(c);
    const bool is_special = byte >= 0x80 && byte < 0xa0;
    const char32_t special = is_special ? windows_1252[byte - 0x80u] : byte;
    append_utf8(recoded_, special == 0 && is_special ? replacement : special);
  }
  return recoded_;
}

}  // namespace steamworthy::trace
