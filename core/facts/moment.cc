#include "facts/moment.h"

#include <fmt/format.h>

namespace steamworthy::facts {
namespace {

constexpr std::int64_t ms_per_minute = 60'000;
constexpr std::int64_t minutes_per_day = 1440;
constexpr std::int64_t days_to_1970 = 719'468;  // from 1 March of year 0
constexpr std::int64_t days_in_400_years = 146'097;
constexpr std::int64_t first_minute = -1'035'593'280;  // 0001-01-01 00:00
constexpr std::int64_t last_minute = 4'223'371'679;    // 9999-12-31 23:59

std::int64_t floor_div(std::int64_t a, std::int64_t b) { return a / b - (a % b < 0 ? 1 : 0); }

}  // namespace

std::string date_and_time(std::int64_t ms, int utc_offset_min) {
  const std::int64_t minutes = floor_div(ms, ms_per_minute) + utc_offset_min;
  if (minutes < first_minute || minutes > last_minute) return fmt::format("{} ms", ms);
  const std::int64_t day = floor_div(minutes, minutes_per_day);
  const std::int64_t minute = minutes - day * minutes_per_day;
  // Years begin in March here, so that the leap day is the last of its year.
  const std::int64_t z = day + days_to_1970;
  const std::int64_t era = floor_div(z, days_in_400_years);
  const std::int64_t of_era = z - era * days_in_400_years;
  const std::int64_t year_of_era =
      (of_era - of_era / 1460 + of_era / 36'524 - of_era / 146'096) / 365;
  const std::int64_t of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t m = (5 * of_year + 2) / 153;
  const std::int64_t day_of_month = of_year - (153 * m + 2) / 5 + 1;
  const std::int64_t month = m < 10 ? m + 3 : m - 9;
  const std::int64_t year = era * 400 + year_of_era + (month <= 2 ? 1 : 0);
  return fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", year, month, day_of_month, minute / 60,
                     minute % 60);
}

}  // namespace steamworthy::facts
