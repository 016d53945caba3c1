#include "service/trace_service.h"

#include "wire/test_file.h"

namespace steamworthy::service {
namespace {

struct Pair {
  int column = 0;
  std::string value;
};

Pair pair_of(const char* option, const std::string& given, const std::string& accepted) {
  const std::size_t equals = given.find('=');
  int column = 0;
  bool good = equals != std::string::npos && equals > 0 && equals <= 4 && equals + 1 < given.size();
  for (std::size_t i = 0; good && i < equals; ++i) {
    good = given[i] >= '0' && given[i] <= '9';
    column = column * 10 + (given[i] - '0');
  }
  if (!good || column == 0) {
    throw BadInput({{"service.not_an_overrule", "", 0, option, given, accepted,
                     "is no column's number with = and a word behind it"}});
  }
  return {column, given.substr(equals + 1)};
}

}  // namespace

trace::Overrules read_overrules(const std::vector<std::string>& columns,
                                const std::vector<std::string>& units) {
  trace::Overrules overrules;
  for (const std::string& given : columns) {
    std::string words;
    for (const std::string_view token : trace::meaning_tokens()) {
      words += (words.empty() ? "" : ", ") + std::string(token);
    }
    const Pair pair = pair_of("--column", given, "such as 3=water; words: " + words);
    const auto meaning = trace::meaning_of(pair.value);
    if (!meaning) {
      throw BadInput({{"service.not_an_overrule", "", 0, "--column", given, words,
                       "is not a word known here"}});
    }
    overrules.columns.emplace_back(pair.column, *meaning);
  }
  for (const std::string& given : units) {
    const Pair pair = pair_of("--unit", given, "such as 2=psi");
    overrules.units.emplace_back(pair.column, pair.value);
  }
  return overrules;
}

Test read_test(std::string_view bytes, const std::string& file) {
  wire::TestFile read = wire::read_test_file(bytes, file);
  if (!read.facts) throw BadInput(std::move(read.problems));
  Test test{std::move(*read.facts), {}};
  for (const std::string& key : read.unread) {
    test.notes.push_back(working::Message{"trace.test_key_unread", {{"name", key}}});
  }
  return test;
}

trace::Overrules joined(trace::Overrules said, const trace::TestFacts& facts) {
  if (!said.pressures_absolute) {
    said.pressures_absolute = trace::overrules_of(facts).pressures_absolute;
  }
  return said;
}

}  // namespace steamworthy::service
