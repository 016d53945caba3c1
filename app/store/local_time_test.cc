#include "store/local_time.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <ctime>
#include <string>

namespace steamworthy::store {
namespace {

/// The offset in a time zone, written as POSIX has it (IEEE 1003.1, TZ): no zone files are needed.
int offset_in(const char* zone, std::int64_t at_ms) {
  const char* before = std::getenv("TZ");
  const std::string kept = before == nullptr ? "" : before;
  ::setenv("TZ", zone, 1);
  ::tzset();
  const int minutes = utc_offset_min(at_ms);
  before == nullptr ? ::unsetenv("TZ") : ::setenv("TZ", kept.c_str(), 1);
  ::tzset();
  return minutes;
}

constexpr std::int64_t january_ms = 1'768'478'400'000;  // 2026-01-15 12:00 UTC
constexpr std::int64_t july_ms = 1'784'116'800'000;     // 2026-07-15 12:00 UTC

TEST(LocalTime, IsThatOfTheZoneAndTheSeason) {
  EXPECT_EQ(offset_in("UTC0", january_ms), 0);
  EXPECT_EQ(offset_in("CET-1CEST,M3.5.0,M10.5.0/3", january_ms), 60);
  EXPECT_EQ(offset_in("CET-1CEST,M3.5.0,M10.5.0/3", july_ms), 120);
  EXPECT_EQ(offset_in("IST-5:30", july_ms), 330);
  EXPECT_EQ(offset_in("NST3:30", january_ms), -210);
}

}  // namespace
}  // namespace steamworthy::store
