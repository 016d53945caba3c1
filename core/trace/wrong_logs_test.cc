// Every wrong log and the exact sentences that it gets. The table is tests/wrong/traces.txt.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "trace/reader.h"

namespace steamworthy::trace {
namespace {

struct Case {
  std::string title;
  std::string log;
  Overrules overrules;
  std::string expected;
};

std::string unescaped(const std::string& line) {
  std::string out;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] != '\\') {
      out += line[i];
    } else if (line.compare(i, 2, "\\t") == 0) {
      out += '\t';
      ++i;
    } else {
      out += static_cast<char>(std::stoi(line.substr(i + 2, 2), nullptr, 16));
      i += 3;
    }
  }
  return out;
}

/// "4=pressure" or "unit 2=psi".
void add_overrule(const std::string& text, Overrules& overrules) {
  const std::size_t equals = text.find('=');
  const std::string value = text.substr(equals + 1);
  if (text.rfind("unit ", 0) == 0) {
    overrules.units.emplace_back(std::stoi(text.substr(5)), value);
  } else {
    overrules.columns.emplace_back(std::stoi(text), meaning_of(value).value());
  }
}

std::vector<Case> cases() {
  std::ifstream file(STEAMWORTHY_SOURCE_DIR "/tests/wrong/traces.txt");
  EXPECT_TRUE(file);
  std::vector<Case> result;
  for (std::string line; std::getline(file, line);) {
    const std::string rest = line.size() > 2 ? line.substr(2) : "";
    if (line.rfind("## ", 0) == 0) {
      result.push_back({line.substr(3), "", {}, ""});
    } else if (result.empty() || line.empty() || line[0] == '#') {
      continue;
    } else if (line[0] == '|') {
      result.back().log += unescaped(rest) + "\n";
    } else if (line[0] == '!') {
      add_overrule(rest, result.back().overrules);
    } else if (line[0] == '=') {
      result.back().expected += rest + "\n";
    } else {
      ADD_FAILURE() << "traces.txt has a line of no kind: " << line;
    }
  }
  return result;
}

TEST(WrongLogs, EachGetsExactlyItsSentences) {
  const std::vector<Case> all = cases();
  EXPECT_GE(all.size(), 40U);
  for (const Case& one : all) {
    SCOPED_TRACE(one.title);
    const Reading reading = read_trace(one.log, "log.csv", one.overrules);
    std::string told;
    for (const auto& list : {reading.problems, reading.bad_lines}) {
      for (const Problem& problem : list) {
        told += sentence(problem) + "\n";
        EXPECT_FALSE(problem.code.empty());
      }
    }
    EXPECT_FALSE(one.expected.empty());
    EXPECT_EQ(told, one.expected);
    EXPECT_EQ(reading.is_usable(), reading.problems.empty());
  }
}

}  // namespace
}  // namespace steamworthy::trace
