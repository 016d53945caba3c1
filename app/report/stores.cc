// Stores: the gaskets that a boiler takes, and those that a closing has fitted.
#include <algorithm>
#include <map>

#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/closure_marks.h"
#include "report/papers.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

/// Each gasket that was put on, also those that were taken off again, by kind and lot.
void gaskets_fitted(const Context& context, paper::Flow& flow) {
  std::map<std::pair<std::string, std::string>, std::vector<std::string>> fitted;
  for (const facts::Fact* fact : context.filled->all<facts::GasketFitted>()) {
    const auto& body = std::get<facts::GasketFitted>(fact->body);
    fitted[{body.gasket, body.lot}].push_back(body.closure);
  }
  flow.heading(context.title("paper.gaskets_fitted"), 2);
  if (fitted.empty()) {
    flow.paragraph(context.say("paper.no_gasket_fitted"));
    return;
  }
  paper::Table table{{{context.say("trade.gasket"), 36.0},
                      {context.say("paper.lot"), 24.0},
                      {context.say("paper.how_many"), 0.0, paper::Align::Right},
                      {context.say("paper.fitted_on")}},
                     {}};
  table.ruled = true;
  for (const auto& [what, closures] : fitted) {
    std::string name = kind(context, what.first);
    if (name.find('<') != std::string::npos) name = what.first;
    table.rows.push_back({{{name},
                           {what.second, true},
                           {std::to_string(closures.size()), true},
                           {joined(closures)}}});
  }
  flow.table(table);
}

}  // namespace

paper::Document stores_list(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "stores", context.say("paper.kind_stores"));
  flow.paragraph(context.say("paper.stores_note"));
  struct Line {
    std::string what, size;
    std::string thickness, land;
    int count = 0, studs = 0, yokes = 0;
    std::map<std::string, int> parts;
  };
  std::vector<Line> lines;
  for (const boiler::Closure& one : context.boiler.closures) {
    Line line;
    line.what = one.gasket ? kind(context, boiler::token(one.gasket->kind))
                           : context.say("paper.gasket_not_known");
    line.size = kind(context, boiler::token(one.kind)) + ", " +
                kind(context, boiler::token(one.opening.shape)) + " " + opening_text(context, one);
    if (one.gasket && one.gasket->thickness)
      line.thickness = context.number(units::measure_size(*one.gasket->thickness));
    if (one.gasket && one.gasket->land_width)
      line.land = context.number(units::measure_size(*one.gasket->land_width));
    auto it = std::find_if(lines.begin(), lines.end(), [&](const Line& other) {
      return other.what == line.what && other.size == line.size &&
             other.thickness == line.thickness && other.land == line.land;
    });
    if (it == lines.end()) it = lines.insert(lines.end(), line);
    ++it->count;
    it->studs += one.studs;
    it->yokes += one.yokes;
    ++it->parts[one.part];
  }
  paper::Table table{
      {{context.say("trade.gasket")},
       {context.say("trade.closure")},
       {head(context, "paper.thickness", units::Kind::Size), 0.0, paper::Align::Right},
       {head(context, "paper.land", units::Kind::Size), 0.0, paper::Align::Right},
       {context.say("paper.pieces"), 0.0, paper::Align::Right},
       {context.say("paper.studs"), 0.0, paper::Align::Right},
       {context.say("paper.yokes"), 0.0, paper::Align::Right},
       {context.say("paper.parts")},
       {context.say("paper.drawn"), 18.0},
       {context.say("paper.back"), 18.0}},
      {}};
  table.ruled = true;
  int total = 0;
  for (const Line& line : lines) {
    std::string parts;
    for (const auto& [part, count] : line.parts)
      parts += (parts.empty() ? "" : ", ") + part + "\u00a0" + std::to_string(count);
    table.rows.push_back({{{line.what},
                           {line.size},
                           {line.thickness},
                           {line.land},
                           {std::to_string(line.count), true},
                           {std::to_string(line.studs)},
                           {std::to_string(line.yokes)},
                           {parts},
                           {},
                           {}},
                          writing_height});
    total += line.count;
  }
  if (lines.empty()) flow.paragraph(context.say("paper.no_closures"));
  flow.table(table);
  flow.paragraph(context.say("paper.pieces_in_all", {{"count", std::to_string(total)}}),
                 {9.0, true});
  if (context.filled != nullptr) gaskets_fitted(context, flow);
  flow.heading(context.title("paper.more_to_draw"), 2);
  blank_table(context, flow, {"paper.what", "paper.how_many", "paper.drawn", "paper.back"}, 8,
              {flow.width() * 0.5});
  signatures(context, flow, {"paper.sign_drawn", "paper.sign_stores"});
  return flow.finish();
}

}  // namespace steamworthy::report
