// TOML to Node. The only file of the description's reader that knows toml++.
#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>

#include "base/utf8.h"
#include "units/number_text.h"
#include "wire/node.h"

namespace steamworthy::wire {
namespace {

/// More names in one dotted key than any description needs. toml++ nests a table
/// for each of them and takes them down again by recursion.
constexpr int greatest_dotted = 16;
constexpr int greatest_syntax_faults = 20;

bool may_be_in_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
         c == '-' || c == '"' || c == '\'';
}

/// The line on which more names than that follow each other with full stops
/// between; 0 if there is none. Texts and comments are not told apart.
int line_of_long_key(std::string_view text) {
  int line = 1;
  int dots = 0;
  bool name = false;
  for (char c : text) {
    if (c == '\n') ++line;
    if (may_be_in_key(c)) {
      name = true;
    } else if (c == '.' && name) {
      name = false;
      if (++dots > greatest_dotted) return line;
    } else if (c != ' ' && c != '\t') {
      name = false;
      dots = 0;
    }
  }
  return 0;
}

Problem syntax(const std::string& file, int line, std::string code, std::string found,
               std::string accepted, std::string message) {
  return {std::move(code),   file, line, "", std::move(found), std::move(accepted),
          std::move(message)};
}

class Converter {
 public:
  explicit Converter(Tree& tree) : tree_(tree) {}

  Node convert(const toml::node& from, int depth) {
    Node node;
    node.line = static_cast<int>(from.source().begin.line);
    if (depth > greatest_depth) {
      refuse_depth(node.line);
      return node;
    }
    from.visit([&](const auto& value) { fill(node, value, depth); });
    return node;
  }

 private:
  void refuse_depth(int line) {
    if (too_deep_) return;
    too_deep_ = true;
    tree_.problems.push_back(syntax(tree_.file, line, "wire.too_deep", "",
                                    fmt::format("at most {} levels", greatest_depth),
                                    "tables and lists are nested too deeply"));
  }

  void fill(Node& node, const toml::table& table, int depth) {
    node.type = Node::Type::Table;
    std::vector<std::pair<toml::source_position, std::size_t>> order;
    for (auto&& [key, value] : table) {
      order.emplace_back(key.source().begin, node.members.size());
      node.members.push_back({std::string(key.str()), convert(value, depth + 1)});
      Node& member = node.members.back().node;
      if (key.source().begin.line > 0) member.line = static_cast<int>(key.source().begin.line);
    }
    // toml++ keeps keys by name; put them back in the order of the text.
    std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
      return a.first.line != b.first.line ? a.first.line < b.first.line
                                          : a.first.column < b.first.column;
    });
    std::vector<Member> sorted;
    sorted.reserve(order.size());
    for (const auto& at : order) sorted.push_back(std::move(node.members[at.second]));
    node.members = std::move(sorted);
  }

  void fill(Node& node, const toml::array& array, int depth) {
    node.type = Node::Type::List;
    for (const toml::node& item : array) node.items.push_back(convert(item, depth + 1));
  }

  void fill(Node& node, const toml::value<std::string>& value, int) {
    node.type = Node::Type::Text;
    node.text = value.get();
  }
  void fill(Node& node, const toml::value<int64_t>& value, int) {
    node.type = Node::Type::Integer;
    node.integer = value.get();
    node.number = static_cast<double>(value.get());
    node.text = fmt::format("{}", value.get());
  }
  void fill(Node& node, const toml::value<double>& value, int) {
    node.type = Node::Type::Number;
    node.number = value.get();
    node.text = fmt::format("{}", value.get());
  }
  void fill(Node& node, const toml::value<bool>& value, int) {
    node.type = Node::Type::Boolean;
    node.boolean = value.get();
    node.text = value.get() ? "true" : "false";
  }
  void fill(Node& node, const toml::value<toml::date>& value, int) {
    node.type = Node::Type::Date;
    const toml::date& date = value.get();
    node.text = fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
  }
  static std::string text_of(const toml::time& time) {
    const std::string whole = fmt::format("{:02}:{:02}:{:02}", time.hour, time.minute, time.second);
    return time.nanosecond == 0 ? whole : fmt::format("{}.{:09}", whole, time.nanosecond);
  }
  void fill(Node& node, const toml::value<toml::time>& value, int) {
    node.type = Node::Type::Date;
    node.text = text_of(value.get());
  }
  void fill(Node& node, const toml::value<toml::date_time>& value, int) {
    node.type = Node::Type::Date;
    const toml::date_time& moment = value.get();
    node.text = fmt::format("{:04}-{:02}-{:02} {}", moment.date.year, moment.date.month,
                            moment.date.day, text_of(moment.time));
    if (moment.offset) {
      const int minutes = moment.offset->minutes;
      const int size = minutes < 0 ? -minutes : minutes;
      node.text += fmt::format("{}{:02}:{:02}", minutes < 0 ? '-' : '+', size / 60, size % 60);
    }
  }
  template <class Other>
  void fill(Node& node, const Other&, int) {
    node.type = Node::Type::Date;
    node.text = "a time";
  }

  Tree& tree_;
  bool too_deep_ = false;
};

std::string_view line_at(std::string_view text, int line) {
  std::size_t begin = 0;
  for (int i = 1; i < line; ++i) {
    const std::size_t end = text.find('\n', begin);
    if (end == std::string_view::npos) return {};
    begin = end + 1;
  }
  return text.substr(begin, text.find('\n', begin) - begin);
}

/// Blanks a line, its end kept, so that the rest keeps its line numbers.
void blank(std::string& text, int line) {
  const std::string_view whole = line_at(text, line);
  if (whole.empty()) return;
  const auto begin = static_cast<std::size_t>(whole.data() - text.data());
  std::fill_n(text.begin() + static_cast<std::ptrdiff_t>(begin), whole.size(), ' ');
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

/// What a person needs of what toml++ says: for the usual slips our own words,
/// else the second half of "Error while parsing key-value pair: ...".
std::string plain_description(std::string_view description) {
  constexpr std::pair<std::string_view, std::string_view> usual[] = {
      {"unescaped control characters", "a text is not closed on its line"},
      {"expected '=', saw", "there is no = after the key"},
      {"expected 'true', saw", "what follows = is no text in quotes, number, list or table"},
      {"expected 'false', saw", "what follows = is no text in quotes, number, list or table"},
      {"could not determine value type",
       "what follows = is no text in quotes, number, list or table"},
      {"cannot redefine existing table", "this name stands for a table already"},
      {"cannot redefine existing", "the key stands twice in this table"},
  };
  for (const auto& [theirs, ours] : usual) {
    if (description.find(theirs) != std::string_view::npos) return std::string(ours);
  }
  const std::size_t colon = description.find(": ");
  if (description.substr(0, 5) == "Error" && colon != std::string_view::npos) {
    description.remove_prefix(colon + 2);
  }
  return std::string(description);
}

}  // namespace

Tree read_toml(std::string_view text, const std::string& file) {
  Tree tree;
  tree.dialect = Dialect::Toml;
  tree.file = file;
  if (text.size() > greatest_text) {
    tree.problems.push_back(syntax(file, 0, "wire.too_large", fmt::format("{} bytes", text.size()),
                                   fmt::format("at most {} bytes", greatest_text),
                                   "the text is too large"));
    return tree;
  }
  if (const auto line = line_of_bad_utf8(text)) {
    tree.problems.push_back(syntax(file, *line, "wire.not_utf8",
                                   units::quotable(trimmed(line_at(text, *line))), "UTF-8",
                                   "the text is not in UTF-8"));
    return tree;
  }
  if (const int line = line_of_long_key(text); line > 0) {
    tree.problems.push_back(syntax(file, line, "wire.too_deep", "",
                                   fmt::format("at most {} names", greatest_dotted),
                                   "a key of too many names with full stops between"));
    return tree;
  }

  std::string remaining(text);
  int last_line = 0;
  while (true) {
    try {
      const toml::table table = toml::parse(remaining);
      if (tree.problems.empty()) tree.root = Converter(tree).convert(table, 0);
      if (!tree.problems.empty()) tree.root = {};
      return tree;
    } catch (const toml::parse_error& error) {
      const int line = static_cast<int>(error.source().begin.line);
      const std::string_view written = trimmed(line_at(remaining, line));
      tree.problems.push_back(syntax(file, line, "wire.syntax", units::quotable(written), "TOML",
                                     plain_description(error.description())));
      // Without a table's head its keys would fall to the table before it.
      const bool head = !written.empty() && written.front() == '[';
      const auto found = static_cast<int>(tree.problems.size());
      if (line <= last_line || head || found >= greatest_syntax_faults) return tree;
      last_line = line;
      blank(remaining, line);
    }
  }
}

}  // namespace steamworthy::wire
