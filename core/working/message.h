// Message: how core speaks. A key and typed values; never a sentence.
//
// The room `words` turns a message into a sentence in a language and a unit
// system; tests check key and values. Keys are "room.what_is_said".
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "units/measure.h"

namespace steamworthy::working {

/// What may stand in a message: text as it is (a tag, a name, a file), the key
/// of another text, a measured value.
struct Term {
  std::string key;
  friend bool operator==(const Term&, const Term&) = default;
};
using Value = std::variant<std::string, Term, units::Measure>;

struct Message {
  std::string key;
  std::vector<std::pair<std::string, Value>> values;

  bool empty() const { return key.empty(); }
  friend bool operator==(const Message&, const Message&) = default;
};

}  // namespace steamworthy::working
