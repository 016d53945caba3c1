// Square header as a long frame: the forces that its wall carries for each unit of pressure.
//
// The frame is the middle line of the wall: an oblong with sides w + t and h + t and corners of
// radius r + t/2. With r the distance of a point of that line from the section's centre,
//   bending moment   M/p = -(r^2 - mean of r^2)/2     (positive: tension on the inside)
//   hoop force       N/p = distance of the tangent from the centre
// Derived in docs/methods/vessel-headers.md; used here for growth and in strength for stress.
#pragma once

#include "vessel/shapes.h"

namespace steamworthy::vessel {

struct SquareFrame {
  double half_width;     ///< A, m, of the middle line
  double half_height;    ///< B, m
  double corner_radius;  ///< rho, m
  double perimeter;      ///< m
  double mean_square;    ///< mean of r^2 along the middle line, m^2
};

/// The middle line of a header's wall. The wall given may be a measured one.
SquareFrame square_frame(const SquareHeader& header, units::Length wall);

}  // namespace steamworthy::vessel
