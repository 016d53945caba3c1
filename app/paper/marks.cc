#include "paper/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "paper/type.h"

namespace steamworthy::paper {
namespace {

Path lower_half(Outlined shape, const Box& box) {
  const Point c = box.centre();
  if (shape == Outlined::Oblong) {
    const double r = std::min(box.width, box.height) / 2.0;
    return Path{}
        .move({box.x, c.y})
        .line({box.right(), c.y})
        .curve({box.right(), c.y + 0.55 * r}, {box.right() - 0.45 * r, box.bottom()},
               {box.right() - r, box.bottom()})
        .line({box.x + r, box.bottom()})
        .curve({box.x + 0.45 * r, box.bottom()}, {box.x, c.y + 0.55 * r}, {box.x, c.y})
        .close();
  }
  const double a = box.width / 2.0, b = box.height / 2.0, q = 0.5522847498307936;
  return Path{}
      .move({box.right(), c.y})
      .curve({box.right(), c.y + q * b}, {c.x + q * a, box.bottom()}, {c.x, box.bottom()})
      .curve({c.x - q * a, box.bottom()}, {box.x, c.y + q * b}, {box.x, c.y})
      .close();
}

void draw_signs(Page& page, const Box& box, const Signs& signs) {
  const double unit = box.height / 3.0;
  const Point c = box.centre();
  if (signs.decide) {
    const double x = box.x + box.width * 0.75, y = box.y + box.height * 0.12;
    page.add(line({x, y}, {x, y - unit}), {0.25});
    Path flag;
    flag.move({x, y - unit}).line({x + unit * 0.9, y - unit * 0.7}).line({x, y - unit * 0.4});
    page.fill(flag.close(), 1.0);
  }
  if (signs.unsent) {
    page.add(line({box.right(), c.y}, {box.right() + unit * 0.9, c.y + unit * 0.5}), {0.3});
  }
  if (signs.leak > 0) {
    const double y = box.bottom() + 0.1 * unit;
    Path drop;
    drop.move({c.x, y})
        .curve({c.x + 0.1 * unit, y + 0.35 * unit}, {c.x + 0.35 * unit, y + 0.4 * unit},
               {c.x + 0.35 * unit, y + 0.65 * unit})
        .curve({c.x + 0.35 * unit, y + 1.05 * unit}, {c.x - 0.35 * unit, y + 1.05 * unit},
               {c.x - 0.35 * unit, y + 0.65 * unit})
        .curve({c.x - 0.35 * unit, y + 0.4 * unit}, {c.x - 0.1 * unit, y + 0.35 * unit}, {c.x, y});
    page.fill(drop.close(), 1.0);
    page.add(Text{{c.x + 0.6 * unit, y + 1.3 * unit},
                  std::to_string(signs.leak),
                  {std::max(6.0, unit / millimetres_per_point), true}});
  }
}

struct LegendEntry {
  Mark mark;
  Signs signs;
};

const std::array<LegendEntry, legend_entries>& legend() {
  static const std::array<LegendEntry, legend_entries> entries = {{
      {Mark::NotOpened, {}},
      {Mark::Open, {}},
      {Mark::Cleaned, {}},
      {Mark::NippedUp, {}},
      {Mark::GapMeasured, {}},
      {Mark::SeenDry, {}},
      {Mark::HardenedUp, {}},
      {Mark::Touched, {}},
      {Mark::Cleaned, {.leak = 1}},
      {Mark::Cleaned, {.decide = true}},
      {Mark::Cleaned, {.unsent = true}},
  }};
  return entries;
}

constexpr double legend_row = 7.4;
constexpr double legend_column = 58.0;
constexpr Font legend_font{7.5, false};

int legend_columns(double width) { return std::max(1, static_cast<int>(width / legend_column)); }

}  // namespace

Path outline(Outlined shape, const Box& box) {
  return shape == Outlined::Oblong ? oblong(box) : ellipse(box);
}

void draw_mark(Page& page, const Box& box, Outlined shape, Mark mark, const Signs& signs) {
  const Point c = box.centre();
  const double line_width = std::clamp(box.height * 0.07, 0.15, 0.4);
  const Pen pen{line_width};
  const Path around = outline(shape, box);
  const auto yoke = [&](double ink) {
    const double half = box.height * 0.1;
    const double reach = box.width * (ink > 0.5 ? 0.62 : 0.5);
    page.fill(rectangle({c.x - reach, c.y - half, 2.0 * reach, 2.0 * half}), ink);
  };
  switch (mark) {
    case Mark::NotOpened: {
      page.add(around, {line_width * 0.6});
      const double a = box.width * 0.3536, b = box.height * 0.3536;
      page.add(line({c.x - a, c.y + b}, {c.x + a, c.y - b}), {line_width * 0.6});
      break;
    }
    case Mark::Open:
      page.add(around, {line_width, {line_width * 3.0, line_width * 2.5}});
      break;
    case Mark::Cleaned:
      page.add(around, pen);
      break;
    case Mark::NippedUp:
      page.add(around, pen);
      yoke(1.0);
      break;
    case Mark::GapMeasured: {
      page.add(around, pen);
      yoke(1.0);
      const double r = box.height * 0.2;
      page.fill(ellipse({c.x - r, c.y - r, 2.0 * r, 2.0 * r}), 1.0);
      break;
    }
    case Mark::SeenDry:
      page.add(around, pen, 1.0);
      break;
    case Mark::HardenedUp:
      page.add(around, pen, 1.0);
      yoke(0.0);
      break;
    case Mark::Touched:
      page.add(around, pen);
      page.fill(lower_half(shape, box), 1.0);
      break;
  }
  draw_signs(page, box, signs);
}

double legend_height(double width) {
  const int columns = legend_columns(width);
  return legend_row * ((legend_entries + columns - 1) / columns);
}

void draw_legend(Page& page, const Box& box, const std::array<std::string, legend_entries>& words) {
  const int columns = legend_columns(box.width);
  const double step = box.width / columns;
  for (int i = 0; i < legend_entries; ++i) {
    const LegendEntry& entry = legend()[static_cast<std::size_t>(i)];
    const double x = box.x + step * (i % columns), y = box.y + legend_row * (i / columns);
    draw_mark(page, {x + 1.5, y + 1.4, 4.8, 3.6}, Outlined::Oval, entry.mark, entry.signs);
    page.add(Text{{x + 9.0, y + 4.0},
                  shorten(words[static_cast<std::size_t>(i)], legend_font, step - 9.5),
                  legend_font});
  }
}

}  // namespace steamworthy::paper
