// Flow: headings, paragraphs, tables and drawings set down one under the other,
// over as many pages as they need, each with its head and foot.
//
// Tables break between rows and repeat their heads; a heading never stands alone
// at the foot of a page; a table's last row is never alone on a page. Start
// reading at class Flow.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::paper {

enum class Size { A4, Letter };

struct Setup {
  Size size = Size::A4;
  bool landscape = false;
};

/// Width and height in millimetres, as the paper lies.
Box sheet(Setup setup);

/// The part of the page between head and foot.
Box body(Setup setup);

/// What stands on every page around the text.
struct Furniture {
  std::string title;              ///< top left
  std::string subject;            ///< top right
  std::vector<std::string> foot;  ///< lines at the bottom left, each shortened to fit
  std::string code;               ///< what the QR code at the bottom right says; empty: none
};

using Draw = std::function<void(Page&, const Box&)>;

struct Cell {
  std::string text;
  bool bold = false;
  Draw draw = {};  ///< instead of text: a mark, a box to tick
};

struct Column {
  std::string head;
  double width = 0.0;  ///< millimetres; 0: by what it holds
  Align align = Align::Left;
};

struct Row {
  std::vector<Cell> cells;
  double least_height = 0.0;  ///< millimetres: room to write by hand
  std::string band;           ///< if not empty: one heading over all columns instead of cells
};

struct Table {
  std::vector<Column> columns;
  std::vector<Row> rows;
  Font font = {8.5, false};
  bool ruled = false;  ///< lines between columns: a form to write in
};

class Flow {
 public:
  Flow(Setup setup, Furniture furniture, Document properties);

  void heading(const std::string& words, int depth = 1);
  /// `mark` stands before the first line, in the margin of the others: "!" for a caution.
  void paragraph(const std::string& text, Font font = {9.0, false}, const std::string& mark = {});
  void table(const Table& table);
  /// Room of that height; the drawing comes to stand in it as a Figure of those words.
  void figure(double height, const std::string& words, const Draw& draw);
  void space(double millimetres);
  /// Goes on on a new page unless that height is left.
  void need(double millimetres);
  void new_page();
  /// Stands at the top of every page from the next one on: a legend. Height 0 ends it.
  void banner(double height, const Draw& draw);
  /// From here on pages lie as said; begins a page.
  void turn(bool landscape);

  double width() const { return body_.width; }
  double left() const { return body_.bottom() - y_; }
  double height() const { return body_.height - banner_height_; }

  /// Heads, feet and page numbers are put on; the flow is then empty.
  Document finish();

 private:
  void begin_page();
  Page& page() { return document_.pages.back(); }

  Setup setup_;
  Furniture furniture_;
  Document document_;
  Box body_;
  double banner_height_ = 0.0;
  Draw banner_;
  double top_ = 0.0;  ///< where the text of this page begins
  double y_ = 0.0;
};

/// The widths of a table's columns in millimetres, `width` in all: fixed ones as said, the others
/// by what they hold; where that is too much, the wordy ones give way, to their longest word.
std::vector<double> column_widths(const Table& table, double width);

/// A square box to tick, as a table's cell.
Cell tick_box();

}  // namespace steamworthy::paper
