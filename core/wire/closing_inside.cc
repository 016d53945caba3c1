// The closing view: spaces with who and what is inside, air and count; isolations.
#include "wire/closing_view.h"

namespace steamworthy::wire {
namespace {

using closing::SpaceState;

constexpr std::int64_t ms_per_minute = 60'000;

/// Whole minutes since; of what is dated ahead of the clock, below zero.
std::int64_t minutes_since(const closing::Stamp& stamp, std::int64_t now_ms) {
  return (now_ms - stamp.at_ms) / ms_per_minute;
}

Json air_json(const Speaker& speaker, const SpaceState& space) {
  const closing::Air& air = *space.air;
  const auto limit = speaker.terms().site().air_minutes;
  const bool is_old = closing::is_old(air.stamp.at_ms, speaker.view.now_ms, limit);
  Json json{{"good", space.air_good.holds && !is_old},
            {"within_limits", space.air_good.holds},
            {"old", is_old},
            {"at_ms", air.stamp.at_ms},
            {"age_min", minutes_since(air.stamp, speaker.view.now_ms)}};
  if (limit) json["holds_min"] = *limit;
  put_measure(json, "oxygen_top", units::measure_percent(air.oxygen_top));
  put_measure(json, "oxygen_middle", units::measure_percent(air.oxygen_middle));
  put_measure(json, "oxygen_bottom", units::measure_percent(air.oxygen_bottom));
  if (air.flammable) put_measure(json, "flammable", units::measure_percent(*air.flammable));
  if (air.carbon_monoxide) {
    put_measure(json, "carbon_monoxide_ppm", units::measure_count(*air.carbon_monoxide));
  }
  if (air.hydrogen_sulfide) {
    put_measure(json, "hydrogen_sulfide_ppm", units::measure_count(*air.hydrogen_sulfide));
  }
  working::Message said{
      "closing.air",
      {{"top", units::measure_percent(air.oxygen_top)},
       {"middle", units::measure_percent(air.oxygen_middle)},
       {"bottom", units::measure_percent(air.oxygen_bottom)},
       {"age",
        units::Measure{units::Kind::Duration,
                       static_cast<double>(speaker.view.now_ms - air.stamp.at_ms) / 1000.0}}}};
  if (!space.air_good.holds) said.values.emplace_back("bad", working::Term{"closing.air_bad"});
  if (is_old) said.values.emplace_back("old", working::Term{"closing.air_old"});
  json["text"] = speaker.sentence(said);
  return json;
}

Json count_json(const Speaker& speaker, const std::string& tag, const closing::Count& count) {
  Json against = Json::array();
  for (const auto& [check, subject] :
       closing::fails_of_count(speaker.state(), speaker.terms(), tag, speaker.view.now_ms)) {
    against.push_back(Json{{"check", closing::row(check).token}, {"subject", subject}});
  }
  Json json{
      {"good", against.empty()},      {"people", count.people},
      {"things", count.things},       {"two_names", count.two_names},
      {"looked_in", count.looked_in}, {"called", count.called},
      {"at_ms", count.stamp.at_ms},   {"age_min", minutes_since(count.stamp, speaker.view.now_ms)}};
  const auto limit = speaker.terms().site().count_minutes;
  if (limit) json["holds_min"] = *limit;
  json["against"] = std::move(against);
  return json;
}

Json ways_json(const Speaker& speaker, const std::string& space) {
  Json ways = Json::array();
  for (const boiler::WayIn& way : speaker.boiler().ways_in) {
    if (way.space != space) continue;
    const closing::WayIn known{way.tag, way.space, way.closure};
    ways.push_back(Json{{"tag", way.tag},
                        {"name", way.name.empty() ? way.closure : way.name},
                        {"closure", way.closure},
                        {"open", closing::is_way_open(speaker.state(), known)}});
  }
  return ways;
}

Json space_json(const Speaker& speaker, const std::string& tag) {
  const boiler::Space* known = described(speaker.boiler().spaces, tag);
  const SpaceState& space = closing::of(speaker.state().spaces, tag);
  Json json{{"tag", tag},
            {"name", known != nullptr ? known->name : tag},
            {"side", known != nullptr ? boiler::token(known->side) : ""},
            {"people", names_json(closing::inside(space.people))},
            {"things", names_json(closing::inside(space.things))},
            {"attendant", space.attended.holds ? space.attendant : ""}};
  json["air"] = space.air ? air_json(speaker, space) : Json(nullptr);
  json["count"] = space.count ? count_json(speaker, tag, *space.count) : Json(nullptr);
  json["was_open"] = space.was_open;
  json["is_closed"] = space.closed.holds;
  json["may_enter"] = closing::stands(speaker.state(), speaker.terms(), facts::StepName::Enter, tag,
                                      speaker.view.now_ms) ||
                      closing::stands(speaker.state(), speaker.terms(),
                                      facts::StepName::WalkFireSide, tag, speaker.view.now_ms);
  json["ways_in"] = ways_json(speaker, tag);
  return json;
}

}  // namespace

Json spaces_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const std::string& tag : all_tags(speaker.boiler().spaces, speaker.state().spaces)) {
    list.push_back(space_json(speaker, tag));
  }
  return list;
}

Json isolations_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const std::string& tag : all_tags(speaker.boiler().isolations, speaker.state().isolations)) {
    const boiler::Isolation* known = described(speaker.boiler().isolations, tag);
    const closing::Isolation& line = closing::of(speaker.state().isolations, tag);
    const bool is_double = closing::is_shut_off_twice(line);
    Json json{{"tag", tag},
              {"pipe", known != nullptr ? known->pipe : ""},
              {"what_lies_behind", known != nullptr ? known->behind : ""},
              {"asked", known != nullptr ? boiler::token(known->how) : ""},
              {"tell_tale", known != nullptr ? known->tell_tale : ""}};
    json["how"] = line.how ? facts::token(*line.how) : "";
    json["how_text"] = line.how ? speaker.word(*line.how) : "";
    json["double"] = is_double;
    json["tell_tale_dry"] = line.tell_tale_dry.holds;
    json["tried"] = line.tried.holds;
    working::Message said{"closing.isolation", {}};
    if (line.how) {
      said.values.emplace_back(
          "how", working::Term{"isolated_how." + std::string(facts::token(*line.how))});
    }
    said.values.emplace_back(
        "stands", working::Term{is_double ? (line.tried.holds ? "closing.isolation_tried"
                                                              : "closing.isolation_not_tried")
                                          : "closing.isolation_not_double"});
    json["text"] = speaker.sentence(said);
    list.push_back(std::move(json));
  }
  return list;
}

}  // namespace steamworthy::wire
