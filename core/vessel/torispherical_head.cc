// Torispherical heads: docs/methods/vessel-heads.md.
#include <algorithm>
#include <array>
#include <cmath>

#include "numerics/math.h"
#include "vessel/head_forms.h"

namespace steamworthy::vessel::detail {
namespace {

// A stretch of the outline: radius c0 + sqrt(rho^2 - (x - x0)^2) at x along the axis, from..to.
struct Arc {
  double c0;
  double rho;
  double x0;
  double from;
  double to;

  double radius_at(double x) const {
    const double offset = x - x0;
    return c0 + std::sqrt(std::max(0.0, (rho - offset) * (rho + offset)));
  }
};

std::array<Arc, 2> arcs(const TorisphericalHead& head) {
  const double reach = head.knuckle_depth();
  const double depth = head.depth();
  return {{{head.ring(), head.knuckle, 0.0, 0.0, reach},
           {0.0, head.crown, depth - head.crown, reach, depth}}};
}

// Points within an arc where the level meets the outline: r(x) = +-u(x), u = (z - x s)/c.
// There the cut of the disc begins or ends, and the integrand is not smooth.
struct Breaks {
  std::array<double, 6> at;
  int count = 0;
};
Breaks breaks(const Arc& arc, Slope slope, double z) {
  Breaks found;
  found.at[static_cast<std::size_t>(found.count++)] = arc.from;
  for (const double sign : {1.0, -1.0}) {
    const double a = sign * z / slope.c - arc.c0;
    const double b = -sign * slope.s / slope.c;
    const double A = b * b + 1.0;
    const double B = a * b - arc.x0;
    const double C = a * a + (arc.x0 - arc.rho) * (arc.x0 + arc.rho);
    const double D = B * B - A * C;
    if (D < 0.0) continue;
    for (const double root : {(-B - std::sqrt(D)) / A, (-B + std::sqrt(D)) / A}) {
      if (root > arc.from && root < arc.to)
        found.at[static_cast<std::size_t>(found.count++)] = root;
    }
  }
  found.at[static_cast<std::size_t>(found.count++)] = arc.to;
  std::sort(found.at.begin(), found.at.begin() + found.count);
  return found;
}

// Integral over the axis of f(disc radius, height of the level above the disc's centre).
template <class F>
double along_axis(const TorisphericalHead& head, Slope slope, double z, F f) {
  double sum = 0.0;
  for (const Arc& arc : arcs(head)) {
    const Breaks points = breaks(arc, slope, z);
    for (int i = 1; i < points.count; ++i) {
      const auto k = static_cast<std::size_t>(i);
      sum += gauss_soft_ends(
          [&](double x) { return f(arc.radius_at(x), (z - x * slope.s) / slope.c); },
          points.at[k - 1], points.at[k]);
    }
  }
  return sum;
}

// Volume between the rim and the disc at x along the axis.
double up_to(const TorisphericalHead& head, double x) {
  const double k = head.knuckle;
  const double c = head.ring();
  const double y = std::min(x, head.knuckle_depth());
  const double under_knuckle =
      pi *
      ((c * c + k * k) * y +
       c * (y * std::sqrt((k - y) * (k + y)) + k * k * numerics::asin(y / k)) - y * y * y / 3.0);
  if (x <= head.knuckle_depth()) return under_knuckle;
  const auto cap = [&](double height) {
    return pi * height * height * (3.0 * head.crown - height) / 3.0;
  };
  return under_knuckle + cap(head.depth() - head.knuckle_depth()) - cap(head.depth() - x);
}

}  // namespace

double TorisphericalHead::depth() const {
  // crown centre to knuckle centres: (L - k)^2 = ring^2 + distance^2
  return crown - std::sqrt((crown - knuckle - ring()) * (crown - knuckle + ring()));
}

double TorisphericalHead::knuckle_depth() const {
  const double sine = sine_of_crown();
  return knuckle * std::sqrt((1.0 - sine) * (1.0 + sine));
}

double TorisphericalHead::volume() const { return up_to(*this, depth()); }

double TorisphericalHead::below(Slope slope, double z) const {
  if (slope.c == 0.0) {
    const double under = up_to(*this, clamp(slope.s * z, 0.0, depth()));
    if (slope.s > 0.0) return under;
    return z >= 0.0 ? volume() : volume() - under;
  }
  const Span height = span(slope);
  if (z <= height.bottom) return 0.0;
  if (z >= height.top) return volume();
  return along_axis(*this, slope, z, [](double r, double u) { return Disc{r}.below(u); });
}

double TorisphericalHead::surface(Slope slope, double z) const {
  if (slope.c == 0.0) {
    const double x = slope.s * z;
    if (!(x > 0.0 && x < depth())) return 0.0;
    const double r = arcs(*this)[x < knuckle_depth() ? 0 : 1].radius_at(x);
    return pi * r * r;
  }
  return along_axis(*this, slope, z, [](double r, double u) { return Disc{r}.chord(u); }) / slope.c;
}

Span TorisphericalHead::span(Slope slope) const {
  const double rim = radius * slope.c;
  // Highest point in the direction of the dish: on the crown if its normal is there, else on the
  // knuckle.
  const double dish = slope.c <= sine_of_crown() ? (depth() - crown) * std::fabs(slope.s) + crown
                                                 : ring() * slope.c + knuckle;
  return {slope.s < 0.0 ? -dish : -rim, slope.s > 0.0 ? dish : rim};
}

double TorisphericalHead::centroid(Slope slope) const {
  const double k = knuckle;
  const double c = ring();
  const double y = knuckle_depth();
  const double rest = std::sqrt((k - y) * (k + y));
  const double of_knuckle = (c * c + k * k) * y * y / 2.0 - y * y * y * y / 4.0 +
                            2.0 * c * (k * k * k - rest * rest * rest) / 3.0;
  const double e = crown - depth();
  const auto of_crown = [&](double v) {  // v from the crown's centre
    return crown * crown * v * v / 2.0 - v * v * v * v / 4.0 -
           e * (crown * crown * v - v * v * v / 3.0);
  };
  return pi * (of_knuckle + of_crown(crown) - of_crown(y + e)) / volume() * slope.s;
}

double TorisphericalHead::area() const {
  const double crown_angle = numerics::asin(sine_of_crown());
  return 2.0 * pi * crown * (depth() - knuckle_depth()) +
         2.0 * pi * knuckle * (ring() * (pi / 2.0 - crown_angle) + knuckle_depth());
}

double TorisphericalHead::growth(double wall, const materials::Elasticity& steel) const {
  const double nu = steel.poisson;
  const auto energy = [&](double n_phi, double n_theta) {
    return n_phi * n_phi + n_theta * n_theta - 2.0 * nu * n_phi * n_theta;
  };
  const double of_crown =
      energy(crown / 2.0, crown / 2.0) * 2.0 * pi * crown * (depth() - knuckle_depth());
  const double of_knuckle = gauss(
      [&](double phi) {
        const double sine = numerics::sin(phi);
        const double r = ring() + knuckle * sine;
        const double R2 = r / sine;
        return energy(R2 / 2.0, R2 * (1.0 - R2 / (2.0 * knuckle))) * 2.0 * pi * r * knuckle;
      },
      numerics::asin(sine_of_crown()), pi / 2.0);
  return (of_crown + of_knuckle) / (steel.young.si() * wall);
}

}  // namespace steamworthy::vessel::detail
