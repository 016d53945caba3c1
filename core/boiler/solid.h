// Solid: one piece of a part, placed in plan. Internal to the layout.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "boiler/layout.h"

namespace steamworthy::boiler::detail {

struct Solid {
  const Part* part = nullptr;
  double x = 0.0, y = 0.0, level = 0.0;  ///< of its middle
  bool across = true;                    ///< the axis runs along the front
  bool upright = false;                  ///< the axis stands
  double length = 0.0;                   ///< between tangent lines, or as high as a bank is
  double diameter = 0.0;                 ///< over the metal
  double rise = 0.0;                     ///< of the second end above the first
  double depth[2] = {0.0, 0.0};          ///< of the heads beyond the tangent lines
  bool assumed = false;                  ///< where it stands in plan is not described

  bool is_bank() const { return std::holds_alternative<Tubes>(part->shape); }
};

/// All pieces of all parts, in their order.
std::vector<Solid> place_all(const Boiler& boiler);

/// Where a point of the plan stands in the view, and whether the axis is seen lengthwise.
double across_of(View view, double x, double y);
bool lengthwise(View view, const Solid& solid);
double middle_of(View view, const Solid& solid);
/// +1 where the first end of the axis is at the left hand, else -1.
double direction(View view, const Solid& solid);

/// The view in which what has no side of its own is drawn: the length of the part from the nearer
/// side.
View home_view(const std::vector<Solid>& solids, const Solid& solid);

DrawnPart outline_of(const Solid& solid, View view);
DrawnPart bank_of(const Solid& bank, const std::vector<Solid>& solids, View view);

}  // namespace steamworthy::boiler::detail
