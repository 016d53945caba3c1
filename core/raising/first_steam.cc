#include "raising/first_steam.h"

#include <algorithm>

#include "units/makers.h"

namespace steamworthy::raising {
namespace {

using working::Figure;
using working::Message;
using working::Origin;

constexpr units::GaugePressure first_round = units::bars_gauge(2.0);

std::vector<ToLook> places(const closing::State& state) {
  std::vector<ToLook> list;
  for (const auto& [number, leak] : state.leaks) {
    if (leak.watched_hot.holds) list.push_back({leak.place, number, Look::WatchedHot});
  }
  const auto is_listed = [&](const std::string& tag) {
    return std::any_of(list.begin(), list.end(),
                       [&](const ToLook& one) { return one.subject == tag; });
  };
  for (const Look why : {Look::HardenedUp, Look::Opened}) {
    for (const auto& [tag, closure] : state.closures) {
      const bool wanted = why == Look::HardenedUp ? closure.look_on_steam : closure.opened;
      if (wanted && !is_listed(tag)) list.push_back({tag, "", why});
    }
  }
  return list;
}

/// The lowest of the sections.
std::optional<units::GaugePressure> working_pressure(const boiler::Boiler& boiler) {
  std::optional<units::GaugePressure> lowest;
  for (const boiler::Section& section : boiler.sections) {
    if (!lowest || section.working_pressure < *lowest) lowest = section.working_pressure;
  }
  return lowest;
}

Figure round_pressure(std::optional<units::GaugePressure> working, double share,
                      const char* formula) {
  if (!working) {
    return working::unknown("raising.round_pressure", "", {"raising.no_working_pressure", {}});
  }
  return working::known("raising.round_pressure", "",
                        units::measure(units::GaugePressure::from_si(share * working->si())),
                        {.formula = formula,
                         .inputs = {{"p_w", "input.working_pressure", units::measure(*working),
                                     Origin::Described, ""}},
                         .method = "raising",
                         .remarks = {{"raising.rounds_are_practice", {}}}});
}

}  // namespace

std::string_view token(Look why) {
  switch (why) {
    case Look::WatchedHot:
      return "watched_hot";
    case Look::HardenedUp:
      return "hardened_up";
    case Look::Opened:
      break;
  }
  return "opened";
}

FirstSteam first_steam(const closing::Terms& terms, const closing::State& state) {
  FirstSteam result;
  const auto working = working_pressure(terms.boiler());
  const std::vector<ToLook> all = places(state);
  if (!working || first_round < *working) {
    result.rounds.push_back(
        {working::known("raising.round_pressure", "", units::measure(first_round),
                        {.formula = "1 to 2 bar",
                         .method = "raising",
                         .remarks = {{"raising.rounds_are_practice", {}}}}),
         all});
  }
  const bool half_is_apart = !working || 0.5 * working->si() > first_round.si();
  if (half_is_apart) result.rounds.push_back({round_pressure(working, 0.5, "p_w / 2"), all});
  result.rounds.push_back({round_pressure(working, 1.0, "p_w"), all});
  if (const auto& up_to = terms.site().tighten_below) {
    result.notes.push_back({"raising.follow_up_below", {{"pressure", units::measure(*up_to)}}});
  } else {
    result.notes.push_back({"raising.follow_up_pressure_off", {}});
  }
  result.notes.push_back({"raising.look_at_expansion", {}});
  result.notes.push_back({"raising.look_at_glands", {}});
  return result;
}

}  // namespace steamworthy::raising
