#include "words/words.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

using working::Value;
using Values = std::vector<std::pair<std::string, Value>>;

/// Words may hold words; deeper than this they go in a circle.
constexpr int deepest = 4;

std::string fill(std::string_view text, const Values& values, const Style& style, int depth);

std::string words_of(std::string_view key, const Values& values, const Style& style, int depth) {
  if (depth > deepest) return "<" + std::string(key) + ">";
  if (const auto own = style.overrides.find(key); own != style.overrides.end()) {
    return fill(own->second, values, style, depth);
  }
  if (const auto text = find(style.language, key)) return fill(*text, values, style, depth);
  return "<" + std::string(key) + ">";
}

/// The words of a key within a message are filled with that message's values.
std::string value_text(const Value& value, const Values& values, const Style& style, int depth) {
  if (const auto* plain = std::get_if<std::string>(&value)) return *plain;
  if (const auto* term = std::get_if<working::Term>(&value)) {
    return words_of(term->key, values, style, depth + 1);
  }
  return units::print(std::get<units::Measure>(value), style.print);
}

const Value* value_named(const Values& values, std::string_view name) {
  for (const auto& [key, value] : values) {
    if (key == name) return &value;
  }
  return nullptr;
}

/// All values whose names begin with `stem`, joined by commas; nothing if there is none.
std::optional<std::string> list_of(const Values& values, std::string_view stem, const Style& style,
                                   int depth) {
  std::optional<std::string> joined;
  for (const auto& [key, value] : values) {
    if (key.compare(0, stem.size(), stem) != 0) continue;
    joined = joined ? *joined + ", " : std::string();
    *joined += value_text(value, values, style, depth);
  }
  return joined;
}

/// What stands between the braces of a placeholder; nothing if its value was not given.
std::optional<std::string> placed(std::string_view inside, const Values& values, const Style& style,
                                  int depth) {
  if (!inside.empty() && inside.back() == '*') {
    return list_of(values, inside.substr(0, inside.size() - 1), style, depth);
  }
  const std::size_t bar = inside.find('|');
  const Value* value = value_named(values, inside.substr(0, bar));
  if (value == nullptr) return std::nullopt;
  if (bar == std::string_view::npos) return value_text(*value, values, style, depth);
  const std::string_view forms = inside.substr(bar + 1);
  const std::size_t second = forms.find('|');
  const auto* number = std::get_if<units::Measure>(value);
  const bool one = number != nullptr && number->si == 1.0;
  return std::string(one || second == std::string_view::npos ? forms.substr(0, second)
                                                             : forms.substr(second + 1));
}

/// Fills placeholders. `lacks` is set where a value was not given; its name stands in its place.
std::string fill_plain(std::string_view text, const Values& values, const Style& style, int depth,
                       bool& lacks) {
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t open = text.find('{', at);
    const std::size_t close = text.find('}', open == std::string_view::npos ? at : open);
    if (open == std::string_view::npos || close == std::string_view::npos) break;
    out += text.substr(at, open - at);
    const std::string_view inside = text.substr(open + 1, close - open - 1);
    if (const auto value = placed(inside, values, style, depth)) {
      out += *value;
    } else {
      lacks = true;
      out += "<" + std::string(inside.substr(0, inside.find('|'))) + ">";
    }
    at = close + 1;
  }
  out += text.substr(at);
  return out;
}

std::string fill(std::string_view text, const Values& values, const Style& style, int depth) {
  std::string out;
  std::size_t at = 0;
  bool lacks = false;
  while (at < text.size()) {
    const std::size_t open = text.find('[', at);
    const std::size_t close = text.find(']', open == std::string_view::npos ? at : open);
    if (open == std::string_view::npos || close == std::string_view::npos) break;
    out += fill_plain(text.substr(at, open - at), values, style, depth, lacks);
    bool left_out = false;
    const std::string part =
        fill_plain(text.substr(open + 1, close - open - 1), values, style, depth, left_out);
    if (!left_out) out += part;
    at = close + 1;
  }
  return out + fill_plain(text.substr(at), values, style, depth, lacks);
}

std::string capitalised(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

bool begins_with_a_value(const working::Message& message, const Style& style) {
  const auto own = style.overrides.find(message.key);
  const auto text = own != style.overrides.end() ? std::optional<std::string_view>(own->second)
                                                 : find(style.language, message.key);
  if (!text || text->empty() || text->front() != '{') return false;
  const Value* value = value_named(message.values, text->substr(1, text->find_first_of("|}") - 1));
  // A tag or a unit keeps its small letter; the words of a key do not.
  return value != nullptr && !std::holds_alternative<working::Term>(*value);
}

std::size_t width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0) != 0x80;
  }));
}

std::string padded(std::string text, std::size_t to) {
  const std::size_t has = width(text);
  if (has < to) text.append(to - has, ' ');
  return text;
}

std::string_view origin_key(working::Origin origin) {
  switch (origin) {
    case working::Origin::Described:
      return "origin.described";
    case working::Origin::Stated:
      return "origin.stated";
    case working::Origin::Rule:
      return "origin.rule";
    case working::Origin::Published:
      return "origin.published";
    case working::Origin::Remembered:
      return "origin.remembered";
    case working::Origin::Computed:
      return "origin.computed";
    case working::Origin::Assumed:
      break;
  }
  return "origin.assumed";
}

std::string inputs_table(const std::vector<working::Input>& inputs, const Style& style) {
  std::size_t symbols = 0;
  std::size_t values = 0;
  for (const auto& input : inputs) {
    symbols = std::max(symbols, width(input.symbol));
    values = std::max(values, width(text(input.value, style)));
  }
  std::string out;
  for (const auto& input : inputs) {
    out += "    " + padded(input.symbol, symbols) + "  " +
           padded(text(input.value, style), values) + "  " + label(input.name, style) + " (" +
           label(origin_key(input.origin), style);
    if (!input.source.empty()) out += ", [" + input.source + "]";
    out += ")\n";
  }
  return out;
}

}  // namespace

std::string label(std::string_view key, const Style& style) { return words_of(key, {}, style, 0); }

std::string text(const units::Measure& measure, const Style& style) {
  return units::print(measure, style.print);
}

std::string phrase(const working::Message& message, const Style& style) {
  return words_of(message.key, message.values, style, 0);
}

std::string sentence(const working::Message& message, const Style& style) {
  if (message.empty()) return "";
  std::string text = phrase(message, style);
  if (!begins_with_a_value(message, style)) text = capitalised(std::move(text));
  if (!text.empty() && std::string_view(".!?:").find(text.back()) == std::string_view::npos) {
    text += '.';
  }
  return text;
}

std::string render_figure(const working::Figure& figure, const Style& style) {
  std::string line = capitalised(label(figure.key, style));
  if (!figure.subject.empty()) line += " (" + figure.subject + ")";
  if (figure.is_known()) return line + ": " + text(*figure.value, style);
  line += ": " + label("figure.cannot_tell", style);
  if (!figure.cannot_tell.empty()) line += ". " + sentence(figure.cannot_tell, style);
  return line;
}

std::string render_working(const working::Figure& figure, const Style& style) {
  const working::Working& working = figure.working;
  std::string out = render_figure(figure, style) + "\n";
  if (!working.formula.empty()) out += "    " + working.formula + "\n";
  out += inputs_table(working.inputs, style);
  if (!working.sources.empty()) {
    out += "    " + label("figure.sources", style) + ":";
    for (const std::string& source : working.sources) out += " [" + source + "]";
    out += "\n";
  }
  if (!working.method.empty()) {
    out += "    " + label("figure.method", style) + ": docs/methods/" + working.method + ".md\n";
  }
  for (const working::Message& remark : working.remarks) {
    out += "    - " + sentence(remark, style) + "\n";
  }
  return out;
}

}  // namespace steamworthy::words
