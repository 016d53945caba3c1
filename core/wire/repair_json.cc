#include "wire/repair_json.h"

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

Json leak_json(const repair::LeakPlan& one) {
  Json cures = Json::array();
  for (const repair::Cure cure : one.cures) cures.push_back(repair::token(cure));
  Json json{{"number", one.leak.number},
            {"place", one.leak.place},
            {"at", facts::token(one.leak.at)},
            {"cures", std::move(cures)},
            {"cure", repair::token(one.cure)}};
  if (one.leak.drops_per_min) {
    put_measure(json, "drops_per_min", units::measure_count(*one.leak.drops_per_min));
  }
  if (const auto action = repair::action_of(one.cure)) json["action"] = repair::token(*action);
  json["needs_drop"] = one.needs_drop;
  json["comes_free"] = one.comes_free;
  json["may_be_watched_hot"] = one.may_be_watched_hot;
  if (one.work.free_below) put_measure(json, "free_below", units::measure(*one.work.free_below));
  put_measure(json, "out_alone", units::measure(one.out_alone));
  json["above"] = one.above;
  json["notes"] = messages_json(one.notes);
  return json;
}

Json drop_json(const repair::Drop& drop) {
  Json json{{"open", drop.open}};
  put_measure(json, "out", units::measure(drop.out));
  Json left = Json::array();
  for (const repair::PartWater& part : drop.left) {
    Json row{{"part", part.part}};
    if (part.stays_below) put_measure(row, "stays_below", units::measure(*part.stays_below));
    put_measure(row, "held", units::measure(part.held));
    left.push_back(std::move(row));
  }
  json["left"] = std::move(left);
  Json stuck = Json::array();
  for (const repair::Stuck& part : drop.stuck) {
    Json row{{"part", part.part}};
    if (part.stays_below) put_measure(row, "stays_below", units::measure(*part.stays_below));
    put_measure(row, "asked", units::measure(part.asked));
    stuck.push_back(std::move(row));
  }
  json["stuck"] = std::move(stuck);
  if (drop.cannot_tell) json["cannot_tell"] = message_json(*drop.cannot_tell);
  return json;
}

}  // namespace

std::string repair_json(const repair::Plan& plan, bool with_working) {
  Json leaks = Json::array();
  for (const repair::LeakPlan& one : plan.leaks) leaks.push_back(leak_json(one));
  Json figures = Json::array();
  for (const working::Figure& figure : plan.figures) {
    figures.push_back(figure_json(figure, with_working));
  }
  return text(Json{{"leaks", std::move(leaks)},
                   {"drop", drop_json(plan.drop)},
                   {"figures", std::move(figures)},
                   {"notes", messages_json(plan.notes)}});
}

std::string in_the_way_json(const std::vector<working::Message>& ways) {
  return text(messages_json(ways));
}

}  // namespace steamworthy::wire
