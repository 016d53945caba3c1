// Checks wire/tablet.h: its answers against the ones kept in tests/tablet/answers.json, which the
// page's tests hold the WebAssembly to; the bytes of facts against tests/record_vectors/facts.json,
// which are checked by a second reader of the record.
//
// To renew the answers: STEAMWORTHY_RENEW_GOLDEN=1 build/dev/wire_test
#include "wire/tablet.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "closing/fold.h"
#include "closing/outstanding.h"
#include "record/envelope.h"
#include "testing/demo_closing_test.h"
#include "wire/closing_json.h"
#include "wire/fact_line.h"
#include "wire/source_file_test.h"

namespace steamworthy::wire {
namespace {

using nlohmann::ordered_json;

TEST(Tablet, AnswersAsKept) {
  const auto questions = ordered_json::parse(source_file("tests/tablet/questions.json"));
  std::string told;
  for (const auto& one : questions) {
    told += one["name"].get<std::string>() + "\n" +
            answer(one["question"].get<std::string>(), one["request"].dump()) + "\n";
  }
  const std::string path = std::string(STEAMWORTHY_SOURCE_DIR) + "/tests/tablet/answers.txt";
  if (std::getenv("STEAMWORTHY_RENEW_GOLDEN") != nullptr) std::ofstream(path) << told;
  EXPECT_GE(questions.size(), 20u);
  EXPECT_EQ(told, source_file("tests/tablet/answers.txt"));
}

// The same facts folded here: the tablet must come to the same.
TEST(Tablet, SaysWhatIsOutstandingAsTheFoldDoes) {
  const closing::Terms terms = testing::demo_terms();
  const ReadFacts read =
      read_fact_lines(source_file("examples/demo-mid-work.jsonl"), "demo-mid-work.jsonl");
  ASSERT_GT(read.facts.size(), 250u);
  ordered_json request{{"description", source_file("examples/watertube.toml")},
                       {"limits", {{"air_holds_s", 1800}, {"count_holds_s", 1200}}},
                       {"step", "fill"},
                       {"now_ms", read.facts.back().happened_at_ms}};
  request["limits"]["open_below_celsius"] = 45;
  request["limits"]["spring_hangers"] = true;
  for (const facts::Fact& fact : read.facts) {
    request["facts"].push_back(ordered_json::parse(fact_line(fact)));
  }
  request["people"] = {{{"who", "R. Lind"}, {"roles", {"lead_hand"}}},
                       {{"who", "A. Holm"}, {"roles", {"engineer"}}}};
  const closing::Clearance fill{facts::StepName::Fill, "", std::nullopt};
  const auto expected = closing::outstanding(closing::fold(read.facts, terms), terms, fill,
                                             read.facts.back().happened_at_ms);
  ASSERT_GT(expected.size(), 20u);
  EXPECT_EQ(answer("outstanding", request.dump()),
            outstanding_json(fill, expected, static_cast<std::int64_t>(read.facts.size()), {}));
}

// Our bodies have no blanks, those of the vectors do: all before the body must be the vector's.
TEST(Tablet, MakesTheHeadersOfTheRecordsVectors) {
  const auto vectors = ordered_json::parse(source_file("tests/record_vectors/facts.json"));
  int made = 0;
  for (const auto& vector : vectors["facts"]) {
    if (vector["kind"] != "closure.opened") continue;
    const std::string hex = vector["body"];
    std::string body(hex.size() / 2, '\0');
    ASSERT_TRUE(record::read_hex(hex, reinterpret_cast<std::uint8_t*>(body.data()), body.size()));
    ordered_json request = vector;
    request["fields"] = ordered_json::parse(body);
    const auto answered = ordered_json::parse(answer("fact", request.dump()));
    ASSERT_TRUE(answered.contains("bytes")) << answered.dump();
    const std::string whole = vector["bytes"];
    const std::string ours = answered["body"];
    const std::string expected = whole.substr(0, whole.size() - hex.size() - 8) +
                                 fmt::format("{:08x}", ours.size()) + record::hex(ours);
    EXPECT_EQ(answered["bytes"], expected) << vector["name"];
    ++made;
  }
  EXPECT_EQ(made, 2);
}

TEST(Tablet, KeepsWhatSomebodyTyped) {
  const ordered_json request = {{"scope", "closing"},
                                {"scope_id", "0193690e-7a00-7c00-8000-0000000000c1"},
                                {"id", "0193690e-7b01-7abc-9def-000000000001"},
                                {"device", std::string(32, 'a')},
                                {"device_seq", 1},
                                {"prev_hash", std::string(64, '0')},
                                {"person", "P-01"},
                                {"kind", "reading.taken"},
                                {"happened_at_ms", 0},
                                {"happened_precision_ms", 1000},
                                {"recorded_at_ms", 0},
                                {"utc_offset_min", 0},
                                {"units", "us"},
                                {"fields", {{"gauge", "TG-1"}, {"pressure", "650"}}}};
  const auto made = ordered_json::parse(answer("fact", request.dump()));
  const auto body = ordered_json::parse(made["body"].get<std::string>());
  EXPECT_EQ(body["pressure_as_entered"], "650 psig");
  // 650 psi x 6894.757 Pa (NIST SP 811, B.8: 1 psi = 6.894 757 E+03 Pa).
  EXPECT_NEAR(body["pressure_bar_gauge"].get<double>(), 44.815'92, 5e-6);
}

TEST(Tablet, NeverThrows) {
  for (const char* request : {"", "[]", "{", "null", "{\"seen\": 3}", "\xff", "{\"fields\": []}"}) {
    for (const char* question : {"fact", "quantity", "label", "words", "gaps", "", "\xff"}) {
      const std::string told = answer(question, request);
      EXPECT_TRUE(ordered_json::accept(told)) << question << " " << request << " " << told;
    }
  }
}

}  // namespace
}  // namespace steamworthy::wire
