// Table: every kind with its fields, for reading, for docs/formats/facts.md and for tests.
#pragma once

#include <string_view>
#include <vector>

#include "facts/body.h"

namespace steamworthy::facts {

struct Row {
  Kind kind;
  std::vector<Field> fields;
  Body empty;  ///< a body of the kind with nothing in it
};

/// All known kinds, sorted by token.
const std::vector<Row>& table();

/// The row of a token; null if the kind is unknown.
const Row* find_kind(std::string_view token);

/// Families of the words that stand in bodies, with their tokens: for tests of `words`.
std::vector<std::pair<std::string_view, std::vector<std::string_view>>> families();

}  // namespace steamworthy::facts
