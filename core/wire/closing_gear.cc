// The closing view: temporaries, mountings, gauges, thermometers, who stands where.
#include "wire/closing_view.h"

namespace steamworthy::wire {
namespace {

using boiler::MountingKind;

void put_vent(const Speaker& speaker, const std::string& tag, Json& json) {
  const closing::Vent& vent = closing::of(speaker.state().vents, tag);
  json["open"] = vent.open.holds;
  json["shut"] = vent.shut.holds;
  json["moving_air"] = vent.moving_air.holds;
  json["ran_solid"] = vent.ran_solid.holds;
  json["manned_by"] = vent.manned.holds ? vent.who : "";
}

void put_drain(const Speaker& speaker, const std::string& tag, Json& json) {
  const closing::Drain& drain = closing::of(speaker.state().drains, tag);
  json["shut"] = drain.shut.holds;
  json["proved"] = drain.proved.holds;
}

void put_safety_valve(const Speaker& speaker, const boiler::Mounting& valve, Json& json) {
  if (valve.setting) speaker.put(json, "setting", units::measure(*valve.setting));
  std::string gag;
  for (const auto& [number, temporary] : speaker.state().temporaries) {
    if (temporary.where == valve.tag && temporary.on.holds) gag = number;
  }
  json["gag"] = gag;
}

}  // namespace

Json temporaries_json(const Speaker& speaker) {
  Json list = Json::array();
  const auto& told = speaker.state().temporaries;
  for (const std::string& tag : all_tags(speaker.boiler().temporaries, told)) {
    const boiler::Temporary* known = described(speaker.boiler().temporaries, tag);
    const closing::Temporary& temporary = closing::of(told, tag);
    const bool was_told = told.count(tag) != 0;
    Json json{{"tag", tag},
              {"name", known != nullptr ? known->name : tag},
              {"kind", known != nullptr ? boiler::token(known->kind) : ""},
              {"where", was_told || known == nullptr ? temporary.where : known->where},
              {"was_on", temporary.was_on},
              {"on", temporary.was_on && !temporary.off.holds},
              {"off", temporary.off.holds},
              {"seen_off", temporary.seen_off.holds}};
    // A temporary that nobody described must be off before steam at the latest.
    const auto before = known != nullptr ? known->off_before : boiler::OffBefore::Steam;
    const std::string token(boiler::token(before));
    json["must_be_off_before"] = token;
    json["must_be_off_before_text"] = speaker.say("kind.before_" + token);
    list.push_back(std::move(json));
  }
  return list;
}

Json mountings_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const boiler::Mounting& mounting : speaker.boiler().mountings) {
    Json json{{"tag", mounting.tag},
              {"name", mounting.name},
              {"kind", boiler::token(mounting.kind)},
              {"part", mounting.part}};
    switch (mounting.kind) {
      case MountingKind::Vent:
        put_vent(speaker, mounting.tag, json);
        break;
      case MountingKind::Drain:
      case MountingKind::Blowdown:
        put_drain(speaker, mounting.tag, json);
        break;
      case MountingKind::SafetyValve:
        put_safety_valve(speaker, mounting, json);
        break;
      default:
        break;
    }
    if (mounting.test_limit) speaker.put(json, "test_limit", units::measure(*mounting.test_limit));
    const closing::Fitting& fitting = closing::of(speaker.state().fittings, mounting.tag);
    json["was_isolated"] = fitting.was_isolated;
    json["isolated"] = fitting.isolated.holds;
    json["back"] = !fitting.was_isolated || fitting.back.holds;
    json["proved"] = json.value("proved", false) || fitting.proved.holds;
    list.push_back(std::move(json));
  }
  return list;
}

Json gauges_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const std::string& tag : all_tags(speaker.boiler().gauges, speaker.state().gauges)) {
    const boiler::Gauge* known = described(speaker.boiler().gauges, tag);
    const closing::Gauge& gauge = closing::of(speaker.state().gauges, tag);
    Json json{{"tag", tag},
              {"name", known != nullptr ? known->name : tag},
              {"calibrated_until", known != nullptr ? known->calibrated_until : ""},
              {"fitted", gauge.fitted.holds},
              {"at_zero", gauge.at_zero.holds}};
    if (gauge.reading) speaker.put(json, "reading", units::measure(*gauge.reading));
    list.push_back(std::move(json));
  }
  return list;
}

Json temperatures_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const auto& [tag, reading] : speaker.state().temperatures) {
    const boiler::Thermometer* known = described(speaker.boiler().thermometers, tag);
    Json json{{"tag", tag},
              {"name", known != nullptr ? known->name : tag},
              {"of", facts::token(reading.of)},
              {"of_text", speaker.word(reading.of)}};
    speaker.put(json, "temperature", units::measure(reading.temperature));
    if (reading.of != facts::Thing::Air && speaker.state().sheet) {
      json["in_window"] = closing::is_in_window(speaker.state(), reading.temperature);
    }
    list.push_back(std::move(json));
  }
  return list;
}

Json posts_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const auto& [post, stands] : speaker.state().posts) {
    list.push_back(Json{{"post", facts::token(post)},
                        {"post_text", speaker.word(post)},
                        {"who", stands.manned.holds ? stands.who : ""},
                        {"manned", stands.manned.holds},
                        {"contact_lost", stands.is_lost()}});
  }
  return list;
}

}  // namespace steamworthy::wire
