// The walkdown: every place to look in the order of walking.
#include <algorithm>
#include <map>

#include "boiler/layout.h"
#include "boiler/places.h"
#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/leaks.h"
#include "report/papers.h"
#include "report/sheet_sections.h"
#include "report/standing.h"

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

/// The head of a list that is filled: what was seen, who looked, who signed.
void seen_head(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  const Seen seen = seen_dry(filled);
  std::string days = seen.first == nullptr ? "" : when(*seen.first).substr(0, 10);
  if (seen.last != nullptr && when(*seen.last).substr(0, 10) != days)
    days += " – " + when(*seen.last).substr(0, 10);
  answered(
      context, flow,
      {{"paper.day", days},
       {"paper.seen_under", seen.lowest ? context.print(units::measure(*seen.lowest)) : ""},
       {"paper.places_seen_dry", std::to_string(seen.dry) + " / " + std::to_string(seen.places)},
       {"paper.leaks_open", std::to_string(leaks_of(filled, true).size())}});
  std::vector<Signed> rows;
  for (const auto& [who, fact] : seen.by) rows.push_back({"paper.walker", fact});
  if (rows.size() < 2) rows.push_back({rows.empty() ? "paper.walker" : "paper.second_walker"});
  for (Signed& one : signatures_given(filled)) rows.push_back(std::move(one));
  signed_by(context, flow, rows);
}

/// The last four cells of a place: dry, leaking, drops a minute, who and when.
std::vector<paper::Cell> seen_cells(const Context& context, const std::string& place) {
  if (context.filled == nullptr) return {paper::tick_box(), paper::tick_box(), {}, {}};
  const Filled& filled = *context.filled;
  const closing::Condition* dry = at(filled.state().dry, place);
  const bool is_dry = dry != nullptr && dry->holds;
  std::string numbers, drops;
  const facts::Fact* found = nullptr;
  for (const std::string& number : leaks_at(filled, place)) {
    numbers += (numbers.empty() ? "" : ", ") + number;
    const facts::Fact* last = filled.last<facts::LeakFound>(number);
    if (last == nullptr) continue;
    found = last;
    const auto& body = std::get<facts::LeakFound>(last->body);
    if (body.drops) drops = context.number(units::measure_count(body.drops->value));
  }
  if (!is_dry && numbers.empty()) return {paper::tick_box(), paper::tick_box(), {}, {}};
  return {is_dry ? tick(true) : paper::tick_box(),
          {numbers, true},
          {drops},
          {who_when(is_dry ? filled.last<facts::PlaceSeenDry>(place) : found)}};
}

}  // namespace

paper::Document walkdown_list(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "walkdown", context.say("paper.kind_walkdown"));
  cautions(context, flow, {"caution.walkdown", "caution.no_wrench_under_pressure"});
  const auto steps = walk(context.boiler);
  if (context.filled != nullptr) {
    seen_head(context, flow);
  } else {
    fill_in(context, flow, {"paper.day", "paper.pressure_now"});
    signatures(context, flow, {"paper.walker", "paper.second_walker", "paper.sign_witness"});
  }
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
       {context.say("paper.leaking"), context.filled ? 15.0 : 13.0},
       {context.say("paper.drops_per_min"), context.filled ? 19.0 : 17.0},
       context.filled == nullptr ? paper::Column{context.say("paper.initials"), 14.0}
                                 : paper::Column{context.say("paper.who_and_when"), 29.0}},
      {},
      {8.0, false}};
  table.ruled = true;
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
    paper::Row row{{{step.place.tag, true},
                    {what(context, step.place)},
                    {context.number(units::measure(step.place.level))},
                    {known ? context.number(*it->second->value) : "?"}},
                   5.6};
    for (paper::Cell& cell : seen_cells(context, step.place.tag))
      row.cells.push_back(std::move(cell));
    table.rows.push_back(std::move(row));
  }
  if (steps.empty()) {
    flow.paragraph(context.say("paper.no_places"), {10.0, true}, "!");
    const paper::Cell box = paper::tick_box();
    for (int i = 0; i < 22; ++i)
      table.rows.push_back({{{}, {}, {}, {}, box, box, {}, {}}, writing_height});
  }
  flow.table(table);
  if (context.filled != nullptr) {
    flow.heading(context.title("paper.leaks"), 2);
    leak_table(context, flow, false);
  }
  for (const auto& [tag, figure] : pressures) {
    if (figure->is_known()) continue;
    flow.paragraph("? " + value_text(context, *figure), {8.5, false});
    break;
  }
  return flow.finish();
}

}  // namespace steamworthy::report
