// SVG by hand: cairo's own would turn text into outlines.
#include <fmt/format.h>

#include <iterator>

#include "paper/write.h"

namespace steamworthy::paper {
namespace {

std::string number(double value) {
  std::string text = fmt::format("{:.3f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

/// Text as XML may hold it; control characters, which it may not, are left out.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\t' || c == '\n') out += c;
    }
  }
  return out;
}

std::string grey(double ink) {
  const int level = static_cast<int>(255.0 * (1.0 - ink) + 0.5);
  return fmt::format("#{0:02x}{0:02x}{0:02x}", level);
}

std::string data(const Path& path) {
  std::string out;
  std::size_t at = 0;
  const auto put = [&](char letter, std::size_t count) {
    out += letter;
    for (std::size_t i = 0; i < count; ++i, ++at)
      out += (i == 0 ? "" : " ") + number(path.points[at].x) + " " + number(path.points[at].y);
  };
  for (const Path::Verb verb : path.verbs) {
    switch (verb) {
      case Path::Verb::Move:
        put('M', 1);
        break;
      case Path::Verb::Line:
        put('L', 1);
        break;
      case Path::Verb::Curve:
        put('C', 3);
        break;
      case Path::Verb::Close:
        out += 'Z';
        break;
    }
  }
  return out;
}

struct Writer {
  std::string& out;

  void operator()(const Shape& shape) const {
    out += fmt::format("<path d=\"{}\" fill=\"{}\"", data(shape.path),
                       shape.fill ? grey(*shape.fill) : "none");
    if (shape.pen) {
      out += fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", grey(shape.pen->ink),
                         number(shape.pen->width));
      if (!shape.pen->dash.empty()) {
        out += " stroke-dasharray=\"";
        for (const double length : shape.pen->dash) out += number(length) + " ";
        out.back() = '"';
      }
    }
    out += "/>\n";
  }

  void operator()(const Text& text) const {
    constexpr const char* anchors[] = {"start", "middle", "end"};
    out += fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\"", number(text.at.x),
                       number(text.at.y), number(text.font.size * millimetres_per_point));
    if (text.align != Align::Left)
      out += fmt::format(" text-anchor=\"{}\"", anchors[static_cast<int>(text.align)]);
    if (text.font.bold) out += " font-weight=\"bold\"";
    if (text.ink != 1.0) out += fmt::format(" fill=\"{}\"", grey(text.ink));
    if (text.turn != 0.0) {
      out += fmt::format(" transform=\"rotate({} {} {})\"", number(-text.turn), number(text.at.x),
                         number(text.at.y));
    }
    out += ">" + escaped(text.text) + "</text>\n";
  }

  void operator()(const Begin& begin) const {
    if (!begin.tag.empty()) {
      out += fmt::format("<g data-tag=\"{}\" data-kind=\"{}\">\n", escaped(begin.tag),
                         escaped(begin.kind));
      return;
    }
    switch (begin.role) {
      case Role::Figure:
        out += fmt::format("<g role=\"img\" aria-label=\"{}\">\n", escaped(begin.words));
        break;
      case Role::Table:
        out += "<g role=\"table\">\n";
        break;
      case Role::Row:
        out += "<g role=\"row\">\n";
        break;
      case Role::HeadCell:
        out += "<g role=\"columnheader\">\n";
        break;
      case Role::Cell:
        out += "<g role=\"cell\">\n";
        break;
      case Role::Heading1:
      case Role::Heading2:
        out += "<g role=\"heading\">\n";
        break;
      case Role::List:
      case Role::Paragraph:
        out += "<g>\n";
        break;
    }
  }
  void operator()(const End&) const { out += "</g>\n"; }
};

}  // namespace

std::string svg(const Page& page, const std::string& title) {
  std::string out = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" "
      "font-family=\"'DejaVu Sans Condensed','DejaVu Sans',sans-serif\">\n"
      "<title>{2}</title>\n<rect width=\"{0}\" height=\"{1}\" fill=\"#ffffff\"/>\n",
      number(page.width), number(page.height), escaped(title));
  for (const Item& item : page.items) std::visit(Writer{out}, item);
  return out + "</svg>\n";
}

}  // namespace steamworthy::paper
