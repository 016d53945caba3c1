// Holds the table of kinds to its rules, and docs/formats/facts.md to the table.
//
// To renew the page after a kind was added:
//   STEAMWORTHY_RENEW_GOLDEN=1 build/dev/facts_test
#include "facts/table.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "facts/sample_test.h"

namespace steamworthy::facts {
namespace {

TEST(Table, HoldsEachTokenOnceAndInItsForm) {
  static const std::regex form("[a-z][a-z_]*\\.[a-z][a-z_]*");
  std::set<std::string_view> tokens;
  for (const Row& row : table()) {
    EXPECT_TRUE(tokens.insert(row.kind.token).second) << row.kind.token;
    EXPECT_TRUE(std::regex_match(std::string(row.kind.token), form)) << row.kind.token;
    EXPECT_GE(row.kind.version, 1);
    EXPECT_FALSE(row.kind.means.empty()) << row.kind.token;
    EXPECT_EQ(find_kind(row.kind.token), &row);
  }
  EXPECT_EQ(tokens.size() + 1, std::variant_size_v<AnyKind>);
  EXPECT_EQ(find_kind("closure.exploded"), nullptr);
}

TEST(Table, NamesNoFieldTwiceAndNoneThatEveryBodyHas) {
  for (const Row& row : table()) {
    std::set<std::string> names = {"note", "photos"};
    for (const Field& field : row.fields) {
      EXPECT_TRUE(names.insert(field.name).second) << row.kind.token << " " << field.name;
    }
  }
}

// What makes a step harder must not vanish by a tap on "undo".
TEST(Table, LetsNobodyWithdrawThatSomebodyOrSomethingIsInside) {
  for (const char* token : {"tally.in", "tool.in", "closure.opened", "leak.found", "finding.made",
                            "temporary.on", "isolation.changed", "closure.touched", "device.lost",
                            "contact.lost", "raising.started", "reading.taken", "tally.out"}) {
    ASSERT_NE(find_kind(token), nullptr) << token;
    EXPECT_EQ(find_kind(token)->kind.undo, Undo::Never) << token;
  }
}

TEST(Words, AreUniqueWithinTheirFamily) {
  std::set<std::string> words;
  for (const auto& [name, tokens] : families()) {
    for (const std::string_view word : tokens) {
      EXPECT_TRUE(words.insert(std::string(name) + "." + std::string(word)).second) << word;
    }
  }
}

TEST(Tell, GivesEveryFieldOfEveryKind) {
  for (const Row& row : table()) {
    Fact fact;
    fact.person = "somebody";
    fact.body = sample(row, steady());
    const working::Message message = tell(fact);
    EXPECT_EQ(message.key, row.kind.token);
    EXPECT_EQ(message.values.back().first, "person");
    EXPECT_GE(message.values.size(), row.fields.empty() ? 1u : 2u) << row.kind.token;
  }
}

TEST(Tell, ShowsWhatItCannotRead) {
  Fact fact;
  fact.person = "somebody";
  fact.body = Unread{"closure.exploded", 3, "{}", "facts.unknown_kind"};
  const working::Message expected{"facts.cannot_read",
                                  {{"kind", "closure.exploded"}, {"person", "somebody"}}};
  EXPECT_EQ(tell(fact), expected);
}

/// The part of the page that follows from the table.
std::string page_of_table() {
  std::string page;
  for (const Row& row : table()) {
    page +=
        "### `" + std::string(row.kind.token) + "` " + std::to_string(row.kind.version) + "\n\n";
    std::string means(row.kind.means);
    means[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(means[0])));
    page += means + ".";
    if (row.kind.feed == Feed::Plant) page += " In the plant's own feed.";
    if (row.kind.undo == Undo::Allowed) page += " May be withdrawn.";
    page += "\n\n";
    if (row.fields.empty()) continue;
    page += "| field | type | | meaning |\n| --- | --- | --- | --- |\n";
    for (const Field& field : row.fields) {
      page += "| `" + field.name + "` | " + field.type + " | " +
              (field.needed ? "" : "may be missing") + " | " + field.means + " |\n";
    }
    page += "\n";
  }
  page += "## Words\n\n| type | words |\n| --- | --- |\n";
  for (const auto& [name, tokens] : families()) {
    page += "| word of " + std::string(name) + " |";
    for (const std::string_view word : tokens) page += " `" + std::string(word) + "`";
    page += " |\n";
  }
  return page;
}

TEST(Page, ListsEveryKindAndFieldAsTheTableDoes) {
  const std::string path = std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/formats/facts.md";
  const auto read = [&] {
    std::ifstream file(path);
    return std::string(std::istreambuf_iterator<char>(file), {});
  };
  const std::string mark = "## The kinds\n\n";
  std::string page = read();
  const std::size_t at = page.find(mark);
  ASSERT_NE(at, std::string::npos);
  if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr) {
    std::ofstream(path) << page.substr(0, at) + mark + page_of_table();
    page = read();
  }
  EXPECT_EQ(page.substr(at + mark.size()), page_of_table())
      << "To renew it: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/facts_test";
}

}  // namespace
}  // namespace steamworthy::facts
