// Checks facts/moment.h against days of the calendar. Unix times of well-known days: `date -u -d`
// of GNU coreutils.
#include "facts/moment.h"

#include <gtest/gtest.h>

namespace steamworthy::facts {
namespace {

TEST(DateAndTime, AgreesWithTheCalendar) {
  EXPECT_EQ(date_and_time(0, 0), "1970-01-01 00:00");
  EXPECT_EQ(date_and_time(951'782'400'000, 0), "2000-02-29 00:00");
  EXPECT_EQ(date_and_time(4'107'542'399'000, 0), "2100-02-28 23:59");
  EXPECT_EQ(date_and_time(4'107'542'400'000, 0), "2100-03-01 00:00");
  EXPECT_EQ(date_and_time(1'795'633'020'000, 0), "2026-11-25 18:57");
}

TEST(DateAndTime, ReachesBackBefore1970) {
  EXPECT_EQ(date_and_time(-1, 0), "1969-12-31 23:59");
  EXPECT_EQ(date_and_time(-2'203'891'200'000, 0), "1900-03-01 00:00");
}

TEST(DateAndTime, IsThatOfThePlace) {
  EXPECT_EQ(date_and_time(0, 330), "1970-01-01 05:30");
  EXPECT_EQ(date_and_time(0, -60), "1969-12-31 23:00");
}

TEST(DateAndTime, ShowsWhatIsNoDateAsItsNumber) {
  EXPECT_EQ(date_and_time(INT64_MAX, 0), "9223372036854775807 ms");
  EXPECT_EQ(date_and_time(INT64_MIN, 0), "-9223372036854775808 ms");
}

}  // namespace
}  // namespace steamworthy::facts
