#include "trace/head_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace steamworthy::trace {
namespace {

using Words = std::span<const std::string_view>;

// Parts of words: they may stand anywhere in a head ("Kesselwassertemperatur").
constexpr std::array<std::string_view, 14> remark_parts = {
    "remark", "comment", "bemerk",      "kommentar", "notiz",   "event",   "ereignis",
    "anmerk", "hinweis", "observation", "note",      "vermerk", "logbook", "what happened"};
constexpr std::array<std::string_view, 3> stroke_parts = {"stroke", "huebe", "hubzahl"};
constexpr std::array<std::string_view, 19> not_read_parts = {
    "air pressure",   "setpoint",         "set point", "sollwert",
    "target",         "zieldruck",        "solldruck", "limit",
    "grenz",          "barometer",        "luftdruck", "atmospheric pressure",
    "umgebungsdruck", "ambient pressure", "differenz", "differential",
    "humidity",       "feuchte",          "pegel"};
constexpr std::array<std::string_view, 4> temperature_parts = {"temperatur", "temp", "thermo",
                                                               "pt100"};
constexpr std::array<std::string_view, 8> time_parts = {"time",  "zeit",   "uhrzeit",  "datum",
                                                        "dauer", "elapse", "duration", "stamp"};
constexpr std::array<std::string_view, 2> clock_parts = {"uhrzeit", "time of day"};
constexpr std::array<std::string_view, 6> elapsed_parts = {"elapse",   "dauer",   "duration",
                                                           "laufzeit", "vergang", "since"};
constexpr std::array<std::string_view, 7> pressure_parts = {
    "pressure", "druck", "manomet", "gauge", "ablesung", "pressiom", "indicator"};
constexpr std::array<std::string_view, 10> volume_parts = {
    "volum", "pumped", "gepumpt",  "menge",      "gallon",
    "litre", "liter",  "injected", "zugefuehrt", "foerder"};
constexpr std::array<std::string_view, 6> left_parts = {"remaining", "tank",   "rest",
                                                        "behaelter", "vorrat", "level"};
constexpr std::array<std::string_view, 2> water_parts = {"water", "wasser"};
constexpr std::array<std::string_view, 10> water_wall_parts = {
    "waterwall",  "water wall", "water_wall", "wasserwand",         "wasserrohr",
    "water tube", "water_tube", "watertube",  "wassertrommel wand", "rohrwand"};
constexpr std::array<std::string_view, 13> metal_parts = {
    "metal",   "metall",     "shell",    "mantel", "steel", "stahl", "werkstoff",
    "surface", "oberflaech", "wandtemp", "tube",   "rohr",  "blech"};
constexpr std::array<std::string_view, 7> ambient_parts = {
    "ambient", "umgebung", "aussen", "outside", "outdoor", "raumtemp", "lufttemp"};
constexpr std::array<std::string_view, 9> supply_parts = {"supply",    "zulauf",     "speisewasser",
                                                          "feedwater", "feed water", "makeup",
                                                          "make-up",   "suction",    "nachspeise"};

// Whole words only: as parts they would stand in others.
constexpr std::array<std::string_view, 2> remark_words = {"notes", "text"};
constexpr std::array<std::string_view, 14> index_words = {
    "no", "nr",  "num",  "nummer", "number", "lfd",    "index",
    "id", "row", "line", "zeile",  "sample", "record", "scan"};
constexpr std::array<std::string_view, 4> stroke_words = {"hub", "hubs", "hube", "kolbenhub"};
constexpr std::array<std::string_view, 12> not_read_words = {"soll", "set",   "max",   "minimum",
                                                             "flow", "rate",  "level", "fluss",
                                                             "dp",   "delta", "stand", "speed"};
constexpr std::array<std::string_view, 1> temperature_words = {"tmp"};
constexpr std::array<std::string_view, 7> time_words = {"uhr", "clock", "date", "hhmm",
                                                        "std", "sek",   "sec"};
constexpr std::array<std::string_view, 3> clock_words = {"clock", "uhr", "hhmm"};
constexpr std::array<std::string_view, 1> elapsed_words = {"el"};
constexpr std::array<std::string_view, 9> pressure_words = {
    "p", "press", "gage", "reading", "readings", "anzeige", "pg", "pi", "pt"};
constexpr std::array<std::string_view, 4> volume_words = {"vol", "v", "qty", "added"};
constexpr std::array<std::string_view, 3> water_words = {"h2o", "wtr", "fluid"};
constexpr std::array<std::string_view, 6> metal_words = {"wall", "wand",   "plate",
                                                         "skin", "casing", "mtl"};
constexpr std::array<std::string_view, 8> ambient_words = {"amb",  "air", "luft",  "raum",
                                                           "room", "umg", "halle", "hall"};
constexpr std::array<std::string_view, 2> supply_words = {"feed", "inlet"};
constexpr std::array<std::string_view, 2> pump_words = {"pump", "pumpe"};
constexpr std::array<std::string_view, 1> pump_parts = {"pumpendruck"};
constexpr Words nothing = {};

struct Row {
  Word word;
  Words parts;
  Words words;
};

std::span<const Row> rows() {
  static const std::array<Row, 17> all = {{
      {Word::Remark, remark_parts, remark_words},
      {Word::Index, nothing, index_words},
      {Word::Stroke, stroke_parts, stroke_words},
      {Word::NotRead, not_read_parts, not_read_words},
      {Word::Temperature, temperature_parts, temperature_words},
      {Word::Time, time_parts, time_words},
      {Word::Clock, clock_parts, clock_words},
      {Word::Elapsed, elapsed_parts, elapsed_words},
      {Word::Pressure, pressure_parts, pressure_words},
      {Word::Volume, volume_parts, volume_words},
      {Word::Left, left_parts, nothing},
      {Word::Water, water_parts, water_words},
      {Word::WaterWall, water_wall_parts, nothing},
      {Word::Metal, metal_parts, metal_words},
      {Word::Ambient, ambient_parts, ambient_words},
      {Word::Supply, supply_parts, supply_words},
      {Word::Pump, pump_parts, pump_words},
  }};
  return all;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

std::string folded(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 8> umlauts = {
      {{"\u00e4", "ae"},
       {"\u00f6", "oe"},
       {"\u00fc", "ue"},
       {"\u00df", "ss"},
       {"\u00c4", "ae"},
       {"\u00d6", "oe"},
       {"\u00dc", "ue"},
       {"\u00a0", " "}}};
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    bool replaced = false;
    if (static_cast<unsigned char>(text[at]) >= 0x80) {
      for (const auto& [from, to] : umlauts) {
        if (text.substr(at, from.size()) == from) {
          out += to;
          at += from.size();
          replaced = true;
          break;
        }
      }
    }
    if (replaced) continue;
    out += is_capital(text[at]) ? static_cast<char>(text[at] - 'A' + 'a') : text[at];
    ++at;
  }
  return out;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string plain;  // umlauts folded, capitals kept: they part words
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (static_cast<unsigned char>(text[at]) < 0x80) {
      plain += text[at];
    } else if (at + 1 < text.size()) {
      const std::string two = folded(text.substr(at, 2));
      plain += two.size() == 2 && is_letter(two[0]) ? two : " ";
      ++at;
    }
  }
  std::string word;
  const auto end_word = [&] {
    if (!word.empty()) words.push_back(folded(word));
    word.clear();
  };
  for (std::size_t at = 0; at < plain.size(); ++at) {
    const char c = plain[at];
    if (!is_letter(c) && !is_digit(c)) {
      end_word();
      continue;
    }
    if (!word.empty()) {
      const char last = word.back();
      const bool camel = is_capital(c) && is_letter(last) && !is_capital(last);
      const bool number =
          is_digit(c) != is_digit(last) && folded(word) != "h" && folded(word) != "h2";
      if (camel || number) end_word();
    }
    word += c;
  }
  end_word();
  return words;
}

bool says(Word word, const std::string& small, const std::vector<std::string>& words) {
  const Row& row = rows()[static_cast<std::size_t>(word)];
  for (const std::string_view part : row.parts) {
    if (small.find(part) != std::string::npos) return true;
  }
  for (const std::string& whole : words) {
    if (std::find(row.words.begin(), row.words.end(), whole) != row.words.end()) return true;
  }
  return false;
}

std::optional<bool> zero_of_words(const std::vector<std::string>& words) {
  for (const std::string& word : words) {
    if (word == "abs" || word == "absolute" || word == "absolut" || word == "absolutdruck" ||
        word == "psia" || word == "bara") {
      return true;
    }
    if (word == "ueberdruck" || word == "rel" || word == "relativ" || word == "relative" ||
        word == "relativdruck" || word == "psig" || word == "barg" || word == "atue") {
      return false;
    }
  }
  return std::nullopt;
}

bool is_known_word(const std::string& small) {
  const std::vector<std::string> words = words_of(small);
  for (const Row& row : rows()) {
    if (says(row.word, small, words)) return true;
  }
  return zero_of_words(words).has_value();
}

bool is_clock_pattern(std::string_view small) {
  if (small.find("hh") == std::string_view::npos && small.find("h:mm") == std::string_view::npos) {
    return small == "yyyy-mm-dd" || small == "dd.mm.yyyy" || small == "tt.mm.jjjj" ||
           small == "dd/mm/yyyy" || small == "mm/dd/yyyy";
  }
  return small.find_first_not_of("hmsydtj:.-/ ,f0") == std::string_view::npos;
}

std::string_view spelled_unit(std::string_view small) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 15> names = {
      {{"sekunde", "s"},
       {"sekunden", "s"},
       {"sek", "s"},
       {"sek.", "s"},
       {"stunde", "h"},
       {"stunden", "h"},
       {"std.", "h"},
       {"minute(n)", "min"},
       {"grad c", "\u00b0C"},
       {"grad", "\u00b0C"},
       {"grad celsius", "\u00b0C"},
       {"usgal", "US gal"},
       {"us gals", "US gal"},
       {"millisekunden", "ms"},
       {"milliseconds", "ms"}}};
  for (const auto& [name, unit] : names) {
    if (name == small) return unit;
  }
  return {};
}

}  // namespace steamworthy::trace
