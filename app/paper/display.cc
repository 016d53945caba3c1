#include "paper/display.h"

#include <algorithm>
#include <utility>

namespace steamworthy::paper {
namespace {

/// Control points of a quarter circle by one cubic: 4/3 (sqrt(2) - 1).
constexpr double quarter = 0.5522847498307936;

}  // namespace

bool Box::overlaps(const Box& other) const {
  return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
}

bool Box::contains(const Box& other) const {
  return other.x >= x && other.y >= y && other.right() <= right() && other.bottom() <= bottom();
}

Path& Path::move(Point to) {
  verbs.push_back(Verb::Move);
  points.push_back(to);
  return *this;
}

Path& Path::line(Point to) {
  verbs.push_back(Verb::Line);
  points.push_back(to);
  return *this;
}

Path& Path::curve(Point first, Point second, Point to) {
  verbs.push_back(Verb::Curve);
  points.insert(points.end(), {first, second, to});
  return *this;
}

Path& Path::close() {
  verbs.push_back(Verb::Close);
  return *this;
}

Path line(Point from, Point to) { return Path{}.move(from).line(to); }

Path polyline(const std::vector<Point>& points) {
  Path path;
  for (const Point& point : points) path.verbs.empty() ? path.move(point) : path.line(point);
  return path;
}

Path rectangle(const Box& box) {
  Path path = polyline(
      {{box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}});
  return path.close();
}

Path ellipse(const Box& box) {
  const Point c = box.centre();
  const double a = box.width / 2.0, b = box.height / 2.0, qa = quarter * a, qb = quarter * b;
  return Path{}
      .move({c.x + a, c.y})
      .curve({c.x + a, c.y + qb}, {c.x + qa, c.y + b}, {c.x, c.y + b})
      .curve({c.x - qa, c.y + b}, {c.x - a, c.y + qb}, {c.x - a, c.y})
      .curve({c.x - a, c.y - qb}, {c.x - qa, c.y - b}, {c.x, c.y - b})
      .curve({c.x + qa, c.y - b}, {c.x + a, c.y - qb}, {c.x + a, c.y})
      .close();
}

Path oblong(const Box& box) {
  const double r = std::min(box.width, box.height) / 2.0, q = quarter * r;
  const double left = box.x, right = box.right(), top = box.y, bottom = box.bottom();
  return Path{}
      .move({left + r, top})
      .line({right - r, top})
      .curve({right - r + q, top}, {right, top + r - q}, {right, top + r})
      .line({right, bottom - r})
      .curve({right, bottom - r + q}, {right - r + q, bottom}, {right - r, bottom})
      .line({left + r, bottom})
      .curve({left + r - q, bottom}, {left, bottom - r + q}, {left, bottom - r})
      .line({left, top + r})
      .curve({left, top + r - q}, {left + r - q, top}, {left + r, top})
      .close();
}

void Page::add(Path path, Pen pen, std::optional<double> fill) {
  items.emplace_back(Shape{std::move(path), std::move(pen), fill});
}

void Page::fill(Path path, double ink) {
  items.emplace_back(Shape{std::move(path), std::nullopt, ink});
}

void Page::add(Text text) {
  if (!text.text.empty()) items.emplace_back(std::move(text));
}

void Page::begin(Role role, std::string words) {
  items.emplace_back(Begin{role, std::move(words)});
}
void Page::begin_tappable(std::string kind, std::string tag) {
  items.emplace_back(Begin{Role::Figure, tag, tag, std::move(kind)});
}

void Page::end(Role role) { items.emplace_back(End{role}); }

}  // namespace steamworthy::paper
