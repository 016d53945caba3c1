// Lists: the walkdown, the register of blanks, gags and test gear, the isolations.
#include <algorithm>
#include <map>

#include "boiler/layout.h"
#include "boiler/places.h"
#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/papers.h"
#include "report/sheet_sections.h"

namespace steamworthy::report {
namespace {

using boiler::PlaceToLook;
using boiler::View;

/// How far a person sees and reaches from one stand; common practice, no source.
constexpr double stand_height_m = 2.0;

View side_of(const boiler::Boiler& boiler, const PlaceToLook& place,
             std::map<std::string, View>& sides) {
  if (const boiler::Closure* closure = boiler::find_closure(boiler, place.about)) {
    switch (closure->side) {
      case boiler::Side::Front:
        return View::Front;
      case boiler::Side::Right:
        return View::Right;
      case boiler::Side::Rear:
        return View::Rear;
      case boiler::Side::Left:
        return View::Left;
      case boiler::Side::Top:
      case boiler::Side::Bottom:
        break;
    }
  }
  const auto it = sides.find(place.part);
  if (it != sides.end()) return it->second;
  return sides[place.part] = boiler::side_of(boiler, place.part);
}

struct Step {
  PlaceToLook place;
  View side = View::Front;
  int stand = 0;
  double at = 0.0;  ///< along its part
};

/// From the top down, stand by stand; on each from the front round by the right, the rear and the
/// left; there along each part.
std::vector<Step> walk(const boiler::Boiler& boiler) {
  std::vector<Step> steps;
  std::map<std::string, View> sides;
  for (const PlaceToLook& place : boiler::places_to_look(boiler)) {
    Step step{place, side_of(boiler, place, sides)};
    const boiler::Closure* closure = boiler::find_closure(boiler, place.about);
    if (closure != nullptr && closure->position) step.at = closure->position->si();
    steps.push_back(std::move(step));
  }
  std::stable_sort(steps.begin(), steps.end(),
                   [](const Step& a, const Step& b) { return a.place.level > b.place.level; });
  int stand = 0;
  double top = 0.0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const double level = steps[i].place.level.si();
    if (i == 0) top = level;
    if (level < top - stand_height_m) top = level, ++stand;
    steps[i].stand = stand;
  }
  std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) {
    if (a.stand != b.stand) return a.stand < b.stand;
    if (a.side != b.side) return a.side < b.side;
    if (a.place.part != b.place.part) return a.place.part < b.place.part;
    return a.at < b.at;
  });
  return steps;
}

std::string what(const Context& context, const PlaceToLook& place) {
  std::string text = kind(context, boiler::token(place.kind));
  if (const boiler::Closure* closure = boiler::find_closure(context.boiler, place.about))
    text = kind(context, boiler::token(closure->kind));
  if (place.count > 1) text += " (" + std::to_string(place.count) + ")";
  if (const boiler::Mounting* mounting = boiler::find_mounting(context.boiler, place.about)) {
    text += ", " + mounting->name;
  } else if (const boiler::Part* part = boiler::find_part(context.boiler, place.part)) {
    text += ", " + part->name;
  }
  if (!place.name.empty()) text += ", " + place.name;
  return text;
}

const char* side_key(View side) {
  switch (side) {
    case View::Front:
      return "kind.front";
    case View::Right:
      return "kind.right";
    case View::Rear:
      return "kind.rear";
    case View::Left:
      return "kind.left";
  }
  return "";
}

}  // namespace

paper::Document walkdown_list(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "walkdown", context.say("paper.kind_walkdown"));
  cautions(context, flow, {"caution.walkdown", "caution.no_wrench_under_pressure"});
  fill_in(context, flow, {"paper.day", "paper.pressure_now"});
  signatures(context, flow, {"paper.walker", "paper.second_walker", "paper.sign_witness"});
  flow.paragraph(context.say("paper.walk_order"), {8.5, false});
  std::map<std::string, const working::Figure*> pressures;
  for (const sheet::Section& section : papers.sheet.sections) {
    if (section.key != "sheet.section.places") continue;
    for (const working::Figure& figure : section.figures) pressures[figure.subject] = &figure;
    for (const working::Message& note : section.notes)
      flow.paragraph(words::sentence(note, context.style), {8.5, false}, "–");
  }
  paper::Table table{
      {{context.say("trade.place_to_look")},
       {context.say("paper.what")},
       {head(context, "paper.level", units::Kind::Level), 0.0, paper::Align::Right},
       {head(context, "paper.pressure", units::Kind::GaugePressure), 0.0, paper::Align::Right},
       {context.say("paper.dry"), 10.0},
       {context.say("paper.leaking"), 13.0},
       {context.say("paper.drops_per_min"), 17.0},
       {context.say("paper.initials"), 14.0}},
      {},
      {8.0, false}};
  table.ruled = true;
  const auto steps = walk(context.boiler);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Step& step = steps[i];
    if (i == 0 || step.stand != steps[i - 1].stand || step.side != steps[i - 1].side) {
      units::Level low = step.place.level, high = step.place.level;
      for (const Step& other : steps) {
        if (other.stand != step.stand || other.side != step.side) continue;
        low = std::min(low, other.place.level);
        high = std::max(high, other.place.level);
      }
      table.rows.push_back(
          {{},
           0.0,
           context.say("paper.stand", {{"side", working::Term{side_key(step.side)}},
                                       {"from", units::measure(high)},
                                       {"to", units::measure(low)}})});
    }
    const auto it = pressures.find(step.place.tag);
    const bool known = it != pressures.end() && it->second->is_known();
    table.rows.push_back({{{step.place.tag, true},
                           {what(context, step.place)},
                           {context.number(units::measure(step.place.level))},
                           {known ? context.number(*it->second->value) : "?"},
                           paper::tick_box(),
                           paper::tick_box(),
                           {},
                           {}},
                          5.6});
  }
  if (steps.empty()) {
    flow.paragraph(context.say("paper.no_places"), {10.0, true}, "!");
    const paper::Cell box = paper::tick_box();
    for (int i = 0; i < 22; ++i)
      table.rows.push_back({{{}, {}, {}, {}, box, box, {}, {}}, writing_height});
  }
  flow.table(table);
  for (const auto& [tag, figure] : pressures) {
    if (figure->is_known()) continue;
    flow.paragraph("? " + value_text(context, *figure), {8.5, false});
    break;
  }
  return flow.finish();
}

paper::Document temporaries_register(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "temporaries", context.say("paper.kind_temporaries"), true);
  cautions(context, flow, {"caution.gags", "caution.temporaries_off_before_steam"});
  paper::Table table{{{context.say("paper.tag"), 18.0},
                      {context.say("paper.what")},
                      {context.say("paper.where"), 20.0},
                      {head(context, "paper.level", units::Kind::Level), 18.0, paper::Align::Right},
                      {context.say("paper.off_before"), 28.0},
                      {context.say("paper.on_by_at"), 40.0},
                      {context.say("paper.photo"), 14.0},
                      {context.say("paper.off_by_at"), 40.0},
                      {context.say("paper.seen_off_by"), 34.0}},
                     {}};
  table.ruled = true;
  for (const boiler::Temporary& one : context.boiler.temporaries) {
    table.rows.push_back({{{one.tag, true},
                           {kind(context, boiler::token(one.kind)) + ": " + one.name},
                           {one.where},
                           {context.number(units::measure(one.level))},
                           {kind(context, "before_" + std::string(boiler::token(one.off_before)))},
                           {},
                           paper::tick_box(),
                           {},
                           {}},
                          writing_height + 1.0});
  }
  const int blank = std::max<int>(4, 9 - static_cast<int>(context.boiler.temporaries.size()));
  for (int i = 0; i < blank; ++i) {
    table.rows.push_back(
        {{{}, {}, {}, {}, {}, {}, paper::tick_box(), {}, {}}, writing_height + 1.0});
  }
  flow.table(table);
  signatures(context, flow, {"paper.sign_gag_holder", "paper.sign_all_off"});
  return flow.finish();
}

paper::Document isolation_list(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "isolations", context.say("paper.kind_isolations"), true);
  cautions(context, flow, {"caution.isolation"});
  paper::Table table{{{context.say("paper.tag"), 16.0},
                      {context.say("paper.line")},
                      {context.say("paper.behind")},
                      {context.say("paper.how_isolated")},
                      {context.say("paper.first_valve"), 20.0},
                      {context.say("paper.second_valve"), 20.0},
                      {context.say("trade.tell_tale"), 20.0},
                      {context.say("paper.lock"), 22.0},
                      {context.say("paper.tried"), 14.0},
                      {context.say("paper.on_by_at"), 30.0},
                      {context.say("paper.off_by_at"), 30.0}},
                     {},
                     {8.0, false}};
  table.ruled = true;
  const paper::Cell box = paper::tick_box();
  for (const boiler::Isolation& one : context.boiler.isolations) {
    const bool two = one.how == boiler::IsolationKind::TwoValvesAndTellTale;
    std::string how = kind(context, boiler::token(one.how));
    if (!one.tell_tale.empty()) how += ": " + one.tell_tale;
    table.rows.push_back({{{one.tag, true},
                           {one.pipe},
                           {one.behind},
                           {how},
                           two ? box : paper::Cell{},
                           two ? box : paper::Cell{},
                           two ? box : paper::Cell{},
                           {},
                           box,
                           {},
                           {}},
                          writing_height + 1.0});
  }
  for (int i = 0; i < 3; ++i)
    table.rows.push_back({{{}, {}, {}, {}, box, box, box, {}, box, {}, {}}, writing_height + 1.0});
  flow.table(table);
  signatures(context, flow, {"paper.sign_isolated", "paper.sign_checked"});
  return flow.finish();
}

}  // namespace steamworthy::report
