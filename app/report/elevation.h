// Elevation: a view of the boiler at a scale of its own on a page.
#pragma once

#include <string>
#include <vector>

#include "boiler/layout.h"
#include "report/context.h"

namespace steamworthy::report {

/// A drawing's scale: one millimetre on paper is `of` millimetres of boiler.
struct Scale {
  double of = 50.0;
  std::string words;  ///< "1:50"; in US units "1/4 in = 1 ft (1:48)"

  double millimetres(double metres) const { return metres * 1000.0 / of; }
};

/// The usual scales of the unit system, the largest drawing first.
const std::vector<Scale>& scales(bool us);

/// The largest usual scale at which width and height (metres) fit into millimetres; beyond all of
/// them a round one that fits.
Scale scale_to_fit(double width_m, double height_m, double width_mm, double height_mm, bool us);

/// How long a scale bar is, in metres: a round length of the unit system, 15 to 75 mm on paper.
double bar_length(const Scale& scale, bool us);

/// Draws the bar with its lower left corner there; returns its box with its words.
paper::Box draw_scale_bar(const Context& context, paper::Page& page, paper::Point at,
                          const Scale& scale);

struct ViewOptions {
  bool part_tags = true;
  bool levels = true;           ///< ruled at the left, parts named at the right
  bool stub_mountings = false;  ///< near their part, whatever their level, which is written
  paper::Font tags = {6.0, false};
  bool tappable = false;  ///< parts, closures and mountings tell a screen which they are
  double from = -1e9;     ///< only what lies from here ...
  double to = 1e9;        ///< ... to here across, in metres
};

/// Draws the view so that its lower left corner comes to `corner`. Tags are put inside `room`.
/// Returns the tags of closures and mountings for which there was no room.
std::vector<std::string> draw_view(const Context& context, paper::Page& page,
                                   const boiler::Drawing& drawing, const Scale& scale,
                                   paper::Point corner, const paper::Box& room,
                                   const ViewOptions& options);

}  // namespace steamworthy::report
