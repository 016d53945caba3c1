#include "paper/type.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "paper/pango.h"

namespace steamworthy::paper {
namespace detail {

Layout make_layout(cairo_t* context) {
  Layout layout(pango_cairo_create_layout(context));
  PangoContext* pango = pango_layout_get_context(layout.get());
  pango_cairo_context_set_resolution(pango, 72.0);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(pango, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(pango, FALSE);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  return layout;
}

void set(PangoLayout* layout, const std::string& text, Font font) {
  PangoFontDescription* description = pango_font_description_new();
  pango_font_description_set_family_static(description, "DejaVu Sans");
  pango_font_description_set_stretch(description, PANGO_STRETCH_CONDENSED);
  pango_font_description_set_weight(description,
                                    font.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(description, font.size * PANGO_SCALE);
  pango_layout_set_font_description(layout, description);
  pango_font_description_free(description);
  pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
}

}  // namespace detail

namespace {

/// Measures words; the same words come again and again, so that each is measured once.
class Measurer {
 public:
  Measurer()
      : surface_(cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr)),
        context_(cairo_create(surface_)),
        layout_(detail::make_layout(context_)) {}
  ~Measurer() {
    layout_.reset();
    cairo_destroy(context_);
    cairo_surface_destroy(surface_);
  }
  Measurer(const Measurer&) = delete;
  Measurer& operator=(const Measurer&) = delete;

  /// Per point of size: unhinted type scales.
  double width(const std::string& text, bool bold) {
    auto& known = known_[bold ? 1 : 0];
    const auto it = known.find(text);
    if (it != known.end()) return it->second;
    detail::set(layout_.get(), text, {measured_size, bold});
    PangoRectangle logical;
    pango_layout_get_extents(layout_.get(), nullptr, &logical);
    const double width = logical.width / double{PANGO_SCALE} / measured_size;
    if (known.size() > most_words) known.clear();
    known.emplace(text, width);
    return width;
  }

 private:
  static constexpr double measured_size = 64.0;
  static constexpr std::size_t most_words = 20'000;
  cairo_surface_t* surface_;
  cairo_t* context_;
  detail::Layout layout_;
  std::unordered_map<std::string, double> known_[2];
};

std::size_t next_letter(const std::string& text, std::size_t at) {
  ++at;
  while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80) ++at;
  return at;
}

/// Cuts a word that is wider than a line into pieces that are not.
std::vector<std::string> pieces(const std::string& word, Font font, double width) {
  std::vector<std::string> cut;
  std::string piece;
  for (std::size_t at = 0; at < word.size();) {
    const std::size_t next = next_letter(word, at);
    const std::string letter = word.substr(at, next - at);
    if (!piece.empty() && text_width(piece + letter, font) > width) {
      cut.push_back(piece);
      piece.clear();
    }
    piece += letter;
    at = next;
  }
  if (!piece.empty()) cut.push_back(piece);
  return cut;
}

void wrap_paragraph(const std::string& text, Font font, double width,
                    std::vector<std::string>& lines) {
  const double blank = text_width(" ", font);
  std::string line;
  double used = 0.0;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    const double wide = text_width(word, font);
    if (!line.empty() && used + blank + wide > width) {
      lines.push_back(line);
      line.clear();
    }
    if (line.empty() && wide > width) {
      const auto cut = pieces(word, font, width);
      lines.insert(lines.end(), cut.begin(), cut.end() - 1);
      line = cut.back();
      used = text_width(line, font);
      continue;
    }
    used = line.empty() ? wide : used + blank + wide;
    line += (line.empty() ? "" : " ") + word;
  }
  lines.push_back(line);
}

}  // namespace

double text_width(const std::string& text, Font font) {
  thread_local Measurer measurer;
  return measurer.width(text, font.bold) * font.size * millimetres_per_point;
}

double line_height(Font font) { return 1.25 * font.size * millimetres_per_point; }

double ascent(Font font) { return 0.93 * font.size * millimetres_per_point; }

std::vector<std::string> wrap(const std::string& text, Font font, double width) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    wrap_paragraph(text.substr(at, end - at), font, width, lines);
    at = end + 1;
  }
  return lines;
}

std::string shorten(const std::string& text, Font font, double width) {
  if (text_width(text, font) <= width) return text;
  std::string cut;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t next = next_letter(text, at);
    if (text_width(text.substr(0, next) + "…", font) > width) break;
    cut = text.substr(0, next);
    at = next;
  }
  return cut + "…";
}

Box bounds(const Text& text) {
  const double width = text_width(text.text, text.font);
  const double up = ascent(text.font);
  const double down = 0.24 * text.font.size * millimetres_per_point;
  const double left = text.align == Align::Left     ? 0.0
                      : text.align == Align::Centre ? -width / 2.0
                                                    : -width;
  const double angle = text.turn * 3.14159265358979323846 / 180.0;
  const double c = std::cos(angle), s = std::sin(angle);
  double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
  for (const double x : {left, left + width}) {
    for (const double y : {-up, down}) {
      const double tx = text.at.x + x * c + y * s, ty = text.at.y - x * s + y * c;
      x0 = std::min(x0, tx), x1 = std::max(x1, tx);
      y0 = std::min(y0, ty), y1 = std::max(y1, ty);
    }
  }
  return {x0, y0, x1 - x0, y1 - y0};
}

}  // namespace steamworthy::paper
