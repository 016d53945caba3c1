// For tests of any room: the example boilers and the shipped rules, read from the source folder.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "base/error.h"
#include "wire/description.h"
#include "wire/rule.h"

namespace steamworthy::testing {

/// The bytes of a file below the source folder. Throws NotFound "testing.no_file".
inline std::string source_file(const std::string& path) {
  std::ifstream file(std::string(STEAMWORTHY_SOURCE_DIR) + "/" + path, std::ios::binary);
  if (!file) throw NotFound("testing.no_file", path);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// "watertube", "firetube" or "minimal". Throws BadInput with its faults if it has any.
inline boiler::Boiler example_boiler(const std::string& name) {
  const std::string file = "examples/" + name + ".toml";
  auto description = wire::read_boiler_toml(source_file(file), file);
  if (!description.boiler) throw BadInput(description.problems);
  return *description.boiler;
}

/// All rules of rules/*.toml, by file name.
inline const std::vector<rules::Rule>& rule_files() {
  static const std::vector<rules::Rule> rules = [] {
    std::vector<std::string> names;
    const std::string folder = std::string(STEAMWORTHY_SOURCE_DIR) + "/rules";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      if (entry.path().extension() == ".toml") names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    std::vector<rules::Rule> all;
    for (const std::string& name : names) {
      const std::string text = source_file("rules/" + name);
      all.push_back(wire::read_rule({name, text}));
    }
    return all;
  }();
  return rules;
}

}  // namespace steamworthy::testing
