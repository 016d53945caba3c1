// Words keys of what a rule reads, shared by the files of this room.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "working/message.h"

namespace steamworthy::rules {

/// A token as part of a words key: ("work", "tubes-renewed") -> "work.tubes_renewed".
inline std::string words_key(std::string_view family, std::string_view token) {
  std::string key(family);
  key += '.';
  key += token;
  std::replace(key.begin(), key.end(), ' ', '_');
  std::replace(key.begin(), key.end(), '-', '_');
  return key;
}

inline working::Term term(std::string_view family, std::string_view token) {
  return {words_key(family, token)};
}

/// An input that a rule needs and nobody gave.
inline working::Message missing_input(std::string_view token) {
  return {"rules.missing_input", {{"input", term("input", token)}}};
}

/// Whether a name or a reason says anything: "-" and "  " do not.
inline bool says_something(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (byte >= '0' && byte <= '9') || (byte >= 'A' && byte <= 'Z') ||
           (byte >= 'a' && byte <= 'z');
  });
}

/// Adds a message that is not there yet.
inline void add_once(std::vector<working::Message>& messages, working::Message message) {
  if (std::find(messages.begin(), messages.end(), message) == messages.end()) {
    messages.push_back(std::move(message));
  }
}

}  // namespace steamworthy::rules
