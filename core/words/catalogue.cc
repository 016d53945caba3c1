#include "words/catalogue.h"

#include <algorithm>

namespace steamworthy::words {
namespace {

std::vector<Entry> english() {
  std::vector<Entry> entries;
  for (const auto part :
       {english_trade(),    english_input(),       english_rules(),        english_sheet(),
        english_cautions(), english_boiler(),      english_solids(),       english_hold(),
        english_record(),   english_trace(),       english_facts(),        english_tokens(),
        english_paper(),    english_paper_kinds(), english_paper_filled(), english_fitup(),
        english_view(),     english_closing(),     english_repair(),       english_raising()}) {
    entries.insert(entries.end(), part.begin(), part.end());
  }
  std::stable_sort(entries.begin(), entries.end(),
                   [](const Entry& a, const Entry& b) { return a.key < b.key; });
  return entries;
}

}  // namespace

std::span<const Entry> catalogue(Language language) {
  switch (language) {
    case Language::English:
      break;
  }
  static const std::vector<Entry> entries = english();
  return entries;
}

std::optional<std::string_view> find(Language language, std::string_view key) {
  const std::span<const Entry> entries = catalogue(language);
  const auto it =
      std::lower_bound(entries.begin(), entries.end(), key,
                       [](const Entry& entry, std::string_view k) { return entry.key < k; });
  if (it == entries.end() || it->key != key) return std::nullopt;
  return it->text;
}

Placeholders placeholders(std::string_view text) {
  Placeholders found;
  bool in_brackets = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '[') in_brackets = true;
    if (text[at] == ']') in_brackets = false;
    if (text[at] != '{') continue;
    const std::size_t end = text.find_first_of("|}", at);
    if (end == std::string_view::npos) break;
    (in_brackets ? found.optional : found.needed).emplace_back(text.substr(at + 1, end - at - 1));
  }
  return found;
}

}  // namespace steamworthy::words
