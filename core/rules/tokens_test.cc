// tokens_test.cc — every token names one value, both ways.
#include <gtest/gtest.h>

#include <set>

#include "rules/circumstances.h"
#include "rules/rule.h"

namespace steamworthy::rules {
namespace {

template <class OfToken>
void expect_both_ways(const std::vector<std::string_view>& tokens, OfToken of, std::size_t count) {
  EXPECT_EQ(tokens.size(), count);
  EXPECT_EQ(std::set<std::string_view>(tokens.begin(), tokens.end()).size(), tokens.size());
  int number = 0;
  for (const std::string_view word : tokens) {
    const auto value = of(word);
    ASSERT_TRUE(value) << word;
    EXPECT_EQ(token(*value), word);
    EXPECT_EQ(static_cast<int>(*value), number++) << "tables stand in the order of their type";
  }
  EXPECT_FALSE(of("no such word"));
  EXPECT_FALSE(of(""));
}

TEST(Tokens, BothWays) {
  // The counts are those of the enumerations: a value added without a word fails here.
  expect_both_ways(boiler_kind_tokens(), boiler_kind_of,
                   static_cast<std::size_t>(BoilerKind::OnceThrough) + 1);
  expect_both_ways(work_tokens(), work_of, static_cast<std::size_t>(Work::Periodic) + 1);
  expect_both_ways(subject_tokens(), subject_of,
                   static_cast<std::size_t>(Subject::SafetyValve) + 1);
  expect_both_ways(trait_tokens(), trait_of, static_cast<std::size_t>(Trait::StopValveBetween) + 1);
  expect_both_ways(reference_tokens(), reference_of,
                   static_cast<std::size_t>(Reference::OriginalTestPressure) + 1);
  expect_both_ways(purpose_tokens(), purpose_of, static_cast<std::size_t>(Purpose::History) + 1);
  expect_both_ways(seen_tokens(), seen_of, static_cast<std::size_t>(Seen::Site) + 1);
  expect_both_ways(source_kind_tokens(), source_kind_of,
                   static_cast<std::size_t>(SourceKind::SiteRule) + 1);
  expect_both_ways(sense_tokens(), sense_of, static_cast<std::size_t>(Sense::NamedByAuthority) + 1);
  expect_both_ways(stage_tokens(), stage_of, static_cast<std::size_t>(Stage::Examination) + 1);
  expect_both_ways(medium_tokens(), medium_of, static_cast<std::size_t>(Medium::Metal) + 1);
  expect_both_ways(hold_at_tokens(), hold_at_of,
                   static_cast<std::size_t>(HoldAt::ExaminationPressure) + 1);
  expect_both_ways(valve_treatment_tokens(), valve_treatment_of,
                   static_cast<std::size_t>(ValveTreatment::MayBeGagged) + 1);
}

}  // namespace
}  // namespace steamworthy::rules
