// Shift handover, and what is left behind when a test stops: where things stand now.
#include <algorithm>
#include <map>

#include "boiler/tokens.h"
#include "closing/stage.h"
#include "report/blocks.h"
#include "report/closure_marks.h"
#include "report/leaks.h"
#include "report/papers.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

void blank_handover(const Context& context, paper::Flow& flow) {
  fill_in(context, flow, {"paper.day", "paper.shift", "paper.stage_now", "paper.pressure_now"});
  cautions(context, flow, {"caution.count_at_shift", "caution.clearances_lapse"});
  const auto block = [&](const char* title, const std::vector<std::string>& columns, int rows) {
    flow.heading(context.title(title), 2);
    blank_table(context, flow, columns, rows, {flow.width() * 0.3});
  };
  block("paper.locks_and_tags", {"paper.line", "paper.lock", "paper.whose", "paper.tried"}, 4);
  block("paper.people_inside", {"paper.name", "paper.space", "paper.in_at", "paper.way"}, 4);
  flow.heading(context.title("trade.temporary"), 2);
  paper::Table gear{{{context.say("paper.tag"), 18.0},
                     {context.say("paper.what")},
                     {context.say("paper.where"), 24.0},
                     {context.say("paper.on_now"), 20.0},
                     {context.say("paper.initials"), 22.0}},
                    {}};
  gear.ruled = true;
  for (const boiler::Temporary& one : context.boiler.temporaries)
    gear.rows.push_back({{{one.tag}, {one.name}, {one.where}, paper::tick_box(), {}}, 6.5});
  for (int i = 0; i < 2; ++i) gear.rows.push_back({{{}, {}, {}, paper::tick_box(), {}}, 6.5});
  flow.table(gear);
  block("paper.open_leaks", {"paper.place", "paper.rate_ml_per_min", "paper.decided"}, 4);
  block("paper.half_done", {"paper.plate", "paper.step_done", "paper.step_next"}, 4);
  block("paper.lapsed", {"paper.clearance", "paper.lapsed_because", "paper.to_do"}, 3);
}

/// What is done to a plate next, by the mark that it has.
std::string next_key(paper::Mark mark) {
  switch (mark) {
    case paper::Mark::Open:
      return "paper.next_clean";
    case paper::Mark::Cleaned:
      return "paper.next_nip_up";
    case paper::Mark::NippedUp:
    case paper::Mark::GapMeasured:
    case paper::Mark::Touched:
      return "paper.next_look";
    case paper::Mark::SeenDry:
      return "paper.next_harden_up";
    case paper::Mark::NotOpened:
    case paper::Mark::HardenedUp:
      break;
  }
  return "";
}

/// Plates that wait for their next step, a row a step.
void half_done(const Context& context, paper::Flow& flow) {
  std::map<paper::Mark, std::vector<std::string>> plates;
  for (const boiler::Closure& closure : context.boiler.closures) {
    // One that is not opened this time waits for nothing but to be looked at.
    const closing::ClosureState* now = at(context.filled->state().closures, closure.tag);
    if (now == nullptr || !now->opened) continue;
    const paper::Mark mark = mark_of(*context.filled, closure.tag).mark;
    if (!next_key(mark).empty()) plates[mark].push_back(closure.tag);
  }
  paper::Table table{{{context.say("paper.plate"), flow.width() * 0.5},
                      {context.say("paper.how_many"), 0.0, paper::Align::Right},
                      {context.say("paper.step_done")},
                      {context.say("paper.step_next")}},
                     {}};
  table.ruled = true;
  for (const auto& [mark, tags] : plates) {
    table.rows.push_back({{{joined(tags)},
                           {std::to_string(tags.size())},
                           {context.say(mark_key(mark))},
                           {context.say(next_key(mark))}}});
  }
  if (table.rows.empty()) flow.paragraph(context.say("paper.no_half_done"));
  for (int i = spare_rows(context, 1, 2); i > 0; --i) table.rows.push_back(empty_row(4));
  flow.table(table);
}

void filled_handover(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  const facts::Fact* shift = filled.last<facts::ShiftHandedOver>();
  std::string shifts;
  if (shift != nullptr) {
    const auto& body = std::get<facts::ShiftHandedOver>(shift->body);
    shifts = context.say("paper.shift_from_to", {{"from", body.from}, {"to", body.to}});
  }
  answered(context, flow,
           {{"paper.day", filled.now()},
            {"paper.shift", shifts},
            {"paper.stage_now", stage_now(context)},
            {"paper.pressure_now", gauges_now(context)}});
  cautions(context, flow, {"caution.count_at_shift", "caution.clearances_lapse"});
  const auto part = [&](const char* title, void (*table)(const Context&, paper::Flow&)) {
    flow.heading(context.title(title), 2);
    table(context, flow);
  };
  part("paper.people_inside", inside_table);
  part("paper.still_on_and_locked", still_on_table);
  part("paper.open_leaks", [](const Context& c, paper::Flow& f) { leak_table(c, f, true); });
  part("paper.half_done", half_done);
  part("paper.lapsed", lapsed_table);
  const facts::StepName next = closing::next_clearance(filled.state(), filled.terms()).step;
  flow.heading(context.say("paper.outstanding_for",
                           {{"step", context.say("clearance." + std::string(facts::token(next)))}}),
               2);
  outstanding_table(context, flow, next);
  if (shift != nullptr) {
    const auto& body = std::get<facts::ShiftHandedOver>(shift->body);
    signed_by(context, flow,
              {{"paper.given_by", shift, body.from}, {"paper.received_by", shift, body.to}});
  } else {
    signatures(context, flow, {"paper.given_by", "paper.received_by"});
  }
}

}  // namespace

paper::Document handover_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "handover", context.say("paper.kind_handover"));
  if (context.filled != nullptr) {
    filled_handover(context, flow);
  } else {
    blank_handover(context, flow);
    signatures(context, flow, {"paper.given_by", "paper.received_by"});
  }
  return flow.finish();
}

}  // namespace steamworthy::report
