// Closure sheets: by part, a grid to draw the marks in, then a row a closure with boxes to tick.
#include <algorithm>
#include <array>
#include <map>

#include "boiler/tokens.h"
#include "paper/marks.h"
#include "paper/type.h"
#include "report/blocks.h"
#include "report/closure_marks.h"
#include "report/leaks.h"
#include "report/papers.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

using boiler::Closure;
using paper::Box;

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
  constexpr double cell_width = 15.0;
  // The number of a leak stands between an opening and its tag.
  const double for_leaks = context.filled == nullptr ? 0.0 : 2.0;
  const double cell_height = 17.0 + for_leaks;
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
          if (context.filled != nullptr) {
            const ClosureMark mark = mark_of(*context.filled, closure.tag);
            paper::draw_mark(page, hole, outlined(closure.opening.shape), mark.mark, mark.signs);
          } else {
            page.add(paper::outline(outlined(closure.opening.shape), hole), {0.15, {}, 0.7});
          }
          const paper::Font font{
              std::min(7.0, 7.0 * (cell_width - 0.8) / paper::text_width(closure.tag, {7.0})),
              false};
          page.add(paper::Text{{x + cell_width / 2.0, y + 15.4 + for_leaks},
                               closure.tag,
                               font,
                               paper::Align::Centre});
        }
      });
    }
  }
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

struct Done {
  const Filled& filled;
  const Closure& closure;

  template <class Body>
  paper::Cell by(bool holds) const {
    return done(holds, filled.last<Body>(closure.tag));
  }
};

/// "0.9 to 1.2 mm, good".
std::string gaps_text(const Context& context, const facts::Fact* fact) {
  if (fact == nullptr) return "";
  const auto& measured = std::get<facts::GapsMeasured>(fact->body);
  std::string text = context.say("gap_verdict." + std::string(facts::token(measured.verdict)));
  if (!measured.gaps.empty()) {
    const auto [low, high] =
        std::minmax_element(measured.gaps.begin(), measured.gaps.end(),
                            [](const auto& a, const auto& b) { return a.gap.value < b.gap.value; });
    const std::string least = context.number(units::measure_size(low->gap.value));
    const std::string most = context.print(units::measure_size(high->gap.value));
    text = (least == context.number(units::measure_size(high->gap.value)) ? most
                                                                          : least + "–" + most) +
           ", " + text;
  }
  return text;
}

std::string gasket_text(const Context& context, bool holds, const facts::Fact* fact) {
  if (!holds || fact == nullptr) return "";
  const auto& fitted = std::get<facts::GasketFitted>(fact->body);
  std::string text = kind(context, fitted.gasket);
  if (text.find('<') != std::string::npos) text = fitted.gasket;  // a word of nobody's
  if (!fitted.lot.empty()) text += ", " + fitted.lot;
  return text + "\n" + who_when(fact);
}

std::vector<paper::Cell> done_cells(const Context& context, const Closure& closure) {
  const Filled& filled = *context.filled;
  const closing::ClosureState* state = at(filled.state().closures, closure.tag);
  const closing::ClosureState now = state == nullptr ? closing::ClosureState{} : *state;
  const Done done{filled, closure};
  const closing::Condition* dry = at(filled.state().dry, closure.tag);
  const bool is_dry = dry != nullptr && dry->holds;
  paper::Cell opened = done.by<facts::ClosureOpened>(now.opened);
  if (!now.opened && now.known_not_opened.holds) {
    opened = done.by<facts::ClosureNotOpened>(true);
    opened.text = context.say("mark.not_opened") + "\n" + opened.text;
  }
  std::string seen = is_dry ? who_when(filled.last<facts::PlaceSeenDry>(closure.tag)) : "";
  for (const std::string& number : leaks_at(filled, closure.tag))
    seen += (seen.empty() ? "" : "\n") + number + ": " + leak_now(context, number);
  return {opened,
          done.by<facts::ClosureCleaned>(now.cleaned.holds),
          done.by<facts::ClosureLookedAt>(now.looked_at.holds),
          {gasket_text(context, now.gasket.holds, filled.last<facts::GasketFitted>(closure.tag))},
          done.by<facts::ClosureNippedUp>(now.nipped_up.holds),
          {now.gaps_said ? gaps_text(context, filled.last<facts::GapsMeasured>(closure.tag)) : ""},
          {seen},
          done.by<facts::ClosureHardenedUp>(now.hardened_up.holds)};
}

void rows_done(const Context& context, paper::Flow& flow,
               const std::vector<std::vector<const Closure*>>& rows) {
  constexpr double by = 26.0;
  paper::Table table{{{context.say("trade.closure"), 19.0},
                      {context.say("paper.what")},
                      {context.say("paper.opened"), by},
                      {context.say("paper.seat_cleaned"), by},
                      {context.say("paper.looked_at"), by},
                      {context.say("paper.gasket_lot"), 34.0},
                      {context.say("paper.nipped_up"), by},
                      {context.say("paper.gaps"), 24.0},
                      {context.say("trade.seen_dry"), 29.0},
                      {context.say("paper.hardened_up"), by}},
                     {},
                     {7.5, false}};
  table.ruled = true;
  for (const auto& row : rows) {
    for (const Closure* one : row) {
      const ClosureMark mark = mark_of(*context.filled, one->tag);
      std::string what =
          kind(context, boiler::token(one->kind)) + "\u00a0" + opening_text(context, *one);
      what += ": " + context.say(mark_key(mark.mark));
      paper::Row line{{{one->tag, true}, {what}}, 6.2};
      for (paper::Cell& cell : done_cells(context, *one)) line.cells.push_back(std::move(cell));
      table.rows.push_back(std::move(line));
    }
  }
  flow.table(table);
}

/// Whether a header was looked into and sealed, and by whom.
void header_line(const Context& context, paper::Flow& flow, const std::string& part) {
  const Filled& filled = *context.filled;
  const closing::Header* now = at(filled.state().headers, part);
  if (now == nullptr) return;
  const facts::Fact* looked = filled.last<facts::HeaderLookedInto>(part);
  const facts::Fact* sealed = filled.last<facts::HeaderSealed>(part);
  std::string text;
  const auto add = [&](bool holds, const facts::Fact* fact) {
    if (holds && fact != nullptr)
      text += words::sentence(facts::tell(*fact), context.style) + " " + when(*fact) + ". ";
  };
  add(now->looked_into.holds, looked);
  add(now->sealed.holds, sealed);
  if (text.empty()) text = context.say("paper.header_open");
  flow.paragraph(text, {9.0, true});
}

/// Every reading round a plate.
void gap_readings(const Context& context, paper::Flow& flow) {
  paper::Table table{{{context.say("trade.closure"), 24.0},
                      {head(context, "paper.gap_readings", units::Kind::Size)},
                      {context.say("paper.judged"), 34.0},
                      {context.say("paper.who_and_when"), 34.0}},
                     {}};
  table.ruled = true;
  for (const facts::Fact* fact : context.filled->all<facts::GapsMeasured>()) {
    const auto& body = std::get<facts::GapsMeasured>(fact->body);
    std::string readings;
    for (const facts::GapReading& one : body.gaps) {
      readings += (readings.empty() ? "" : "; ") +
                  context.say("paper.gap_at_clock",
                              {{"clock", units::measure_count(one.clock.value)},
                               {"gap", context.number(units::measure_size(one.gap.value))}});
    }
    table.rows.push_back({{{body.closure, true},
                           {readings},
                           {context.say("gap_verdict." + std::string(facts::token(body.verdict)))},
                           {fact->person + ", " + when(*fact)}}});
  }
  if (table.rows.empty()) return;
  flow.heading(context.title("paper.gaps"));
  flow.table(table);
}

}  // namespace

paper::Document closure_sheets(const Papers& papers) {
  const Context& context = papers.context;
  const bool filled = context.filled != nullptr;
  paper::Flow flow = begin(context, "closures", context.say("paper.kind_closures"), filled);
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
  flow.turn(filled);
  flow.paragraph(context.say(filled ? "paper.marks_of_closing" : "paper.marks_by_hand"));
  cautions(context, flow, {"caution.no_wrench_under_pressure"});
  std::vector<std::string> parts;
  for (const Closure& closure : context.boiler.closures) {
    if (std::find(parts.begin(), parts.end(), closure.part) == parts.end())
      parts.push_back(closure.part);
  }
  for (const std::string& tag : parts) {
    const boiler::Part* part = boiler::find_part(context.boiler, tag);
    const auto rows = rows_of(context.boiler, tag);
    flow.need(filled ? 60.0 : 70.0);
    flow.heading(part == nullptr ? tag : tag + ", " + part->name);
    grid(context, flow, rows);
    if (filled) {
      header_line(context, flow, tag);
      rows_done(context, flow, rows);
    } else {
      rows_to_tick(context, flow, rows);
    }
  }
  if (filled) {
    gap_readings(context, flow);
    findings_table(context, flow);
  }
  return flow.finish();
}

}  // namespace steamworthy::report
