// One table of a rule file while it is read: typed fields, faults, unknown keys.
//
// Only the rule reader includes this header.
#pragma once

#include <toml++/toml.h>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "rules/stated.h"
#include "units/parse.h"

namespace steamworthy::wire {

/// What is wrong with one file, and where each field of it stands.
class RuleFaults {
 public:
  explicit RuleFaults(std::string file) : file_(std::move(file)) {}

  void add(std::string code, const std::string& field, std::string found, std::string accepted,
           std::string message);
  /// Gives file and line to a fault that was found in the rule itself.
  void add(Problem problem);
  void stands_at(const std::string& field, int line) { lines_.emplace(field, line); }
  /// A fault inside a field, or of the field itself, was found already.
  bool has_fault_in(const std::string& field) const;

  std::vector<Problem> problems;

 private:
  int line_of(const std::string& field) const;

  std::string file_;
  std::map<std::string, int> lines_;
};

class RuleTable {
 public:
  RuleTable(const toml::table& table, std::string path, RuleFaults& faults)
      : table_(table), path_(std::move(path)), faults_(faults) {}

  std::string text(const char* key);
  std::vector<std::string> texts(const char* key);
  std::optional<double> number(const char* key);
  std::optional<int> whole(const char* key);
  std::optional<bool> yes_or_no(const char* key);
  std::optional<double> share(const char* key);  ///< "10 %" as 0.1

  /// A word of a list; a fault where it is another.
  template <class Enum>
  std::optional<Enum> word(const char* key, std::optional<Enum> (*of)(std::string_view),
                           std::vector<std::string_view> (*all)()) {
    const toml::node* node = find(key);
    if (node == nullptr) return std::nullopt;
    return to_word(*node, path_of(key), of, all);
  }
  template <class Enum>
  std::vector<Enum> words(const char* key, std::optional<Enum> (*of)(std::string_view),
                          std::vector<std::string_view> (*all)()) {
    std::vector<Enum> result;
    for (const auto& [field, node] : list(key, "a list of words such as [\"", all)) {
      if (const auto value = to_word(*node, field, of, all)) result.push_back(*value);
    }
    return result;
  }

  /// A quantity with its unit, and its text as written.
  template <class Quantity>
  std::optional<rules::Stated<Quantity>> quantity(
      const char* key, units::Parsed<Quantity> (*parse)(std::string_view, const units::Assume&)) {
    const toml::node* node = find(key);
    if (node == nullptr) return std::nullopt;
    const auto* written = node->as_string();
    const std::string_view as_text = written != nullptr ? std::string_view(written->get()) : "";
    const units::Parsed<Quantity> parsed = parse(as_text, units::Assume{});
    if (written == nullptr) {
      faults_.add("rules.wrong_type", path_of(key), shown(*node), parsed.problem.accepted,
                  "a quantity is text with its unit");
      return std::nullopt;
    }
    if (!parsed) {
      Problem problem = parsed.problem;
      problem.field = path_of(key);
      faults_.add(std::move(problem));
      return std::nullopt;
    }
    return rules::Stated<Quantity>{*parsed.value, std::string(as_text)};
  }

  std::optional<RuleTable> table(const char* key);
  std::vector<RuleTable> tables(const char* key);
  bool has(const char* key) const { return table_.contains(key); }

  /// A key that must be there is not.
  void require(const char* key, const std::string& accepted);
  void fault(std::string code, const char* key, std::string found, std::string accepted,
             std::string message);
  /// Every key that nobody asked for is a fault, with the nearest known one.
  void refuse_unknown_keys();
  std::string path_of(std::string_view key) const;
  const std::string& path() const { return path_; }

 private:
  const toml::node* find(const char* key);
  std::vector<std::pair<std::string, const toml::node*>> list(
      const char* key, std::string_view accepted, std::vector<std::string_view> (*all)());
  static std::string shown(const toml::node& node);

  template <class Enum>
  std::optional<Enum> to_word(const toml::node& node, const std::string& field,
                              std::optional<Enum> (*of)(std::string_view),
                              std::vector<std::string_view> (*all)()) {
    const auto* written = node.as_string();
    if (written == nullptr) {
      faults_.add("rules.wrong_type", field, shown(node), listed(all()), "this must be a word");
      return std::nullopt;
    }
    const auto value = of(written->get());
    if (!value) unknown_word(field, written->get(), all());
    return value;
  }
  void unknown_word(const std::string& field, const std::string& found,
                    const std::vector<std::string_view>& known);
  static std::string listed(const std::vector<std::string_view>& words);

  const toml::table& table_;
  std::string path_;
  RuleFaults& faults_;
  std::vector<std::string_view> asked_;
};

/// The word of a list that is nearest to one that is not in it; empty if none is near.
std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace steamworthy::wire
