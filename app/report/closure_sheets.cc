// Closure sheets: by part, a grid to draw the marks in, then a row a closure with boxes to tick.
#include <algorithm>
#include <array>
#include <map>

#include "boiler/tokens.h"
#include "paper/marks.h"
#include "paper/qr.h"
#include "paper/type.h"
#include "report/blocks.h"
#include "report/papers.h"

namespace steamworthy::report {
namespace {

using boiler::Closure;
using paper::Box;

paper::Outlined outlined(const Closure& closure) {
  switch (closure.opening.shape) {
    case boiler::OpeningShape::Circle:
      return paper::Outlined::Circle;
    case boiler::OpeningShape::Oblong:
      return paper::Outlined::Oblong;
    case boiler::OpeningShape::Oval:
      break;
  }
  return paper::Outlined::Oval;
}

std::array<std::string, paper::legend_entries> legend_words(const Context& context) {
  return {context.say("mark.not_opened"),   context.say("mark.open"),
          context.say("mark.cleaned"),      context.say("mark.nipped_up"),
          context.say("mark.gap_measured"), context.say("mark.seen_dry"),
          context.say("mark.hardened_up"),  context.say("mark.touched"),
          context.say("mark.leaking"),      context.say("mark.decide"),
          context.say("mark.unsent")};
}

/// Rows as they are on the part: by side and row, each from its first end.
std::vector<std::vector<const Closure*>> rows_of(const boiler::Boiler& boiler,
                                                 const std::string& part) {
  std::map<std::pair<int, int>, std::vector<const Closure*>> rows;
  for (const Closure& closure : boiler.closures) {
    if (closure.part == part)
      rows[{static_cast<int>(closure.side), closure.row}].push_back(&closure);
  }
  std::vector<std::vector<const Closure*>> ordered;
  for (auto& [where, row] : rows) {
    std::stable_sort(row.begin(), row.end(), [](const Closure* a, const Closure* b) {
      if (a->position && b->position) return *a->position < *b->position;
      return a->column < b->column;
    });
    ordered.push_back(std::move(row));
  }
  return ordered;
}

/// Order is kept, scale is not: each opening is large enough to draw a mark in.
void grid(const Context& context, paper::Flow& flow,
          const std::vector<std::vector<const Closure*>>& rows) {
  constexpr double cell_width = 15.0, cell_height = 17.0;
  const auto per_line = static_cast<std::size_t>(flow.width() / cell_width);
  for (const auto& row : rows) {
    for (std::size_t from = 0; from < row.size(); from += per_line) {
      const std::size_t count = std::min(per_line, row.size() - from);
      const std::string words =
          context.say("paper.side", {{"side", kind(context, boiler::token(row.front()->side))}});
      flow.figure(cell_height + 3.2, words, [&](paper::Page& page, const Box& box) {
        if (from == 0) page.add(paper::Text{{box.x, box.y + 2.6}, words, {7.5, false}});
        for (std::size_t i = 0; i < count; ++i) {
          const Closure& closure = *row[from + i];
          const double x = box.x + cell_width * static_cast<double>(i), y = box.y + 3.6;
          const bool round = closure.opening.shape == boiler::OpeningShape::Circle;
          const double wide = round ? 8.4 : 11.0;
          const Box hole{x + (cell_width - wide) / 2.0, y + 1.2, wide, 8.4};
          page.add(paper::outline(outlined(closure), hole), {0.15, {}, 0.7});
          const paper::Font font{
              std::min(7.0, 7.0 * (cell_width - 0.8) / paper::text_width(closure.tag, {7.0})),
              false};
          page.add(paper::Text{
              {x + cell_width / 2.0, y + 15.4}, closure.tag, font, paper::Align::Centre});
        }
      });
    }
  }
}

std::string opening_text(const Context& context, const Closure& closure) {
  const std::string width = context.print(units::measure_size(closure.opening.width));
  if (closure.opening.shape == boiler::OpeningShape::Circle) return width;
  return context.number(units::measure_size(closure.opening.height)) + " × " + width;
}

void rows_to_tick(const Context& context, paper::Flow& flow,
                  const std::vector<std::vector<const Closure*>>& rows) {
  paper::Table table{{{context.say("trade.closure")},
                      {context.say("paper.what")},
                      {context.say("paper.opened"), 14.0},
                      {context.say("paper.cleaned"), 15.0},
                      {context.say("paper.gasket_lot"), 20.0},
                      {context.say("paper.nipped_up"), 13.0},
                      {head(context, "paper.gap", units::Kind::Size), 20.0},
                      {context.say("trade.seen_dry"), 12.0},
                      {context.say("paper.hardened_up"), 17.0},
                      {context.say("paper.initials"), 15.0}},
                     {},
                     {8.0, false}};
  table.ruled = true;
  const paper::Cell box = paper::tick_box();
  for (const auto& row : rows) {
    for (const Closure* one : row) {
      std::string what =
          kind(context, boiler::token(one->kind)) + "\u00a0" + opening_text(context, *one);
      if (one->makers_book) what += ", " + context.say("paper.makers_book");
      table.rows.push_back({{{one->tag, true}, {what}, box, box, {}, box, {}, box, box, {}}, 6.2});
    }
  }
  flow.table(table);
}

}  // namespace

paper::Document closure_sheets(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "closures", context.say("paper.kind_closures"));
  if (context.boiler.closures.empty()) {
    flow.paragraph(context.say("paper.no_closures"));
    blank_table(context, flow,
                {"trade.closure", "paper.what", "paper.cleaned", "paper.gasket_lot",
                 "paper.nipped_up", "trade.seen_dry", "paper.hardened_up", "paper.initials"},
                24);
    return flow.finish();
  }
  const auto words = legend_words(context);
  const double legend = paper::legend_height(flow.width());
  flow.banner(legend + 3.0, [&](paper::Page& page, const Box& box) {
    paper::draw_legend(page, {box.x, box.y, box.width, legend}, words);
    page.add(paper::line({box.x, box.bottom() - 1.5}, {box.right(), box.bottom() - 1.5}), {0.15});
  });
  flow.turn(false);
  flow.paragraph(context.say("paper.marks_by_hand"));
  cautions(context, flow, {"caution.no_wrench_under_pressure"});
  std::vector<std::string> parts;
  for (const Closure& closure : context.boiler.closures) {
    if (std::find(parts.begin(), parts.end(), closure.part) == parts.end())
      parts.push_back(closure.part);
  }
  for (const std::string& tag : parts) {
    const boiler::Part* part = boiler::find_part(context.boiler, tag);
    const auto rows = rows_of(context.boiler, tag);
    flow.need(70.0);
    flow.heading(part == nullptr ? tag : tag + ", " + part->name);
    grid(context, flow, rows);
    rows_to_tick(context, flow, rows);
  }
  return flow.finish();
}

paper::Document labels(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "labels", context.say("paper.kind_labels"));
  flow.paragraph(context.say("paper.labels_note"));
  constexpr double high = 27.0;
  constexpr std::size_t across = 3;
  const double wide = flow.width() / static_cast<double>(across);
  const auto& closures = context.boiler.closures;
  if (closures.empty()) flow.paragraph(context.say("paper.no_closures"));
  for (std::size_t from = 0; from < closures.size(); from += across) {
    flow.figure(high, context.say("paper.kind_labels"), [&](paper::Page& page, const Box& box) {
      for (std::size_t i = from; i < std::min(from + across, closures.size()); ++i) {
        const Closure& one = closures[i];
        const Box label{box.x + wide * static_cast<double>(i - from), box.y, wide, high};
        page.add(paper::rectangle(label), {0.1, {1.0, 1.0}, 0.6});
        paper::draw_code(page, {label.x + 1.5, label.y + 2.0, 23.0, 23.0},
                         context.boiler.tag + "/" + one.tag);
        const double x = label.x + 26.0, room = wide - 27.0;
        const double size = std::min(16.0, 16.0 * room / paper::text_width(one.tag, {16.0, true}));
        page.add(paper::Text{{x, label.y + 9.0}, one.tag, {size, true}});
        const boiler::Part* part = boiler::find_part(context.boiler, one.part);
        const paper::Font font{7.0, false};
        const std::string lines[] = {
            context.boiler.tag + ", " + (part == nullptr ? one.part : part->name),
            kind(context, boiler::token(one.kind)) + " " + opening_text(context, one),
            one.gasket ? kind(context, boiler::token(one.gasket->kind)) : ""};
        double y = label.y + 14.0;
        for (const std::string& line : lines) {
          page.add(paper::Text{{x, y}, paper::shorten(line, font, room), font});
          y += 3.6;
        }
      }
    });
  }
  return flow.finish();
}

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
  for (const Closure& one : context.boiler.closures) {
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
  flow.heading(context.title("paper.more_to_draw"), 2);
  blank_table(context, flow, {"paper.what", "paper.how_many", "paper.drawn", "paper.back"}, 8,
              {flow.width() * 0.5});
  signatures(context, flow, {"paper.sign_drawn", "paper.sign_stores"});
  return flow.finish();
}

}  // namespace steamworthy::report
