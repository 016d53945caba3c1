// The closing view: the sheet as issued, the test so far, leaks, places to look.
#include <algorithm>
#include <cmath>

#include "boiler/content.h"
#include "boiler/places.h"
#include "units/makers.h"
#include "water/water.h"
#include "wire/closing_view.h"

namespace steamworthy::wire {
namespace {

/// For the walkdown: at examination pressure, or where the sheet names none, test pressure.
std::optional<units::GaugePressure> walked_at(const closing::State& state) {
  if (!state.sheet) return std::nullopt;
  return state.sheet->examination_pressure ? state.sheet->examination_pressure
                                           : state.sheet->test_pressure;
}

/// p(z) = p_ref + rho g (z_ref - z), with water as at 20 °C; as the sheet's section of places.
class PressureAt {
 public:
  explicit PressureAt(const Speaker& speaker) : reference_(walked_at(speaker.state())) {
    if (!reference_) return;
    level_ = boiler::reference_level(speaker.boiler());
    density_ = water::density(
        {units::celsius(20), units::absolute(*reference_, units::standard_atmosphere)});
  }
  std::optional<units::GaugePressure> at(units::Level level) const {
    if (!reference_ || !std::isfinite(level.si())) return std::nullopt;
    return *reference_ + density_ * units::standard_gravity * (level_ - level);
  }

 private:
  std::optional<units::GaugePressure> reference_;
  units::Level level_;
  units::Density density_;
};

std::string open_leak_at(const closing::State& state, const std::string& place) {
  for (const auto& [number, leak] : state.leaks) {
    if (leak.place == place && !closing::is_closed(state, leak)) return number;
  }
  return {};
}

}  // namespace

Json sheet_json(const Speaker& speaker) {
  const auto& issued = speaker.state().sheet;
  if (!issued) return nullptr;
  Json json{{"sha256", issued->sha256}, {"rule", issued->rule}};
  speaker.put(json, "test_pressure", units::measure(issued->test_pressure));
  speaker.put(json, "never_above", units::measure(issued->never_above));
  if (issued->examination_pressure) {
    speaker.put(json, "examination_pressure", units::measure(*issued->examination_pressure));
  }
  if (issued->safety_valves_in_place_below) {
    speaker.put(json, "safety_valves_in_place_below",
                units::measure(*issued->safety_valves_in_place_below));
  }
  if (issued->coldest) speaker.put(json, "coldest", units::measure(*issued->coldest));
  if (issued->warmest) speaker.put(json, "warmest", units::measure(*issued->warmest));
  if (issued->hold) speaker.put(json, "hold", units::measure(*issued->hold));
  return json;
}

Json test_json(const Speaker& speaker) {
  const closing::State& state = speaker.state();
  Json json{{"water_in", state.water_in},
            {"filling", state.filling},
            {"full", state.full.holds},
            {"pump_runs", state.pump_runs},
            {"was_raised", state.was_raised},
            {"holding", state.holding},
            {"hold_met", state.hold_met.holds},
            {"test_valve_shut", state.test_valve_shut.holds},
            {"pump_side_open", state.pump_side_open.holds},
            {"stop_word_checked", state.stop_word.holds},
            {"people_clear", state.people_clear.holds},
            {"hangers_pinned", state.hangers_pinned.holds},
            {"hangers_free", state.hangers_free.holds},
            {"filling_order_agreed", state.order_agreed.holds},
            {"normalised", state.normalised.holds},
            {"left_full", state.left_full},
            {"looked_after_by", state.left_full ? state.looked_after_by : ""},
            {"left_safe", state.left_safe},
            {"call", state.left_safe ? state.call : ""},
            {"given_by", state.given_by},
            {"received_by", state.received_by},
            {"fire_lit", state.fire_lit}};
  if (state.level && state.level_known.holds) {
    speaker.put(json, "level", units::measure(*state.level));
  }
  if (state.relief) speaker.put(json, "relief", units::measure(*state.relief));
  if (state.accepted) {
    json["gauge_result"] = facts::token(*state.accepted);
    json["gauge_result_text"] = speaker.word(*state.accepted);
  }
  return json;
}

Json leaks_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const auto& [number, leak] : speaker.state().leaks) {
    Json json{{"name", number},
              {"place", leak.place},
              {"at", facts::token(leak.at)},
              {"at_text", speaker.word(leak.at)},
              {"passes", facts::token(leak.passes)},
              {"passes_text", speaker.word(leak.passes)}};
    working::Message said{"closing.leak",
                          {{"at", working::Term{"leak_kind." + std::string(facts::token(leak.at))}},
                           {"place", leak.place}}};
    if (leak.passes != facts::Passing::None) {
      said.values.emplace_back("passes",
                               working::Term{"passing." + std::string(facts::token(leak.passes))});
    }
    if (leak.drops_per_min) {
      const units::Measure drops = units::measure_count(*leak.drops_per_min);
      put_measure(json, "drops_per_min", drops);
      said.values.emplace_back("drops", drops);
    }
    json["text"] = speaker.sentence(said);
    json["repaired"] = leak.repaired.holds;
    json["seen_dry"] = leak.seen_dry.holds;
    json["watched_hot"] = leak.watched_hot.holds;
    json["open"] = !closing::is_closed(speaker.state(), leak);
    list.push_back(std::move(json));
  }
  return list;
}

Json places_json(const Speaker& speaker) {
  std::vector<boiler::PlaceToLook> places = boiler::places_to_look(speaker.boiler());
  // In the order of walking: level by level from the top; on one level as described.
  std::stable_sort(places.begin(), places.end(),
                   [](const auto& a, const auto& b) { return a.level > b.level; });
  const PressureAt pressure(speaker);
  Json list = Json::array();
  for (const boiler::PlaceToLook& place : places) {
    const std::string kind(boiler::token(place.kind));
    Json json{{"tag", place.tag},    {"name", place.name},
              {"kind", kind},        {"kind_text", speaker.say("kind." + kind)},
              {"part", place.part},  {"about", place.about},
              {"count", place.count}};
    json["level_m"] = nullptr;
    json["pressure_bar_gauge"] = nullptr;
    json["pressure_text"] = "";
    if (std::isfinite(place.level.si())) {
      speaker.put(json, "level", units::measure(place.level));
    }
    if (const auto there = pressure.at(place.level)) {
      speaker.put(json, "pressure", units::measure(*there));
    }
    json["dry"] = closing::of(speaker.state().dry, place.tag).holds;
    json["leak"] = open_leak_at(speaker.state(), place.tag);
    list.push_back(std::move(json));
  }
  return list;
}

}  // namespace steamworthy::wire
