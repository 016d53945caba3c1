#include "trace/clock.h"

#include <array>

#include "trace/cells.h"

namespace steamworthy::trace {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// A whole number of `least` to `most` digits at the front, which are taken off.
std::optional<int> take_whole(std::string_view& text, std::size_t least, std::size_t most) {
  std::size_t n = 0;
  int value = 0;
  while (n < text.size() && n < most && is_digit(text[n])) value = value * 10 + (text[n++] - '0');
  if (n < least) return std::nullopt;
  text.remove_prefix(n);
  return value;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

bool ends_with_word(std::string_view& text, std::string_view word) {
  if (text.size() < word.size()) return false;
  const std::string_view end = text.substr(text.size() - word.size());
  for (std::size_t i = 0; i < word.size(); ++i) {
    if (lower(end[i]) != word[i]) return false;
  }
  text = trimmed(text.substr(0, text.size() - word.size()));
  return true;
}

/// ".25" behind seconds.
double take_fraction(std::string_view& text) {
  if (text.size() < 2 || (text[0] != '.' && text[0] != ',') || !is_digit(text[1])) return 0.0;
  text.remove_prefix(1);
  double value = 0.0;
  double step = 1.0;
  for (int n = 0; !text.empty() && is_digit(text.front()); ++n) {
    if (n < 9) {  // nanoseconds; further digits are nothing that a logger knows
      value = value * 10.0 + (text.front() - '0');
      step *= 10.0;
    }
    text.remove_prefix(1);
  }
  return value / step;
}

/// "am", "pm" at the end of a clock: hours to add to the 12-hour count, or nothing.
struct Half {
  bool given = false;
  bool afternoon = false;
};
Half take_half(std::string_view& text) {
  for (const std::string_view word : {"am", "a.m."}) {
    if (ends_with_word(text, word)) return {true, false};
  }
  for (const std::string_view word : {"pm", "p.m."}) {
    if (ends_with_word(text, word)) return {true, true};
  }
  return {};
}

std::optional<double> bare_clock(std::string_view text) {
  if (text.size() != 4) return std::nullopt;
  const auto hours = take_whole(text, 2, 2);
  const auto minutes = take_whole(text, 2, 2);
  if (!hours || !minutes || *hours > 23 || *minutes > 59) return std::nullopt;
  return *hours * 3600.0 + *minutes * 60.0;
}

/// A clock without am or pm, the whole text.
std::optional<double> plain_clock(std::string_view text, const ClockStyle& style) {
  if (style.bare) return bare_clock(text);
  const auto first = take_whole(text, 1, style.past_midnight ? 5 : 2);
  if (!first || text.empty()) return std::nullopt;
  const char mark = text.front();
  if (mark != ':' && mark != 'h' && !(mark == '.' && style.dotted)) return std::nullopt;
  text.remove_prefix(1);
  const auto second = take_whole(text, 2, 2);
  if (!second || *second > 59) return std::nullopt;
  if (mark == 'h' && take(text, 'm') && !text.empty()) return std::nullopt;
  std::optional<int> third;
  if (!text.empty() && text.front() == mark && mark != 'h') {
    text.remove_prefix(1);
    third = take_whole(text, 2, 2);
    if (!third || *third > 59) return std::nullopt;
  }
  if (style.minutes_first && !third) {
    const double fraction = take_fraction(text);
    if (!text.empty()) return std::nullopt;
    return *first * 60.0 + *second + fraction;
  }
  const double fraction = third ? take_fraction(text) : 0.0;
  if (!text.empty() || (!style.past_midnight && *first > 23)) return std::nullopt;
  return *first * 3600.0 + *second * 60.0 + third.value_or(0) + fraction;
}

}  // namespace

std::optional<TimeCell> read_clock(std::string_view cell, const ClockStyle& style) {
  std::string_view text = trimmed(cell);
  if (!text.empty() && !is_digit(text.back())) {
    ends_with_word(text, "uhr");
    const Half half = take_half(text);
    if (half.given) {
      std::string_view hour_text = text;
      const auto hour = take_whole(hour_text, 1, 2);
      if (!hour || *hour < 1 || *hour > 12) return std::nullopt;
      const auto clock = plain_clock(text, style);
      if (!clock) return std::nullopt;
      const double base = *clock - (*hour == 12 ? 12.0 * 3600.0 : 0.0);
      return TimeCell{base + (half.afternoon ? 12.0 * 3600.0 : 0.0)};
    }
  }
  if (const auto clock = plain_clock(text, style)) return TimeCell{*clock};
  return std::nullopt;
}

std::optional<long> days_from(int year, int month, int day) {
  constexpr std::array<int, 12> lengths = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  if (year < 1900 || year > 2200 || month < 1 || month > 12) return std::nullopt;
  const int last = lengths[static_cast<std::size_t>(month - 1)] + (leap && month == 2 ? 1 : 0);
  if (day < 1 || day > last) return std::nullopt;
  // Years that begin in March have their leap day at the end.
  const long y = month <= 2 ? year - 1 : year;
  const long era = y / 400;
  const long of_era = y - era * 400;
  const long of_year = (153L * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
  constexpr long days_of_era = 146097;       // 400 years
  constexpr long days_before_1970 = 719468;  // from 0000-03-01
  return era * days_of_era + of_era * 365 + of_era / 4 - of_era / 100 + of_year - days_before_1970;
}

std::optional<long> read_date(std::string_view cell, DateOrder order) {
  std::string_view text = trimmed(cell);
  const std::string_view whole = text;
  const auto first = take_whole(text, 1, 4);
  if (!first || text.empty()) return std::nullopt;
  const std::size_t first_digits = whole.size() - text.size();
  const char mark = text.front();
  if (mark != '-' && mark != '.' && mark != '/') return std::nullopt;
  text.remove_prefix(1);
  const auto second = take_whole(text, 1, 2);
  if (!second) return std::nullopt;
  if (mark == '.' && first_digits <= 2 && text == ".") return std::nullopt;  // "25.11." has no year
  if (!take(text, mark)) return std::nullopt;
  const std::string_view third_text = text;
  const auto third = take_whole(text, first_digits == 4 ? 1 : 2, 4);
  if (!third || !text.empty()) return std::nullopt;
  if (first_digits == 4) return days_from(*first, *second, *third);
  if (first_digits > 2 || third_text.size() == 3) return std::nullopt;
  const int year = third_text.size() == 2 ? 2000 + *third : *third;
  const bool month_first = mark == '/' && order == DateOrder::MonthFirst;
  return month_first ? days_from(year, *first, *second) : days_from(year, *second, *first);
}

std::optional<TimeCell> read_date_time(std::string_view cell, const ClockStyle& style) {
  std::string_view text = trimmed(cell);
  const std::size_t parting = text.find_first_of("T ,_");
  if (parting == std::string_view::npos) return std::nullopt;
  const auto day = read_date(text.substr(0, parting), style.order);
  if (!day) return std::nullopt;
  text = trimmed(text.substr(parting + 1));
  TimeCell out;
  if (!text.empty() && (text.back() == 'Z' || text.back() == 'z')) {
    out.has_offset = true;
    text.remove_suffix(1);
  } else if (const std::size_t sign = text.find_last_of("+-"); sign != std::string_view::npos) {
    std::string_view offset = text.substr(sign + 1);
    const auto hours = take_whole(offset, 2, 2);
    take(offset, ':');
    const auto minutes = offset.empty() ? std::optional<int>(0) : take_whole(offset, 2, 2);
    if (!hours || !minutes || !offset.empty() || *hours > 14 || *minutes > 59) return std::nullopt;
    out.has_offset = true;
    out.offset_s = (*hours * 3600.0 + *minutes * 60.0) * (text[sign] == '-' ? -1.0 : 1.0);
    text = trimmed(text.substr(0, sign));
  }
  ClockStyle clock_style = style;
  clock_style.past_midnight = false;
  clock_style.minutes_first = false;
  clock_style.bare = false;
  const auto clock = read_clock(text, clock_style);
  if (!clock) return std::nullopt;
  out.clock_s = clock->clock_s;
  out.day = day;
  return out;
}

std::optional<DateOrder> order_shown(std::string_view cell) {
  std::string_view text = trimmed(cell);
  const auto first = take_whole(text, 1, 2);
  if (!first || !take(text, '/')) return std::nullopt;
  const auto second = take_whole(text, 1, 2);
  if (!second || text.empty() || text.front() != '/') return std::nullopt;
  if (*first > 12 && *first <= 31 && *second <= 12) return DateOrder::DayFirst;
  if (*second > 12 && *second <= 31 && *first <= 12) return DateOrder::MonthFirst;
  return std::nullopt;
}

}  // namespace steamworthy::trace
