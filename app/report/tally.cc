// Who and what is inside: a sheet a space, from the attendant to the count before it is closed.
#include <algorithm>

#include "report/blocks.h"
#include "report/papers.h"

namespace steamworthy::report {
namespace {

/// Somebody or something: in, and out if it came out.
struct Stay {
  std::string what;
  const facts::Fact* in = nullptr;
  const facts::Fact* out = nullptr;
};

/// Each entry with the next way out of the same name. What came out without having gone in stands
/// alone: it is a contradiction for a person to see.
template <class In, class Out>
std::vector<Stay> stays(const Filled& filled, const std::string& space,
                        const std::string& (*name)(const facts::Fact&)) {
  std::vector<Stay> all;
  for (const facts::Fact* fact : filled.facts()) {
    if (const auto* in = std::get_if<In>(&fact->body); in && in->space == space) {
      all.push_back({name(*fact), fact, nullptr});
    } else if (const auto* out = std::get_if<Out>(&fact->body); out && out->space == space) {
      const std::string& who = name(*fact);
      const auto open = std::find_if(all.begin(), all.end(), [&](const Stay& one) {
        return one.what == who && one.in != nullptr && one.out == nullptr;
      });
      if (open != all.end()) {
        open->out = fact;
      } else {
        all.push_back({who, nullptr, fact});
      }
    }
  }
  return all;
}

const std::string& person_of(const facts::Fact& fact) {
  if (const auto* in = std::get_if<facts::TallyIn>(&fact.body)) return in->who;
  return std::get<facts::TallyOut>(fact.body).who;
}

const std::string& tool_of(const facts::Fact& fact) {
  if (const auto* in = std::get_if<facts::ToolIn>(&fact.body)) return in->tool;
  return std::get<facts::ToolOut>(fact.body).tool;
}

std::string time_of(const facts::Fact* fact) { return fact == nullptr ? "" : when(*fact); }

/// Who attended at the space at that time: the last posted before it in the log's order.
std::string attendant_then(const Filled& filled, const std::string& space,
                           const facts::Fact* then) {
  std::string who;
  for (const facts::Fact* fact : filled.facts()) {
    if (fact == then) break;
    if (const auto* posted = std::get_if<facts::AttendantPosted>(&fact->body);
        posted && posted->space == space)
      who = posted->who;
    if (const auto* relieved = std::get_if<facts::AttendantRelieved>(&fact->body);
        relieved && relieved->space == space)
      who.clear();
  }
  return who;
}

std::string percent(const Context& context, double fraction) {
  return context.number(units::measure_percent(fraction));
}

void air_readings(const Context& context, paper::Flow& flow, const std::string& space) {
  flow.heading(context.title("paper.air_readings"), 2);
  if (context.filled == nullptr) {
    blank_table(context, flow,
                {"paper.time", "paper.where_in_space", "paper.oxygen", "paper.flammable",
                 "paper.toxic", "paper.measured_by"},
                4, {18.0});
    return;
  }
  paper::Table table{{{context.say("paper.time"), 28.0},
                      {context.say("paper.oxygen_heights")},
                      {context.say("paper.flammable")},
                      {context.say("paper.toxic")},
                      {context.say("paper.measured_by")}},
                     {}};
  table.ruled = true;
  for (const facts::Fact* fact : context.filled->all<facts::AirRead>(space)) {
    const auto& air = std::get<facts::AirRead>(fact->body);
    std::string toxic;
    const auto gas = [&](const char* key, const std::optional<facts::MeasuredNumber>& value) {
      if (!value) return;
      toxic += (toxic.empty() ? "" : "; ") +
               context.say(key, {{"ppm", units::measure_count(value->value)}});
    };
    gas("paper.carbon_monoxide", air.carbon_monoxide);
    gas("paper.hydrogen_sulfide", air.hydrogen_sulfide);
    std::string by = fact->person;
    if (!air.instrument.empty()) by += ", " + air.instrument;
    std::string oxygen = percent(context, air.oxygen_top.value) + " / " +
                         percent(context, air.oxygen_middle.value) + " / " +
                         percent(context, air.oxygen_bottom.value);
    if (!air.why_low.empty()) oxygen += "; " + air.why_low;
    table.rows.push_back({{{when(*fact)},
                           {oxygen},
                           {air.flammable ? percent(context, air.flammable->value) : ""},
                           {toxic},
                           {by}}});
  }
  for (int i = spare_rows(context, table.rows.size(), 4); i > 0; --i)
    table.rows.push_back(empty_row(5));
  flow.table(table);
}

void people(const Context& context, paper::Flow& flow, const boiler::Space& space) {
  flow.heading(context.title("paper.people_inside"), 2);
  paper::Table table;
  for (const char* key :
       {"paper.name", "paper.in_at", "paper.out_at", "paper.way", "paper.attendant"})
    table.columns.push_back({context.say(key)});
  table.columns.front().width = flow.width() * 0.34;
  table.ruled = true;
  if (context.filled != nullptr) {
    const auto all = stays<facts::TallyIn, facts::TallyOut>(*context.filled, space.tag, person_of);
    for (const Stay& stay : all) {
      const facts::Fact* first = stay.in != nullptr ? stay.in : stay.out;
      table.rows.push_back(
          {{{stay.what, true},
            {time_of(stay.in)},
            {stay.out ? time_of(stay.out) : context.say("paper.still_inside"), stay.out == nullptr},
            {},
            {attendant_then(*context.filled, space.tag, first)}}});
    }
  }
  for (int i = spare_rows(context, table.rows.size(), 7); i > 0; --i)
    table.rows.push_back(empty_row(5));
  flow.table(table);
}

void tools(const Context& context, paper::Flow& flow, const boiler::Space& space) {
  flow.heading(context.title("paper.tools_inside"), 2);
  paper::Table table;
  for (const char* key :
       {"paper.tool", "paper.how_many", "paper.in_at", "paper.out_at", "paper.initials"})
    table.columns.push_back({context.say(key)});
  table.columns.front().width = flow.width() * 0.4;
  table.ruled = true;
  if (context.filled != nullptr) {
    for (const Stay& stay :
         stays<facts::ToolIn, facts::ToolOut>(*context.filled, space.tag, tool_of)) {
      const facts::Fact* by = stay.out != nullptr ? stay.out : stay.in;
      table.rows.push_back(
          {{{stay.what, true},
            {"1"},
            {time_of(stay.in)},
            {stay.out ? time_of(stay.out) : context.say("paper.still_inside"), stay.out == nullptr},
            {by->person}}});
    }
  }
  for (int i = spare_rows(context, table.rows.size(), 7); i > 0; --i)
    table.rows.push_back(empty_row(5));
  flow.table(table);
}

void count(const Context& context, paper::Flow& flow, const std::string& space) {
  flow.heading(context.title("paper.count"), 2);
  const facts::Fact* last =
      context.filled == nullptr ? nullptr : context.filled->last<facts::SpaceCounted>(space);
  if (last == nullptr) {
    tick_list(context, flow,
              {context.say("paper.count_people"), context.say("paper.count_tools"),
               context.say("paper.count_lamp"), context.say("paper.count_called")});
    signatures(context, flow, {"paper.count_first", "paper.count_second"});
    cautions(context, flow, {"caution.nobody_inside"});
    return;
  }
  paper::Table table{{{context.say("paper.time"), 28.0},
                      {context.say("paper.people_found"), 0.0, paper::Align::Right},
                      {context.say("paper.things_found"), 0.0, paper::Align::Right},
                      {context.say("paper.count_lamp")},
                      {context.say("paper.count_called")},
                      {context.say("paper.count_first")},
                      {context.say("paper.count_second")}},
                     {}};
  table.ruled = true;
  for (const facts::Fact* fact : context.filled->all<facts::SpaceCounted>(space)) {
    const auto& one = std::get<facts::SpaceCounted>(fact->body);
    table.rows.push_back({{{when(*fact)},
                           {std::to_string(one.people_inside), true},
                           {std::to_string(one.tools_inside), true},
                           {context.say(one.looked_in ? "answer.yes" : "answer.no")},
                           {context.say(one.called ? "answer.yes" : "answer.no")},
                           {fact->person, true},
                           {one.second, true}}});
  }
  flow.table(table);
  const closing::SpaceState* now = at(context.filled->state().spaces, space);
  if (now != nullptr && now->count && !now->count->valid && !now->closed.holds)
    flow.paragraph(context.say("paper.count_void"), {9.0, true}, "!");
  cautions(context, flow, {"caution.nobody_inside"});
}

}  // namespace

paper::Document tally_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "tally", context.say("paper.kind_tally"));
  std::vector<boiler::Space> spaces = context.boiler.spaces;
  if (spaces.empty()) {
    flow.paragraph(context.say("paper.no_spaces"));
    fill_in(context, flow, {"paper.space", "paper.day"});
    spaces.push_back({"", context.title("paper.space"), boiler::SpaceSide::Water, {}});
  }
  bool first = true;
  for (const boiler::Space& space : spaces) {
    if (!first) flow.new_page();
    first = false;
    flow.heading(named(space.tag, space.name));
    std::string ways;
    for (const boiler::WayIn& way : context.boiler.ways_in) {
      if (way.space != space.tag) continue;
      ways += (ways.empty() ? "" : "; ") + way.tag + " " +
              (way.closure.empty() ? way.name : way.closure);
    }
    flow.paragraph(context.say("paper.ways_in", {{"ways", ways.empty() ? "–" : ways}}));
    cautions(context, flow, {"caution.isolation", "caution.confined_space"});
    const closing::SpaceState* now =
        context.filled ? at(context.filled->state().spaces, space.tag) : nullptr;
    const bool attended = now != nullptr && now->attended.holds;
    answered(context, flow,
             {{"paper.attendant", attended ? now->attendant : ""}, {"paper.rescue", ""}});
    air_readings(context, flow, space.tag);
    people(context, flow, space);
    tools(context, flow, space);
    count(context, flow, space.tag);
  }
  return flow.finish();
}

}  // namespace steamworthy::report
