// JSON as text, member by member, for rooms that may not include a JSON library.
//
// What is put stays in the order in which it was put. Text that is not valid UTF-8 is shown with
// replacement signs.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace steamworthy::wire {

/// A text with its quotation marks, escaped.
std::string json_string(std::string_view text);

/// A number; "null" for one that is not finite.
std::string number_text(double value);

class JsonObject {
 public:
  JsonObject& put(std::string_view key, std::string_view text) {
    return raw(key, json_string(text));
  }
  JsonObject& put(std::string_view key, const std::string& text) {
    return raw(key, json_string(text));
  }
  JsonObject& put(std::string_view key, const char* text) { return raw(key, json_string(text)); }
  JsonObject& put(std::string_view key, bool value) { return raw(key, value ? "true" : "false"); }
  JsonObject& put(std::string_view key, int value) { return raw(key, std::to_string(value)); }
  JsonObject& put(std::string_view key, std::int64_t value) {
    return raw(key, std::to_string(value));
  }
  JsonObject& put(std::string_view key, std::uint64_t value) {
    return raw(key, std::to_string(value));
  }
  JsonObject& put(std::string_view key, double value) { return raw(key, number_text(value)); }
  JsonObject& put_null(std::string_view key) { return raw(key, "null"); }
  JsonObject& put(std::string_view key, const std::vector<std::string>& texts);
  /// `json` is JSON already.
  JsonObject& raw(std::string_view key, std::string_view json);
  /// A list of what is JSON already.
  JsonObject& list(std::string_view key, const std::vector<std::string>& json);

  std::string text() const { return text_.empty() ? "{}" : text_ + "}"; }

 private:
  std::string text_;
};

/// [a, b, c] of what is JSON already.
std::string json_list(const std::vector<std::string>& json);

}  // namespace steamworthy::wire
