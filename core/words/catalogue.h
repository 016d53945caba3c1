// The catalogue: every key that core speaks, with its text in a language.
//
// A text may hold
//   {name}            the value of that name: a text, another key's words, a measure with its unit
//   {name|one|many}   "one" if the measure is 1, otherwise "many"
//   {name_*}          all values whose names begin so, joined by commas
//   [ ... ]           left out where a value in it was not given
// English stands in english_*.cc, a file for each family of keys; another
// language is another set of such files and one line in catalogue.cc.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "words/style.h"

namespace steamworthy::words {

struct Entry {
  std::string_view key;
  std::string_view text;
};

/// All entries of a language, sorted by key.
std::span<const Entry> catalogue(Language language);

/// The text of a key, before its placeholders are filled; nothing if there is none.
std::optional<std::string_view> find(Language language, std::string_view key);

/// The names of the placeholders of a text, in their order; `optional` are those in brackets.
struct Placeholders {
  std::vector<std::string> needed;
  std::vector<std::string> optional;
};
Placeholders placeholders(std::string_view text);

// The parts of the English catalogue, one a file.
std::span<const Entry> english_trade();     ///< the words of the trade: parts, stages, clearances
std::span<const Entry> english_input();     ///< names of inputs and of where they came from
std::span<const Entry> english_rules();     ///< the room rules and its tokens
std::span<const Entry> english_sheet();     ///< the room sheet
std::span<const Entry> english_cautions();  ///< cautions, inputs of the sheet
std::span<const Entry> english_boiler();    ///< the room boiler
std::span<const Entry> english_solids();    ///< the rooms vessel, strength and materials
std::span<const Entry> english_trace();     ///< the room trace
std::span<const Entry> english_hold();      ///< the rooms hold and water
std::span<const Entry> english_record();    ///< the room record
std::span<const Entry> english_facts();     ///< log entries, a sentence a kind of fact
std::span<const Entry> english_closing();   ///< what is outstanding, its remedy, alarms
std::span<const Entry> english_tokens();    ///< words that stand in log entries
std::span<const Entry> english_paper();     ///< papers: heads, columns, boxes to fill by hand
std::span<const Entry> english_paper_kinds();   ///< tokens of a description, marks
std::span<const Entry> english_repair();        ///< the room repair
std::span<const Entry> english_raising();       ///< the room raising
std::span<const Entry> english_fitup();         ///< the room fitup
std::span<const Entry> english_view();          ///< where a closing stands, what clearances permit
std::span<const Entry> english_paper_filled();  ///< papers that are filled from facts

}  // namespace steamworthy::words
