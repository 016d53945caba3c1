// Writing one table of a description as JSON: the mirror of ObjectReader, so
// that one list of fields serves both ways.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "boiler/tokens.h"
#include "units/measure.h"
#include "wire/json.h"
#include "wire/object_reader.h"

namespace steamworthy::wire {

/// Leaves out what is empty; writes every number that is there.
class ObjectWriter {
 public:
  explicit ObjectWriter(Json& json) : json_(json) {}

  static constexpr bool reads = false;
  Dialect dialect() const { return Dialect::Json; }

  void text(const char* key, const std::string& value, Need = Need::Optional) {
    if (!value.empty()) json_[key] = value;
  }
  void texts(const char* key, const std::vector<std::string>& values) {
    if (!values.empty()) json_[key] = values;
  }
  void flag(const char* key, bool value, Need need = Need::Optional) {
    if (value || need == Need::Required) json_[key] = value;
  }
  void whole(const char* key, int value, Need = Need::Optional) { json_[key] = value; }
  void whole(const char* key, const std::optional<int>& value) {
    if (value) json_[key] = *value;
  }
  template <class Enum>
  void word(const char* key, Enum value, Need = Need::Required) {
    json_[key] = std::string(boiler::token(value));
  }
  template <class Enum>
  void word(const char* key, const std::optional<Enum>& value) {
    if (value) word(key, *value);
  }
  template <class Quantity>
  void measure(const char* key, const Quantity& value, units::Kind kind, Need = Need::Required) {
    put_exact(key, {kind, value.si()});
  }
  template <class Quantity>
  void measure(const char* key, const std::optional<Quantity>& value, units::Kind kind) {
    if (value) measure(key, *value, kind);
  }
  void number(const char* key, double value, units::Kind kind, Need = Need::Required) {
    put_exact(key, {kind, value});
  }
  void number(const char* key, const std::optional<double>& value, units::Kind kind) {
    if (value) number(key, *value, kind);
  }
  void pairs(const char* key, const std::vector<std::pair<std::string, std::string>>& values) {
    if (values.empty()) return;
    Json table = Json::object();
    for (const auto& [name, value] : values) table[name] = value;
    json_[key] = std::move(table);
  }

  Json& json() { return json_; }

 private:
  /// As put_measure(), but so that reading gives back the same bits: the shortest
  /// number near the converted one that does, if there is one.
  void put_exact(const char* key, const units::Measure& measure);

  Json& json_;
};

}  // namespace steamworthy::wire
