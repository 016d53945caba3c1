// Head forms: the two curves of heads as solids of revolution, plain SI numbers. Internal to the
// room.
//
// Heights z are above the centre of the circle in which the head meets its cylinder; the slope is
// that of the axis outward.
#pragma once

#include "materials/material.h"
#include "vessel/parts.h"
#include "vessel/section.h"

namespace steamworthy::vessel::detail {

/// Half an ellipsoid of radius R and depth h; a hemisphere if they are equal.
///
/// Stretched by R/h along its axis it is half a ball cut by a plane, and that has a closed form:
/// cone from the centre over the wetted part of the sphere (its solid angle by Gauss and Bonnet's
/// theorem) and over the cut. docs/methods/vessel-heads.md.
struct EllipsoidalHead {
  double radius;
  double depth;

  double volume() const { return 2.0 / 3.0 * pi * radius * radius * depth; }
  double below(Slope slope, double z) const;
  double surface(Slope slope, double z) const;
  Span span(Slope slope) const;
  double centroid(Slope slope) const { return 3.0 / 8.0 * depth * slope.s; }
  double area() const;
};

/// Crown of radius L (a sphere), knuckle of radius k (a torus), cylinder of radius R.
struct TorisphericalHead {
  double radius;
  double crown;
  double knuckle;

  double ring() const { return radius - knuckle; }  ///< radius of the circle of knuckle centres
  double depth() const;
  double knuckle_depth() const;  ///< how far along the axis the knuckle reaches
  double sine_of_crown() const { return ring() / (crown - knuckle); }
  double volume() const;
  double below(Slope slope, double z) const;
  double surface(Slope slope, double z) const;
  Span span(Slope slope) const;
  double centroid(Slope slope) const;
  double area() const;
  /// dV/dp of the membrane with these middle radii and a wall t.
  double growth(double wall, const materials::Elasticity& steel) const;
};

}  // namespace steamworthy::vessel::detail
