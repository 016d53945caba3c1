// JSON to Node.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "base/utf8.h"
#include "units/number_text.h"
#include "wire/node.h"

namespace steamworthy::wire {
namespace {

/// Builds the tree from nlohmann's events, which come without recursion.
class Builder : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit Builder(Tree& tree) : tree_(tree) {}

  bool null() override { return put({}); }
  bool boolean(bool value) override {
    Node node;
    node.type = Node::Type::Boolean;
    node.boolean = value;
    node.text = value ? "true" : "false";
    return put(std::move(node));
  }
  bool number_integer(number_integer_t value) override {
    Node node;
    node.type = Node::Type::Integer;
    node.integer = value;
    node.number = static_cast<double>(value);
    node.text = fmt::format("{}", value);
    return put(std::move(node));
  }
  bool number_unsigned(number_unsigned_t value) override {
    if (value <= static_cast<number_unsigned_t>(INT64_MAX)) {
      return number_integer(static_cast<number_integer_t>(value));
    }
    return number_float(static_cast<double>(value), fmt::format("{}", value));
  }
  bool number_float(number_float_t value, const string_t& written) override {
    Node node;
    node.type = Node::Type::Number;
    node.number = value;
    node.text = written;
    return put(std::move(node));
  }
  bool string(string_t& value) override {
    Node node;
    node.type = Node::Type::Text;
    node.text = std::move(value);
    return put(std::move(node));
  }
  bool binary(binary_t&) override { return fail("wire.syntax", "", "JSON", "binary data"); }
  bool start_object(std::size_t) override { return open(Node::Type::Table); }
  bool end_object() override { return close(); }
  bool start_array(std::size_t) override { return open(Node::Type::List); }
  bool end_array() override { return close(); }
  bool key(string_t& value) override {
    Frame& frame = open_.back();
    if (!frame.keys.insert(value).second) {
      return fail("wire.doubled_key", value, "each key once", "a key stands twice in one object");
    }
    frame.key = std::move(value);
    return true;
  }
  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::json::exception& error) override {
    position_ = position;
    std::string what = error.what();
    if (const std::size_t colon = what.find(": "); colon != std::string::npos) {
      what.erase(0, colon + 2);
    }
    return fail("wire.syntax", "", "JSON", units::quotable(what));
  }

  std::optional<std::size_t> position() const { return position_; }

 private:
  struct Frame {
    Node node;
    std::string key;
    std::set<std::string> keys;
  };

  bool fail(std::string code, std::string found, std::string accepted, std::string message) {
    tree_.problems.push_back({std::move(code), tree_.file, 0, "", units::quotable(found),
                              std::move(accepted), std::move(message)});
    return false;
  }

  bool open(Node::Type type) {
    if (open_.size() > static_cast<std::size_t>(greatest_depth)) {
      return fail("wire.too_deep", "", fmt::format("at most {} levels", greatest_depth),
                  "objects and lists are nested too deeply");
    }
    open_.emplace_back();
    open_.back().node.type = type;
    return true;
  }

  bool close() {
    Node node = std::move(open_.back().node);
    open_.pop_back();
    return put(std::move(node));
  }

  bool put(Node node) {
    if (open_.empty()) {
      tree_.root = std::move(node);
      return true;
    }
    Frame& frame = open_.back();
    if (frame.node.type == Node::Type::Table) {
      frame.node.members.push_back({frame.key, std::move(node)});
    } else {
      frame.node.items.push_back(std::move(node));
    }
    return true;
  }

  Tree& tree_;
  std::vector<Frame> open_;
  std::optional<std::size_t> position_;
};

}  // namespace

Tree read_json(std::string_view text, const std::string& file) {
  Tree tree;
  tree.dialect = Dialect::Json;
  tree.file = file;
  const auto refuse = [&](int line, std::string code, std::string found, std::string accepted,
                          std::string message) {
    tree.problems.push_back({std::move(code), file, line, "", std::move(found), std::move(accepted),
                             std::move(message)});
  };
  if (text.size() > greatest_text) {
    refuse(0, "wire.too_large", fmt::format("{} bytes", text.size()),
           fmt::format("at most {} bytes", greatest_text), "the text is too large");
    return tree;
  }
  if (const auto line = line_of_bad_utf8(text)) {
    refuse(*line, "wire.not_utf8", "", "UTF-8", "the text is not in UTF-8");
    return tree;
  }
  Builder builder(tree);
  nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  if (const auto position = builder.position(); position && !tree.problems.empty()) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(*position, text.size()));
    tree.problems.back().line = 1 + static_cast<int>(std::count(text.begin(), end, '\n'));
  }
  if (tree.problems.empty() && tree.root.type != Node::Type::Table) {
    refuse(1, "wire.syntax", std::string(noun(tree.root.type)), "an object",
           "the text is no description");
  }
  if (!tree.problems.empty()) tree.root = {};
  return tree;
}

}  // namespace steamworthy::wire
