// Plots: curves over axes that say what they measure and in which unit.
#pragma once

#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::paper {

struct Axis {
  std::string words;  ///< with the unit: "pressure, bar gauge"
  /// Given both equal: from the curves, a little more on either side.
  double from = 0.0;
  double to = 0.0;
};

struct Curve {
  std::string words;          ///< in the key under the plot; empty: not named
  std::vector<Point> points;  ///< in the units of the axes, x rising; a gap where y is not finite
  Pen pen = {0.3};
  bool dots = false;  ///< a dot at each point instead of a line
};

/// A straight line over the whole plot, named at its right end: never above, target.
struct Limit {
  std::string words;
  double y = 0.0;
  Pen pen = {0.25, {2.0, 1.0}};
};

/// A stretch of x with its words at the top: a stage.
struct Stretch {
  std::string words;
  double from = 0.0;
  double to = 0.0;
};

struct Plot {
  Axis x;
  Axis y;
  std::vector<Curve> curves;
  std::vector<Limit> limits;
  std::vector<Stretch> stretches;
};

/// Draws the plot into the box. Many points are thinned to what a page can show: in each column
/// of 0.1 mm the first, the lowest, the highest and the last remain.
void draw_plot(Page& page, const Box& box, const Plot& plot);

/// Steps of 1, 2 or 5 times a power of ten that part from..to into at most `most` pieces.
std::vector<double> ticks(double from, double to, int most);

}  // namespace steamworthy::paper
