// Stop and leave safe: where things stand, how to let down, what stays on, whom to call.
#include "closing/stage.h"
#include "report/blocks.h"
#include "report/leaks.h"
#include "report/papers.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

void stands_now(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  const facts::Fact* stopped = filled.last<facts::TestStopped>();
  const auto& state = filled.state();
  answered(
      context, flow,
      {{"paper.day", filled.now()},
       {"paper.stage_now", stage_now(context)},
       {"paper.stopped_by", stopped ? stopped->person + ", " + when(*stopped) : ""},
       {"paper.why_stopped", stopped ? std::get<facts::TestStopped>(stopped->body).reason : ""},
       {"paper.pressure_now", gauges_now(context)},
       {"paper.water_level_now", state.level && state.level_known.holds
                                     ? context.print(units::measure(*state.level))
                                     : context.say(state.full.holds      ? "paper.full"
                                                   : state.drained.holds ? "paper.drained"
                                                                         : "paper.not_known")},
       {"paper.water_now", temperatures_now(context, facts::Thing::Water)},
       {"paper.metal_now", temperatures_now(context, facts::Thing::Metal)}});
}

void blank_gear(const Context& context, paper::Flow& flow) {
  paper::Table table{{{context.say("paper.tag"), 18.0},
                      {context.say("paper.what")},
                      {context.say("paper.where"), 26.0},
                      {context.say("paper.still_on"), 20.0},
                      {context.say("paper.seen_by"), 34.0}},
                     {}};
  table.ruled = true;
  for (const boiler::Temporary& one : context.boiler.temporaries)
    table.rows.push_back({{{one.tag}, {one.name}, {one.where}, paper::tick_box(), {}}, 7.0});
  for (const boiler::Isolation& one : context.boiler.isolations)
    table.rows.push_back({{{one.tag}, {one.pipe}, {}, paper::tick_box(), {}}, 7.0});
  for (int i = 0; i < 3; ++i) table.rows.push_back({{{}, {}, {}, paper::tick_box(), {}}, 7.0});
  flow.table(table);
}

}  // namespace

paper::Document leave_safe_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "leave-safe", context.say("paper.kind_leave_safe"));
  flow.heading(context.title("paper.where_things_stand"));
  if (context.filled != nullptr) {
    stands_now(context, flow);
  } else {
    fill_in(context, flow,
            {"paper.day", "paper.stopped_by", "paper.why_stopped", "paper.stage_now",
             "paper.pressure_now", "paper.water_level_now", "paper.water_now", "paper.metal_now"});
  }
  flow.heading(context.title("paper.let_down"));
  std::vector<std::string> steps;
  for (const char* key :
       {"paper.step_pump_off", "paper.step_people", "paper.step_down", "paper.step_vent",
        "paper.step_left_full", "paper.step_drain", "paper.step_signs"})
    steps.push_back(context.say(key));
  tick_list(context, flow, steps);
  const working::Figure* swing = sheet::find_figure(papers.sheet, "sheet.bar_per_kelvin");
  if (swing != nullptr && swing->is_known()) {
    flow.paragraph(context.say("paper.one_degree", {{"swing", *swing->value}}), {9.0, true}, "!");
  }
  cautions(context, flow, {"caution.let_down_slowly", "caution.shut_solid"});
  flow.heading(context.title("paper.stays_on"));
  if (context.filled != nullptr) {
    still_on_table(context, flow);
    flow.heading(context.title("paper.open_leaks"));
    leak_table(context, flow, true);
  } else {
    blank_gear(context, flow);
  }
  flow.heading(context.title("paper.afterwards"));
  const facts::Fact* left =
      context.filled == nullptr ? nullptr : context.filled->last<facts::BoilerLeftSafe>();
  answered(context, flow,
           {{"paper.call_first", left ? std::get<facts::BoilerLeftSafe>(left->body).call : ""},
            {"paper.call_then", ""},
            {"paper.earliest_retest", ""},
            {"paper.not_before_what", ""}});
  if (context.filled != nullptr) {
    const facts::StepName next =
        closing::next_clearance(context.filled->state(), context.filled->terms()).step;
    flow.heading(
        context.say("paper.outstanding_for",
                    {{"step", context.say("clearance." + std::string(facts::token(next)))}}),
        2);
    outstanding_table(context, flow, next);
  }
  signed_by(context, flow, {{"paper.sign_left", left}, {"paper.received_by"}});
  return flow.finish();
}

}  // namespace steamworthy::report
