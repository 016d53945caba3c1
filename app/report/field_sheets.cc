// Sheets to fill by hand at the boiler: pressure log, tally, handover, left safe, taking over.
#include <algorithm>

#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/papers.h"
#include "report/sheet_sections.h"

namespace steamworthy::report {
namespace {

/// For each gauge: go to, never above. Nothing where no gauge is described.
void gauge_figures(const Papers& papers, paper::Flow& flow) {
  const Context& context = papers.context;
  paper::Table table{{{context.say("paper.gauge")},
                      {context.say("sheet.gauge_go_to"), 0.0, paper::Align::Right},
                      {context.say("sheet.gauge_never_above"), 0.0, paper::Align::Right}},
                     {},
                     {10.0, false}};
  for (const boiler::Gauge& gauge : context.boiler.gauges) {
    paper::Row row{{{gauge.tag + ", " + gauge.name}}};
    for (const char* key : {"sheet.gauge_go_to", "sheet.gauge_never_above"}) {
      const working::Figure* one = sheet::find_figure(papers.sheet, key, gauge.tag);
      row.cells.push_back({one ? value_text(context, *one) : "", true});
    }
    table.rows.push_back(std::move(row));
  }
  flow.table(table);
}

void count_before_closing(const Context& context, paper::Flow& flow) {
  flow.heading(context.title("paper.count"), 2);
  tick_list(context, flow,
            {context.say("paper.count_people"), context.say("paper.count_tools"),
             context.say("paper.count_lamp"), context.say("paper.count_called")});
  signatures(context, flow, {"paper.count_first", "paper.count_second"});
  cautions(context, flow, {"caution.nobody_inside"});
}

std::string named(const std::string& tag, const std::string& name) {
  if (tag.empty()) return name;
  return name.empty() ? tag : tag + ", " + name;
}

}  // namespace

paper::Document pressure_log(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "pressure-log", context.say("paper.kind_pressure_log"), true);
  gauge_figures(papers, flow);
  fill_in(context, flow, {"paper.day", "paper.barometer_read"});
  signatures(context, flow, {"paper.pump_hand_name", "paper.gauge_reader", "paper.sign_witness"});
  cautions(context, flow,
           {"caution.pump_attended", "caution.pump_side_hung_open", "caution.yielding"});
  paper::Table table;
  table.ruled = true;
  table.columns.push_back({context.say("paper.time"), 15.0});
  for (const boiler::Gauge& gauge : context.boiler.gauges)
    table.columns.push_back({gauge.tag + ", " + context.unit(units::Kind::GaugePressure), 22.0});
  if (context.boiler.gauges.empty())
    table.columns.push_back({head(context, "paper.pressure", units::Kind::GaugePressure), 22.0});
  const auto add = [&](const std::string& words, double width) {
    table.columns.push_back({words, width});
  };
  const std::string degrees = context.unit(units::Kind::Temperature);
  if (context.boiler.thermometers.empty())
    add(head(context, "paper.water", units::Kind::Temperature), 18.0);
  for (const boiler::Thermometer& one : context.boiler.thermometers)
    add(one.tag + " " + context.say("kind." + std::string(boiler::token(one.on))) + ", " + degrees,
        18.0);
  add(context.say("sheet.strokes_to_stage"), 17.0);
  add(head(context, "paper.pumped", units::Kind::Volume), 18.0);
  add(context.say("paper.what_happened"), 0.0);
  add(context.say("paper.initials"), 14.0);
  const std::size_t columns = table.columns.size();
  const auto rows = [&](const std::string& band, int count) {
    table.rows.push_back({{}, 0.0, band});
    for (int i = 0; i < count; ++i)
      table.rows.push_back({std::vector<paper::Cell>(columns), writing_height});
  };
  bool any = false;
  for (const sheet::Section& section : papers.sheet.sections) {
    for (const working::Figure& one : section.figures) {
      if (one.key != "sheet.stage_pressure") continue;
      any = true;
      rows(context.say("paper.raising_to",
                       {{"stage", working::Term{one.subject}}, {"pressure", *one.value}}),
           4);
    }
  }
  if (!any) rows(context.say("trade.pump_up"), 12);
  rows(context.say("trade.hold"), 18);
  rows(context.say("paper.letting_down"), 4);
  flow.table(table);
  return flow.finish();
}

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
    fill_in(context, flow, {"paper.attendant", "paper.rescue"});
    flow.heading(context.title("paper.air_readings"), 2);
    blank_table(context, flow,
                {"paper.time", "paper.where_in_space", "paper.oxygen", "paper.flammable",
                 "paper.toxic", "paper.measured_by"},
                4, {18.0});
    flow.heading(context.title("paper.people_inside"), 2);
    blank_table(context, flow,
                {"paper.name", "paper.in_at", "paper.out_at", "paper.way", "paper.attendant"}, 7,
                {flow.width() * 0.34});
    flow.heading(context.title("paper.tools_inside"), 2);
    blank_table(context, flow,
                {"paper.tool", "paper.how_many", "paper.in_at", "paper.out_at", "paper.initials"},
                7, {flow.width() * 0.4});
    count_before_closing(context, flow);
  }
  return flow.finish();
}

paper::Document handover_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "handover", context.say("paper.kind_handover"));
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
  signatures(context, flow, {"paper.given_by", "paper.received_by"});
  return flow.finish();
}

paper::Document leave_safe_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "leave-safe", context.say("paper.kind_leave_safe"));
  flow.heading(context.title("paper.where_things_stand"));
  fill_in(context, flow,
          {"paper.day", "paper.stopped_by", "paper.why_stopped", "paper.stage_now",
           "paper.pressure_now", "paper.water_level_now", "paper.water_now", "paper.metal_now"});
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
  flow.heading(context.title("paper.afterwards"));
  fill_in(
      context, flow,
      {"paper.call_first", "paper.call_then", "paper.earliest_retest", "paper.not_before_what"});
  signatures(context, flow, {"paper.sign_left", "paper.received_by"});
  return flow.finish();
}

paper::Document taking_over_sheet(const Papers& papers) {
  const Context& context = papers.context;
  const boiler::Boiler& boiler = context.boiler;
  paper::Flow flow = begin(context, "taking-over", context.say("paper.kind_taking_over"));
  cautions(context, flow, {"caution.temporaries_off_before_steam", "caution.local_rules"});
  const auto list = [&](const char* title, const std::vector<std::string>& what) {
    if (what.empty()) return;
    flow.heading(context.title(title), 2);
    tick_list(context, flow, what);
  };
  std::vector<std::string> off, lines, safety, proved, inside;
  for (const boiler::Temporary& one : boiler.temporaries)
    off.push_back(context.say("paper.off_seen_off", {{"tag", one.tag}, {"name", one.name}}));
  for (const boiler::Isolation& one : boiler.isolations)
    lines.push_back(context.say("paper.line_back", {{"tag", one.tag}, {"pipe", one.pipe}}));
  for (const boiler::Mounting& one : boiler.mountings) {
    const std::string name = named(one.tag, one.name);
    switch (one.kind) {
      case boiler::MountingKind::SafetyValve:
        safety.push_back(
            one.setting ? context.say("paper.valve_back",
                                      {{"valve", name}, {"setting", units::measure(*one.setting)}})
                        : context.say("paper.valve_back_unset", {{"valve", name}}));
        break;
      case boiler::MountingKind::GaugeGlass:
        proved.push_back(context.say("paper.glass_blown", {{"glass", name}}));
        break;
      case boiler::MountingKind::LowWaterCutOut:
        proved.push_back(context.say("paper.cut_out_proved", {{"cut_out", name}}));
        break;
      case boiler::MountingKind::PressureGauge:
        proved.push_back(context.say("paper.gauge_back", {{"gauge", name}}));
        break;
      default:
        break;
    }
  }
  for (const boiler::Internal& one : boiler.internals)
    inside.push_back(context.say("paper.internal_in",
                                 {{"name", named(one.tag, one.name)}, {"held", one.held_by}}));
  list("trade.temporary", off);
  list("paper.lines", lines);
  list("trade.internals", inside);
  list("paper.safety_valves", safety);
  list("paper.prove", proved);
  list("paper.water_and_fire",
       {context.say("paper.refilled"), context.say("paper.hangers_free"),
        context.say("paper.first_steam_look"), context.say("paper.open_leaks_none")});
  flow.heading(context.title("paper.certificate"), 2);
  fill_in(context, flow, {"paper.inspector_form", "paper.record_number"});
  signatures(context, flow, {"paper.given_by", "paper.received_by", "paper.sign_inspector"});
  return flow.finish();
}

}  // namespace steamworthy::report
