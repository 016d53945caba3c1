// PDF and PNG, by cairo and Pango.
#include <cairo-pdf.h>
#include <fmt/format.h>

#include <memory>

#include "base/error.h"
#include "paper/pango.h"
#include "paper/write.h"

namespace steamworthy::paper {
namespace {

struct Destroy {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, Destroy>;
using Context = std::unique_ptr<cairo_t, Destroy>;

cairo_status_t append(void* closure, const unsigned char* bytes, unsigned int length) {
  static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(bytes), length);
  return CAIRO_STATUS_SUCCESS;
}

void require(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) {
    throw Error("paper.cannot_draw",
                fmt::format("the page cannot be drawn: {}", cairo_status_to_string(status)));
  }
}

/// Names of the structure types of PDF.
const char* tag(Role role) {
  switch (role) {
    case Role::Heading1:
      return "H1";
    case Role::Heading2:
      return "H2";
    case Role::Paragraph:
      return "P";
    case Role::Table:
      return "Table";
    case Role::Row:
      return "TR";
    case Role::HeadCell:
      return "TH";
    case Role::Cell:
      return "TD";
    case Role::Figure:
      return "Figure";
    case Role::List:
      return "L";
  }
  return "P";
}

class Painter {
 public:
  Painter(cairo_t* context, bool tagged)
      : context_(context), tagged_(tagged), layout_(detail::make_layout(context)) {}

  void paint(const Page& page) {
    for (const Item& item : page.items) std::visit([this](const auto& one) { put(one); }, item);
  }

 private:
  void put(const Shape& shape) {
    trace(shape.path);
    if (shape.fill) {
      ink(*shape.fill);
      shape.pen ? cairo_fill_preserve(context_) : cairo_fill(context_);
    }
    if (shape.pen) {
      ink(shape.pen->ink);
      cairo_set_line_width(context_, shape.pen->width);
      cairo_set_dash(context_, shape.pen->dash.data(), static_cast<int>(shape.pen->dash.size()),
                     0.0);
      cairo_stroke(context_);
    }
    cairo_new_path(context_);
  }

  void put(const Text& text) {
    cairo_save(context_);
    cairo_translate(context_, text.at.x, text.at.y);
    if (text.turn != 0.0) cairo_rotate(context_, -text.turn * 3.14159265358979323846 / 180.0);
    cairo_scale(context_, millimetres_per_point, millimetres_per_point);
    detail::set(layout_.get(), text.text, text.font);
    pango_cairo_update_layout(context_, layout_.get());
    const double baseline = pango_layout_get_baseline(layout_.get()) / double{PANGO_SCALE};
    PangoRectangle logical;
    pango_layout_get_extents(layout_.get(), nullptr, &logical);
    const double width = logical.width / double{PANGO_SCALE};
    const double left = text.align == Align::Left     ? 0.0
                        : text.align == Align::Centre ? -width / 2.0
                                                      : -width;
    ink(text.ink);
    cairo_move_to(context_, left, -baseline);
    pango_cairo_show_layout(context_, layout_.get());
    cairo_restore(context_);
    cairo_new_path(context_);
  }

  void put(const Begin& begin) {
    if (tagged_) cairo_tag_begin(context_, tag(begin.role), nullptr);
  }
  void put(const End& end) {
    if (tagged_) cairo_tag_end(context_, tag(end.role));
  }

  void ink(double amount) {
    const double light = 1.0 - amount;
    cairo_set_source_rgb(context_, light, light, light);
  }

  void trace(const Path& path) {
    std::size_t at = 0;
    for (const Path::Verb verb : path.verbs) {
      const Point* p = path.points.data() + at;
      switch (verb) {
        case Path::Verb::Move:
          cairo_move_to(context_, p->x, p->y);
          at += 1;
          break;
        case Path::Verb::Line:
          cairo_line_to(context_, p->x, p->y);
          at += 1;
          break;
        case Path::Verb::Curve:
          cairo_curve_to(context_, p[0].x, p[0].y, p[1].x, p[1].y, p[2].x, p[2].y);
          at += 3;
          break;
        case Path::Verb::Close:
          cairo_close_path(context_);
          break;
      }
    }
  }

  cairo_t* context_;
  bool tagged_;
  detail::Layout layout_;
};

void set_property(cairo_surface_t* surface, cairo_pdf_metadata_t which, const std::string& text) {
  if (!text.empty()) cairo_pdf_surface_set_metadata(surface, which, text.c_str());
}

void add_outline(cairo_surface_t* surface, const Document& document) {
  std::vector<int> parents = {CAIRO_PDF_OUTLINE_ROOT};
  for (const Outline& line : document.outline) {
    const auto depth = static_cast<std::size_t>(line.depth);
    while (parents.size() > depth) parents.pop_back();
    const Page& page = document.pages.at(static_cast<std::size_t>(line.page - 1));
    const std::string where =
        fmt::format("page={} pos=[0 {:.0f}]", line.page, page.height / millimetres_per_point);
    parents.push_back(cairo_pdf_surface_add_outline(surface, parents.back(), line.words.c_str(),
                                                    where.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN));
  }
}

}  // namespace

std::string pdf(const Document& document) {
  constexpr double scale = 1.0 / millimetres_per_point;
  std::string bytes;
  {
    const Surface surface(
        cairo_pdf_surface_create_for_stream(append, &bytes, 210.0 * scale, 297.0 * scale));
    cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
    set_property(surface.get(), CAIRO_PDF_METADATA_TITLE, document.title);
    set_property(surface.get(), CAIRO_PDF_METADATA_SUBJECT, document.subject);
    set_property(surface.get(), CAIRO_PDF_METADATA_KEYWORDS, document.keywords);
    set_property(surface.get(), CAIRO_PDF_METADATA_CREATOR, document.creator);
    // Never the clock's: the same input gives the same bytes.
    const std::string day = document.date.empty() ? "1970-01-01" : document.date;
    set_property(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, day + "T00:00:00Z");
    const Context context(cairo_create(surface.get()));
    Painter painter(context.get(), true);
    bool begun = false;
    for (const Page& page : document.pages) {
      cairo_pdf_surface_set_size(surface.get(), page.width * scale, page.height * scale);
      // Only now: a change of size throws away what was begun on the page before it.
      if (!begun) cairo_tag_begin(context.get(), "Document", nullptr);
      begun = true;
      cairo_save(context.get());
      cairo_scale(context.get(), scale, scale);
      painter.paint(page);
      cairo_restore(context.get());
      cairo_show_page(context.get());
    }
    if (begun) cairo_tag_end(context.get(), "Document");
    add_outline(surface.get(), document);
    cairo_surface_finish(surface.get());
    require(cairo_status(context.get()));
    require(cairo_surface_status(surface.get()));
  }
  return bytes;
}

std::string png(const Page& page, double dots_per_inch) {
  const double scale = dots_per_inch / 25.4;
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                                   static_cast<int>(page.width * scale + 0.5),
                                                   static_cast<int>(page.height * scale + 0.5)));
  const Context context(cairo_create(surface.get()));
  cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
  cairo_paint(context.get());
  cairo_scale(context.get(), scale, scale);
  Painter(context.get(), false).paint(page);
  require(cairo_status(context.get()));
  std::string bytes;
  require(cairo_surface_write_to_png_stream(surface.get(), append, &bytes));
  return bytes;
}

}  // namespace steamworthy::paper
