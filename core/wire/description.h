// Descriptions: a boiler as TOML that people write, and as JSON.
//
// Both have the same tables and keys, listed in docs/formats/boiler.md. In TOML
// a dimension is a text with any unit ("1 1/4 in"); in JSON it is a number whose
// key ends in its unit ("wall_mm"), and closure patterns are written out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "boiler/boiler.h"

namespace steamworthy::wire {

/// The value of the top key `format`.
inline constexpr std::string_view description_format = "steamworthy-boiler-1";

struct Description {
  std::optional<boiler::Boiler> boiler;  ///< only if there are no problems
  std::vector<Problem> problems;         ///< all of them, by line
};

/// Reads a description, whatever its bytes are; nothing is thrown for bad input.
/// `file` is only named in problems.
///
/// Codes    wire.syntax, wire.not_utf8, wire.too_large, wire.too_deep, wire.doubled_key,
///          wire.missing, wire.wrong_type, wire.unknown_key, wire.unknown_word,
///          wire.too_great, wire.not_finite, wire.format, the codes of units/parse.h,
///          of boiler/pattern.h and of boiler/check.h.
/// Checked  wrong_descriptions_test.cc: the exact message of each wrong description in
///          tests/wrong; description_test.cc; fuzz/description_fuzz.cc.
Description read_boiler_toml(std::string_view text, const std::string& file);
Description read_boiler_json(std::string_view text, const std::string& file);

/// The description as JSON that schema/boiler.schema.json describes; reading it
/// back gives the same boiler.
///
/// Throws   OutOfRange "wire.not_finite" if a quantity is not finite.
std::string boiler_json(const boiler::Boiler& boiler);

/// Every key that is read from TOML, or from JSON, by its table: "part.wall",
/// "part.wall_mm"; each once, sorted. For the tests of documents and schema.
std::vector<std::string> description_keys(bool json);

}  // namespace steamworthy::wire
