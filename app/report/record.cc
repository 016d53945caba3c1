#include "report/record.h"

#include <algorithm>
#include <cmath>

#include "boiler/places.h"
#include "report/blocks.h"
#include "report/record_closing.h"
#include "report/record_plots.h"
#include "report/sheet_sections.h"
#include "report/standing.h"
#include "units/makers.h"

namespace steamworthy::report {
namespace {

using units::Kind;

std::string interval(const Context& context, const hold::Estimate<units::VolumeFlow>& one) {
  return context.say("paper.interval", {{"best", units::measure_leakage(one.estimate)},
                                        {"low", units::measure_leakage(one.low_90)},
                                        {"high", units::measure_leakage(one.high_90)}});
}

const char* result_key(hold::Result result) {
  switch (result) {
    case hold::Result::NoLossSeen:
      return "gauge_result.no_loss_seen";
    case hold::Result::Losing:
      return "gauge_result.losing";
    case hold::Result::Gaining:
      return "gauge_result.gaining";
    case hold::Result::CannotTell:
      break;
  }
  return "gauge_result.cannot_tell";
}

/// Two answers that are not mixed: what eyes saw, what the gauge says.
void side_by_side(const Papers& papers, const LoggedTest& test, paper::Flow& flow) {
  const Context& context = papers.context;
  const auto places = boiler::places_to_look(context.boiler).size();
  std::string gauge = context.say(result_key(test.answer.result)) + ". " +
                      words::sentence(test.answer.reason, context.style);
  for (const auto& one : test.answer.settle_by) gauge += "\n" + words::sentence(one, context.style);
  const double half = flow.width() / 2.0;
  paper::Table table{{{context.say("paper.seen"), half}, {context.say("trade.gauge_result"), half}},
                     {},
                     {10.0, false}};
  table.ruled = true;
  const std::string seen =
      context.filled != nullptr
          ? seen_text(context)
          : context.say("paper.seen_of", {{"places", std::to_string(places)}}) + "\n" +
                context.say("paper.seen_leaks") + "\n" + context.say("paper.seen_who");
  table.rows.push_back({{{seen}, {gauge, true}}, 34.0});
  flow.table(table);
  flow.paragraph(words::sentence({"sheet.eyes_are_the_proof", {}}, context.style), {8.5, false},
                 "–");
}

void split_of_the_fall(const Papers& papers, const LoggedTest& test, paper::Flow& flow) {
  if (!test.answer.split) return;
  const Context& context = papers.context;
  const hold::FallSplit& split = *test.answer.split;
  flow.heading(context.title("paper.fall"), 2);
  const std::pair<const char*, units::PressureDifference> parts[] = {
      {"paper.fall_all", split.fall},          {"paper.fall_cooling", split.cooling},
      {"paper.fall_relaxing", split.relaxing}, {"paper.fall_air", split.air},
      {"paper.fall_loss", split.loss},         {"paper.fall_rest", split.rest}};
  double greatest = 1e-9;
  for (const auto& [key, part] : parts) greatest = std::max(greatest, std::abs(part.si()));
  paper::Table table{
      {{context.say("paper.part_of_fall"), 46.0},
       {head(context, "paper.fall_of_gauge", Kind::PressureDifference), 38.0, paper::Align::Right},
       {context.say("paper.fall_picture")}},
      {}};
  bool first = true;
  for (const auto& [key, exact] : parts) {
    // To 0.1 mbar, finer than any gauge reads.
    const auto part = units::pascals(std::round(exact.si() / 10.0) * 10.0);
    const double share = part.si() / greatest;
    const double ink = first ? 1.0 : 0.55;
    first = false;
    const paper::Draw bar = [share, ink](paper::Page& page, const paper::Box& box) {
      const double middle = box.centre().x, reach = box.width * 0.48;
      page.add(paper::line({middle, box.y}, {middle, box.bottom()}), {0.15});
      const double wide = std::abs(share) * reach;
      page.fill(paper::rectangle(
                    {share < 0.0 ? middle - wide : middle, box.y + 1.0, wide, box.height - 2.0}),
                ink);
    };
    table.rows.push_back({{{context.say(key)},
                           {context.number(units::measure_pressure_difference(part)), true},
                           {"", false, bar}}});
  }
  flow.table(table);
}

void workings(const Papers& papers, const LoggedTest& test, paper::Flow& flow) {
  const Context& context = papers.context;
  const hold::HoldAnswer& answer = test.answer;
  flow.heading(context.title("trade.working"));
  paper::Table table{{{context.say("paper.figure")}, {context.say("paper.value")}}, {}};
  const auto add = [&](const char* key, const std::string& value) {
    table.rows.push_back({{{context.say(key)}, {value, true}}});
  };
  const auto measured = [&](const char* key, const units::Measure& value) {
    add(key, context.print(value));
  };
  if (answer.net_loss) add("paper.net_loss", interval(context, *answer.net_loss));
  if (answer.loss_at_end) add("paper.loss_at_end", interval(context, *answer.loss_at_end));
  if (answer.detectable) {
    measured("paper.would_show", units::measure_leakage(*answer.detectable));
  }
  if (test.input.leak_of_concern) {
    measured("trade.leak_of_concern", units::measure_leakage(*test.input.leak_of_concern));
  } else {
    add("trade.leak_of_concern", context.say("paper.not_set"));
  }
  if (answer.no_loss_probability) {
    // Nobody knows a probability to more than that.
    constexpr double finest = 0.001;
    const double p = *answer.no_loss_probability;
    const units::Measure shown = units::measure_percent(std::clamp(p, finest, 1.0 - finest));
    add("paper.no_loss_probability", p < finest ? context.say("paper.below", {{"limit", shown}})
                                     : p > 1.0 - finest
                                         ? context.say("paper.above", {{"limit", shown}})
                                         : context.print(shown));
  }
  if (answer.allowed_fall) {
    add("paper.allowed_fall",
        context.say(answer.allowed_fall->met ? "paper.rule_met" : "paper.rule_not_met",
                    {{"seen", units::measure_pressure_difference(answer.allowed_fall->seen)},
                     {"means", units::measure_leakage(answer.allowed_fall->means)}}));
  }
  measured("paper.per_pressure", units::measure(answer.per_pressure));
  measured("paper.per_temperature", units::measure(answer.per_temperature));
  measured("paper.readings_used", units::measure_count(answer.readings));
  measured("paper.hold_length",
           units::measure(units::Duration::from_si(answer.hold_end_s - answer.hold_start_s)));
  measured("input.water_content", units::measure_large_volume(test.input.boiler.volume));
  measured("paper.barometer_used", units::measure(test.input.barometer));
  add("paper.valves",
      context.say(test.input.valves.test_valve_shut ? "paper.valve_shut" : "paper.valve_not_shut") +
          "; " +
          context.say(test.input.valves.pump_side_hung_open ? "paper.pump_side_open"
                                                            : "paper.pump_side_not_open"));
  flow.table(table);
  for (const auto& note : answer.notes)
    flow.paragraph(words::sentence(note, context.style), {8.5, false}, "–");
  for (const std::string& note : test.facts.notes) flow.paragraph(note, {8.5, false}, "–");
  flow.paragraph(context.say("figure.method") + ": docs/methods/hold.md", {8.0, false});
}

void instruments(const Context& context, paper::Flow& flow) {
  flow.heading(context.title("paper.instruments"), 2);
  paper::Table table{{{context.say("paper.tag"), 16.0},
                      {context.say("paper.what")},
                      {context.say("paper.range")},
                      {context.say("paper.resolution")},
                      {context.say("paper.calibrated"), 26.0},
                      {context.say("paper.serial"), 34.0}},
                     {}};
  table.ruled = true;
  for (const boiler::Gauge& one : context.boiler.gauges) {
    table.rows.push_back({{{one.tag, true},
                           {one.name},
                           {context.print(units::measure(one.range))},
                           {context.print(units::measure_pressure_difference(one.resolution))},
                           {one.calibrated_until},
                           {}},
                          writing_height});
  }
  for (const boiler::Thermometer& one : context.boiler.thermometers) {
    table.rows.push_back({{{one.tag, true},
                           {one.name},
                           {""},
                           {context.print(units::measure(one.resolution))},
                           {""},
                           {}},
                          writing_height});
  }
  if (table.rows.empty()) {
    for (int i = 0; i < 3; ++i) table.rows.push_back({std::vector<paper::Cell>(6), writing_height});
  }
  flow.table(table);
}

}  // namespace

paper::Document test_record(const Papers& papers, const LoggedTest& test) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "record", context.say("paper.kind_record"));
  const Filled* filled = context.filled;
  if (filled == nullptr) {
    fill_in(context, flow, {"paper.day", "paper.test_number"});
  } else {
    answered(context, flow,
             {{"paper.day", test_day(*filled)},
              {"paper.closing", filled->closing()},
              {"paper.stage_now", stage_now(context)},
              {"paper.as_of", filled->now()}});
  }
  side_by_side(papers, test, flow);
  trace_plots(papers, test, flow);
  pump_up_plot(papers, test, flow);
  split_of_the_fall(papers, test, flow);
  workings(papers, test, flow);
  instruments(context, flow);
  if (filled != nullptr) {
    record_of_closing(context, flow);
    return flow.finish();
  }
  cautions(context, flow,
           {"caution.no_wrench_under_pressure", "caution.let_down_slowly", "caution.local_rules"});
  signatures(
      context, flow,
      {"paper.pump_hand_name", "paper.walker", "paper.sign_witness", "paper.sign_inspector"});
  return flow.finish();
}

}  // namespace steamworthy::report
