// The rules that ship, read from the source folder, for the tests of this room.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "wire/rule.h"

namespace steamworthy::wire::shipped {

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path.string());
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

struct File {
  std::string name;  ///< "rules/us-marine-ordinary.toml"
  std::string text;
};

inline std::vector<File> files() {
  std::vector<File> result;
  const std::filesystem::path root(STEAMWORTHY_SOURCE_DIR);
  for (const auto& entry : std::filesystem::directory_iterator(root / "rules")) {
    if (entry.path().extension() != ".toml") continue;
    result.push_back({"rules/" + entry.path().filename().string(), text_of(entry.path())});
  }
  std::sort(result.begin(), result.end(),
            [](const File& a, const File& b) { return a.name < b.name; });
  return result;
}

inline std::vector<rules::Rule> rules() {
  const std::vector<File> all = files();
  std::vector<RuleFile> views;
  for (const File& file : all) views.push_back({file.name, file.text});
  return read_rules(views);
}

inline rules::Rule rule(const std::string& id) {
  for (const rules::Rule& one : rules()) {
    if (one.id == id) return one;
  }
  throw std::runtime_error("no rule of the id " + id + " ships");
}

}  // namespace steamworthy::wire::shipped
