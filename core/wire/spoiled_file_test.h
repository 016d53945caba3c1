// For tests: files that are spoiled on purpose, and the exact sentences that each gets.
#pragma once

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "wire/source_file_test.h"

namespace steamworthy::wire {

inline std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

struct Edit {
  std::string old;
  int which = 1;
  std::vector<std::string> fresh;
};

struct Case {
  std::string title;
  std::vector<Edit> edits;
  std::vector<std::string> expected;
};

/// The cases of a file of tests/wrong; its form is told at the top of each.
inline std::vector<Case> wrong_cases(const std::string& name) {
  std::vector<Case> result;
  for (const std::string& line : split(source_file("tests/wrong/" + name))) {
    const std::string rest = line.size() > 2 ? line.substr(2) : "";
    if (line.rfind("## ", 0) == 0) {
      result.push_back({line.substr(3), {}, {}});
    } else if (result.empty() || line.empty() || line[0] == '#') {
      continue;
    } else if (line[0] == '-') {
      Edit edit{rest, 1, {}};
      const std::size_t bar = rest.rfind('|');
      if (bar != std::string::npos && bar + 2 == rest.size()) {
        edit.which = rest.back() - '0';
        edit.old.erase(bar);
      }
      result.back().edits.push_back(edit);
    } else if (line[0] == '+') {
      result.back().edits.back().fresh.push_back(rest);
    } else if (line[0] == '=') {
      result.back().expected.push_back(rest);
    } else {
      ADD_FAILURE() << name << " has a line of no kind: " << line;
    }
  }
  return result;
}

inline std::string with_byte(std::string text) {
  for (std::size_t at; (at = text.find("\\xff")) != std::string::npos;) {
    text.replace(at, 4, 1, '\xff');
  }
  return text;
}

inline std::string spoiled(const std::vector<std::string>& base, const Case& one) {
  std::vector<std::string> lines = base;
  for (const Edit& edit : one.edits) {
    int seen = 0;
    std::size_t at = 0;
    while (at < lines.size() && !(lines[at] == edit.old && ++seen == edit.which)) ++at;
    if (at == lines.size()) {
      ADD_FAILURE() << one.title << ": the base has no such line: " << edit.old;
      return {};
    }
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
    lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(at), edit.fresh.begin(),
                 edit.fresh.end());
  }
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return with_byte(text);
}

inline std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

}  // namespace steamworthy::wire
