// Moment: milliseconds since 1970 in UTC as a date and time that people read.
#pragma once

#include <cstdint>
#include <string>

namespace steamworthy::facts {

/// "2026-11-25 19:57", in the time of that offset from UTC; a moment outside the years 1 to 9999 as
/// its number.
///
/// Checked  moment_test.cc: dates of the Gregorian calendar, leap years, before 1970.
std::string date_and_time(std::int64_t ms, int utc_offset_min);

}  // namespace steamworthy::facts
