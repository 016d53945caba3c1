#include "closing/site.h"

namespace steamworthy::closing {
namespace {

constexpr double seconds_per_minute = 60.0;

/// Whole minutes, never more than the site said.
std::optional<int> minutes(const std::optional<facts::Measured<units::Duration>>& limit) {
  if (!limit) return std::nullopt;
  return static_cast<int>(limit->value.si() / seconds_per_minute + 1e-9);
}

template <class Value>
std::optional<Value> value(const std::optional<facts::Measured<Value>>& limit) {
  return limit ? std::optional<Value>(limit->value) : std::nullopt;
}

}  // namespace

Site site_of(const std::optional<facts::SiteLimitsSet>& limits) {
  Site site;
  if (!limits) return site;
  site.air_minutes = minutes(limits->air_holds);
  site.count_minutes = minutes(limits->count_holds);
  site.open_below = value(limits->open_below);
  site.carbon_monoxide_alarm = value(limits->carbon_monoxide_alarm);
  site.hydrogen_sulfide_alarm = value(limits->hydrogen_sulfide_alarm);
  site.tighten_below = value(limits->tighten_below);
  site.spring_hangers = limits->spring_hangers;
  return site;
}

}  // namespace steamworthy::closing
