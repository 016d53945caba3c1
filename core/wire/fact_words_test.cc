// Holds the English of log entries to the table of kinds: it names every needed field, and no
// other.
#include <gtest/gtest.h>

#include <algorithm>

#include "facts/sample_test.h"
#include "words/catalogue.h"
#include "words/words.h"

namespace steamworthy::wire {
namespace {

TEST(FactWords, EveryWordOfABodyHasItsEnglish) {
  for (const auto& [family, tokens] : facts::families()) {
    for (const std::string_view token : tokens) {
      const std::string key = std::string(family) + "." + std::string(token);
      EXPECT_TRUE(words::find(words::Language::English, key)) << key;
    }
  }
}

/// Fields that a sentence need not say: hashes, programs, signatures' papers.
bool is_for_machines(const std::string& field) {
  static const std::vector<std::string> known = {"sha256", "program", "public_key"};
  return std::any_of(known.begin(), known.end(), [&](const std::string& part) {
    return field.find(part) != std::string::npos;
  });
}

TEST(FactWords, SentencesSayWhatTheFactsHold) {
  for (const facts::Row& row : facts::table()) {
    const auto text = words::find(words::Language::English, row.kind.token);
    ASSERT_TRUE(text) << row.kind.token;
    facts::Fact fact;
    fact.person = "R. Lind";
    fact.body = facts::sample(row, facts::steady());
    const working::Message message = facts::tell(fact);
    const words::Placeholders named = words::placeholders(*text);
    const std::string said = words::sentence(message);
    EXPECT_EQ(said.find('<'), std::string::npos) << said;
    for (const auto& [name, value] : message.values) {
      if (is_for_machines(name) || name == "person") continue;
      const bool is_said =
          std::find(named.needed.begin(), named.needed.end(), name) != named.needed.end() ||
          std::find(named.optional.begin(), named.optional.end(), name) != named.optional.end() ||
          text->find(name.substr(0, name.find_last_of('_')) + "_*}") != std::string_view::npos;
      EXPECT_TRUE(is_said) << row.kind.token << " does not say " << name;
    }
  }
}

TEST(FactWords, ReadAsSentences) {
  facts::Fact fact;
  fact.person = "R. Lind";
  fact.body = facts::ClosureOpened{{"FH-3"}};
  EXPECT_EQ(words::sentence(facts::tell(fact)), "R. Lind opened closure FH-3.");
  fact.body = facts::TallyIn{{"SP-SD", "K. Aas"}};
  EXPECT_EQ(words::sentence(facts::tell(fact)), "K. Aas is in SP-SD.");
}

}  // namespace
}  // namespace steamworthy::wire
