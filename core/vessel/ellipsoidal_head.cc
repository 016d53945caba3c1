// Ellipsoidal and hemispherical heads: docs/methods/vessel-heads.md.
#include <fmt/format.h>

#include <cmath>

#include "base/error.h"
#include "numerics/math.h"
#include "vessel/growth.h"
#include "vessel/head_forms.h"

namespace steamworthy::vessel {

double ellipsoidal_head_factor(double ratio, double poisson) {
  if (!(ratio > 0.0) || !std::isfinite(ratio)) {
    throw OutOfRange(
        "vessel.head_ratio",
        fmt::format("a head of radius over depth {} cannot be; the ratio must be above zero",
                    ratio));
  }
  // With R = 1 and h = 1/ratio, s = sqrt(h^2 + (1 - h^2) c^2), c = cosine of the parameter:
  //   N_phi/p = s/(2h),  N_theta/p = (s/h)(1 - 1/(2 s^2)),  dA = 2 pi s dc
  //   k = 2/h^2 [(5/4 - nu) I3 - (1 - nu/2) I1 + J/4],  I3, I1, J = integrals of s^3, s, 1/s over c
  //   from 0 to 1
  const double h = 1.0 / ratio;
  const double e2 = (1.0 - h) * (1.0 + h);
  double j = 1.0;
  if (e2 > 1e-6) {
    const double e = std::sqrt(e2);
    j = numerics::log((1.0 + e) / h) / e;
  } else if (e2 < -1e-6) {
    const double e = std::sqrt(-e2);
    j = numerics::asin(e / h) / e;
  } else {
    // asinh(x)/x or asin(x)/x at x^2 = e^2/h^2, over h
    const double x2 = e2 / (h * h);
    j = (1.0 - x2 / 6.0 + 3.0 * x2 * x2 / 40.0) / h;
  }
  const double i1 = 0.5 * (1.0 + h * h * j);
  const double i3 = 0.25 + 0.75 * h * h * i1;
  return 2.0 / (h * h) * ((1.25 - poisson) * i3 - (1.0 - poisson / 2.0) * i1 + j / 4.0);
}

namespace detail {
namespace {

struct Cut {
  double volume;
  double face;
};

// The part of the half ball {x >= 0, |r| <= R} under the plane n.r = d, where n makes an angle
// with the x axis of the given cosine and sine (sine above zero).
Cut half_ball(double R, double cosine, double sine, double d) {
  const double half = 2.0 / 3.0 * pi * R * R * R;
  if (d >= R) return {half, 0.0};
  if (d <= -R) return {0.0, 0.0};
  const double rho2 = (R - d) * (R + d);
  const auto cap_beyond = [&](double distance) {  // the cap of the ball farther out than a plane
    const double height = R - distance;
    return pi * height * height * (3.0 * R - height) / 3.0;
  };
  if (std::fabs(d) >= R * sine) {  // the plane misses the flat side
    if (d > 0.0) return cosine > 0.0 ? Cut{half - cap_beyond(d), pi * rho2} : Cut{half, 0.0};
    return cosine > 0.0 ? Cut{0.0, 0.0} : Cut{cap_beyond(-d), pi * rho2};
  }
  // Both angles from one root, as in Disc::below: half the line in which the plane cuts the flat
  // side.
  const double root = std::sqrt((R * sine - d) * (R * sine + d));
  const double corner =
      numerics::atan2(root, R * cosine);  // between plane and flat side, seen on the sphere
  const double arc = numerics::atan2(root, -d * cosine);  // half the arc of the cut
  const double solid_angle = 2.0 * (corner + d / R * arc);
  const double face = rho2 * arc + d * cosine * root / (sine * sine);
  return {R * R * R * solid_angle / 3.0 + d * face / 3.0, face};
}

// Stretched by R/h along the axis, the level z of the head is the plane at d = z/norm.
struct Stretched {
  double norm;
  double cosine;
  double sine;
};
Stretched stretched(const EllipsoidalHead& head, Slope slope) {
  const double along = head.depth / head.radius * slope.s;
  const double norm = std::sqrt(along * along + slope.c * slope.c);
  return {norm, along / norm, slope.c / norm};
}

}  // namespace

double EllipsoidalHead::below(Slope slope, double z) const {
  if (slope.c == 0.0) {
    const double x = clamp(slope.s * z, 0.0, depth);
    const double under = pi * radius * radius * (x - x * x * x / (3.0 * depth * depth));
    if (slope.s > 0.0) return under;
    return z >= 0.0 ? volume() : volume() - under;
  }
  const auto [norm, cosine, sine] = stretched(*this, slope);
  return depth / radius * half_ball(radius, cosine, sine, z / norm).volume;
}

double EllipsoidalHead::surface(Slope slope, double z) const {
  if (slope.c == 0.0) {
    const double x = slope.s * z;
    return x > 0.0 && x < depth ? pi * radius * radius * (1.0 - x * x / (depth * depth)) : 0.0;
  }
  const auto [norm, cosine, sine] = stretched(*this, slope);
  return depth / radius * half_ball(radius, cosine, sine, z / norm).face / norm;
}

Span EllipsoidalHead::span(Slope slope) const {
  const double rim = radius * slope.c;
  const double dish = std::sqrt(depth * depth * slope.s * slope.s + rim * rim);
  return {slope.s < 0.0 ? -dish : -rim, slope.s > 0.0 ? dish : rim};
}

double EllipsoidalHead::area() const {
  const double q = depth / radius;
  const double e2 = (1.0 - q) * (1.0 + q);
  double part = 0.0;  // q^2 atanh(e)/e, or q asin(e')/e' for a deep head
  if (e2 > 1e-8) {
    const double e = std::sqrt(e2);
    part = q * q * 0.5 * numerics::log((1.0 + e) / (1.0 - e)) / e;
  } else if (e2 < -1e-8) {
    const double e = std::sqrt(-e2) / q;
    part = q * numerics::asin(e) / e;
  } else {
    part = 1.0 + 4.0 / 3.0 * (q - 1.0);
  }
  return pi * radius * radius * (1.0 + part);
}

}  // namespace detail
}  // namespace steamworthy::vessel
