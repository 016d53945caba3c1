#include "report/elevation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "paper/marks.h"
#include "paper/type.h"
#include "report/closure_marks.h"
#include "report/placer.h"

namespace steamworthy::report {
namespace {

using paper::Align;
using paper::Box;
using paper::Font;
using paper::Page;
using paper::Point;
using paper::Text;

constexpr Font small{6.5, false};
const paper::Pen metal{0.28};
const paper::Pen thin{0.08, {}, 0.55};
const paper::Pen assumed_metal{0.28, {2.0, 0.8, 0.4, 0.8}};

struct ToPage {
  const boiler::Drawing& drawing;
  const Scale& scale;
  Point corner;
  double from;  // metres across at the corner

  Point operator()(boiler::Spot spot) const {
    return {corner.x + scale.millimetres(spot.across - from),
            corner.y - scale.millimetres(spot.level - drawing.lower_left.level)};
  }
};

/// The line's pieces between from and to across.
paper::Path clipped(const boiler::DrawnLine& line, const ToPage& to_page, double from, double to) {
  paper::Path path;
  bool down = false;
  const std::size_t count = line.points.size();
  const std::size_t segments = line.closed ? count : count - 1;
  for (std::size_t i = 0; i < segments; ++i) {
    boiler::Spot a = line.points[i], b = line.points[(i + 1) % count];
    const double span = b.across - a.across;
    double s0 = 0.0, s1 = 1.0;
    if (span != 0.0) {
      const double at_from = (from - a.across) / span, at_to = (to - a.across) / span;
      s0 = std::max(s0, std::min(at_from, at_to));
      s1 = std::min(s1, std::max(at_from, at_to));
    } else if (a.across < from || a.across > to) {
      down = false;
      continue;
    }
    if (s0 > s1) {
      down = false;
      continue;
    }
    const auto at = [&](double s) {
      return boiler::Spot{a.across + s * span, a.level + s * (b.level - a.level)};
    };
    if (!down || s0 > 0.0) path.move(to_page(at(s0)));
    path.line(to_page(at(s1)));
    down = s1 == 1.0;
  }
  if (line.closed && segments == count && path.verbs.size() == count + 1) path.close();
  return path;
}

/// Metres or feet ruled at the left of the view.
void rule_levels(const Context& context, Page& page, const ToPage& to_page, double x) {
  const double unit = context.us() ? 0.3048 : 1.0;
  const boiler::Drawing& drawing = to_page.drawing;
  const double low = drawing.lower_left.level, high = drawing.upper_right.level;
  double step = unit;
  for (const double factor : {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    step = factor * unit;
    if (to_page.scale.millimetres(step) >= 4.5) break;
  }
  const Point bottom{x, to_page({0.0, low}).y}, top{x, to_page({0.0, high}).y};
  page.add(paper::line(bottom, top), {0.2});
  for (double k = std::ceil(low / step - 1e-9); k * step <= high + 1e-9; k += 1.0) {
    const double y = to_page({0.0, k * step}).y;
    page.add(paper::line({x - 1.2, y}, {x + 1.2, y}), {0.2});
    page.add(Text{
        {x - 1.6, y + 0.8}, context.number({units::Kind::Level, k * step}), small, Align::Right});
  }
  page.add(Text{{x + 1.0, top.y - 2.6},
                context.say("paper.level_unit", {{"unit", context.unit(units::Kind::Level)}}),
                small,
                Align::Right});
}

/// Parts named at the right side of the view, each at its level or as near as there is room.
void name_levels(const Context& context, Page& page, const ToPage& to_page, double left, double x) {
  struct Name {
    double y;
    std::string words;
  };
  std::vector<Name> names;
  for (const boiler::DrawnPart& part : to_page.drawing.parts) {
    if (part.outline.empty()) continue;
    const double level = part.label.level;
    const double y = to_page({0.0, level}).y;
    const auto same = std::find_if(names.begin(), names.end(),
                                   [&](const Name& one) { return std::abs(one.y - y) < 0.05; });
    if (same != names.end()) {
      if (same->words.find(part.tag) == std::string::npos) same->words += ", " + part.tag;
    } else {
      names.push_back({y, context.number({units::Kind::Level, level}) + "  " + part.tag});
    }
  }
  std::sort(names.begin(), names.end(), [](const Name& a, const Name& b) { return a.y < b.y; });
  double last = -1e9;
  for (const Name& name : names) {
    const double y = std::max(name.y, last + 2.9);
    last = y;
    page.add(paper::polyline({{left, name.y}, {x, name.y}, {x + 3.0, y}}), {0.08, {1.5, 0.8}, 0.6});
    page.add(Text{{x + 3.6, y + 0.8}, name.words, small});
  }
}

/// A group that a screen can be tapped on, where that is asked for.
class Tappable {
 public:
  Tappable(Page& page, const ViewOptions& options, const char* kind, const std::string& tag)
      : page_(options.tappable ? &page : nullptr) {
    if (page_ != nullptr) page_->begin_tappable(kind, tag);
  }
  ~Tappable() {
    if (page_ != nullptr) page_->end(paper::Role::Figure);
  }
  Tappable(const Tappable&) = delete;
  Tappable& operator=(const Tappable&) = delete;

 private:
  Page* page_;
};

void draw_parts(Page& page, const ToPage& to_page, const ViewOptions& options) {
  for (const boiler::DrawnPart& part : to_page.drawing.parts) {
    const Tappable group(page, options, "part", part.tag);
    for (const boiler::DrawnLine& line : part.thin) {
      paper::Path path = clipped(line, to_page, options.from, options.to);
      if (!path.verbs.empty()) page.add(std::move(path), thin);
    }
  }
  for (const boiler::DrawnPart& part : to_page.drawing.parts) {
    const Tappable group(page, options, "part", part.tag);
    for (const boiler::DrawnLine& line : part.outline) {
      paper::Path path = clipped(line, to_page, options.from, options.to);
      if (!path.verbs.empty()) page.add(std::move(path), part.assumed ? assumed_metal : metal);
    }
  }
}

struct Named {
  Box box;
  std::string tag;    ///< as the description has it
  std::string words;  ///< as written
};

/// With what stands beside a mark.
Box with_signs(Box box, const paper::Signs& signs) {
  const double reach = box.height / 3.0;
  if (signs.decide) box = {box.x, box.y - reach, box.width, box.height + reach};
  if (signs.leak > 0) box.height += std::max(reach * 1.4, 2.2);
  return box;
}

std::vector<Named> draw_closures(const Context& context, Page& page, const ToPage& to_page,
                                 const ViewOptions& options) {
  std::vector<Named> named;
  for (const boiler::DrawnClosure& closure : to_page.drawing.closures) {
    if (closure.centre.across < options.from || closure.centre.across >= options.to) continue;
    const Point c = to_page(closure.centre);
    const double wide = to_page.scale.millimetres(closure.width);
    const double high = to_page.scale.millimetres(closure.height);
    const Box box{c.x - wide / 2.0, c.y - high / 2.0, wide, high};
    const double width = std::clamp(high * 0.06, 0.1, 0.25);
    const Tappable group(page, options, "closure", closure.tag);
    if (context.filled != nullptr && !closure.edge_on) {
      const ClosureMark mark = mark_of(*context.filled, closure.tag);
      page.fill(paper::outline(outlined(closure.shape), box), 0.0);
      paper::draw_mark(page, box, outlined(closure.shape), mark.mark, mark.signs);
      named.push_back({with_signs(box, mark.signs), closure.tag, closure.tag});
      continue;
    }
    page.add(closure.edge_on ? paper::rectangle(box) : paper::outline(outlined(closure.shape), box),
             {width, closure.assumed ? std::vector<double>{0.8, 0.5} : std::vector<double>{}}, 0.0);
    named.push_back({box, closure.tag, closure.tag});
  }
  return named;
}

std::vector<Named> draw_mountings(const Context& context, Page& page, const ToPage& to_page,
                                  const ViewOptions& options) {
  std::vector<Named> named;
  int turn = 0;
  for (const boiler::DrawnMounting& mounting : to_page.drawing.mountings) {
    if (mounting.at.across < options.from || mounting.at.across >= options.to) continue;
    const Point root = to_page(mounting.root);
    Point at = to_page(mounting.at);
    std::string words = mounting.tag;
    if (options.stub_mountings) {
      const bool up = mounting.at.level >= mounting.root.level;
      const double reach = std::abs(at.y - root.y) < 0.5 ? 0.0 : 4.5 + 3.6 * (turn++ % 2);
      at = {root.x, root.y + (up ? -reach : reach)};
      words += " " + context.print({units::Kind::Level, mounting.at.level});
    }
    const Tappable group(page, options, "mounting", mounting.tag);
    page.add(paper::line(root, at), {0.15});
    const double r = 0.9;  // a valve: two triangles, tip to tip
    paper::Path valve;
    valve.move({at.x - r, at.y - r * 0.7}).line({at.x + r, at.y + r * 0.7});
    valve.line({at.x + r, at.y - r * 0.7}).line({at.x - r, at.y + r * 0.7}).close();
    page.add(std::move(valve), {0.15}, 0.0);
    named.push_back({{at.x - r, at.y - r * 0.7, 2.0 * r, 1.4 * r}, mounting.tag, words});
  }
  return named;
}

/// What a part's tag stands beside: the whole part if it is small, else a point of it.
Box about(const boiler::DrawnPart& part, const ToPage& to_page) {
  const Point at = to_page(part.label);
  double left = at.x, right = at.x, top = at.y, bottom = at.y;
  for (const boiler::DrawnLine& line : part.outline) {
    for (const boiler::Spot& spot : line.points) {
      const Point point = to_page(spot);
      left = std::min(left, point.x), right = std::max(right, point.x);
      top = std::min(top, point.y), bottom = std::max(bottom, point.y);
    }
  }
  if (right - left < 8.0 && bottom - top < 8.0) return {left, top, right - left, bottom - top};
  return {at.x - 0.2, at.y - 0.2, 0.4, 0.4};
}

}  // namespace

std::vector<std::string> draw_view(const Context& context, Page& page,
                                   const boiler::Drawing& drawing, const Scale& scale, Point corner,
                                   const Box& room, const ViewOptions& options) {
  const double from = std::max(options.from, drawing.lower_left.across);
  const double to = std::min(options.to, drawing.upper_right.across);
  const ToPage to_page{drawing, scale, corner, from};
  draw_parts(page, to_page, options);
  if (options.levels) {
    rule_levels(context, page, to_page, corner.x - 4.0);
    const double right = corner.x + scale.millimetres(to - from);
    name_levels(context, page, to_page, right - 2.0, right + 2.0);
  }
  std::vector<Named> named = draw_closures(context, page, to_page, options);
  const std::vector<Named> valves = draw_mountings(context, page, to_page, options);
  Placer placer(room);
  for (const Named& one : named) placer.block(one.box);
  for (const Named& one : valves) placer.block(one.box);
  std::vector<std::string> missing;
  named.insert(named.end(), valves.begin(), valves.end());
  for (const Named& one : named) {
    if (!placer.put(page, one.box, one.words, options.tags)) missing.push_back(one.tag);
  }
  if (options.part_tags) {
    const Font strong{7.5, true};
    for (const boiler::DrawnPart& part : drawing.parts) {
      placer.put(page, about(part, to_page), part.tag, strong);
    }
  }
  return missing;
}

}  // namespace steamworthy::report
