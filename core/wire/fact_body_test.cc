// Checks wire/fact_body.h: round trips of every kind, golden files, faults.
#include "wire/fact_body.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <set>

#include "facts/sample_test.h"
#include "testing/examples_test.h"
#include "units/makers.h"
#include "wire/node.h"

namespace steamworthy::wire {
namespace {

namespace fs = std::filesystem;

facts::Beside sample_beside() { return {"a note", {"00ff"}}; }

/// closure.opened-1.json
std::string golden_name(const facts::Kind& kind) {
  return "tests/golden/facts/" + std::string(kind.token) + "-" + std::to_string(kind.version) +
         ".json";
}

// Golden files are kept for ever: renewing writes those that are missing and changes none.
TEST(FactGolden, EveryKindIsWrittenAndReadAsItsFile) {
  for (const facts::Row& row : facts::table()) {
    const fs::path path = fs::path(STEAMWORTHY_SOURCE_DIR) / golden_name(row.kind);
    const facts::Body body = facts::sample(row, facts::steady());
    const std::string written = body_json(body, sample_beside()) + "\n";
    if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr && !fs::exists(path)) {
      std::ofstream(path) << written;
    }
    ASSERT_TRUE(fs::exists(path)) << "STEAMWORTHY_RENEW_GOLDEN=1 build/dev/wire_test makes it";
    const std::string kept = testing::source_file(golden_name(row.kind));
    EXPECT_EQ(written, kept) << row.kind.token;
    const ReadBody read =
        read_body(row.kind.token, row.kind.version, kept, UnknownKeys::Refuse, "golden");
    EXPECT_TRUE(read.problems.empty()) << row.kind.token << ": " << sentence(read.problems[0]);
    EXPECT_EQ(read.body, body) << row.kind.token;
    EXPECT_EQ(read.beside, sample_beside());
  }
}

// Files of versions that are no longer written must be read for ever.
TEST(FactGolden, EveryFileThatWasEverMadeIsRead) {
  int files = 0;
  for (const auto& entry :
       fs::directory_iterator(fs::path(STEAMWORTHY_SOURCE_DIR) / "tests/golden/facts")) {
    const std::string stem = entry.path().stem().string();
    const std::size_t dash = stem.find_last_of('-');
    const std::string text =
        testing::source_file("tests/golden/facts/" + entry.path().filename().string());
    const ReadBody read = read_body(stem.substr(0, dash), std::stoi(stem.substr(dash + 1)), text,
                                    UnknownKeys::Refuse, stem);
    EXPECT_TRUE(read.problems.empty()) << stem;
    EXPECT_FALSE(std::holds_alternative<facts::Unread>(read.body)) << stem;
    ++files;
  }
  EXPECT_GE(files, static_cast<int>(facts::table().size()));
}

RC_GTEST_PROP(FactBody, ComesBackFromJsonAsItWas, ()) {
  const auto& table = facts::table();
  const auto& row = table[*rc::gen::inRange<std::size_t>(0, table.size())];
  const facts::Body body = facts::sample(row, [](unsigned n) { return *rc::gen::inRange(0u, n); });
  facts::Beside beside{*rc::gen::element<std::string>("", "a note"), {}};
  if (*rc::gen::arbitrary<bool>()) beside.photos = {"ab", "cd"};
  const std::string json = body_json(body, beside);
  RC_ASSERT(json.find('\n') == std::string::npos);
  const ReadBody read = read_body(row.kind.token, row.kind.version, json, UnknownKeys::Refuse);
  RC_ASSERT(read.problems.empty());
  RC_ASSERT(read.body == body);
  RC_ASSERT(read.beside == beside);
  RC_ASSERT(body_json(read.body, read.beside) == json);
}

std::set<std::string> codes(const ReadBody& read) {
  std::set<std::string> found;
  for (const Problem& problem : read.problems) found.insert(problem.field + " " + problem.code);
  return found;
}

TEST(FactBody, TellsAllFaultsAtOnce) {
  const ReadBody read = read_body(
      "air.read", 1, R"({"space": 3, "oxygen_top_percent": "20.9", "oxygen_midle_percent": 20.9})",
      UnknownKeys::Refuse);
  const std::set<std::string> expected = {
      "space wire.wrong_type", "oxygen_top_percent wire.wrong_type",
      "oxygen_midle_percent wire.unknown_key", "oxygen_bottom_percent wire.missing"};
  EXPECT_EQ(codes(read), expected);
  const auto& unread = std::get<facts::Unread>(read.body);
  EXPECT_EQ(unread.why, "facts.bad_body");
  EXPECT_EQ(unread.token, "air.read");
}

TEST(FactBody, NamesTheWordThatMayBeMeant) {
  const ReadBody read = read_body("closure.touched", 1, R"({"closure": "FH-1", "how": "tightend"})",
                                  UnknownKeys::Refuse);
  ASSERT_EQ(read.problems.size(), 1u);
  EXPECT_EQ(read.problems[0].code, "wire.unknown_word");
  EXPECT_NE(read.problems[0].message.find("tightened"), std::string::npos);
}

TEST(FactBody, RefusesCountsBelowZeroAndMomentsThatAreNone) {
  EXPECT_EQ(
      codes(read_body("entry.withdrawn", 1, R"({"device": "A", "device_seq": -1, "reason": "x"})",
                      UnknownKeys::Refuse)),
      std::set<std::string>{"device_seq wire.below_zero"});
  EXPECT_EQ(
      codes(read_body("trace.added", 1,
                      R"({"gauge": "A", "trace_sha256": "00", "from_ms": 1.5, "to_ms": 1e300})",
                      UnknownKeys::Refuse)),
      (std::set<std::string>{"from_ms wire.wrong_type", "to_ms wire.wrong_type"}));
}

TEST(FactBody, KeepsWhatItCannotReadVerbatim) {
  const std::string text = R"({ "b":1.50,"a" : [ ] })";
  const ReadBody read = read_body("closure.exploded", 7, text, UnknownKeys::Allow);
  EXPECT_EQ(codes(read), std::set<std::string>{"kind facts.unknown_kind"});
  EXPECT_EQ(body_json(read.body), text);
  const ReadBody broken = read_body("closure.opened", 1, "{\"closure\"", UnknownKeys::Allow);
  EXPECT_FALSE(broken.problems.empty());
  EXPECT_EQ(body_json(broken.body), "{\"closure\"");
}

TEST(FactBody, ReadsWhatItKnowsOfABodyThatHasGrown) {
  const std::string text = R"({"closure": "FH-1", "torque_nm": 80})";
  const ReadBody read = read_body("closure.opened", 2, text, UnknownKeys::Refuse);
  EXPECT_TRUE(read.problems.empty());
  EXPECT_EQ(read.body, facts::Body(facts::ClosureOpened{{"FH-1"}}));
  // In the version that is known, a key that is not is a slip of who enters it.
  EXPECT_EQ(codes(read_body("closure.opened", 1, text, UnknownKeys::Refuse)),
            std::set<std::string>{"torque_nm wire.unknown_key"});
  EXPECT_TRUE(read_body("closure.opened", 1, text, UnknownKeys::Allow).problems.empty());
  EXPECT_EQ(codes(read_body("closure.opened", 0, text, UnknownKeys::Allow)),
            std::set<std::string>{"kind facts.bad_version"});
}

TEST(FactBody, KeepsTheTextAsEntered) {
  const ReadBody read = read_body(
      "reading.taken", 1,
      R"({"gauge": "TG-1", "pressure_bar_gauge": 44.8, "pressure_as_entered": "650 psi"})",
      UnknownKeys::Refuse);
  const auto& reading = std::get<facts::ReadingTaken>(read.body);
  EXPECT_EQ(reading.pressure.as_entered, "650 psi");
  EXPECT_NEAR(reading.pressure.value.si(), 44.8e5, 1e-6);
}

}  // namespace
}  // namespace steamworthy::wire
