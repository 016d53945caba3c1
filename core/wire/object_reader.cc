#include "wire/object_reader.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/nearest.h"
#include "units/number_text.h"

namespace steamworthy::wire {

void Reading::add(std::string code, int line, std::string field, std::string found,
                  std::string accepted, std::string message) {
  problems_.push_back({std::move(code), file_, line, std::move(field), std::move(found),
                       std::move(accepted), std::move(message)});
}

void Reading::add_located(Problem problem) {
  problem.file = file_;
  // A fault of a field that is not written stands at the table that lacks it.
  for (std::string field = problem.field; !field.empty();) {
    const auto found = where_.find(field);
    if (found != where_.end()) {
      problem.line = found->second.line;
      if (field == problem.field && !found->second.text.empty()) {
        problem.found = units::quotable(found->second.text);
      }
      break;
    }
    const std::size_t dot = field.find_last_of('.');
    field.erase(dot == std::string::npos ? 0 : dot);
  }
  problems_.push_back(std::move(problem));
}

void Reading::stands_at(const std::string& field, int line, const std::string& text) {
  where_[field] = {line, text};
}

void Reading::forget_missing(const std::string& field) {
  problems_.erase(std::remove_if(problems_.begin(), problems_.end(),
                                 [&](const Problem& problem) {
                                   return problem.code == "wire.missing" && problem.field == field;
                                 }),
                  problems_.end());
}

std::vector<Problem> Reading::sorted() const {
  std::vector<Problem> result = problems_;
  std::stable_sort(result.begin(), result.end(), [](const Problem& a, const Problem& b) {
    return std::tie(a.line, a.field) < std::tie(b.line, b.field);
  });
  result.erase(std::unique(result.begin(), result.end()), result.end());
  return result;
}

ObjectReader::ObjectReader(const Node& table, std::string path, std::string kind, Reading& reading)
    : table_(table), path_(std::move(path)), kind_(std::move(kind)), reading_(reading) {
  if (!path_.empty()) reading_.stands_at(path_, table.line, "");
}

std::string ObjectReader::path_of(std::string_view key) const {
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

void ObjectReader::note(const std::string& key) {
  asked_.push_back(key);
  reading_.keys.push_back(kind_.empty() ? key : kind_ + "." + key);
}

const Node* ObjectReader::find(const std::string& key) {
  note(key);
  const Node* node = table_.find(key);
  if (node != nullptr) {
    // A list of tables stands where its first table does; its members have lines of their own.
    const bool has_text = node->type != Node::Type::Table && node->type != Node::Type::List;
    reading_.stands_at(path_of(key), node->line, has_text ? node->text : "");
  }
  return node;
}

void ObjectReader::add(std::string code, const char* key, std::string found, std::string accepted,
                       std::string message) {
  const Node* node = table_.find(key);
  reading_.add(std::move(code), node != nullptr && node->line > 0 ? node->line : table_.line,
               path_of(key), std::move(found), std::move(accepted), std::move(message));
}

void ObjectReader::missing(const std::string& key, const std::string& accepted) {
  reading_.add("wire.missing", table_.line, path_of(key), "", accepted, "is missing");
}

void ObjectReader::wrong_type(const std::string& key, const Node& node,
                              const std::string& accepted) {
  reading_.add("wire.wrong_type", node.line > 0 ? node.line : table_.line, path_of(key),
               units::quotable(node.text), accepted, fmt::format("is {}", noun(node.type)));
}

void ObjectReader::text(const char* key, std::string& into, Need need) {
  const Node* node = find(key);
  if (node == nullptr) {
    if (need == Need::Required) missing(key, "a text");
    return;
  }
  // Dates are written bare in TOML; a text that looks like one is meant as well.
  if (node->type != Node::Type::Text && node->type != Node::Type::Date) {
    wrong_type(key, *node, "a text");
    return;
  }
  if (need == Need::Required && node->text.find_first_not_of(" \t") == std::string::npos) {
    add("wire.missing", key, "", "a text", "is empty");
    return;
  }
  into = node->text;
}

void ObjectReader::texts(const char* key, std::vector<std::string>& into) {
  const Node* node = find(key);
  if (node == nullptr) return;
  if (node->type != Node::Type::List) {
    wrong_type(key, *node, "a list of texts");
    return;
  }
  for (const Node& item : node->items) {
    if (item.type != Node::Type::Text) {
      wrong_type(key, item, "a list of texts");
    } else {
      into.push_back(item.text);
    }
  }
}

void ObjectReader::flag(const char* key, bool& into, Need need) {
  const Node* node = find(key);
  if (node == nullptr) {
    if (need == Need::Required) missing(key, "true or false");
  } else if (node->type != Node::Type::Boolean) {
    wrong_type(key, *node, "true or false");
  } else {
    into = node->boolean;
  }
}

void ObjectReader::whole(const char* key, int& into, Need need) {
  const Node* node = find(key);
  constexpr int greatest = 1'000'000;
  if (node == nullptr) {
    if (need == Need::Required) {
      missing(key, "a whole number");
      into = boiler::unread;
    }
    return;
  }
  const long long written = node->integer;
  into = boiler::unread;
  if (node->type == Node::Type::Number) {
    add("wire.wrong_type", key, node->text, "a whole number", "is not a whole number");
  } else if (node->type != Node::Type::Integer) {
    wrong_type(key, *node, "a whole number");
  } else if (written < -greatest || written > greatest) {
    add("wire.too_great", key, node->text, fmt::format("a whole number up to {}", greatest),
        "is too great");
  } else {
    into = static_cast<int>(written);
  }
}

void ObjectReader::whole(const char* key, std::optional<int>& into) {
  if (!has(key)) {
    note(key);
    return;
  }
  int value = 0;
  whole(key, value);
  into = value;
}

std::string ObjectReader::key_of(const char* key, units::Kind kind) const {
  if (dialect() == Dialect::Toml) return key;
  return std::string(key) + std::string(units::info(kind).suffix);
}

bool ObjectReader::has_measure(const char* key, units::Kind kind) const {
  return table_.find(key_of(key, kind)) != nullptr;
}

std::optional<double> ObjectReader::from_node(const std::string& field, const Node& node,
                                              units::Kind kind) {
  const auto refuse = [&](std::string code, std::string found, std::string accepted,
                          std::string message) {
    reading_.add(std::move(code), node.line > 0 ? node.line : table_.line, field, std::move(found),
                 std::move(accepted), std::move(message));
  };
  const bool is_number = node.type == Node::Type::Integer || node.type == Node::Type::Number;
  const bool plain = kind == units::Kind::Fraction || kind == units::Kind::Count;
  if (is_number && !std::isfinite(node.number)) {
    refuse("wire.not_finite", node.text, units::accepted(kind), "is not a finite number");
    return std::nullopt;
  }
  if (dialect() == Dialect::Json) {
    if (!is_number) {
      refuse("wire.wrong_type", units::quotable(node.text), "a number",
             fmt::format("is {}", noun(node.type)));
      return std::nullopt;
    }
    return units::from_border(kind, node.number).si;
  }
  if (is_number && plain) return node.number;
  if (is_number) {
    refuse("units.no_unit", node.text, units::accepted(kind), "has no unit");
    return std::nullopt;
  }
  if (node.type != Node::Type::Text) {
    refuse("wire.wrong_type", units::quotable(node.text), units::accepted(kind),
           fmt::format("is {}", noun(node.type)));
    return std::nullopt;
  }
  const units::Assume assume =
      kind == units::Kind::AbsolutePressure ? units::barometer_reading : units::Assume{};
  const units::Parsed<units::Measure> parsed = units::parse_measure(kind, node.text, assume);
  if (parsed) return parsed.value->si;
  refuse(parsed.problem.code, parsed.problem.found, parsed.problem.accepted,
         parsed.problem.message);
  return std::nullopt;
}

std::optional<double> ObjectReader::measure_si(const char* key, units::Kind kind, Need need) {
  const std::string full = key_of(key, kind);
  const Node* node = find(full);
  if (node == nullptr) {
    if (need == Need::Required) {
      missing(full, dialect() == Dialect::Json ? "a number" : units::accepted(kind));
    }
    return std::nullopt;
  }
  // Checks of what was read name the field without its suffix.
  if (full != key) reading_.stands_at(path_of(key), node->line, node->text);
  return from_node(path_of(full), *node, kind);
}

std::vector<double> ObjectReader::measures_si(const char* key, units::Kind kind) {
  std::vector<double> result;
  const std::string full = key_of(key, kind);
  const Node* node = find(full);
  if (node == nullptr) return result;
  if (node->type != Node::Type::List) {
    wrong_type(full, *node, fmt::format("a list, each {}", units::accepted(kind)));
    return result;
  }
  for (const Node& item : node->items) {
    result.push_back(
        from_node(path_of(full), item, kind).value_or(std::numeric_limits<double>::quiet_NaN()));
  }
  return result;
}

void ObjectReader::number(const char* key, double& into, units::Kind kind, Need need) {
  if (const auto si = measure_si(key, kind, need)) {
    into = *si;
  } else if (need == Need::Required || has_measure(key, kind)) {
    into = std::numeric_limits<double>::quiet_NaN();
  }
}

void ObjectReader::number(const char* key, std::optional<double>& into, units::Kind kind) {
  if (!has_measure(key, kind)) {
    note(key_of(key, kind));
    return;
  }
  into.emplace();
  number(key, *into, kind, Need::Optional);
}

std::optional<ObjectReader> ObjectReader::table(const char* key, Need need) {
  const Node* node = find(key);
  if (node == nullptr) {
    if (need == Need::Required) missing(key, "a table");
    return std::nullopt;
  }
  if (node->type != Node::Type::Table) {
    wrong_type(key, *node, "a table");
    return std::nullopt;
  }
  return ObjectReader(*node, path_of(key), kind_.empty() ? key : kind_ + "." + key, reading_);
}

std::vector<ObjectReader> ObjectReader::tables(const char* key, const char* tag_key) {
  std::vector<ObjectReader> result;
  const Node* node = find(key);
  if (node == nullptr) return result;
  const std::string accepted =
      dialect() == Dialect::Json ? "a list of objects" : fmt::format("tables headed [[{}]]", key);
  if (node->type != Node::Type::List) {
    wrong_type(key, *node, accepted);
    return result;
  }
  int number = 0;
  for (const Node& item : node->items) {
    ++number;
    if (item.type != Node::Type::Table) {
      wrong_type(key, item, accepted);
      continue;
    }
    const Node* tag = item.find(tag_key);
    const bool named = tag != nullptr && tag->type == Node::Type::Text && !tag->text.empty();
    const std::string name = named ? units::quotable(tag->text) : fmt::format("#{}", number);
    result.emplace_back(item, fmt::format("{}[{}]", path_of(key), name),
                        kind_.empty() ? key : kind_ + "." + key, reading_);
  }
  return result;
}

void ObjectReader::pairs(const char* key, std::vector<std::pair<std::string, std::string>>& into) {
  const Node* node = find(key);
  if (node == nullptr) return;
  if (node->type != Node::Type::Table) {
    wrong_type(key, *node, "a table of texts");
    return;
  }
  for (const auto& [name, value] : node->members) {
    if (value.type == Node::Type::Text) {
      into.emplace_back(name, value.text);
    } else {
      wrong_type(std::string(key) + "." + name, value, "a text");
    }
  }
}

const std::string* ObjectReader::word_text(const char* key, Need need,
                                           const std::vector<std::string_view>& known) {
  const Node* node = find(key);
  if (node == nullptr) {
    if (need == Need::Required) missing(key, listed(known));
    return nullptr;
  }
  if (node->type != Node::Type::Text) {
    wrong_type(key, *node, listed(known));
    return nullptr;
  }
  return &node->text;
}

void ObjectReader::refuse_word(const char* key, const std::string& written,
                               const std::vector<std::string_view>& known) {
  const std::string_view near = nearest(written, known);
  add("wire.unknown_word", key, units::quotable(written), listed(known),
      near.empty() ? "is not a word known here"
                   : fmt::format("is not a word known here; \"{}\" may be meant", near));
}

void ObjectReader::refuse_unknown() {
  if (forgiving_) return;
  for (const auto& [name, node] : table_.members) {
    if (std::find(asked_.begin(), asked_.end(), name) != asked_.end()) continue;
    const std::vector<std::string_view> known(asked_.begin(), asked_.end());
    const std::string_view near = nearest(name, known);
    // That the key meant is missing is then no news.
    reading_.forget_missing(path_of(near));
    reading_.add("wire.unknown_key", node.line > 0 ? node.line : table_.line,
                 path_of(units::quotable(name)), units::quotable(name),
                 near.empty() ? listed(known) : fmt::format("\"{}\"", near),
                 near.empty() ? "is not a key known here"
                              : fmt::format("is not a key known here; \"{}\" may be meant", near));
  }
}

std::string listed(const std::vector<std::string_view>& words) {
  std::string result;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) result += i + 1 == words.size() ? " or " : ", ";
    result += fmt::format("\"{}\"", words[i]);
  }
  return result;
}

}  // namespace steamworthy::wire
