#include "units/number_text.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace steamworthy::units {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 53> spellings = {{
    {"\u2212", "-"},       {"\u2013", "-"},      {"\u2010", "-"},      {"\u2011", "-"},
    {"\u2033", "\""},      {"\u201d", "\""},     {"\u201c", "\""},     {"\u2032", "'"},
    {"\u2019", "'"},       {"\u2018", "'"},      {"\u00a0", " "},      {"\u2009", " "},
    {"\u202f", " "},       {"\u2007", " "},      {"\u200a", " "},      {"\u00bd", " 1/2 "},
    {"\u00bc", " 1/4 "},   {"\u00be", " 3/4 "},  {"\u215b", " 1/8 "},  {"\u215c", " 3/8 "},
    {"\u215d", " 5/8 "},   {"\u215e", " 7/8 "},  {"\u2153", " 1/3 "},  {"\u2154", " 2/3 "},
    {"\u2044", "/"},       {"\u2215", "/"},      {"\u2070", "0"},      {"\u00b9", "1"},
    {"\u00b2", "2"},       {"\u00b3", "3"},      {"\u2074", "4"},      {"\u2075", "5"},
    {"\u2076", "6"},       {"\u2077", "7"},      {"\u2078", "8"},      {"\u2079", "9"},
    {"\u207b", "-"},       {"\u00ba", "\u00b0"}, {"\u02da", "\u00b0"}, {"\u2103", "\u00b0C"},
    {"\u2109", "\u00b0F"}, {"\u212a", "K"},      {"\u00b5", "u"},      {"\u03bc", "u"},
    {"\u00b7", "*"},       {"\u22c5", "*"},      {"\u00d7", "*"},      {"\u2080", "0"},
    {"\u2082", "2"},       {"\ufeff", ""},       {"\u200b", ""},       {"\t", " "},
    {"\u207a", "+"},
}};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t digits_at(std::string_view text, std::size_t at) {
  std::size_t n = 0;
  while (at + n < text.size() && is_digit(text[at + n])) ++n;
  return n;
}

std::size_t blanks_at(std::string_view text, std::size_t at) {
  std::size_t n = 0;
  while (at + n < text.size() && text[at + n] == ' ') ++n;
  return n;
}

/// The value of digits with at most one '.', and an exponent. Infinite if it is too large.
double value_of(const std::string& digits) {
  double value = 0.0;
  fast_float::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

/// How many characters of an integer fraction "n/d" stand at `at`; 0 if there is none.
std::size_t fraction_at(std::string_view text, std::size_t at, double& value) {
  const std::size_t above = digits_at(text, at);
  if (above == 0 || at + above >= text.size() || text[at + above] != '/') return 0;
  const std::size_t below = digits_at(text, at + above + 1);
  if (below == 0) return 0;
  value = value_of(std::string(text.substr(at, above))) /
          value_of(std::string(text.substr(at + above + 1, below)));
  return above + 1 + below;
}

/// "e-5", "E3", "*10^-6", "x10-6": the exponent as digits with sign; used is 0 if there is none.
std::pair<std::string, std::size_t> exponent_at(std::string_view text, std::size_t at) {
  std::size_t p = at;
  if (p < text.size() && (text[p] == 'e' || text[p] == 'E')) {
    ++p;
  } else {
    p += blanks_at(text, p);
    if (p >= text.size() || (text[p] != '*' && text[p] != 'x')) return {"", 0};
    ++p;
    p += blanks_at(text, p);
    if (text.substr(p, 2) != "10") return {"", 0};
    p += 2;
    if (p < text.size() && text[p] == '^') ++p;
  }
  std::string exponent;
  if (p < text.size() && (text[p] == '-' || text[p] == '+')) exponent += text[p++];
  const std::size_t n = digits_at(text, p);
  if (n == 0) return {"", 0};
  exponent += text.substr(p, n);
  return {exponent, p + n - at};
}

/// Digits, points and commas at `at`, and blanks that part groups of three digits.
struct Decimal {
  std::string digits;  ///< with '.' as the decimal sign
  std::size_t used = 0;
  bool is_whole = true;
  NumberFault fault = NumberFault::None;
};

Decimal decimal_at(std::string_view text, std::size_t at) {
  Decimal out;
  std::size_t p = at;
  const std::size_t first = digits_at(text, p);
  out.digits = text.substr(p, first);
  p += first;
  while (first >= 1 && first <= 3 && p < text.size() && text[p] == ' ' &&
         digits_at(text, p + 1) == 3 && (p + 4 >= text.size() || text[p + 4] != '/')) {
    out.digits += text.substr(p + 1, 3);
    p += 4;
  }
  const std::size_t start_of_tail = p;
  std::size_t marks = 0;
  while (p < text.size() && (is_digit(text[p]) || text[p] == '.' || text[p] == ',')) {
    if (!is_digit(text[p])) ++marks;
    ++p;
  }
  out.used = p - at;
  if (marks == 0) {
    if (first == 0) out.fault = NumberFault::Missing;
    return out;
  }
  out.is_whole = false;
  const std::string_view tail = text.substr(start_of_tail, p - start_of_tail);
  const std::string_view decimals = tail.substr(1);
  const bool thousands = tail[0] == ',' && decimals.size() == 3 && first >= 1 && first <= 3 &&
                         start_of_tail == at + first && text[at] != '0';
  if (marks > 1 || thousands) {
    out.fault = NumberFault::AmbiguousComma;
  } else if (decimals.empty() && (tail[0] == ',' || first == 0)) {
    out.fault = NumberFault::Missing;
  } else {
    if (out.digits.empty()) out.digits = "0";
    out.digits += '.';
    out.digits += decimals.empty() ? std::string_view("0") : decimals;
  }
  return out;
}

/// Length of the UTF-8 sequence at `at`, 0 if the bytes are not one.
std::size_t utf8_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  const std::size_t n = lead < 0x80   ? 1
                        : lead < 0xc2 ? 0
                        : lead < 0xe0 ? 2
                        : lead < 0xf0 ? 3
                        : lead < 0xf5 ? 4
                                      : 0;
  if (n == 0 || at + n > text.size()) return 0;
  for (std::size_t i = 1; i < n; ++i) {
    if ((byte(at + i) & 0xc0) != 0x80) return 0;
  }
  if (lead == 0xe0 && byte(at + 1) < 0xa0) return 0;
  if (lead == 0xed && byte(at + 1) >= 0xa0) return 0;
  if (lead == 0xf0 && byte(at + 1) < 0x90) return 0;
  if (lead == 0xf4 && byte(at + 1) >= 0x90) return 0;
  return n;
}

}  // namespace

std::string plain_characters(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  std::size_t at = 0;
  while (at < text.size()) {
    const bool plain = static_cast<unsigned char>(text[at]) < 0x80 && text[at] != '\t';
    bool replaced = false;
    if (!plain) {
      for (const auto& [from, to] : spellings) {
        if (text.substr(at, from.size()) == from) {
          out += to;
          at += from.size();
          replaced = true;
          break;
        }
      }
    }
    if (!replaced) out += text[at++];
  }
  return out;
}

std::string quotable(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    if (out.size() >= longest) return out + "...";
    const std::size_t n = utf8_at(text, at);
    const auto byte = static_cast<unsigned char>(text[at]);
    if (n == 0 || byte < 0x20 || byte == 0x7f) {
      out += fmt::format("\\x{:02x}", byte);
      ++at;
    } else {
      out += text.substr(at, n);
      at += n;
    }
  }
  return out;
}

NumberText read_number(std::string_view text) {
  NumberText out;
  std::size_t p = blanks_at(text, 0);
  if (p < text.size() && (text[p] == '-' || text[p] == '+')) {
    out.negative = text[p] == '-';
    ++p;
    p += blanks_at(text, p);
  }
  double fraction = 0.0;
  if (const std::size_t length = fraction_at(text, p, fraction); length > 0) {
    out.value = fraction;
    out.used = p + length;
  } else {
    const Decimal decimal = decimal_at(text, p);
    if (decimal.fault != NumberFault::None) {
      out.fault = decimal.fault;
      out.used = p + decimal.used;
      return out;
    }
    p += decimal.used;
    std::size_t joiner = blanks_at(text, p);
    if (joiner == 0 && p < text.size() && text[p] == '-') joiner = 1;
    const std::size_t n =
        decimal.is_whole && joiner > 0 ? fraction_at(text, p + joiner, fraction) : 0;
    if (n > 0) {
      out.value = value_of(decimal.digits) + fraction;
      out.used = p + joiner + n;
    } else {
      const auto [exponent, used] = exponent_at(text, p);
      out.value = value_of(used > 0 ? decimal.digits + "e" + exponent : decimal.digits);
      out.used = p + used;
    }
  }
  if (std::isnan(fraction) || std::isinf(fraction)) {
    out.fault = NumberFault::ZeroDenominator;
  } else if (!std::isfinite(out.value)) {
    out.fault = NumberFault::TooLarge;
  } else {
    out.fault = NumberFault::None;
    if (out.negative) out.value = -out.value;
  }
  return out;
}

}  // namespace steamworthy::units
