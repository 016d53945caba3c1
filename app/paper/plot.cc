#include "paper/plot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "paper/type.h"

namespace steamworthy::paper {
namespace {

constexpr Font small{7.5, false};
constexpr double thinned_column = 0.1;  // mm

struct Frame {
  Box box;
  Axis x, y;

  double at_x(double value) const { return box.x + (value - x.from) / (x.to - x.from) * box.width; }
  double at_y(double value) const {
    return box.bottom() - (value - y.from) / (y.to - y.from) * box.height;
  }
};

void widen(Axis& axis, double lowest, double highest, double share) {
  if (axis.to > axis.from) return;
  if (!(lowest <= highest)) lowest = 0.0, highest = 1.0;
  double span = highest - lowest;
  if (span <= 0.0) span = std::max(std::abs(highest) * 0.1, 1e-9);
  axis.from = lowest - share * span;
  axis.to = highest + share * span;
}

void fit_axes(const Plot& plot, Axis& x, Axis& y) {
  double x0 = INFINITY, x1 = -INFINITY, y0 = INFINITY, y1 = -INFINITY;
  for (const Curve& curve : plot.curves) {
    for (const Point& point : curve.points) {
      if (!std::isfinite(point.y) || !std::isfinite(point.x)) continue;
      x0 = std::min(x0, point.x), x1 = std::max(x1, point.x);
      y0 = std::min(y0, point.y), y1 = std::max(y1, point.y);
    }
  }
  for (const Limit& limit : plot.limits) y0 = std::min(y0, limit.y), y1 = std::max(y1, limit.y);
  for (const Stretch& one : plot.stretches) x0 = std::min(x0, one.from), x1 = std::max(x1, one.to);
  widen(x, x0, x1, 0.0);
  widen(y, y0, y1, plot.stretches.empty() ? 0.05 : 0.1);
}

std::string label(double value, double step) {
  const int digits = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  const std::string text = fmt::format("{:.{}f}", value, std::min(digits, 9));
  return text.find_first_not_of("-0.") == std::string::npos && text.front() == '-' ? text.substr(1)
                                                                                   : text;
}

/// The curve on the page, thinned column by column.
std::vector<std::vector<Point>> thinned(const Frame& frame, const Curve& curve) {
  std::vector<std::vector<Point>> runs(1);
  std::vector<Point> column;
  long current = 0;
  const auto flush = [&] {
    if (column.size() <= 4) {
      runs.back().insert(runs.back().end(), column.begin(), column.end());
    } else {
      const auto less = [](const Point& a, const Point& b) { return a.y < b.y; };
      auto low = std::min_element(column.begin(), column.end(), less);
      auto high = std::max_element(column.begin(), column.end(), less);
      if (high < low) std::swap(low, high);
      for (const Point& point : {column.front(), *low, *high, column.back()})
        runs.back().push_back(point);
    }
    column.clear();
  };
  for (const Point& point : curve.points) {
    if (!std::isfinite(point.x) || !std::isfinite(point.y)) {
      flush();
      if (!runs.back().empty()) runs.emplace_back();
      continue;
    }
    const Point at{frame.at_x(point.x), frame.at_y(point.y)};
    const long here = std::lround(std::floor(at.x / thinned_column));
    if (!column.empty() && here != current) flush();
    current = here;
    column.push_back(at);
  }
  flush();
  return runs;
}

/// The part of the segment inside the frame; nothing if none is.
bool clip(const Box& box, Point& a, Point& b) {
  double t0 = 0.0, t1 = 1.0;
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double p[] = {-dx, dx, -dy, dy};
  const double q[] = {a.x - box.x, box.right() - a.x, a.y - box.y, box.bottom() - a.y};
  for (int i = 0; i < 4; ++i) {
    if (p[i] == 0.0) {
      if (q[i] < -1e-9) return false;
      continue;
    }
    const double t = q[i] / p[i];
    p[i] < 0.0 ? t0 = std::max(t0, t) : t1 = std::min(t1, t);
  }
  if (t0 > t1) return false;
  const Point from = a;
  a = {from.x + t0 * dx, from.y + t0 * dy};
  b = {from.x + t1 * dx, from.y + t1 * dy};
  return true;
}

void put_run(Page& page, const Box& box, const std::vector<Point>& run, const Pen& pen) {
  Path path;
  Point last{INFINITY, INFINITY};
  for (std::size_t i = 0; i + 1 < run.size(); ++i) {
    Point a = run[i], b = run[i + 1];
    if (!clip(box, a, b)) continue;
    if (a.x != last.x || a.y != last.y) path.move(a);
    path.line(b);
    last = b;
  }
  if (!path.verbs.empty()) page.add(std::move(path), pen);
}

void put_axes(Page& page, const Frame& frame) {
  const Box& box = frame.box;
  page.add(rectangle(box), {0.25});
  const auto xs = ticks(frame.x.from, frame.x.to, std::max(2, static_cast<int>(box.width / 18.0)));
  const auto ys = ticks(frame.y.from, frame.y.to, std::max(2, static_cast<int>(box.height / 8.0)));
  const double step_x = xs.size() > 1 ? xs[1] - xs[0] : 1.0;
  const double step_y = ys.size() > 1 ? ys[1] - ys[0] : 1.0;
  for (const double value : xs) {
    const double x = frame.at_x(value);
    page.add(line({x, box.y}, {x, box.bottom()}), {0.08, {}, 0.45});
    page.add(Text{{x, box.bottom() + 3.6}, label(value, step_x), small, Align::Centre});
  }
  for (const double value : ys) {
    const double y = frame.at_y(value);
    page.add(line({box.x, y}, {box.right(), y}), {0.08, {}, 0.45});
    page.add(Text{{box.x - 1.2, y + 1.0}, label(value, step_y), small, Align::Right});
  }
  page.add(Text{{box.centre().x, box.bottom() + 7.6}, frame.x.words, small, Align::Centre});
}

}  // namespace

std::vector<double> ticks(double from, double to, int most) {
  const double span = to - from;
  if (!(span > 0.0) || most < 1) return {};
  double step = std::pow(10.0, std::floor(std::log10(span / most)));
  for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
    if (span / (step * factor) <= most + 1e-9) {
      step *= factor;
      break;
    }
  }
  std::vector<double> values;
  for (double k = std::ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k += 1.0)
    values.push_back(k * step);
  return values;
}

void draw_plot(Page& page, const Box& box, const Plot& plot) {
  std::size_t named = 0;
  for (const Curve& curve : plot.curves) named += curve.words.empty() ? 0 : 1;
  const double key_height = 4.2 * static_cast<double>(named);
  const double label_room = 17.0;
  double right_room = 3.0;
  for (const Limit& limit : plot.limits)
    right_room = std::max(right_room, text_width(limit.words, small) + 2.5);
  right_room = std::min(right_room, box.width * 0.35);
  Frame frame{{box.x + label_room, box.y + 5.5, box.width - label_room - right_room,
               box.height - 5.5 - 10.0 - key_height},
              plot.x,
              plot.y};
  fit_axes(plot, frame.x, frame.y);
  page.add(Text{{box.x, box.y + 3.2}, plot.y.words, small});
  put_axes(page, frame);

  for (const Stretch& one : plot.stretches) {
    const double from = std::max(frame.at_x(one.from), frame.box.x);
    const double to = std::min(frame.at_x(one.to), frame.box.right());
    if (to <= from) continue;
    page.add(line({from, frame.box.y}, {from, frame.box.bottom()}), {0.18, {0.6, 0.6}});
    page.add(line({to, frame.box.y}, {to, frame.box.bottom()}), {0.18, {0.6, 0.6}});
    if (to - from > 6.0) {
      page.add(Text{{(from + to) / 2.0, frame.box.y + 3.2},
                    shorten(one.words, small, to - from - 1.0),
                    small,
                    Align::Centre});
    }
  }
  double last_label = -1e9;
  std::vector<Limit> limits = plot.limits;
  std::stable_sort(limits.begin(), limits.end(),
                   [](const Limit& a, const Limit& b) { return a.y > b.y; });
  for (const Limit& limit : limits) {
    const double y = frame.at_y(limit.y);
    if (y < frame.box.y || y > frame.box.bottom()) continue;
    page.add(line({frame.box.x, y}, {frame.box.right(), y}), limit.pen);
    const double base = std::max(y + 1.0, last_label + 3.4);
    last_label = base;
    page.add(Text{
        {frame.box.right() + 1.2, base}, shorten(limit.words, small, right_room - 1.2), small});
  }
  double key = frame.box.bottom() + 10.0;
  for (const Curve& curve : plot.curves) {
    for (const auto& run : thinned(frame, curve)) {
      if (!curve.dots) {
        put_run(page, frame.box, run, curve.pen);
        continue;
      }
      Path dots;
      for (const Point& p : run) {
        if (!frame.box.contains({p.x, p.y, 0.0, 0.0})) continue;
        const Path dot = ellipse({p.x - 0.5, p.y - 0.5, 1.0, 1.0});
        dots.verbs.insert(dots.verbs.end(), dot.verbs.begin(), dot.verbs.end());
        dots.points.insert(dots.points.end(), dot.points.begin(), dot.points.end());
      }
      if (!dots.verbs.empty()) page.fill(std::move(dots), curve.pen.ink);
    }
    if (curve.words.empty()) continue;
    const double y = key + 1.6;
    if (curve.dots) {
      page.fill(ellipse({frame.box.x + 5.5, y - 0.5, 1.0, 1.0}), curve.pen.ink);
    } else {
      page.add(line({frame.box.x, y}, {frame.box.x + 12.0, y}), curve.pen);
    }
    page.add(Text{{frame.box.x + 14.0, y + 1.0}, curve.words, small});
    key += 4.2;
  }
}

}  // namespace steamworthy::paper
