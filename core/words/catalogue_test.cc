// Holds the catalogue to the sources of core, and the English to its golden file.
//
// To renew the golden file after words were changed on purpose:
//   STEAMWORTHY_RENEW_GOLDEN=1 build/dev/words_test
#include "words/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include "words/words.h"

namespace steamworthy::words {
namespace {

namespace fs = std::filesystem;
const fs::path root = STEAMWORTHY_SOURCE_DIR;

std::string read(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string without_comments(const std::string& code) {
  static const std::regex comment("//[^\n]*");
  return std::regex_replace(code, comment, "");
}

/// Sources of core that may speak: no tests, and none of the rooms that only pass words on.
std::map<std::string, std::string> speaking_sources() {
  static const std::set<std::string> silent = {"base", "units", "words", "wire", "testing"};
  std::map<std::string, std::string> sources;
  for (const auto& file : fs::recursive_directory_iterator(root / "core")) {
    const fs::path& path = file.path();
    const std::string room = path.parent_path().filename();
    const std::string stem = path.stem();
    if ((path.extension() != ".cc" && path.extension() != ".h") || silent.count(room) != 0 ||
        (stem.size() > 5 && stem.substr(stem.size() - 5) == "_test")) {
      continue;
    }
    sources[fs::relative(path, root).string()] = without_comments(read(path));
  }
  return sources;
}

std::set<std::string> error_codes() {
  std::set<std::string> codes;
  const std::string page = read(root / "docs/reference/errors.md");
  static const std::regex row("\\| `([a-z_.0-9]+)` \\|");
  for (std::sregex_iterator it(page.begin(), page.end(), row), end; it != end; ++it) {
    codes.insert((*it)[1]);
  }
  return codes;
}

bool is_known(const std::string& key) { return find(Language::English, key).has_value(); }

/// First parts of keys: those of the catalogue.
std::set<std::string> families() {
  std::set<std::string> found;
  for (const Entry& entry : catalogue(Language::English)) {
    found.insert(std::string(entry.key.substr(0, entry.key.find('.'))));
  }
  return found;
}

TEST(Catalogue, HoldsEachKeyOnceAndNoEmptyText) {
  std::string_view last;
  for (const Entry& entry : catalogue(Language::English)) {
    EXPECT_NE(entry.key, last);
    EXPECT_FALSE(entry.text.empty()) << entry.key;
    EXPECT_TRUE(std::regex_match(std::string(entry.key), std::regex("[a-z_]+(\\.[a-z0-9_]+)+")))
        << entry.key;
    last = entry.key;
  }
}

TEST(Catalogue, HasNoTextWithBracesThatDoNotClose) {
  for (const Entry& entry : catalogue(Language::English)) {
    int braces = 0;
    int brackets = 0;
    for (const char c : entry.text) {
      braces += c == '{' ? 1 : c == '}' ? -1 : 0;
      brackets += c == '[' ? 1 : c == ']' ? -1 : 0;
      EXPECT_TRUE(braces == 0 || braces == 1) << entry.key;
      EXPECT_TRUE(brackets >= 0 && brackets <= 2) << entry.key;
    }
    EXPECT_EQ(braces, 0) << entry.key;
    EXPECT_EQ(brackets, 0) << entry.key;
  }
}

TEST(Catalogue, NeverSaysTight) {
  static const std::regex word("\\btight\\b", std::regex::icase);
  for (const Entry& entry : catalogue(Language::English)) {
    EXPECT_FALSE(std::regex_search(std::string(entry.text), word)) << entry.key;
  }
}

// Every string of the form "family.something" in core is a key with words or an error code of
// docs/reference/errors.md.
TEST(Catalogue, HasWordsForEveryKeyInTheSources) {
  const auto codes = error_codes();
  const auto known = families();
  static const std::regex literal("\"([a-z][a-z_]*)((?:\\.[a-z][a-z0-9_]*)+)\"");
  int keys = 0;
  for (const auto& [path, code] : speaking_sources()) {
    for (std::sregex_iterator it(code.begin(), code.end(), literal), end; it != end; ++it) {
      const std::string key = (*it)[1].str() + (*it)[2].str();
      if (known.count((*it)[1]) == 0 || (codes.count(key) != 0 && !is_known(key))) continue;
      EXPECT_TRUE(is_known(key)) << path << ": \"" << key << "\" has no words";
      ++keys;
    }
  }
  EXPECT_GT(keys, 60);
}

// The same by place, whatever errors.md says: the key of a message, a term, a figure, an input.
TEST(Catalogue, HasWordsForEveryMessageFigureAndInput) {
  const std::string key = "\"([a-z_]+\\.[a-z0-9_]+)\"";
  const std::regex places[] = {
      std::regex("(?:Message|Term)\\s*\\{\\s*" + key), std::regex("(?:known|unknown)\\(\\s*" + key),
      std::regex("\\{\\s*\"[^\"]*\",\\s*" + key + ",\\s*(?:units::)?[mM]easure"),
      std::regex("\\{\\s*" + key + ",\\s*\\{")};
  int keys = 0;
  for (const auto& [path, code] : speaking_sources()) {
    for (const std::regex& place : places) {
      for (std::sregex_iterator it(code.begin(), code.end(), place), end; it != end; ++it) {
        EXPECT_TRUE(is_known((*it)[1])) << path << ": \"" << (*it)[1] << "\" has no words";
        ++keys;
      }
    }
  }
  EXPECT_GT(keys, 60);
}

/// Names of the values in the braces that follow a key: {{"found", ...}, {"limit", ...}}.
/// Nothing if what follows is no list of pairs written out.
std::optional<std::set<std::string>> values_after(const std::string& code, std::size_t at) {
  while (at < code.size() &&
         (std::isspace(static_cast<unsigned char>(code[at])) != 0 || code[at] == ','))
    ++at;
  if (at >= code.size() || code[at] != '{') return std::nullopt;
  std::set<std::string> names;
  int depth = 0;
  for (; at < code.size(); ++at) {
    if (code[at] == '{') ++depth;
    if (code[at] == '}' && --depth == 0) return names;
    if (code[at] != '"') continue;
    const std::size_t end = code.find('"', at + 1);
    std::size_t before = at;
    while (std::isspace(static_cast<unsigned char>(code[before - 1])) != 0) --before;
    if (depth == 2 && code[before - 1] == '{') names.insert(code.substr(at + 1, end - at - 1));
    at = end;
  }
  return std::nullopt;
}

// A message whose values are written out where it is made gives every value that its text needs,
// and no value that its text leaves out.
TEST(Catalogue, NeedsOnlyTheValuesThatTheSourcesGive) {
  static const std::regex message("\\{\\s*\"([a-z_]+\\.[a-z0-9_]+)\"\\s*,\\s*(?=\\{)");
  int compared = 0;
  for (const auto& [path, code] : speaking_sources()) {
    for (std::sregex_iterator it(code.begin(), code.end(), message), end; it != end; ++it) {
      const std::string key = (*it)[1];
      const auto text = find(Language::English, key);
      const auto given =
          values_after(code, static_cast<std::size_t>(it->position() + it->length()));
      if (!text || !given) continue;
      const Placeholders named = placeholders(*text);
      std::set<std::string> used(named.needed.begin(), named.needed.end());
      used.insert(named.optional.begin(), named.optional.end());
      const bool has_list = text->find("_*}") != std::string_view::npos;
      for (const std::string& name : named.needed) {
        if (name.back() == '*' || given->empty()) continue;  // filled in later, piece by piece
        EXPECT_EQ(given->count(name), 1u) << path << ": \"" << key << "\" lacks \"" << name << "\"";
      }
      for (const std::string& name : *given) {
        EXPECT_TRUE(used.count(name) == 1 || has_list)
            << path << ": \"" << key << "\" does not say \"" << name << "\"";
      }
      ++compared;
    }
  }
  EXPECT_GT(compared, 20);
}

// Rules make keys from their tokens: ("work", "tubes-renewed") -> "work.tubes_renewed".
TEST(Catalogue, HasWordsForEveryTokenOfTheRules) {
  const std::map<std::string, std::vector<std::string>> families_of = {
      {"BoilerKind", {"boiler_kind"}}, {"Work", {"work"}},
      {"Subject", {"subject"}},        {"Trait", {"trait", "trait_not", "input"}},
      {"Reference", {"input"}},        {"Purpose", {"purpose"}}};
  const std::string code = read(root / "core/rules/tokens.cc");
  static const std::regex pair("\\{([A-Z][A-Za-z]+)::[A-Za-z0-9]+,\\s*\"([a-z0-9 _-]+)\"\\}");
  int tokens = 0;
  for (std::sregex_iterator it(code.begin(), code.end(), pair), end; it != end; ++it) {
    const auto families = families_of.find((*it)[1]);
    if (families == families_of.end()) continue;
    std::string token = (*it)[2];
    std::replace_if(
        token.begin(), token.end(), [](char c) { return c == ' ' || c == '-'; }, '_');
    for (const std::string& family : families->second) {
      EXPECT_TRUE(is_known(family + "." + token)) << family << "." << token;
      ++tokens;
    }
  }
  EXPECT_GT(tokens, 40);
}

/// The English of every key, each placeholder shown as its name.
std::string english_rendered() {
  std::string out;
  for (const Entry& entry : catalogue(Language::English)) {
    working::Message message{std::string(entry.key), {}};
    const Placeholders named = placeholders(entry.text);
    for (const auto& names : {named.needed, named.optional}) {
      for (std::string name : names) {
        if (name.back() == '*') name.back() = '1';
        message.values.emplace_back(name, "(" + name + ")");
      }
    }
    out += message.key + " = " + phrase(message) + "\n";
  }
  return out;
}

TEST(Golden, TheEnglishIsThatOfTheGoldenFile) {
  const fs::path golden = root / "tests/golden/english.txt";
  const std::string rendered = english_rendered();
  if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr) {
    std::ofstream(golden) << rendered;
  }
  EXPECT_EQ(read(golden), rendered)
      << "If the words were meant to change: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/words_test";
}

}  // namespace
}  // namespace steamworthy::words
