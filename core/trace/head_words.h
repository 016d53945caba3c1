// Head words: what the heads of columns are made of, in English and German.
// docs/formats/trace.md lists them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steamworthy::trace {

enum class Word {
  Remark,
  Index,
  Stroke,
  NotRead,  ///< set values, limits, levels, barometers: measured, yet none of ours
  Temperature,
  Time,
  Clock,
  Elapsed,
  Pressure,
  Volume,
  Left,  ///< what is left in a tank
  Water,
  WaterWall,  ///< "water wall", "Wasserrohr": metal, whatever the word water says
  Metal,
  Ambient,
  Supply,
  Pump,
};

/// Small letters, umlauts as two letters, other marks as blanks kept.
std::string folded(std::string_view text);

/// The words of a head in small letters: "T_metal_C" is t, metal, c; "WaterTemp2" water, temp, 2.
std::vector<std::string> words_of(std::string_view text);

/// Whether a head says so: `small` is the folded head, `words` its words.
bool says(Word word, const std::string& small, const std::vector<std::string>& words);

/// true for "abs", "absolut"; false for "gauge pressure"'s German and English marks.
std::optional<bool> zero_of_words(const std::vector<std::string>& words);

/// Whether the folded text says anything that says() knows.
bool is_known_word(const std::string& small);

/// "hh:mm", "hh:mm:ss", "yyyy-mm-dd hh:mm".
bool is_clock_pattern(std::string_view small);

/// A name of a unit that the room units knows by another: "sekunden" is "s". Empty if none.
std::string_view spelled_unit(std::string_view small);

}  // namespace steamworthy::trace
