// The test sheet: first what the pump hand needs, in large type; then every figure with its
// working.
#include <set>

#include "report/blocks.h"
#include "report/papers.h"
#include "report/sheet_sections.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

using working::Figure;

const Figure* figure(const sheet::Sheet& sheet, const std::string& key,
                     const std::string& subject = "") {
  return sheet::find_figure(sheet, key, subject);
}

/// The first figure of that key, whatever it is about.
const Figure* any_figure(const sheet::Sheet& sheet, const std::string& key) {
  for (const sheet::Section& section : sheet.sections) {
    for (const Figure& one : section.figures) {
      if (one.key == key) return &one;
    }
  }
  return nullptr;
}

std::string value(const Context& context, const Figure* one) {
  return one == nullptr ? "" : value_text(context, *one);
}

std::string water_between(const Papers& papers) {
  const Figure* from = any_figure(papers.sheet, "rules.temperature_from");
  const Figure* to = any_figure(papers.sheet, "rules.temperature_to");
  const bool has_from = from && from->is_known(), has_to = to && to->is_known();
  const Context& context = papers.context;
  if (has_from && has_to) {
    return context.say("paper.between", {{"from", *from->value}, {"to", *to->value}});
  }
  if (has_from) return context.say("paper.at_least", {{"from", *from->value}});
  if (has_to) return context.say("paper.at_most", {{"to", *to->value}});
  return context.say("paper.rule_names_none");
}

/// The one that everybody repeated last.
std::string stop_word(const Context& context) {
  const facts::Fact* fact =
      context.filled == nullptr ? nullptr : context.filled->last<facts::StopWordChecked>();
  return fact == nullptr ? "" : std::get<facts::StopWordChecked>(fact->body).word;
}

/// Who stands at that post, or stood there last.
std::string who_at(const Context& context, facts::Post post) {
  if (context.filled == nullptr) return "";
  std::string who;
  for (const facts::Fact* fact : context.filled->all<facts::PostTaken>()) {
    const auto& taken = std::get<facts::PostTaken>(fact->body);
    if (taken.post == post) who = taken.who;
  }
  return who;
}

/// Who mans the vents.
std::string who_at_vents(const Context& context) {
  std::set<std::string> who;
  if (context.filled != nullptr) {
    for (const facts::Fact* fact : context.filled->all<facts::VentManned>())
      who.insert(std::get<facts::VentManned>(fact->body).who);
  }
  return joined({who.begin(), who.end()});
}

void pump_hand(const Papers& papers, paper::Flow& flow) {
  const Context& context = papers.context;
  flow.heading(context.title("paper.for_the_pump_hand"));
  for (const auto& stop : papers.sheet.stops)
    flow.paragraph(context.say("paper.stop") + ": " + words::sentence(stop, context.style),
                   {13.0, true}, "!");
  for (const auto& missing : papers.sheet.missing)
    flow.paragraph(context.say("paper.missing") + ": " + words::sentence(missing, context.style),
                   {10.0, true}, "!");
  paper::Table gauges{{{context.say("paper.gauge")},
                       {context.say("sheet.gauge_go_to"), flow.width() * 0.36},
                       {context.say("sheet.gauge_never_above"), flow.width() * 0.36}},
                      {},
                      {17.0, false}};
  for (const boiler::Gauge& gauge : context.boiler.gauges) {
    gauges.rows.push_back(
        {{{gauge.tag, true},
          {value(context, figure(papers.sheet, "sheet.gauge_go_to", gauge.tag)), true},
          {value(context, figure(papers.sheet, "sheet.gauge_never_above", gauge.tag)), true}}});
  }
  if (gauges.rows.empty())
    flow.paragraph(context.say("sheet.no_gauge_described"), {13.0, true}, "!");
  flow.table(gauges);
  const Figure* hold = any_figure(papers.sheet, "sheet.hold_time");
  const std::string hold_text =
      hold && hold->is_known() ? value(context, hold) : context.say("paper.hold_not_told");
  flow.table({{{"", flow.width() * 0.28}, {""}},
              {{{{context.say("paper.water_between")}, {water_between(papers), true}}},
               {{{context.say("sheet.hold_time")}, {hold_text, true}}},
               {{{context.say("paper.stop_word")}, {stop_word(context), true}}, 14.0}},
              {15.0, false}});
  flow.paragraph(context.say("paper.stop_word_rule"), {11.0, false});
}

void stages(const Papers& papers, paper::Flow& flow) {
  const Context& context = papers.context;
  paper::Table table{{{context.say("paper.stage")},
                      {context.say("paper.at_reference"), 0.0, paper::Align::Right},
                      {context.say("sheet.litres_to_stage"), 0.0, paper::Align::Right},
                      {context.say("sheet.strokes_to_stage"), 0.0, paper::Align::Right},
                      {context.say("sheet.time_to_stage"), 0.0, paper::Align::Right}},
                     {},
                     {10.5, false}};
  for (const sheet::Section& section : papers.sheet.sections) {
    for (const Figure& one : section.figures) {
      if (one.key != "sheet.stage_pressure") continue;
      const auto of = [&](const char* key) {
        return paper::Cell{value(context, figure(papers.sheet, key, one.subject))};
      };
      table.rows.push_back({{{context.say(one.subject)},
                             {value_text(context, one), true},
                             of("sheet.litres_to_stage"),
                             of("sheet.strokes_to_stage"),
                             of("sheet.time_to_stage")}});
    }
  }
  if (table.rows.empty()) return;
  flow.heading(context.title("paper.stages"), 2);
  flow.table(table);
}

void posts(const Papers& papers, paper::Flow& flow) {
  const Context& context = papers.context;
  flow.heading(context.title("paper.who_stands_where"), 2);
  paper::Table table{{{context.say("paper.post")},
                      {context.say("paper.where")},
                      {context.say("paper.name"), flow.width() * 0.34}},
                     {},
                     {10.0, false}};
  table.ruled = true;
  const auto add = [&](const std::string& post, const std::string& where,
                       const std::string& who = "") {
    table.rows.push_back({{{post}, {where}, {who, true}}, writing_height});
  };
  const boiler::Boiler& boiler = context.boiler;
  add(context.say("paper.post_lead"), "");
  add(context.say("paper.post_pump"), boiler.pump ? boiler.pump->name : "",
      who_at(context, facts::Post::Pump));
  std::string valve, vents;
  for (const boiler::Mounting& one : boiler.mountings) {
    if (one.kind == boiler::MountingKind::TestConnection)
      valve += (valve.empty() ? "" : ", ") + one.tag;
    if (one.kind == boiler::MountingKind::Vent) vents += (vents.empty() ? "" : ", ") + one.tag;
  }
  add(context.say("paper.post_test_valve"), valve, who_at(context, facts::Post::TestValve));
  for (const boiler::Gauge& gauge : boiler.gauges)
    add(context.say("paper.post_gauge"), gauge.tag + ", " + gauge.name);
  add(context.say("paper.post_vents"), vents, who_at_vents(context));
  if (const std::string who = who_at(context, facts::Post::LetDown); !who.empty())
    add(context.say("paper.post_let_down"), "", who);
  add(context.say("paper.post_doors"), "");
  flow.table(table);
}

}  // namespace

paper::Document test_sheet(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "test-sheet", context.say("paper.kind_test_sheet"));
  pump_hand(papers, flow);
  stages(papers, flow);
  posts(papers, flow);
  cautions(context, flow, {"caution.fire_side_empty", "caution.overshoot", "caution.local_rules"});
  flow.new_page();
  for (const sheet::Section& section : papers.sheet.sections) sheet_section(context, flow, section);
  flow.heading(context.title("paper.signatures"));
  signatures(context, flow, {"paper.sign_made", "paper.sign_checked", "paper.sign_authority"});
  return flow.finish();
}

}  // namespace steamworthy::report
