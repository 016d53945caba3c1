// Test file: what the crew knows of a test, beside its log.
//
// TOML that people write, the same tables and keys as JSON, or the flat JSON of
// a `.meta.json` that a simulator wrote. docs/formats/test-file.md lists the keys.
// What a file does not state is not known; what it does not state to be done
// counts as not done.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "trace/test_facts.h"

namespace steamworthy::wire {

/// The value of the top key `format`.
inline constexpr std::string_view test_file_format = "steamworthy-test-1";

struct TestFile {
  std::optional<trace::TestFacts> facts;  ///< only if there are no problems
  std::vector<Problem> problems;          ///< all of them, by line
  std::vector<std::string> unread;        ///< keys of a .meta.json that are not known here
};

/// Reads a test file, whatever its bytes are; nothing is thrown for bad input. JSON if the text
/// begins with a brace, TOML otherwise; JSON without a `format` is read as a `.meta.json`.
/// `file` is only named in problems.
///
/// Codes    wire.syntax, wire.not_utf8, wire.too_large, wire.too_deep, wire.doubled_key,
///          wire.missing, wire.wrong_type, wire.unknown_key, wire.unknown_word, wire.not_finite,
///          wire.format, wire.not_a_moment, wire.not_above_zero, wire.not_a_fraction,
///          wire.one_of_two, wire.upside_down, and the codes of units/parse.h.
TestFile read_test_file(std::string_view text, const std::string& file);

/// Every key that is read from TOML, by its table: "gauge.resolution"; each once, sorted.
std::vector<std::string> test_file_keys();
/// Every key of a `.meta.json`.
std::vector<std::string> meta_keys();

}  // namespace steamworthy::wire
