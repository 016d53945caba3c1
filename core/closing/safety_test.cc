// Holds docs/safety.md to the table of rules and checks.
//
// To renew the page after a check was added: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/closing_test
#include "closing/safety.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace steamworthy::closing {
namespace {

TEST(Safety, RowsStandAtTheirNumber) {
  std::set<std::string_view> tokens;
  for (std::size_t i = 0; i < checks().size(); ++i) {
    const CheckRow& one = checks()[i];
    EXPECT_EQ(static_cast<std::size_t>(one.check), i) << one.token;
    EXPECT_EQ(&row(one.check), &one);
    EXPECT_EQ(find_check(one.token), &one);
    EXPECT_TRUE(tokens.insert(one.token).second);
    const std::string number = "s" + std::to_string(static_cast<int>(one.rule) + 1) + "_";
    EXPECT_EQ(one.token.substr(0, number.size()), number);
    EXPECT_TRUE(one.danger >= 1 && one.danger <= 3);
  }
  EXPECT_EQ(rules().size(), 11u);
  EXPECT_EQ(find_check("s12_anything"), nullptr);
}

// What the design says nobody may wave through.
TEST(Safety, SomeChecksAreNeverOverridden) {
  for (const char* token : {"s3_inside", "s3_count", "s3_count_old", "s3_device", "s3_missing",
                            "s4_space", "s5_fire_side", "s7_zero", "s7_vent", "s7_water"}) {
    ASSERT_NE(find_check(token), nullptr) << token;
    EXPECT_EQ(find_check(token)->override_by, nobody) << token;
  }
}

std::string who(Roles roles) {
  if (roles == nobody) return "never";
  std::string text;
  for (const auto& [role, word] : facts::Words<facts::RoleName>::table) {
    if ((roles & bit(role)) != 0) text += (text.empty() ? "" : ", ") + std::string(word);
  }
  return text;
}

std::string page_of_table() {
  std::string page;
  for (const RuleRow& rule : rules()) {
    page += "## " + std::string(rule.token) + " " + std::string(rule.title) + "\n\n" +
            std::string(rule.means) +
            "\n\n| check | it stands in the way when | who may let it pass "
            "| who removes it |\n| --- | --- | --- | --- |\n";
    for (const CheckRow& one : checks()) {
      if (one.rule != rule.rule) continue;
      page += "| `" + std::string(one.token) + "` | " + std::string(one.means) + " | " +
              who(one.override_by) + " | " + std::string(facts::token(one.remover)) + " |\n";
    }
    page += "\n";
  }
  return page;
}

TEST(Safety, ThePageSaysWhatTheTableSays) {
  const std::string path = std::string(STEAMWORTHY_SOURCE_DIR) + "/docs/safety.md";
  const auto read = [&] {
    std::ifstream file(path);
    return std::string(std::istreambuf_iterator<char>(file), {});
  };
  std::string page = read();
  const auto start = [&] { return std::min(page.find("## S1 "), page.size()); };
  if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr) {
    std::ofstream(path) << page.substr(0, start()) + page_of_table();
    page = read();
  }
  EXPECT_EQ(page.substr(start()), page_of_table())
      << "To renew it: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/closing_test";
}

}  // namespace
}  // namespace steamworthy::closing
