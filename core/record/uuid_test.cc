// Checks record/uuid.h.
//
// Source: RFC 9562, appendix A.6: unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b
// 0x18C4DC0C0C07398F give 017F22E2-79B0-7CC3-98C4-DC0C0C07398F (from memory, not seen again).
#include "record/uuid.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace steamworthy::record {
namespace {

constexpr RandomForUuid all_ones = {0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff};

TEST(Uuid7, GivesTheExampleOfItsStandard) {
  const RandomForUuid random = {0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f};
  const Uuid uuid = uuid7(0x017f22e279b0, random);
  EXPECT_EQ(text(uuid), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  EXPECT_TRUE(is_uuid7(uuid));
}

TEST(Uuid7, CountsOnWhenTheClockStandsOrGoesBack) {
  const Uuid first = uuid7(1000, {});
  const Uuid second = uuid7_after(first, 1000, {});
  const Uuid third = uuid7_after(second, 5, all_ones);
  EXPECT_EQ(text(first), "00000000-03e8-7000-8000-000000000000");
  EXPECT_EQ(text(second), "00000000-03e8-7000-8000-000000000001");
  EXPECT_EQ(text(third), "00000000-03e8-7000-8000-000000000002");
}

TEST(Uuid7, CarriesIntoTheTimeWhenTheRandomPartIsFull) {
  const Uuid next = uuid7_after(uuid7(1000, all_ones), 1000, {});
  EXPECT_EQ(text(next), "00000000-03e9-7000-8000-000000000000");
  EXPECT_TRUE(is_uuid7(next));
}

RC_GTEST_PROP(Uuid7, IsAlwaysGreaterThanTheOneBefore,
              (RandomForUuid first, RandomForUuid second, std::uint32_t a, std::uint32_t b)) {
  const Uuid before = uuid7(a, first);
  const Uuid after = uuid7_after(before, b, second);
  RC_ASSERT(before < after);
  RC_ASSERT(is_uuid7(after));
}

RC_GTEST_PROP(Uuid7, ComesBackFromItsText, (RandomForUuid random, std::uint32_t ms)) {
  const Uuid uuid = uuid7(ms, random);
  RC_ASSERT(read_uuid(text(uuid)) == uuid);
}

TEST(Uuid, RefusesOtherForms) {
  for (const char* wrong :
       {"", "017f22e2-79b0-7cc3-98c4-dc0c0c07398", "017f22e279b07cc398c4dc0c0c07398f",
        "017f22e2-79b0-7cc3-98c4-dc0c0c07398g", "017f22e2-79b0-7cc3-98c4_dc0c0c07398f"}) {
    EXPECT_FALSE(read_uuid(wrong)) << wrong;
  }
}

}  // namespace
}  // namespace steamworthy::record
