#include "paper/flow.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "paper/qr.h"
#include "paper/type.h"

namespace steamworthy::paper {
namespace {

constexpr double margin_side = 14.0;
constexpr double margin_top = 19.0;
constexpr double margin_bottom = 29.0;
constexpr double code_side = 18.0;
constexpr double foot_top = 24.0;  // of the rule above the foot, from the bottom edge

void put_furniture(Page& page, const Furniture& furniture, std::size_t number, std::size_t of) {
  const double right = page.width - margin_side;
  const Font strong{10.0, true}, plain{9.0, false}, small{7.0, false};
  page.add(Text{{margin_side, 12.5}, furniture.title, strong});
  const double room = right - margin_side - text_width(furniture.title, strong) - 6.0;
  page.add(Text{
      {right, 12.5}, shorten(furniture.subject, plain, std::max(room, 20.0)), plain, Align::Right});
  page.add(line({margin_side, 14.5}, {right, 14.5}), {0.35});

  const double top = page.height - foot_top;
  page.add(line({margin_side, top}, {right, top}), {0.2});
  const bool coded = !furniture.code.empty();
  const double text_right = coded ? right - code_side - 3.0 : right;
  const std::string count = fmt::format("page {} of {}", number, of);
  page.add(Text{{text_right, top + 4.0}, count, plain, Align::Right});
  double y = top + 4.0;
  double limit = text_right - margin_side - text_width(count, plain) - 4.0;
  for (const std::string& text : furniture.foot) {
    page.add(Text{{margin_side, y}, shorten(text, small, limit), small});
    y += 3.4;
    limit = text_right - margin_side;
  }
  if (coded) draw_code(page, {right - code_side, top + 1.0, code_side, code_side}, furniture.code);
}

}  // namespace

Box sheet(Setup setup) {
  const double width = setup.size == Size::A4 ? 210.0 : 215.9;
  const double height = setup.size == Size::A4 ? 297.0 : 279.4;
  return setup.landscape ? Box{0.0, 0.0, height, width} : Box{0.0, 0.0, width, height};
}

Box body(Setup setup) {
  const Box all = sheet(setup);
  return {margin_side, margin_top, all.width - 2.0 * margin_side,
          all.height - margin_top - margin_bottom};
}

Flow::Flow(Setup setup, Furniture furniture, Document properties)
    : setup_(setup),
      furniture_(std::move(furniture)),
      document_(std::move(properties)),
      body_(body(setup)) {
  begin_page();
}

void Flow::begin_page() {
  const Box all = sheet(setup_);
  document_.pages.push_back({all.width, all.height, {}});
  if (banner_height_ > 0.0) {
    page().begin(Role::Figure, "");
    banner_(page(), {body_.x, body_.y, body_.width, banner_height_});
    page().end(Role::Figure);
  }
  y_ = top_ = body_.y + banner_height_;
}

void Flow::banner(double height, const Draw& draw) {
  banner_height_ = height;
  banner_ = draw;
}

void Flow::new_page() {
  if (y_ > top_) begin_page();
}

void Flow::turn(bool landscape) {
  setup_.landscape = landscape;
  body_ = body(setup_);
  if (page().items.empty()) document_.pages.pop_back();
  begin_page();
}

void Flow::need(double millimetres) {
  if (left() < std::min(millimetres, height())) new_page();
}

void Flow::space(double millimetres) {
  if (y_ > top_) y_ = std::min(y_ + millimetres, body_.bottom());
}

void Flow::heading(const std::string& words, int depth) {
  const Font font{depth == 1 ? 12.0 : 10.0, true};
  space(depth == 1 ? 4.0 : 2.5);
  need(line_height(font) + 22.0);
  document_.outline.push_back({words, static_cast<int>(document_.pages.size()), depth});
  const Role role = depth == 1 ? Role::Heading1 : Role::Heading2;
  page().begin(role);
  for (const std::string& text : wrap(words, font, body_.width)) {
    page().add(Text{{body_.x, y_ + ascent(font)}, text, font});
    y_ += line_height(font);
  }
  page().end(role);
  y_ += 1.0;
}

void Flow::paragraph(const std::string& text, Font font, const std::string& mark) {
  const double indent = mark.empty() ? 0.0 : std::max(4.0, text_width(mark + " ", font));
  const std::vector<std::string> lines = wrap(text, font, body_.width - indent);
  const double high = line_height(font);
  need(high * static_cast<double>(std::min<std::size_t>(lines.size(), 3)));
  page().begin(Role::Paragraph);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (left() < high) {
      page().end(Role::Paragraph);
      new_page();
      page().begin(Role::Paragraph);
    }
    const double base = y_ + ascent(font);
    if (i == 0) page().add(Text{{body_.x, base}, mark, {font.size, true}});
    page().add(Text{{body_.x + indent, base}, lines[i], font});
    y_ += high;
  }
  page().end(Role::Paragraph);
  y_ += 0.8;
}

void Flow::figure(double height, const std::string& words, const Draw& draw) {
  height = std::min(height, this->height());
  need(height);
  page().begin(Role::Figure, words);
  draw(page(), {body_.x, y_, body_.width, height});
  page().end(Role::Figure);
  y_ += height;
}

Document Flow::finish() {
  if (page().items.empty() && document_.pages.size() > 1) document_.pages.pop_back();
  for (std::size_t i = 0; i < document_.pages.size(); ++i)
    put_furniture(document_.pages[i], furniture_, i + 1, document_.pages.size());
  return std::move(document_);
}

}  // namespace steamworthy::paper
