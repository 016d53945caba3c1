#include "wire/tablet_request.h"

#include "units/number_text.h"

namespace steamworthy::wire {

TabletRequest::TabletRequest(std::string_view json)
    : json_(Json::parse(json, nullptr, /*allow_exceptions=*/false)) {
  if (!json_.is_object()) {
    refuse("", "", "a JSON object");
    settle();
  }
}

units::System TabletRequest::system() const {
  const Json* units = find("units");
  return units != nullptr && *units == "us" ? units::System::Us : units::System::Si;
}

const Json* TabletRequest::find(const char* key) const {
  const auto at = json_.find(key);
  return at == json_.end() ? nullptr : &*at;
}

std::string TabletRequest::text(const char* key) {
  const Json* value = find(key);
  if (value != nullptr && value->is_string()) return value->get<std::string>();
  refuse(key, value == nullptr ? "" : value->dump(), "a text");
  return {};
}

std::string TabletRequest::maybe(const char* key) {
  const Json* value = find(key);
  return value == nullptr || value->is_null() ? std::string() : text(key);
}

std::int64_t TabletRequest::whole(const char* key) {
  const Json* value = find(key);
  if (value != nullptr && value->is_number_integer()) return value->get<std::int64_t>();
  refuse(key, value == nullptr ? "" : value->dump(), "a whole number");
  return 0;
}

double TabletRequest::number(const char* key, double otherwise) {
  const Json* value = find(key);
  if (value == nullptr) return otherwise;
  if (value->is_number()) return value->get<double>();
  refuse(key, value->dump(), "a number");
  return otherwise;
}

const Json& TabletRequest::list(const char* key) {
  static const Json empty = Json::array();
  const Json* value = find(key);
  if (value == nullptr) return empty;
  if (value->is_array()) return *value;
  refuse(key, value->dump(), "a list");
  return empty;
}

void TabletRequest::refuse(const char* key, const std::string& found, const std::string& accepted) {
  for (const Problem& told : problems_) {
    if (told.field == key) return;
  }
  problems_.push_back({"tablet.bad_request", "", 0, key,
                       found.empty() ? "" : units::quotable(found), accepted,
                       found.empty() ? "is missing" : "cannot be read"});
}

void TabletRequest::settle() const {
  if (!problems_.empty()) throw BadInput(problems_);
}

Json problems_json(const std::vector<Problem>& problems) {
  Json list = Json::array();
  for (const Problem& problem : problems) {
    list.push_back({{"code", problem.code},
                    {"field", problem.field},
                    {"found", problem.found},
                    {"accepted", problem.accepted},
                    {"message", sentence(problem)}});
  }
  return list;
}

}  // namespace steamworthy::wire
