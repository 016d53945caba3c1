// Display list: what is drawn on each page, as plain data.
//
// The one thing between layout and the writers (write.h): layout puts paths and
// texts here, and PDF, PNG and SVG are made of the same list. Lengths are
// millimetres from the top left corner of a page, x to the right, y down; sizes
// of type are points. There is no colour: ink runs from 0 (none) to 1 (black),
// so that a black-and-white print loses nothing.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steamworthy::paper {

inline constexpr double millimetres_per_point = 25.4 / 72.0;

struct Point {
  double x = 0.0;
  double y = 0.0;
};

struct Box {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;

  double right() const { return x + width; }
  double bottom() const { return y + height; }
  Point centre() const { return {x + width / 2.0, y + height / 2.0}; }
  Box inset(double by) const { return {x + by, y + by, width - 2.0 * by, height - 2.0 * by}; }
  bool overlaps(const Box& other) const;
  bool contains(const Box& other) const;
};

/// Straight lines and curves (cubic, as in PDF and SVG).
struct Path {
  enum class Verb { Move, Line, Curve, Close };
  std::vector<Verb> verbs;
  std::vector<Point> points;  ///< one for a move or line, three for a curve

  Path& move(Point to);
  Path& line(Point to);
  Path& curve(Point first, Point second, Point to);
  Path& close();
};

Path line(Point from, Point to);
Path polyline(const std::vector<Point>& points);
Path rectangle(const Box& box);
Path ellipse(const Box& box);
/// A rectangle whose shorter sides are half circles.
Path oblong(const Box& box);

struct Pen {
  double width = 0.2;
  std::vector<double> dash = {};  ///< on, off, on, ...; empty for a full line
  double ink = 1.0;
};

struct Shape {
  Path path;
  std::optional<Pen> pen;
  std::optional<double> fill;  ///< ink of the inside
};

struct Font {
  double size = 9.0;  ///< points
  bool bold = false;
};

enum class Align { Left, Centre, Right };

/// One line of text; `at` is on its base line, where `align` says.
struct Text {
  Point at;
  std::string text;
  Font font;
  Align align = Align::Left;
  double turn = 0.0;  ///< degrees, anticlockwise, about `at`
  double ink = 1.0;
};

/// What a stretch of the list is, for readers that do not see: PDF's structure, SVG's groups.
enum class Role { Heading1, Heading2, Paragraph, Table, Row, HeadCell, Cell, Figure, List };
struct Begin {
  Role role = Role::Paragraph;
  std::string words;  ///< what a Figure shows
  /// On a screen: what a tap on it is about. A group with a tag is for SVG alone.
  std::string tag = {};
  std::string kind = {};
};
struct End {
  Role role = Role::Paragraph;
};

using Item = std::variant<Shape, Text, Begin, End>;

struct Page {
  double width = 210.0;
  double height = 297.0;
  std::vector<Item> items;

  void add(Path path, Pen pen, std::optional<double> fill = std::nullopt);
  void fill(Path path, double ink);
  void add(Text text);
  void begin(Role role, std::string words = {});
  /// What is drawn until end(Role::Figure) may be tapped; only SVG shows it.
  void begin_tappable(std::string kind, std::string tag);
  void end(Role role);
};

/// A line of the outline that readers show beside the pages.
struct Outline {
  std::string words;
  int page = 1;
  int depth = 1;
};

struct Document {
  std::string title;
  std::string subject;
  std::string keywords;
  std::string creator;  ///< the program and its version
  std::string date;     ///< "2026-11-25"; empty: no day is claimed, and the file says 1970
  std::vector<Page> pages;
  std::vector<Outline> outline;
};

}  // namespace steamworthy::paper
