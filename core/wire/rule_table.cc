#include "wire/rule_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <numeric>
#include <sstream>

namespace steamworthy::wire {
namespace {

constexpr std::size_t longest_shown = 60;  // characters of a found value in a message

/// Single-letter insertions, deletions and replacements that turn one word into the other.
std::size_t edits_between(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row.back();
}

/// "windows[2].from" -> "windows[2]" -> "windows" -> "".
std::string parent_of(const std::string& field) {
  const auto end = field.find_last_of(".[");
  return end == std::string::npos ? std::string() : field.substr(0, end);
}

}  // namespace

std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
  if (word.size() > longest_shown) return {};
  std::string_view best;
  std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string_view candidate : known) {
    const std::size_t edits = edits_between(word, candidate);
    if (edits < least && edits < candidate.size()) {
      least = edits;
      best = candidate;
    }
  }
  if (!best.empty() || word.size() < 4) return best;
  for (const std::string_view candidate : known) {  // "gagged" for "must-be-gagged"
    if (candidate.find(word) == std::string_view::npos) continue;
    if (!best.empty()) return {};  // more than one: no guess
    best = candidate;
  }
  return best;
}

void RuleFaults::add(std::string code, const std::string& field, std::string found,
                     std::string accepted, std::string message) {
  add({std::move(code), "", 0, field, std::move(found), std::move(accepted), std::move(message)});
}

void RuleFaults::add(Problem problem) {
  problem.file = file_;
  if (problem.line == 0) problem.line = line_of(problem.field);
  problems.push_back(std::move(problem));
}

bool RuleFaults::has_fault_in(const std::string& field) const {
  return std::any_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    if (problem.field.compare(0, field.size(), field) != 0) return false;
    return problem.field.size() == field.size() || problem.field[field.size()] == '.' ||
           problem.field[field.size()] == '[';
  });
}

int RuleFaults::line_of(const std::string& field) const {
  for (std::string at = field; !at.empty(); at = parent_of(at)) {
    const auto it = lines_.find(at);
    if (it != lines_.end()) return it->second;
  }
  return 0;
}

std::string RuleTable::path_of(std::string_view key) const {
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

const toml::node* RuleTable::find(const char* key) {
  asked_.push_back(key);
  const toml::node* node = table_.get(key);
  if (node != nullptr) {
    faults_.stands_at(path_of(key), static_cast<int>(node->source().begin.line));
  }
  return node;
}

std::string RuleTable::shown(const toml::node& node) {
  if (node.is_table()) return "a table";
  if (node.is_array()) return "a list";
  if (const auto* written = node.as_string()) return written->get().substr(0, longest_shown);
  std::ostringstream out;
  out << std::boolalpha;
  node.visit([&](const auto& value) {
    if constexpr (toml::is_value<decltype(value)>) out << value.get();
  });
  return out.str();
}

std::string RuleTable::listed(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) {
    if (!text.empty()) text += ", ";
    text += word;
  }
  return text;
}

std::string RuleTable::text(const char* key) {
  const toml::node* node = find(key);
  if (node == nullptr) return {};
  if (const auto* written = node->as_string()) return written->get();
  fault("rules.wrong_type", key, shown(*node), "text in quotes", "this must be text");
  return {};
}

std::vector<std::pair<std::string, const toml::node*>> RuleTable::list(
    const char* key, std::string_view accepted, std::vector<std::string_view> (*all)()) {
  std::vector<std::pair<std::string, const toml::node*>> result;
  const toml::node* node = find(key);
  if (node == nullptr) return result;
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    std::string example(accepted);
    if (all != nullptr) example += std::string(all().front()) + "\"]";
    fault("rules.wrong_type", key, shown(*node), example, "this must be a list");
    return result;
  }
  for (const toml::node& element : *array) {
    std::string field = fmt::format("{}[{}]", path_of(key), result.size() + 1);
    faults_.stands_at(field, static_cast<int>(element.source().begin.line));
    result.emplace_back(std::move(field), &element);
  }
  return result;
}

std::vector<std::string> RuleTable::texts(const char* key) {
  std::vector<std::string> result;
  for (const auto& [field, node] : list(key, "a list of texts in quotes", nullptr)) {
    if (const auto* written = node->as_string()) {
      result.push_back(written->get());
    } else {
      faults_.add("rules.wrong_type", field, shown(*node), "text in quotes", "this must be text");
    }
  }
  return result;
}

std::optional<double> RuleTable::number(const char* key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* whole = node->as_integer()) return static_cast<double>(whole->get());
  if (const auto* real = node->as_floating_point()) {
    const double value = real->get();
    // Neither an infinity nor a NaN is a number that a rule can mean.
    if (value - value == 0.0) return value;
  }
  fault("rules.wrong_type", key, shown(*node), "a number such as 1.5",
        "this must be a plain number");
  return std::nullopt;
}

std::optional<int> RuleTable::whole(const char* key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* written = node->as_integer()) {
    constexpr std::int64_t most = 10000;
    if (written->get() >= -most && written->get() <= most) return static_cast<int>(written->get());
  }
  fault("rules.wrong_type", key, shown(*node), "a whole number such as 2",
        "this must be a whole number");
  return std::nullopt;
}

std::optional<bool> RuleTable::yes_or_no(const char* key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* written = node->as_boolean()) return written->get();
  fault("rules.wrong_type", key, shown(*node), "true or false", "this must be true or false");
  return std::nullopt;
}

std::optional<double> RuleTable::share(const char* key) {
  const auto stated = quantity<double>(key, &units::parse_percent);
  if (!stated) return std::nullopt;
  return stated->value;
}

std::optional<RuleTable> RuleTable::table(const char* key) {
  const toml::node* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (const auto* inner = node->as_table()) return RuleTable(*inner, path_of(key), faults_);
  fault("rules.wrong_type", key, shown(*node), fmt::format("a table: [{}]", path_of(key)),
        "this must be a table");
  return std::nullopt;
}

std::vector<RuleTable> RuleTable::tables(const char* key) {
  std::vector<RuleTable> result;
  const std::string accepted = fmt::format("tables: [[{}]]", path_of(key));
  for (const auto& [field, node] : list(key, accepted, nullptr)) {
    if (const auto* inner = node->as_table()) {
      result.emplace_back(*inner, field, faults_);
    } else {
      faults_.add("rules.wrong_type", field, shown(*node), accepted, "this must be a table");
    }
  }
  return result;
}

void RuleTable::require(const char* key, const std::string& accepted) {
  if (has(key)) return;
  fault("rules.missing", key, "", accepted, "the rule must say this");
}

void RuleTable::fault(std::string code, const char* key, std::string found, std::string accepted,
                      std::string message) {
  faults_.add(std::move(code), path_of(key), std::move(found), std::move(accepted),
              std::move(message));
}

void RuleTable::unknown_word(const std::string& field, const std::string& found,
                             const std::vector<std::string_view>& known) {
  const std::string_view near = nearest_word(found, known);
  faults_.add("rules.unknown_word", field, found.substr(0, longest_shown), listed(known),
              near.empty() ? "there is no such word here"
                           : fmt::format("there is no such word here; did you mean \"{}\"?", near));
}

void RuleTable::refuse_unknown_keys() {
  for (const auto& [key, node] : table_) {
    const std::string_view name = key.str();
    if (std::find(asked_.begin(), asked_.end(), name) != asked_.end()) continue;
    const std::string shown_name(name.substr(0, longest_shown));
    const std::string field = path_of(shown_name);
    faults_.stands_at(field, static_cast<int>(key.source().begin.line));
    const std::string_view near = nearest_word(name, asked_);
    faults_.add("rules.unknown_key", field, shown_name, listed(asked_),
                near.empty()
                    ? "there is no such field here"
                    : fmt::format("there is no such field here; did you mean \"{}\"?", near));
  }
}

}  // namespace steamworthy::wire
