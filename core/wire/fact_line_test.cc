// Checks wire/fact_line.h.
#include "wire/fact_line.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "facts/sample_test.h"

namespace steamworthy::wire {
namespace {

RC_GTEST_PROP(FactLine, ComesBackAsItWas, ()) {
  const auto& table = facts::table();
  const auto& row = table[*rc::gen::inRange<std::size_t>(0, table.size())];
  facts::Fact fact;
  fact.id = *rc::gen::element<std::string>("", "0192f0c1-2a44-7000-8000-000000000001");
  fact.closing = "C-1";
  fact.device = "tablet 1";
  fact.device_seq = *rc::gen::inRange(1, 1'000'000);
  if (*rc::gen::arbitrary<bool>()) fact.seen = {{"node", 17}, {"tablet 2", 3}};
  fact.person = "R. Lind";
  fact.happened_at_ms = *rc::gen::inRange<std::int64_t>(0, 2'000'000'000'000);
  fact.recorded_at_ms = *rc::gen::inRange<std::int64_t>(0, 2'000'000'000'000);
  fact.utc_offset_min = *rc::gen::inRange(-720, 840);
  fact.precision = facts::Precision::Hour;
  fact.version = row.kind.version;
  fact.body = facts::sample(row, [](unsigned n) { return *rc::gen::inRange(0u, n); });
  const ReadFacts read = read_fact_lines(fact_line(fact), "lines");
  RC_ASSERT(read.problems.empty());
  RC_ASSERT(read.facts == std::vector<facts::Fact>{fact});
}

TEST(FactLine, NamesTheLineOfEachFault) {
  const ReadFacts read = read_fact_lines(
      "# a remark\n"
      "\n"
      R"({"closing": "C", "device": "A", "device_seq": 1, "person": "P", "happened_at_ms": 5, )"
      R"("kind": "closure.opned", "body": {}})"
      "\n"
      R"({"closing": "C", "device": "A", "device_seq": 0, "person": "", "happened_at_ms": 5, )"
      R"("kind": "fire.lit", "body": {}})"
      "\n{\n",
      "lines");
  ASSERT_EQ(read.facts.size(), 1u);
  EXPECT_TRUE(std::holds_alternative<facts::Unread>(read.facts[0].body));
  ASSERT_EQ(read.problems.size(), 4u);
  EXPECT_EQ(read.problems[0].line, 3);
  EXPECT_EQ(read.problems[0].code, "facts.unknown_kind");
  EXPECT_EQ(read.problems[1].line, 4);
  EXPECT_EQ(read.problems[1].field, "device_seq");
  EXPECT_EQ(read.problems[2].field, "person");
  EXPECT_EQ(read.problems[3].line, 5);
}

TEST(FactLine, TakesWhatIsLeftOutAsThePageSays) {
  const ReadFacts read = read_fact_lines(
      R"({"closing": "C", "device": "A", "device_seq": 1, "person": "P", "happened_at_ms": 5, )"
      R"("kind": "fire.lit", "body": {"note": "at last"}})",
      "lines");
  ASSERT_TRUE(read.problems.empty());
  ASSERT_EQ(read.facts.size(), 1u);
  EXPECT_EQ(read.facts[0].recorded_at_ms, 5);
  EXPECT_EQ(read.facts[0].version, 1);
  EXPECT_EQ(read.facts[0].precision, facts::Precision::Minute);
  EXPECT_EQ(read.facts[0].beside.note, "at last");
}

TEST(FactLine, RefusesHeadsThatAreNone) {
  for (const char* seen : {"[]", "{\"B\": 0}", "{\"B\": \"1\"}", "{\"B\": 1.5}", "7"}) {
    const ReadFacts read = read_fact_lines(
        std::string(R"({"closing": "C", "device": "A", "device_seq": 1, "person": "P", )") +
            R"("happened_at_ms": 5, "kind": "fire.lit", "body": {}, "seen": )" + seen + "}",
        "lines");
    ASSERT_EQ(read.problems.size(), 1u) << seen;
    EXPECT_EQ(read.problems[0].field, "seen");
  }
}

}  // namespace
}  // namespace steamworthy::wire
