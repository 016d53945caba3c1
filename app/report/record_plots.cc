#include "report/record_plots.h"

#include <algorithm>
#include <array>

#include "paper/plot.h"
#include "report/blocks.h"

namespace steamworthy::report {
namespace {

using units::Kind;

/// Lines that stay apart in black and white.
paper::Pen pen(std::size_t which) {
  static const std::array<std::vector<double>, 4> dashes = {
      std::vector<double>{}, {2.0, 0.8}, {0.6, 0.6}, {3.0, 0.7, 0.6, 0.7}};
  return {0.3, dashes[which % dashes.size()]};
}

struct TimeAxis {
  double per_unit = 60.0;  ///< seconds
  std::string words;
};

TimeAxis time_axis(const Context& context, const trace::Trace& trace) {
  const double span = trace.seconds.empty() ? 0.0 : trace.seconds.back();
  if (span > 3.0 * 3600.0) return {3600.0, context.say("paper.time_hours")};
  return {60.0, context.say("paper.time_minutes")};
}

paper::Curve curve_of(const Context& context, const trace::Trace& trace,
                      const trace::Channel& channel, Kind kind, double minus_si,
                      const TimeAxis& time) {
  paper::Curve curve{channel.name.empty() ? channel.header : channel.name, {}};
  for (std::size_t i = 0; i < trace.rows(); ++i) {
    if (!channel.values.has(i)) continue;
    curve.points.push_back(
        {trace.seconds[i] / time.per_unit,
         units::in_unit({kind, channel.values.si(i) - minus_si}, context.style.print.system)});
  }
  // A few readings copied from paper are dots: between them nothing was read.
  curve.dots = curve.points.size() < 40;
  return curve;
}

void add_limit(const Papers& papers, paper::Plot& plot, const std::string& key,
               const std::string& gauge, const std::string& words) {
  const Context& context = papers.context;
  const working::Figure* figure = sheet::find_figure(papers.sheet, key, gauge);
  if (figure == nullptr || !figure->is_known()) return;
  plot.limits.push_back({context.say(words) + " " + context.print(*figure->value),
                         units::in_unit(*figure->value, context.style.print.system)});
}

}  // namespace

void trace_plots(const Papers& papers, const LoggedTest& test, paper::Flow& flow) {
  const Context& context = papers.context;
  const TimeAxis time = time_axis(context, test.trace);
  paper::Plot plot;
  plot.x.words = time.words;
  plot.y.words = head(context, "paper.pressure", Kind::GaugePressure);
  for (const trace::Channel& channel : test.trace.pressures) {
    paper::Curve curve = curve_of(context, test.trace, channel, Kind::GaugePressure,
                                  channel.absolute ? test.input.barometer.si() : 0.0, time);
    curve.pen = pen(plot.curves.size());
    plot.curves.push_back(std::move(curve));
  }
  std::string gauge;
  if (!test.facts.gauges.empty()) gauge = test.facts.gauges.front().tag;
  if (gauge.empty() && !context.boiler.gauges.empty()) gauge = context.boiler.gauges.front().tag;
  add_limit(papers, plot, "sheet.gauge_never_above", gauge, "sheet.gauge_never_above");
  add_limit(papers, plot, "sheet.gauge_go_to", gauge, "sheet.gauge_go_to");
  if (plot.limits.empty() && test.facts.test_pressure) {
    const units::Measure target = units::measure(*test.facts.test_pressure);
    plot.limits.push_back({context.say("paper.target") + " " + context.print(target),
                           units::in_unit(target, context.style.print.system)});
  }
  const double begin = test.answer.hold_start_s, end = test.answer.hold_end_s;
  if (end > begin) {
    if (begin > 0.0)
      plot.stretches.push_back({context.say("trade.pump_up"), 0.0, begin / time.per_unit});
    plot.stretches.push_back(
        {context.say("trade.hold"), begin / time.per_unit, end / time.per_unit});
  }
  flow.need(92.0 + 12.0);
  flow.heading(context.title("trade.trace"));
  flow.figure(92.0, context.say("trade.trace"),
              [&](paper::Page& page, const paper::Box& box) { paper::draw_plot(page, box, plot); });

  paper::Plot warmth;
  warmth.x.words = time.words;
  warmth.y.words = head(context, "paper.temperature", Kind::Temperature);
  for (const auto* channels : {&test.trace.water, &test.trace.metal, &test.trace.ambient,
                               &test.trace.other_temperatures}) {
    for (const trace::Channel& channel : *channels) {
      paper::Curve curve = curve_of(context, test.trace, channel, Kind::Temperature, 0.0, time);
      if (curve.points.empty()) continue;
      curve.pen = pen(warmth.curves.size());
      warmth.curves.push_back(std::move(curve));
    }
  }
  if (warmth.curves.empty()) return;
  flow.figure(
      48.0 + 4.2 * static_cast<double>(warmth.curves.size()), context.say("paper.temperature"),
      [&](paper::Page& page, const paper::Box& box) { paper::draw_plot(page, box, warmth); });
}

void pump_up_plot(const Papers& papers, const LoggedTest& test, paper::Flow& flow) {
  const Context& context = papers.context;
  if (!test.answer.pump_up || test.answer.pump_up->points.size() < 2) return;
  const hold::PumpUpAnswer& answer = *test.answer.pump_up;
  const units::System system = context.style.print.system;
  paper::Plot plot;
  plot.x.words = head(context, "paper.pumped", Kind::Volume);
  plot.y.words = head(context, "paper.pressure", Kind::GaugePressure);
  paper::Curve logged{context.say("paper.as_logged"), {}, {0.3}, true};
  paper::Curve airless{context.say("paper.airless"), {}, {0.25, {2.0, 1.0}}};
  for (const hold::PumpUpPoint& point : answer.points) {
    const double pressure = units::in_unit(
        {Kind::GaugePressure, point.pressure.si() - test.input.barometer.si()}, system);
    logged.points.push_back({units::in_unit({Kind::Volume, point.pumped.si()}, system), pressure});
    airless.points.push_back(
        {units::in_unit({Kind::Volume, point.airless.si()}, system), pressure});
  }
  plot.curves = {std::move(logged), std::move(airless)};
  flow.need(78.0 + 12.0);
  flow.heading(context.title("trade.pump_up"));
  flow.figure(78.0, context.say("trade.pump_up"),
              [&](paper::Page& page, const paper::Box& box) { paper::draw_plot(page, box, plot); });
  const auto volume = [&](units::Volume v) { return units::measure(v); };
  flow.paragraph(context.say("paper.trapped_air", {{"air", volume(answer.trapped_air.estimate)},
                                                   {"low", volume(answer.trapped_air.low_90)},
                                                   {"high", volume(answer.trapped_air.high_90)}}),
                 {9.0, true});
  if (answer.known_at) {
    flow.paragraph(context.say(
        "paper.air_known_at",
        {{"pressure", units::Measure{Kind::GaugePressure,
                                     answer.known_at->si() - test.input.barometer.si()}}}));
  }
  if (answer.venting_costs) {
    flow.paragraph(
        context.say("paper.venting_costs", {{"time", units::measure(*answer.venting_costs)}}));
  }
}

}  // namespace steamworthy::report
