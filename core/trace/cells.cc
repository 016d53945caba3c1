#include "trace/cells.h"

#include <fast_float/fast_float.h>

#include <array>
#include <cmath>

namespace steamworthy::trace {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

constexpr std::array<std::string_view, 4> wide_blanks = {"\u00a0", "\u2009", "\u202f", "\u2007"};

std::size_t blank_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  if (text[at] == ' ' || text[at] == '\t') return 1;
  if (static_cast<unsigned char>(text[at]) < 0x80) return 0;
  for (const std::string_view blank : wide_blanks) {
    if (text.substr(at, blank.size()) == blank) return blank.size();
  }
  return 0;
}

std::size_t digits_at(std::string_view text, std::size_t at) {
  std::size_t n = 0;
  while (at + n < text.size() && is_digit(text[at + n])) ++n;
  return n;
}

/// Further digits behind "12" that are parted from it in threes: by `mark`, or by a blank (0).
std::size_t grouped_at(std::string_view text, std::size_t at, char mark, std::string& digits) {
  std::size_t p = at;
  while (true) {
    const std::size_t gap = mark == 0 ? blank_at(text, p) : p < text.size() && text[p] == mark;
    if (gap == 0 || digits_at(text, p + gap) != 3) return p - at;
    digits += text.substr(p + gap, 3);
    p += gap + 3;
  }
}

double value_of(std::string_view text) {
  double value = 0.0;
  fast_float::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::size_t sign_at(std::string_view text, bool& negative) {
  if (text.empty()) return 0;
  if (text[0] == '-' || text[0] == '+') {
    negative = text[0] == '-';
    return 1;
  }
  for (const std::string_view minus : {"\u2212", "\u2013"}) {
    if (text.substr(0, minus.size()) == minus) {
      negative = true;
      return minus.size();
    }
  }
  return 0;
}

std::size_t exponent_at(std::string_view text, std::size_t at) {
  if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return 0;
  std::size_t p = at + 1;
  if (p < text.size() && (text[p] == '-' || text[p] == '+')) ++p;
  const std::size_t n = digits_at(text, p);
  return n == 0 ? 0 : p + n - at;
}

/// A number that the short way of read_number() does not take: groups, exponents, many digits.
NumberCell read_long_number(std::string_view cell, char decimal) {
  bool negative = false;
  std::size_t p = sign_at(cell, negative);
  const std::size_t first = digits_at(cell, p);
  std::string digits(cell.substr(p, first));
  p += first;
  if (first >= 1 && first <= 3) {
    const char other = decimal == ',' ? '.' : ',';
    std::string grouped = digits;
    const std::size_t n = grouped_at(cell, p, other, grouped);
    if (n > 0 && p + n < cell.size() && cell[p + n] == decimal) {
      digits = grouped;
      p += n;
    } else {
      p += grouped_at(cell, p, 0, digits);
    }
  }
  std::size_t decimals = 0;
  if (p < cell.size() && cell[p] == decimal) {
    decimals = digits_at(cell, p + 1);
    if (decimals == 0) return {};  // "2." was cut off
    digits += '.';
    digits += cell.substr(p + 1, decimals);
    p += 1 + decimals;
  }
  if (digits.empty()) return {};
  if (p < cell.size() && (cell[p] == '.' || cell[p] == ',') && digits_at(cell, p + 1) > 0)
    return {};
  const std::size_t exponent = exponent_at(cell, p);
  digits += cell.substr(p, exponent);
  if (digits.front() == '.') digits.insert(0, 1, '0');
  const double value = value_of(digits);
  if (!std::isfinite(value)) return {};
  NumberCell out;
  out.number.value = negative ? -value : value;
  out.number.decimals = exponent == 0 ? static_cast<int>(decimals < 15 ? decimals : 15) : 0;
  out.used = p + exponent;
  return out;
}

bool same_letters(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (lower(a[i]) != b[i]) return false;
  }
  return true;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (const std::size_t n = blank_at(text, 0)) text.remove_prefix(n);
  while (!text.empty()) {
    std::size_t n = 0;
    for (std::size_t back = 1; back <= 3 && back <= text.size() && n == 0; ++back) {
      if (blank_at(text, text.size() - back) == back) n = back;
    }
    if (n == 0) break;
    text.remove_suffix(n);
  }
  return text;
}

void CellSplitter::add(std::string_view cell, std::size_t begin, bool quoted) {
  cells_.push_back(cell);
  begins_.push_back(begin);
  quoted_.push_back(quoted);
}

std::size_t CellSplitter::take_quoted(std::string_view line, std::size_t begin) {
  std::size_t close = begin + 1;
  bool doubled = false;
  while (true) {
    close = line.find('"', close);
    if (close == std::string_view::npos) return close;
    if (close + 1 >= line.size() || line[close + 1] != '"') break;
    doubled = true;
    close += 2;
  }
  std::string_view cell = line.substr(begin + 1, close - begin - 1);
  if (doubled) {
    std::string plain;
    for (std::size_t i = 0; i < cell.size(); ++i) {
      plain += cell[i];
      if (cell[i] == '"') ++i;
    }
    unquoted_.push_back(std::move(plain));
    cell = unquoted_.back();
  }
  add(trimmed(cell), begin, true);
  return close;
}

bool CellSplitter::split(std::string_view line, char separator) {
  cells_.clear();
  begins_.clear();
  quoted_.clear();
  unquoted_.clear();
  const bool by_blanks = separator == ' ';
  if (by_blanks) line = trimmed(line);
  const auto after_blanks = [&](std::size_t at) {
    while (at < line.size() && (line[at] == ' ' || line[at] == '\t') &&
           (by_blanks || line[at] != separator)) {
      ++at;
    }
    return at;
  };
  std::size_t at = 0;
  while (at <= line.size()) {
    const std::size_t begin = after_blanks(at);
    if (begin < line.size() && line[begin] == '"') {
      const std::size_t close = take_quoted(line, begin);
      if (close == std::string_view::npos) return false;
      at = after_blanks(close + 1);
      if (at >= line.size()) return true;
      if (by_blanks) continue;
      if (line[at] != separator) return false;
      ++at;
      continue;
    }
    std::size_t end = by_blanks ? line.find_first_of(" \t", begin) : line.find(separator, begin);
    if (end == std::string_view::npos) end = line.size();
    add(trimmed(line.substr(begin, end - begin)), begin, false);
    at = end + 1;
  }
  return true;
}

std::string_view CellSplitter::rest_from(std::size_t first, std::string_view line) const {
  return trimmed(line.substr(begins_[first]));
}

bool is_missing(std::string_view cell) {
  if (cell.size() > 6) return false;
  if (cell.find_first_not_of('-') == std::string_view::npos) return true;  // also the empty cell
  for (const std::string_view word :
       {"nan", "n/a", "na", "#n/a", "null", "none", "k.a.", "\u2013", "\u2014"}) {
    if (same_letters(cell, word)) return true;
  }
  return false;
}

bool is_comment(std::string_view line) {
  line = trimmed(line);
  if (line.empty()) return false;
  if (line.front() == '"') line.remove_prefix(1);
  return !line.empty() && (line.front() == '#' || line.front() == '%' || line.front() == '*' ||
                           line.substr(0, 2) == "//");
}

NumberCell read_number(std::string_view cell, char decimal) {
  // The short way: at most nine digits, as loggers write them.
  constexpr int most_digits = 9;
  constexpr std::array<double, most_digits + 1> power = {1e0, 1e1, 1e2, 1e3, 1e4,
                                                         1e5, 1e6, 1e7, 1e8, 1e9};
  std::size_t p = 0;
  const bool negative = !cell.empty() && cell[0] == '-';
  if (negative) ++p;
  std::int32_t whole = 0;
  int digits = 0;
  int decimals = 0;
  for (; p < cell.size() && is_digit(cell[p]) && digits < most_digits; ++p, ++digits) {
    whole = whole * 10 + (cell[p] - '0');
  }
  const int before = digits;
  if (before > 0 && p < cell.size() && cell[p] == decimal) {
    for (++p; p < cell.size() && is_digit(cell[p]) && digits < most_digits; ++p, ++digits) {
      whole = whole * 10 + (cell[p] - '0');
      ++decimals;
    }
    if (decimals == 0) return {};  // "2." was cut off
  }
  // A letter or a degree sign behind it is a unit; anything else but the end may belong to the
  // number.
  const bool ends =
      p == cell.size() || (cell[p] == ' ' && p + 1 < cell.size() && !is_digit(cell[p + 1]));
  if (before == 0 || !ends) return read_long_number(cell, decimal);
  NumberCell out;
  out.number.digits = negative ? -whole : whole;
  out.number.decimals = decimals;
  out.number.exact = true;
  const double value = whole / power[static_cast<std::size_t>(decimals)];
  out.number.value = negative ? -value : value;
  out.used = p;
  return out;
}

}  // namespace steamworthy::trace
