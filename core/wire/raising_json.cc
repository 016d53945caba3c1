#include "wire/raising_json.h"

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

Json figures_json(const std::vector<working::Figure>& figures, bool with_working) {
  Json list = Json::array();
  for (const working::Figure& figure : figures) list.push_back(figure_json(figure, with_working));
  return list;
}

}  // namespace

std::string before_fire_json(const std::vector<raising::Item>& items) {
  Json list = Json::array();
  for (const raising::Item& item : items) {
    Json row{{"task", raising::token(item.task)},
             {"subject", item.subject},
             {"where", item.where},
             {"done", item.done}};
    if (!item.reason.empty()) row["reason"] = message_json(item.reason);
    row["remedy"] = message_json(item.remedy);
    row["role"] = facts::token(item.role);
    list.push_back(std::move(row));
  }
  return text(list);
}

std::string first_steam_json(const raising::FirstSteam& steam, bool with_working) {
  Json rounds = Json::array();
  for (const raising::Round& round : steam.rounds) {
    Json places = Json::array();
    for (const raising::ToLook& place : round.places) {
      Json row{{"subject", place.subject}};
      if (!place.leak.empty()) row["leak"] = place.leak;
      row["why"] = raising::token(place.why);
      places.push_back(std::move(row));
    }
    rounds.push_back(Json{{"pressure", figure_json(round.pressure, with_working)},
                          {"places", std::move(places)}});
  }
  return text(Json{{"rounds", std::move(rounds)}, {"notes", messages_json(steam.notes)}});
}

std::string start_level_json(const raising::StartLevel& start, bool with_working) {
  return text(Json{{"figures", figures_json(start.figures, with_working)},
                   {"stops", messages_json(start.stops)},
                   {"notes", messages_json(start.notes)},
                   {"open", start.drop.open}});
}

}  // namespace steamworthy::wire
