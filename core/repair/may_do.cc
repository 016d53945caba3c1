#include "repair/may_do.h"

namespace steamworthy::repair {
namespace {

using working::Message;

std::optional<units::GaugePressure> allowed(Action action, const Work& work,
                                            const SiteRules& site) {
  if (!work.closure) return std::nullopt;
  const auto& rule = action == Action::Tighten ? site.tighten_up_to : site.strike_up_to;
  const auto found = rule.find(*work.closure);
  if (found == rule.end()) return std::nullopt;
  return found->second;
}

void check_wrench(Action action, const Work& work, const Now& now, const SiteRules& site,
                  std::vector<Message>& ways) {
  if (work.makers_book) ways.push_back({"repair.makers_book_only", {}});
  if (!now.gauge) {
    ways.push_back({"repair.gauge_not_read", {}});
    return;
  }
  if (now.gauge->si() <= 0.0) return;
  const auto up_to = allowed(action, work, site);
  if (!up_to) {
    ways.push_back({"repair.pressure_off_first", {{"pressure", units::measure(*now.gauge)}}});
  } else if (*now.gauge > *up_to) {
    ways.push_back({"repair.above_the_sites_pressure",
                    {{"pressure", units::measure(*now.gauge)}, {"up_to", units::measure(*up_to)}}});
  }
}

void check_break(const Work& work, const Now& now, std::vector<Message>& ways) {
  if (!now.gauge) {
    ways.push_back({"repair.gauge_not_read", {}});
  } else if (now.gauge->si() > 0.0) {
    ways.push_back({"repair.gauge_not_at_zero", {{"pressure", units::measure(*now.gauge)}}});
  }
  if (!now.vent_moves_air.value_or(false)) ways.push_back({"repair.no_air_at_vent", {}});
  if (!work.free_below) {
    ways.push_back({"repair.level_of_place_not_known", {}});
  } else if (!now.water_below) {
    ways.push_back({"repair.water_not_seen", {{"level", units::measure(*work.free_below)}}});
  } else if (*now.water_below > *work.free_below) {
    ways.push_back({"repair.water_above",
                    {{"level", units::measure(*work.free_below)},
                     {"water", units::measure(*now.water_below)}}});
  }
}

}  // namespace

std::string_view token(Action action) {
  switch (action) {
    case Action::Tighten:
      return "tighten";
    case Action::Strike:
      return "strike";
    case Action::Break:
      break;
  }
  return "break";
}

std::vector<Message> in_the_way(Action action, const Work& work, const Now& now,
                                const SiteRules& site) {
  std::vector<Message> ways;
  if (action == Action::Break) {
    check_break(work, now, ways);
  } else {
    check_wrench(action, work, now, site, ways);
  }
  return ways;
}

}  // namespace steamworthy::repair
