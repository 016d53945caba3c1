// Pango: text set by Pango on a cairo context. Internal to the room.
#pragma once

#include <pango/pangocairo.h>

#include <memory>
#include <string>

#include "paper/display.h"

namespace steamworthy::paper::detail {

struct Unref {
  void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Unref>;

/// A layout that sets text by millimetres on a context whose unit is one point, unhinted, so
/// that widths do not depend on the device.
Layout make_layout(cairo_t* context);

/// Puts text and font into the layout.
void set(PangoLayout* layout, const std::string& text, Font font);

}  // namespace steamworthy::paper::detail
