#include "wire/json_text.h"

#include "wire/json.h"

namespace steamworthy::wire {

std::string json_string(std::string_view text) {
  return Json(std::string(text)).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string number_text(double value) { return Json(value).dump(); }

JsonObject& JsonObject::raw(std::string_view key, std::string_view json) {
  text_ += text_.empty() ? "{" : ",";
  text_ += json_string(key);
  text_ += ":";
  text_ += json;
  return *this;
}

JsonObject& JsonObject::put(std::string_view key, const std::vector<std::string>& texts) {
  std::vector<std::string> json;
  for (const std::string& text : texts) json.push_back(json_string(text));
  return list(key, json);
}

JsonObject& JsonObject::list(std::string_view key, const std::vector<std::string>& json) {
  return raw(key, json_list(json));
}

std::string json_list(const std::vector<std::string>& json) {
  std::string text = "[";
  for (const std::string& one : json) text += (text.size() > 1 ? "," : "") + one;
  return text + "]";
}

}  // namespace steamworthy::wire
