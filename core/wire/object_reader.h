// Reading one table of a description: typed fields in, faults out.
//
// A field that is missing or wrong is reported and left as "not a number" (whole
// numbers as boiler::unread), so that no later check trips over it a second time.
#pragma once

#include <fmt/format.h>

#include <limits>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "boiler/check.h"
#include "boiler/tokens.h"
#include "units/parse.h"
#include "wire/node.h"

namespace steamworthy::wire {

/// What a whole reading gathers: faults, and where each field stands.
class Reading {
 public:
  Reading(Dialect dialect, std::string file) : dialect_(dialect), file_(std::move(file)) {}

  Dialect dialect() const { return dialect_; }
  const std::string& file() const { return file_; }

  void add(std::string code, int line, std::string field, std::string found, std::string accepted,
           std::string message);
  /// A fault found later in what was read: gets line and text from its field.
  void add_located(Problem problem);
  void stands_at(const std::string& field, int line, const std::string& text);

  /// Takes back that a field is missing.
  void forget_missing(const std::string& field);

  const std::vector<Problem>& problems() const { return problems_; }
  /// By line, then field; each once.
  std::vector<Problem> sorted() const;
  /// Every key asked for, by the kind of table: "part.wall". For documentation tests.
  std::vector<std::string> keys;

 private:
  struct Where {
    int line;
    std::string text;
  };

  Dialect dialect_;
  std::string file_;
  std::vector<Problem> problems_;
  std::map<std::string, Where> where_;
};

enum class Need { Required, Optional };

class ObjectReader {
 public:
  /// `path` is the field so far ("part[SD]"), `kind` the table's kind ("part").
  ObjectReader(const Node& table, std::string path, std::string kind, Reading& reading);

  static constexpr bool reads = true;

  // Visitor of fields: each reads a key into what stands behind it.
  void text(const char* key, std::string& into, Need need = Need::Optional);
  void texts(const char* key, std::vector<std::string>& into);
  void flag(const char* key, bool& into, Need need = Need::Optional);
  void whole(const char* key, int& into, Need need = Need::Optional);
  void whole(const char* key, std::optional<int>& into);

  template <class Enum>
  void word(const char* key, Enum& into, Need need = Need::Required) {
    if (const std::string* written = word_text(key, need, boiler::Words<Enum>::all())) {
      if (const auto value = boiler::Words<Enum>::value_of(*written)) {
        into = *value;
      } else {
        refuse_word(key, *written, boiler::Words<Enum>::all());
      }
    }
  }
  template <class Enum>
  void word(const char* key, std::optional<Enum>& into) {
    if (!has(key)) {
      note(key);
      return;
    }
    Enum value{};
    word(key, value, Need::Required);
    into = value;
  }

  template <class Quantity>
  void measure(const char* key, Quantity& into, units::Kind kind, Need need = Need::Required) {
    const std::optional<double> si = measure_si(key, kind, need);
    if (si) {
      into = Quantity::from_si(*si);
    } else if (need == Need::Required || has_measure(key, kind)) {
      into = Quantity::from_si(std::numeric_limits<double>::quiet_NaN());
    }
  }
  template <class Quantity>
  void measure(const char* key, std::optional<Quantity>& into, units::Kind kind) {
    if (!has_measure(key, kind)) {
      note(key_of(key, kind));
      return;
    }
    into.emplace();
    measure(key, *into, kind, Need::Optional);
  }
  /// A plain number: a fraction, a ratio, a percentage kept as a fraction of one.
  void number(const char* key, double& into, units::Kind kind, Need need = Need::Required);
  void number(const char* key, std::optional<double>& into, units::Kind kind);
  template <class Quantity>
  void measures(const char* key, std::vector<Quantity>& into, units::Kind kind) {
    for (const double si : measures_si(key, kind)) into.push_back(Quantity::from_si(si));
  }

  // Tables within.
  bool has(const char* key) const { return table_.find(key) != nullptr; }
  bool has_measure(const char* key, units::Kind kind) const;
  std::optional<ObjectReader> table(const char* key, Need need = Need::Optional);
  /// Each table of a list; its path is key[tag] by the value of `tag_key`, else key[#n].
  std::vector<ObjectReader> tables(const char* key, const char* tag_key);
  /// Free keys with texts: "maker" = "4711".
  void pairs(const char* key, std::vector<std::pair<std::string, std::string>>& into);

  /// Every key that nobody asked for is a fault.
  void refuse_unknown();
  /// What was asked for cannot be told (an unknown shape): do not judge the rest.
  void forgive_unknown() { forgiving_ = true; }
  void add(std::string code, const char* key, std::string found, std::string accepted,
           std::string message);
  void missing(const std::string& key, const std::string& accepted);

  Dialect dialect() const { return reading_.dialect(); }
  Reading& reading() { return reading_; }
  const std::string& path() const { return path_; }
  int line() const { return table_.line; }
  std::string path_of(std::string_view key) const;
  void note(const std::string& key);
  void note_measure(const char* key, units::Kind kind) { note(key_of(key, kind)); }
  const Node* find(const std::string& key);

 private:
  const std::string* word_text(const char* key, Need need,
                               const std::vector<std::string_view>& known);
  void refuse_word(const char* key, const std::string& written,
                   const std::vector<std::string_view>& known);
  void wrong_type(const std::string& key, const Node& node, const std::string& accepted);
  std::optional<double> measure_si(const char* key, units::Kind kind, Need need);
  std::optional<double> from_node(const std::string& field, const Node& node, units::Kind kind);
  std::vector<double> measures_si(const char* key, units::Kind kind);
  std::string key_of(const char* key, units::Kind kind) const;

  const Node& table_;
  std::string path_;
  std::string kind_;
  Reading& reading_;
  std::vector<std::string> asked_;
  bool forgiving_ = false;
};

/// `"drum", "header" or "shell"`
std::string listed(const std::vector<std::string_view>& words);

}  // namespace steamworthy::wire
