// Section: plane areas below a line, from which volumes below a level are built.
//
// Internal to the room. Plain SI numbers inside; the public doors are volume.h and growth.h.
#pragma once

namespace steamworthy::vessel::detail {

inline constexpr double pi = 3.14159265358979323846;

double clamp(double value, double low, double high);

/// Sine and cosine of a slope; exact where a body lies or stands.
struct Slope {
  double s;
  double c;
};
Slope slope_of(double slope_rad);

/// Disc of radius r, cut by a line at height u above its centre. u outside [-r, r] is taken as
/// the edge.
///
///   below           A(u) = r^2 acos(-u/r) + u sqrt(r^2 - u^2)
///   chord           A'(u) = 2 sqrt(r^2 - u^2)
///   below_integral  B(u) = integral of A from -r to u
///                        = r^2 [u acos(-u/r) + sqrt(r^2 - u^2)] - (r^2 - u^2)^(3/2) / 3
struct Disc {
  double r;

  double half_height() const { return r; }
  double area() const { return pi * r * r; }
  double below(double u) const;
  double chord(double u) const;
  double below_integral(double u) const;
};

/// Oblong of width w and height h with rounded corners of radius r, cut likewise.
struct RoundedBox {
  double w;
  double h;
  double r;

  double half_height() const { return h / 2.0; }
  double area() const { return w * h - (4.0 - pi) * r * r; }
  double below(double u) const;
  double chord(double u) const;
  double below_integral(double u) const;
};

/// Integral of f from a to b by Gauss and Legendre's rule with 32 points.
template <class F>
double gauss(F f, double a, double b);

/// The same after x = m - w cos(phi), which makes f smooth if it ends like a half-integer power.
template <class F>
double gauss_soft_ends(F f, double a, double b);

/// A straight body of one section and length, its axis at the given slope and its middle at height
/// zero: volume below height z, and the surface there.
///
/// With u(x) = (z - x s)/c the height of the cut in the section at x along the axis,
///   V = integral of A(u(x)) dx = length fully under * A + (c/s) [B(u_low) - B(u_high)]
/// A nearly lying body would lose digits in that difference; there the integral is taken as it
/// stands.
template <class Section>
double prism_below(const Section& section, double length, Slope slope, double z);
template <class Section>
double prism_surface(const Section& section, double length, Slope slope, double z);

}  // namespace steamworthy::vessel::detail

#include "vessel/section_inline.h"
