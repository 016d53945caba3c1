#include "report/drawing_paper.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "paper/type.h"
#include "report/closure_marks.h"
#include "report/elevation.h"

namespace steamworthy::report {
namespace {

using boiler::View;
using paper::Box;
using paper::Font;

constexpr double ruler = 17.0;        // mm at the left of a view with levels
constexpr double names = 26.0;        // mm at its right
constexpr double tag_room = 12.0;     // mm around a detail
constexpr double detail_title = 6.0;  // mm

const char* view_key(View view) {
  switch (view) {
    case View::Front:
      return "paper.view_front";
    case View::Right:
      return "paper.view_right";
    case View::Rear:
      return "paper.view_rear";
    case View::Left:
      return "paper.view_left";
  }
  return "";
}

/// The legend that stands on each sheet where closures have marks; of the narrower page, which
/// needs more lines for it.
double marks_height(const Context& context) {
  if (context.filled == nullptr) return 0.0;
  return paper::legend_height(paper::body({context.size, false}).width) + 3.0;
}

/// One view on a page of its own, upright or lying, whichever lets it be larger.
void elevation(const Context& context, paper::Flow& flow, View view) {
  const boiler::Drawing drawing = boiler::drawing(context.boiler, view);
  constexpr double head = 12.0, foot = 12.0;
  Scale best;
  bool landscape = false;
  for (const bool lying : {false, true}) {
    const Box body = paper::body({context.size, lying});
    const Scale scale =
        scale_to_fit(drawing.width(), drawing.height(), body.width - ruler - names,
                     body.height - head - foot - marks_height(context), context.us());
    if (!lying || scale.of < best.of) best = scale, landscape = lying;
  }
  flow.turn(landscape);
  flow.figure(flow.height(), context.say(view_key(view)), [&](paper::Page& page, const Box& box) {
    const double wide = best.millimetres(drawing.width());
    const paper::Point corner{
        box.x + ruler + (box.width - ruler - names - wide) / 2.0,
        box.bottom() - foot -
            (box.height - head - foot - best.millimetres(drawing.height())) / 2.0};
    page.add(paper::Text{{box.x, box.y + 4.0}, context.say(view_key(view)), {10.0, true}});
    draw_view(context, page, drawing, best, corner,
              {corner.x - 3.0, box.y + 5.0, wide + 5.0, box.height - foot + 2.0}, {});
    draw_scale_bar(context, page, {box.x, box.bottom() - 1.0}, best);
  });
}

struct Detail {
  boiler::Drawing drawing;
  std::string title;
  Scale scale;
  double from = 0.0, to = 0.0;  // metres across
  double above = tag_room, below = tag_room;
  double width = 0.0, height = 0.0;  // mm
  bool last = true;
};

std::vector<std::string> draw_detail(const Context& context, paper::Page& page, const Box& box,
                                     const Detail& detail) {
  ViewOptions options;
  options.part_tags = false;
  options.levels = false;
  options.stub_mountings = true;
  options.tags = {6.5, false};
  options.from = detail.from;
  options.to = detail.to;
  const double wide = detail.scale.millimetres(detail.to - detail.from);
  const double x = box.x + std::max(2.0, (box.width - wide) / 2.0);
  const double y =
      box.y + detail_title + detail.above + detail.scale.millimetres(detail.drawing.height());
  const Box room{box.x, box.y + detail_title, box.width, box.height - detail_title - 0.5};
  return draw_view(context, page, detail.drawing, detail.scale, {x, y}, room, options);
}

/// The part's drawing with mountings brought near it, so that its extent is the part's own.
boiler::Drawing near_part(boiler::Drawing drawing) {
  double low = 1e9, high = -1e9;
  for (const boiler::DrawnPart& part : drawing.parts) {
    for (const auto* lines : {&part.outline, &part.thin}) {
      for (const boiler::DrawnLine& line : *lines) {
        for (const boiler::Spot& spot : line.points)
          low = std::min(low, spot.level), high = std::max(high, spot.level);
      }
    }
  }
  if (low <= high) drawing.lower_left.level = low, drawing.upper_right.level = high;
  return drawing;
}

/// How a part is shown from one side: at the smallest scale at which every tag finds its room; in
/// several pieces if at that scale it is longer than the page.
std::vector<Detail> details(const Context& context, const boiler::Part& part, View view,
                            double page_width, double page_height) {
  Detail base;
  base.drawing = near_part(boiler::part_drawing(context.boiler, part.tag, view));
  const bool has_mountings = !base.drawing.mountings.empty();
  if (has_mountings) base.above = base.below = tag_room + 8.0;
  const double length = base.drawing.width(), tall = base.drawing.height();
  const double room_high = page_height - detail_title - base.above - base.below;
  std::vector<Detail> best;
  const Scale fit =
      scale_to_fit(length, tall, page_width - 6.0,
                   std::min(room_high, length > 1.3 * tall ? 70.0 : 46.0), context.us());
  std::vector<Scale> tries;
  for (const Scale& scale : scales(context.us())) {
    if (scale.of <= fit.of && scale.of >= fit.of / 12.0) tries.insert(tries.begin(), scale);
  }
  if (tries.empty()) tries.push_back(fit);
  std::size_t fewest = static_cast<std::size_t>(-1);
  for (const Scale& scale : tries) {
    if (scale.millimetres(tall) > room_high && scale.of < fit.of) break;
    std::vector<Detail> pieces;
    const double per_page = (page_width - 6.0) * scale.of / 1000.0;
    const int count = std::max(1, static_cast<int>(std::ceil(length / per_page - 1e-9)));
    std::size_t missing = 0;
    for (int i = 0; i < count; ++i) {
      Detail piece = base;
      piece.scale = scale;
      piece.from = base.drawing.lower_left.across + length * i / count;
      piece.to = i + 1 == count ? base.drawing.upper_right.across + 1e-9
                                : base.drawing.lower_left.across + length * (i + 1) / count;
      piece.last = i + 1 == count;
      piece.title =
          part.tag + ", " + part.name + ", " + context.say(view_key(view)) + ", " + scale.words;
      if (count > 1) {
        piece.title += ", " + context.say("paper.piece_of", {{"piece", std::to_string(i + 1)},
                                                             {"of", std::to_string(count)}});
      }
      const double title_wide = paper::text_width(piece.title, {8.5, true}) + 2.0;
      piece.width =
          std::min(page_width, std::max(title_wide, scale.millimetres(piece.to - piece.from) +
                                                        (count > 1 ? 6.0 : 34.0)));
      piece.height = detail_title + piece.above + scale.millimetres(tall) + piece.below;
      paper::Page scratch{page_width + 40.0, page_height + 40.0, {}};
      missing +=
          draw_detail(context, scratch, {20.0, 20.0, piece.width, piece.height}, piece).size();
      pieces.push_back(std::move(piece));
    }
    if (missing < fewest) {
      fewest = missing;
      best = std::move(pieces);
    }
    if (fewest == 0) break;
  }
  return best;
}

void put_details(const Context& context, paper::Flow& flow, const std::vector<Detail>& all) {
  for (std::size_t at = 0; at < all.size();) {
    // As many side by side as there is room for.
    std::size_t count = 1;
    double used = all[at].width, high = all[at].height;
    while (at + count < all.size() && used + 4.0 + all[at + count].width <= flow.width()) {
      used += 4.0 + all[at + count].width;
      high = std::max(high, all[at + count].height);
      ++count;
    }
    std::vector<std::string> missing;
    flow.figure(high + 3.0, all[at].title, [&](paper::Page& page, const Box& box) {
      double x = box.x;
      for (std::size_t i = at; i < at + count; ++i) {
        page.add(paper::Text{{x, box.y + 3.6},
                             paper::shorten(all[i].title, {8.5, true}, flow.width()),
                             {8.5, true}});
        const auto lost =
            draw_detail(context, page, {x, box.y, all[i].width, all[i].height}, all[i]);
        missing.insert(missing.end(), lost.begin(), lost.end());
        x += all[i].width + 4.0;
      }
    });
    if (!missing.empty()) {
      std::string tags;
      for (const std::string& tag : missing) tags += (tags.empty() ? "" : ", ") + tag;
      flow.paragraph(context.say("paper.tags_without_room", {{"tags", tags}}), {7.5, false});
    }
    at += count;
  }
}

}  // namespace

paper::Document drawing_paper(const Context& context) {
  paper::Flow flow = begin(context, "drawing", context.say("paper.kind_drawing"));
  const boiler::Boiler& boiler = context.boiler;
  if (boiler.parts.empty()) {
    flow.paragraph(context.say("paper.no_drawing"), {10.0, false});
    if (boiler.bulk) {
      paper::Table table{{{context.say("paper.what")}, {context.say("paper.level")}}, {}};
      const auto add = [&](const std::string& words, units::Level level) {
        table.rows.push_back({{{words}, {context.print(units::measure(level))}}});
      };
      add(context.say("paper.highest_water"), boiler.bulk->top_level);
      for (const boiler::Gauge& gauge : boiler.gauges)
        add(gauge.tag + ", " + gauge.name, gauge.level);
      add(context.say("paper.lowest_water"), boiler.bulk->bottom_level);
      flow.table(table);
    }
    return flow.finish();
  }
  if (context.filled != nullptr) {
    const auto words = legend_words(context);
    const double legend = marks_height(context);
    flow.banner(legend, [=](paper::Page& page, const Box& box) {
      paper::draw_legend(page, {box.x, box.y, box.width, paper::legend_height(box.width)}, words);
      page.add(paper::line({box.x, box.bottom() - 1.5}, {box.right(), box.bottom() - 1.5}), {0.15});
    });
  }
  for (const View view : {View::Front, View::Right, View::Rear, View::Left})
    elevation(context, flow, view);
  flow.turn(true);
  flow.heading(context.title("paper.details"));
  flow.paragraph(context.say("paper.details_note"));
  std::vector<Detail> all;
  for (const boiler::Part& part : boiler.parts) {
    for (const View view : boiler::views_of(boiler, part.tag)) {
      auto some = details(context, part, view, flow.width(), flow.height() - 3.0);
      for (Detail& one : some) all.push_back(std::move(one));
    }
  }
  put_details(context, flow, all);
  return flow.finish();
}

}  // namespace steamworthy::report
