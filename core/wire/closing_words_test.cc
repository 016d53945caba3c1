// Holds the English of what is outstanding to the table of checks.
#include <gtest/gtest.h>

#include "closing/safety.h"
#include "closing/stage.h"
#include "words/catalogue.h"
#include "words/words.h"

namespace steamworthy::wire {
namespace {

TEST(ClosingWords, EveryCheckHasItsReasonAndItsRemedy) {
  for (const closing::CheckRow& one : closing::checks()) {
    for (const char* family : {"outstanding.", "remedy."}) {
      const std::string key = family + std::string(one.token);
      const auto text = words::find(words::Language::English, key);
      ASSERT_TRUE(text) << key;
      for (const std::string& name : words::placeholders(*text).needed) {
        EXPECT_EQ(name, "subject") << key;
      }
    }
  }
}

TEST(ClosingWords, EveryStageHasItsWord) {
  for (int i = 0; i <= static_cast<int>(closing::Stage::TakenOver); ++i) {
    const std::string key = "stage." + std::string(closing::token(static_cast<closing::Stage>(i)));
    EXPECT_TRUE(words::find(words::Language::English, key)) << key;
  }
}

TEST(ClosingWords, ReadAsSentences) {
  EXPECT_EQ(words::sentence({"outstanding.s3_inside", {{"subject", "K. Aas"}}}),
            "K. Aas is inside, by the tally or the count.");
}

}  // namespace
}  // namespace steamworthy::wire
