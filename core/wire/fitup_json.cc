#include "wire/fitup_json.h"

#include "units/makers.h"
#include "wire/json.h"

namespace steamworthy::wire {
namespace {

void put_plane(Json& json, const std::string& name, fitup::Plane shift) {
  put_measure(json, name + "_right", units::measure_size(units::millimetres(shift.right)));
  put_measure(json, name + "_up", units::measure_size(units::millimetres(shift.up)));
}

}  // namespace

std::string fitup_json(const fitup::FitAnswer& answer, bool with_working) {
  Json json{{"verdict", fitup::token(answer.verdict)}, {"sentence", message_json(answer.sentence)}};
  Json notes = Json::array();
  for (const working::Message& note : answer.notes) notes.push_back(message_json(note));
  json["notes"] = std::move(notes);
  put_plane(json, "off_centre", answer.off_centre);
  put_plane(json, "off_centre_sd", answer.off_centre_sd);
  put_measure(json, "clearance", units::measure_size(units::millimetres(answer.clearance)));
  put_measure(json, "clearance_sd", units::measure_size(units::millimetres(answer.clearance_sd)));
  put_plane(json, "move", answer.move);
  Json figures = Json::array();
  for (const working::Figure& figure : answer.figures) {
    figures.push_back(figure_json(figure, with_working));
  }
  json["figures"] = std::move(figures);
  return text(json);
}

}  // namespace steamworthy::wire
