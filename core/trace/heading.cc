#include "trace/heading.h"

#include <algorithm>
#include <array>
#include <vector>

#include "trace/cells.h"
#include "trace/head_words.h"

namespace steamworthy::trace {
namespace {

constexpr units::Dimension pressure{1, -1, -2, 0};
constexpr units::Dimension time{0, 0, 1, 0};
constexpr units::Dimension temperature{0, 0, 0, 1};
constexpr units::Dimension volume{0, 3, 0, 0};

/// "(F)", "[bar]", "{s}": the last bracket's inside, which is cut out of the text.
std::optional<std::string> take_bracket(std::string& text) {
  constexpr std::array<std::pair<char, char>, 3> kinds = {{{'(', ')'}, {'[', ']'}, {'{', '}'}}};
  for (const auto& [open, close] : kinds) {
    const std::size_t end = text.rfind(close);
    if (end == std::string::npos) continue;
    // "bar (abs)" within "[...]" nests: match from the front.
    const std::size_t begin = text.find(open);
    if (begin == std::string::npos || begin > end) continue;
    std::string inside(trimmed(std::string_view(text).substr(begin + 1, end - begin - 1)));
    text.replace(begin, end - begin + 1, 1, ' ');
    return inside;
  }
  return std::nullopt;
}

/// "L/min", "bar/h": a unit of a log over another unit.
bool is_rate(std::string_view text) {
  const std::size_t stroke = text.find('/');
  return stroke != std::string_view::npos && stroke > 0 && read_log_unit(text.substr(0, stroke)) &&
         units::read_unit(text);
}

/// The unit behind the last blank, stroke, comma or underscore, with what stands before it.
struct Tail {
  std::string before;
  UnitText unit;
};
std::optional<Tail> unit_at_end(const std::string& name) {
  // Words that are units too, yet not at the end of a head.
  static constexpr std::array<std::string_view, 5> no_units = {"at", "in", "a", "d", "day"};
  std::optional<Tail> best;
  for (std::size_t at = name.size(); at-- > 0;) {
    const char c = name[at];
    if (c != ' ' && c != '/' && c != ',' && c != '_' && c != '-' && c != '.' && c != ':') continue;
    const std::string_view after = trimmed(std::string_view(name).substr(at + 1));
    std::string_view before = trimmed(std::string_view(name).substr(0, at));
    if (after.empty() || before.empty()) continue;
    if (std::find(no_units.begin(), no_units.end(), after) != no_units.end()) continue;
    auto unit = read_log_unit(after);
    if (!unit && is_rate(after)) return std::nullopt;  // "L/min": not a time in minutes
    if (!unit) continue;
    for (const std::string_view in : {" in", "/", ",", "_", "-", ":"}) {
      if (before.size() > in.size() && before.substr(before.size() - in.size()) == in) {
        before = trimmed(before.substr(0, before.size() - in.size()));
      }
    }
    best = Tail{std::string(before), *unit};  // the longest: "deg F" rather than "F"
  }
  return best;
}

void take_unit(Heading& heading) {
  std::string name = heading.text;
  while (const auto inside = take_bracket(name)) {
    if (inside->empty()) continue;
    const std::string small = folded(*inside);
    if (small == "mm:ss" || small == "m:ss" || small == "min:sec") {
      heading.minutes_first = true;
      heading.says_elapsed = true;
      continue;
    }
    if (is_clock_pattern(small)) continue;
    if (const auto unit = read_log_unit(*inside)) {
      if (!heading.unit) heading.unit = unit;
      continue;
    }
    if (small == "gauge" || small == "gage" || small == "g" || small == "a") {
      heading.absolute = small == "a";
      continue;
    }
    if (const auto absolute = zero_of_words(words_of(small))) {
      heading.absolute = absolute;
      if (words_of(small).size() == 1) continue;
    }
    // Either a unit that nobody knows, or words that belong to the name: "Temp (water)".
    if (heading.unreadable_unit.empty() && !is_known_word(small)) heading.unreadable_unit = *inside;
    name += " " + *inside;
  }
  name = std::string(trimmed(name));
  heading.is_rate = std::any_of(name.begin(), name.end(), [](char c) { return c == '/'; }) &&
                    (is_rate(name) || is_rate(name.substr(name.find_last_of(' ') + 1)));
  if (!heading.unit && !heading.is_rate) {
    if (auto tail = unit_at_end(name)) {
      heading.unit = tail->unit;
      name = tail->before;
    } else if (name.size() > 1) {
      if (auto whole = read_log_unit(name)) heading.unit = *whole;  // "psig" is the whole head
    }
  }
  heading.name = name;
}

bool has_dimension(const Heading& heading, const units::Dimension& dimension) {
  return heading.unit && heading.unit->unit.dimension == dimension;
}

/// How strongly a word of this kind is what a head is about: 2 with "temp" in it or behind it, 1 at
/// the head's end, 0 otherwise. "Tube water" is about water, "water drum shell temp" about the
/// shell.
int weight_of(Word kind, const std::vector<std::string>& words) {
  int weight = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!says(kind, words[i], {words[i]})) continue;
    const bool last = i + 1 == words.size();
    const bool warm =
        words[i].find("temp") != std::string::npos || (!last && words[i + 1].rfind("temp", 0) == 0);
    weight = std::max(weight, warm ? 2 : last ? 1 : 0);
  }
  return weight;
}

/// Of a temperature: what it is of.
Meaning seat_of(const std::string& small, const std::vector<std::string>& words) {
  if (says(Word::Supply, small, words)) return Meaning::Supply;
  const bool metal = says(Word::Metal, small, words);
  const bool water = says(Word::Water, small, words);
  if (says(Word::WaterWall, small, words)) return Meaning::Metal;
  if (water && metal) {
    const int wet = weight_of(Word::Water, words);
    const int solid = weight_of(Word::Metal, words);
    return wet > solid ? Meaning::Water : solid > wet ? Meaning::Metal : Meaning::OtherTemperature;
  }
  if (water) return Meaning::Water;
  if (metal) return Meaning::Metal;
  if (says(Word::Ambient, small, words)) return Meaning::Ambient;
  return Meaning::OtherTemperature;
}

Meaning meaning_of(const Heading& heading) {
  const std::string small = folded(heading.name);
  const std::vector<std::string> words = words_of(heading.name);
  const auto said = [&](Word word) { return says(word, small, words); };
  if (said(Word::Remark)) return Meaning::Remarks;
  if (!heading.unit && said(Word::Index)) return Meaning::Ignored;
  if (said(Word::Stroke) && !has_dimension(heading, pressure)) return Meaning::Strokes;
  if (said(Word::NotRead) || heading.is_rate) return Meaning::Unknown;
  if (has_dimension(heading, temperature)) return seat_of(small, words);
  if (has_dimension(heading, volume)) return said(Word::Left) ? Meaning::Unknown : Meaning::Pumped;
  if (has_dimension(heading, pressure)) return Meaning::Pressure;
  if (has_dimension(heading, time)) return Meaning::Elapsed;
  if (said(Word::Temperature)) return seat_of(small, words);
  if (said(Word::Time)) return Meaning::Elapsed;
  if (said(Word::Pressure)) return Meaning::Pressure;
  if (said(Word::Volume)) return said(Word::Left) ? Meaning::Unknown : Meaning::Pumped;
  // "Water", "Metall": a bare seat is a temperature; anything else of it would say so.
  const Meaning seat = seat_of(small, words);
  if (seat != Meaning::OtherTemperature) return seat;
  if (heading.name == "t") return Meaning::Elapsed;
  if (heading.name == "p" || heading.name == "P") return Meaning::Pressure;
  if (heading.name == "T") return Meaning::OtherTemperature;
  if (heading.name == "V") return Meaning::Pumped;
  return Meaning::Unknown;
}

}  // namespace

std::optional<UnitText> read_log_unit(std::string_view text) {
  text = trimmed(text);
  if (text.size() > 3 && (text.substr(0, 3) == "in " || text.substr(0, 3) == "In ")) {
    text = trimmed(text.substr(3));
  }
  // German and plural names that the room units has not.
  std::string_view known = text;
  if (const std::string_view other = spelled_unit(folded(text)); !other.empty()) known = other;
  const auto unit = units::read_unit(known);
  if (!unit) return std::nullopt;
  const units::Dimension& d = unit->dimension;
  if (!(d == pressure || d == time || d == temperature || d == volume)) return std::nullopt;
  if (unit->zero == units::Zero::Difference) return std::nullopt;
  return UnitText{std::string(text), *unit};
}

std::string shown_unit(const UnitText& unit) {
  if (unit.unit.dimension == temperature) {
    if (unit.unit.offset == 0.0) return unit.unit.factor == 1.0 ? "K" : "\u00b0R";
    return unit.unit.factor == 1.0 ? "\u00b0C" : "\u00b0F";
  }
  if (unit.unit.dimension == pressure && unit.unit.zero != units::Zero::Unsaid) {
    // The mark goes: gauge or absolute is said in words.
    for (const std::string_view plain : {"mbar", "bar", "psi", "kPa", "MPa", "hPa", "Pa", "atm"}) {
      const auto same = units::read_unit(plain);
      if (same && same->factor == unit.unit.factor) return std::string(plain);
    }
  }
  return unit.text;
}

bool is_unit_row_cell(std::string_view cell) {
  cell = trimmed(cell);
  if (cell.size() >= 2 && (cell.front() == '[' || cell.front() == '(')) {
    cell = trimmed(cell.substr(1, cell.size() - 2));
  }
  if (cell.empty() || cell == "-") return true;
  return read_log_unit(cell).has_value() || is_clock_pattern(folded(cell)) ||
         folded(cell) == "mm:ss";
}

Heading read_heading(std::string_view text) {
  Heading heading;
  heading.text = std::string(trimmed(text));
  take_unit(heading);
  heading.meaning = meaning_of(heading);
  const std::string small = folded(heading.text);
  const std::vector<std::string> words = words_of(heading.text);
  heading.says_clock = says(Word::Clock, small, words);
  heading.says_elapsed = heading.says_elapsed || says(Word::Elapsed, small, words);
  if (heading.meaning == Meaning::Pressure) {
    heading.of_pump = says(Word::Pump, small, words);
    if (heading.absolute) {
      // said in brackets of its own
    } else if (heading.unit && heading.unit->unit.zero != units::Zero::Unsaid) {
      heading.absolute = heading.unit->unit.zero == units::Zero::Absolute;
    } else if (const auto absolute = zero_of_words(words)) {
      heading.absolute = absolute;
    } else if (small.find("gauge pressure") != std::string::npos) {
      heading.absolute = false;
    }
  }
  const auto wanted = dimension(heading.meaning);
  if (heading.unit && wanted && !(heading.unit->unit.dimension == *wanted)) {
    heading.unreadable_unit = heading.unit->text;
    heading.unit.reset();
  }
  // Words in brackets matter only where a unit should stand.
  if (heading.unit || !wanted) heading.unreadable_unit.clear();
  return heading;
}

}  // namespace steamworthy::trace
