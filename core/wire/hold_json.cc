#include "wire/hold_json.h"

#include "hold/sections.h"
#include "wire/json.h"

namespace steamworthy::wire {
namespace {

using units::Kind;
using units::Measure;

double number(Kind kind, double si) { return units::at_border(Measure{kind, si}); }

template <class Quantity>
Json estimate_json(Kind kind, const std::optional<hold::Estimate<Quantity>>& e) {
  if (!e) return nullptr;
  return Json{{"estimate", number(kind, e->estimate.si())},
              {"low_90", number(kind, e->low_90.si())},
              {"high_90", number(kind, e->high_90.si())}};
}

template <class Quantity>
Json optional_json(Kind kind, const std::optional<Quantity>& value) {
  if (!value) return nullptr;
  return number(kind, value->si());
}

Json difference(units::PressureDifference p) { return number(Kind::PressureDifference, p.si()); }

Json fall_parts(const hold::FallSplit& s) {
  return Json{{"cooling_bar", difference(s.cooling)},
              {"relaxing_bar", difference(s.relaxing)},
              {"air_bar", difference(s.air)},
              {"loss_bar", difference(s.loss)},
              {"rest_bar", difference(s.rest)}};
}

std::optional<hold::Estimate<units::Volume>> air_of(const hold::HoldAnswer& answer) {
  if (!answer.pump_up) return std::nullopt;
  return answer.pump_up->trapped_air;
}

}  // namespace

std::string hold_json(const hold::HoldInput& input, const hold::HoldAnswer& answer,
                      const boiler::Boiler* description, bool with_working) {
  Json json{{"ok", true},
            {"result", hold::token(answer.result)},
            {"reason", message_json(answer.reason)},
            {"settle_by", messages_json(answer.settle_by)},
            {"notes", messages_json(answer.notes)},
            {"net_loss_ml_per_min", estimate_json(Kind::Leakage, answer.net_loss)},
            {"loss_at_end_ml_per_min", estimate_json(Kind::Leakage, answer.loss_at_end)},
            {"detectable_ml_per_min", optional_json(Kind::Leakage, answer.detectable)},
            {"leak_of_concern_ml_per_min", optional_json(Kind::Leakage, input.leak_of_concern)},
            {"fall_bar", nullptr},
            {"temperature_effect_bar", nullptr},
            {"fall_parts", nullptr},
            {"trapped_air_l", estimate_json(Kind::Volume, air_of(answer))},
            {"hold",
             {{"start_s", answer.hold_start_s},
              {"end_s", answer.hold_end_s},
              {"readings", answer.readings}}},
            {"water_ml_per_bar", number(Kind::VolumePerPressure, answer.per_pressure.si())},
            {"allowed_fall", nullptr}};
  if (answer.split) {
    json["fall_bar"] = difference(answer.split->fall);
    json["temperature_effect_bar"] = difference(answer.split->cooling);
    json["fall_parts"] = fall_parts(*answer.split);
  }
  if (answer.allowed_fall) {
    json["allowed_fall"] =
        Json{{"rule_met", answer.allowed_fall->met},
             {"seen_bar", difference(answer.allowed_fall->seen)},
             {"allowed_bar", difference(input.allowed_fall->fall)},
             {"means_ml_per_min", number(Kind::Leakage, answer.allowed_fall->means.si())}};
  }
  Json sections = Json::array();
  for (const auto& section : hold::hold_sections(input, answer)) {
    sections.push_back(section_json(section, with_working));
  }
  sections.push_back(section_json(hold::pump_up_section(input, answer, description), with_working));
  json["sections"] = std::move(sections);
  return text(json);
}

std::string pump_up_json(const hold::HoldInput& input, const hold::HoldAnswer& answer,
                         const boiler::Boiler* description, bool with_working) {
  Json json{{"ok", answer.pump_up.has_value()},
            {"trapped_air_l", estimate_json(Kind::Volume, air_of(answer))},
            {"known_at_bar_gauge", nullptr},
            {"scale_fraction", nullptr},
            {"from_vented", nullptr},
            {"pump_rate_l_per_min", nullptr},
            {"venting_costs_s", nullptr},
            {"points", Json::array()},
            {"notes", messages_json(answer.notes)}};
  if (answer.pump_up) {
    const hold::PumpUpAnswer& up = *answer.pump_up;
    const double barometer = input.barometer.si();
    if (up.known_at) {
      json["known_at_bar_gauge"] = number(Kind::GaugePressure, up.known_at->si() - barometer);
    }
    json["scale_fraction"] = up.scale;
    json["from_vented"] = up.from_vented;
    json["pump_rate_l_per_min"] = optional_json(Kind::Flow, up.pump_rate);
    json["venting_costs_s"] = optional_json(Kind::Duration, up.venting_costs);
    for (const hold::PumpUpPoint& point : up.points) {
      json["points"].push_back(
          Json{{"time_s", point.seconds},
               {"pressure_bar_gauge", number(Kind::GaugePressure, point.pressure.si() - barometer)},
               {"pumped_l", number(Kind::Volume, point.pumped.si())},
               {"airless_l", number(Kind::Volume, point.airless.si())}});
    }
  }
  json["section"] = section_json(hold::pump_up_section(input, answer, description), with_working);
  return text(json);
}

}  // namespace steamworthy::wire
