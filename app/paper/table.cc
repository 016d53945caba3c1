// Tables of a flow: widths of columns, heights of rows, where they break.
#include <algorithm>
#include <numeric>

#include "paper/flow.h"
#include "paper/type.h"

namespace steamworthy::paper {
namespace {

constexpr double pad_x = 1.4;
constexpr double pad_y = 0.7;
const Pen thin{0.12, {}, 0.6};
const Pen strong{0.3, {}, 1.0};

Font font_of(const Table& table, const Cell& cell) { return {table.font.size, cell.bold}; }
Font head_font(const Table& table) { return {table.font.size, true}; }
Font band_font(const Table& table) { return {table.font.size + 0.5, true}; }

double longest_word(const std::string& text, Font font) {
  double longest = 0.0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    longest = std::max(longest, text_width(text.substr(at, end - at), font));
    at = end + 1;
  }
  return longest;
}

double longest_line(const std::string& text, Font font) {
  double longest = 0.0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    longest = std::max(longest, text_width(text.substr(at, end - at), font));
    at = end + 1;
  }
  return longest;
}

/// A row with its cells broken into lines.
struct Set {
  const Row* row = nullptr;
  std::vector<std::vector<std::string>> lines;
  double height = 0.0;
};

Set set_row(const Table& table, const Row& row, const std::vector<double>& widths) {
  Set set{&row, {}, row.least_height};
  if (!row.band.empty()) {
    set.height = line_height(band_font(table)) + 2.0 * pad_y + 0.6;
    return set;
  }
  const double high = line_height(table.font);
  for (std::size_t i = 0; i < row.cells.size() && i < widths.size(); ++i) {
    const Cell& cell = row.cells[i];
    set.lines.push_back(cell.draw ? std::vector<std::string>{}
                                  : wrap(cell.text, font_of(table, cell), widths[i] - 2.0 * pad_x));
    set.height = std::max(
        set.height, high * static_cast<double>(std::max<std::size_t>(set.lines.back().size(), 1)) +
                        2.0 * pad_y);
  }
  return set;
}

/// Splits a row that no page could hold into rows that a page can.
std::vector<Set> pieces(const Table& table, Set set, double most) {
  if (set.height <= most) return {std::move(set)};
  const double high = line_height(table.font);
  const auto per_piece =
      static_cast<std::size_t>(std::max(1.0, (most - 2.0 * pad_y) / high - 1e-9));
  std::vector<Set> cut;
  std::size_t longest = 0;
  for (const auto& lines : set.lines) longest = std::max(longest, lines.size());
  for (std::size_t from = 0; from < longest; from += per_piece) {
    Set piece{set.row, {}, 0.0};
    std::size_t held = 1;
    for (const auto& lines : set.lines) {
      const std::size_t first = std::min(from, lines.size());
      const std::size_t last = std::min(from + per_piece, lines.size());
      piece.lines.emplace_back(lines.begin() + static_cast<std::ptrdiff_t>(first),
                               lines.begin() + static_cast<std::ptrdiff_t>(last));
      held = std::max(held, last - first);
    }
    piece.height = high * static_cast<double>(held) + 2.0 * pad_y;
    cut.push_back(std::move(piece));
  }
  if (cut.empty()) {
    set.height = most;
    return {std::move(set)};
  }
  return cut;
}

void put_cell(Page& page, const Table& table, const Box& box, Align align, Font font,
              const std::vector<std::string>& lines) {
  const double x = align == Align::Left     ? box.x + pad_x
                   : align == Align::Centre ? box.centre().x
                                            : box.right() - pad_x;
  double y = box.y + pad_y + ascent(font);
  for (const std::string& text : lines) {
    page.add(Text{{x, y}, text, font, align});
    y += line_height(table.font);
  }
}

void put_row(Page& page, const Table& table, const Set& set, const std::vector<double>& widths,
             double x, double y, double width) {
  page.begin(Role::Row);
  if (!set.row->band.empty()) {
    page.fill(rectangle({x, y, width, set.height}), 0.1);
    page.begin(Role::HeadCell);
    page.add(Text{{x + pad_x, y + pad_y + 0.3 + ascent(band_font(table))},
                  shorten(set.row->band, band_font(table), width - 2.0 * pad_x),
                  band_font(table)});
    page.end(Role::HeadCell);
  } else {
    double at = x;
    for (std::size_t i = 0; i < set.lines.size(); ++i) {
      const Cell& cell = set.row->cells[i];
      if (table.ruled && i > 0) page.add(line({at, y}, {at, y + set.height}), thin);
      const Box box{at, y, widths[i], set.height};
      page.begin(Role::Cell);
      if (cell.draw) {
        cell.draw(page, box);
      } else {
        put_cell(page, table, box, table.columns[i].align, font_of(table, cell), set.lines[i]);
      }
      page.end(Role::Cell);
      at += widths[i];
    }
  }
  page.end(Role::Row);
  page.add(line({x, y + set.height}, {x + width, y + set.height}), thin);
}

}  // namespace

std::vector<double> column_widths(const Table& table, double width) {
  const std::size_t count = table.columns.size();
  std::vector<double> least(count), natural(count);
  for (std::size_t i = 0; i < count; ++i) {
    const Column& column = table.columns[i];
    if (column.width > 0.0) {
      least[i] = natural[i] = column.width;
      continue;
    }
    least[i] = longest_word(column.head, head_font(table));
    natural[i] = least[i];
    for (const Row& row : table.rows) {
      if (i >= row.cells.size() || !row.band.empty()) continue;
      const Font font = font_of(table, row.cells[i]);
      least[i] = std::max(least[i], longest_word(row.cells[i].text, font));
      natural[i] = std::max(natural[i], longest_line(row.cells[i].text, font));
    }
    least[i] += 2.0 * pad_x + 0.1;
    natural[i] += 2.0 * pad_x + 0.1;
  }
  const double sum_natural = std::accumulate(natural.begin(), natural.end(), 0.0);
  const double sum_least = std::accumulate(least.begin(), least.end(), 0.0);
  std::vector<double> widths = natural;
  if (sum_natural <= width) {
    double free = 0.0;
    for (std::size_t i = 0; i < count; ++i) free += table.columns[i].width > 0.0 ? 0.0 : natural[i];
    for (std::size_t i = 0; i < count && free > 0.0; ++i) {
      if (table.columns[i].width <= 0.0) widths[i] += (width - sum_natural) * natural[i] / free;
    }
  } else if (sum_least <= width) {
    const double share = (width - sum_least) / (sum_natural - sum_least);
    for (std::size_t i = 0; i < count; ++i) widths[i] = least[i] + share * (natural[i] - least[i]);
  } else {
    for (std::size_t i = 0; i < count; ++i) widths[i] = least[i] * width / sum_least;
  }
  return widths;
}

void Flow::table(const Table& table) {
  if (table.rows.empty()) return;
  const std::vector<double> widths = column_widths(table, body_.width);
  Row heads;
  bool headed = false;
  for (const Column& column : table.columns) {
    heads.cells.push_back({column.head, true});
    headed = headed || !column.head.empty();
  }
  const Set head = set_row(table, heads, widths);
  const double head_height = headed ? head.height : 0.0;

  std::vector<Set> rows;
  for (const Row& row : table.rows) {
    auto cut = pieces(table, set_row(table, row, widths), height() - head_height);
    for (Set& set : cut) rows.push_back(std::move(set));
  }

  std::size_t at = 0;
  while (at < rows.size()) {
    // As many rows as fit; a band goes with the row under it; the last row is not left alone.
    const auto fitting = [&](double room) {
      std::size_t count = 0;
      double used = head_height;
      while (at + count < rows.size() && used + rows[at + count].height <= room + 1e-9)
        used += rows[at + count++].height;
      const bool more = at + count < rows.size();
      if (more && count > 1 && at + count + 1 == rows.size()) --count;
      while (more && count > 0 && !rows[at + count - 1].row->band.empty()) --count;
      return count;
    };
    std::size_t count = fitting(left());
    const bool at_top = y_ <= top_;
    if (!at_top && (count == 0 || (count == 1 && rows.size() - at > 1))) {
      new_page();
      continue;
    }
    if (count == 0) count = 1;
    page().begin(Role::Table);
    page().add(line({body_.x, y_}, {body_.right(), y_}), strong);
    if (headed) {
      page().begin(Role::Row);
      double x = body_.x;
      for (std::size_t i = 0; i < widths.size(); ++i) {
        page().begin(Role::HeadCell);
        put_cell(page(), table, {x, y_, widths[i], head.height}, table.columns[i].align,
                 head_font(table), head.lines[i]);
        page().end(Role::HeadCell);
        x += widths[i];
      }
      page().end(Role::Row);
      y_ += head_height;
      page().add(line({body_.x, y_}, {body_.right(), y_}), strong);
    }
    for (std::size_t i = at; i < at + count; ++i) {
      put_row(page(), table, rows[i], widths, body_.x, y_, body_.width);
      y_ += rows[i].height;
    }
    page().end(Role::Table);
    at += count;
    if (at < rows.size()) begin_page();
  }
  y_ = std::min(y_ + 1.5, body_.bottom());
}

Cell tick_box() {
  return {"", false, [](Page& page, const Box& box) {
            const double side = std::min({4.0, box.width - 1.0, box.height - 0.8});
            const Point c = box.centre();
            page.add(rectangle({c.x - side / 2.0, c.y - side / 2.0, side, side}), {0.25});
          }};
}

}  // namespace steamworthy::paper
