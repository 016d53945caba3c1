#include "vessel/square_header.h"

#include <cmath>

#include "units/makers.h"
#include "vessel/parts.h"
#include "vessel/section.h"

namespace steamworthy::vessel {
namespace {

// Integrals over a quarter of the middle line of q and q^2, where q = r^2 - B^2 (so that a round
// header gives zeros without loss of digits).
struct QuarterIntegrals {
  double length;
  double q;
  double q2;
};

QuarterIntegrals quarter(double A, double B, double rho) {
  using detail::pi;
  const double x = A - rho;  // straight halves of the sides
  const double y = B - rho;
  const double K = x * x - 2.0 * y * rho;  // q = K + 2 rho (x cos + y sin) on the corner
  const double side =
      (A - B) * (A + B);  // q = side + eta^2 on the upright side, xi^2 on the level one
  const double x3 = x * x * x;
  const double y3 = y * y * y;
  return {x + y + pi * rho / 2.0,
          x3 / 3.0 + side * y + y3 / 3.0 + rho * (K * pi / 2.0 + 2.0 * rho * (x + y)),
          x3 * x * x / 5.0 + side * side * y + 2.0 * side * y3 / 3.0 + y3 * y * y / 5.0 +
              rho * (K * K * pi / 2.0 + 4.0 * K * rho * (x + y) +
                     4.0 * rho * rho * (pi / 4.0 * (x * x + y * y) + x * y))};
}

}  // namespace

SquareFrame square_frame(const SquareHeader& header, units::Length wall) {
  const double t = wall.si();
  SquareFrame frame{};
  frame.half_width = (header.inner_width.si() + t) / 2.0;
  frame.half_height = (header.inner_height.si() + t) / 2.0;
  frame.corner_radius = header.corner_radius.si() + t / 2.0;
  const auto [length, q, q2] = quarter(frame.half_width, frame.half_height, frame.corner_radius);
  frame.perimeter = 4.0 * length;
  frame.mean_square = frame.half_height * frame.half_height + q / length;
  return frame;
}

namespace detail {
namespace {

RoundedBox section(const SquareHeader& header) {
  return {header.inner_width.si(), header.inner_height.si(), header.corner_radius.si()};
}

}  // namespace

double volume(const SquareHeader& header) { return section(header).area() * header.length.si(); }

double below(const SquareHeader& header, double level) {
  return prism_below(section(header), header.length.si(), slope_of(header.slope_rad),
                     level - header.middle.si());
}

double surface(const SquareHeader& header, double level) {
  return prism_surface(section(header), header.length.si(), slope_of(header.slope_rad),
                       level - header.middle.si());
}

Span span(const SquareHeader& header) {
  const auto [s, c] = slope_of(header.slope_rad);
  const double half = header.inner_height.si() / 2.0 * c + header.length.si() / 2.0 * s;
  return {header.middle.si() - half, header.middle.si() + half};
}

double centroid(const SquareHeader& header) { return header.middle.si(); }

double wetted(const SquareHeader& header) {
  const double perimeter = 2.0 * (header.inner_width.si() + header.inner_height.si()) -
                           (8.0 - 2.0 * pi) * header.corner_radius.si();
  return perimeter * header.length.si();
}

std::optional<double> metal(const SquareHeader& header) {
  if (!header.wall) return std::nullopt;
  return square_frame(header, *header.wall).perimeter * header.wall->si() * header.length.si();
}

Growth growth(const SquareHeader& header, const materials::Elasticity& steel) {
  Growth growth;
  growth.formula =
      "dV/dp = L {12 (1 - nu^2)/(E t^3) (1/4) sum (r^2 - mean r^2)^2 ds + (1/E) sum [(N/t)^2 + "
      "s_z^2 - 2 nu s_z N/t] t ds}";
  growth.method = "vessel-headers";
  if (!header.wall) {
    growth.remark = GrowthRemark::WallNotStated;
    return growth;
  }
  growth.remark = GrowthRemark::FramePerLength;
  const double t = header.wall->si();
  const double nu = steel.poisson;
  const SquareFrame frame = square_frame(header, *header.wall);
  const double A = frame.half_width;
  const double B = frame.half_height;
  const double rho = frame.corner_radius;
  const double x = A - rho;
  const double y = B - rho;
  const auto [length, q, q2] = quarter(A, B, rho);
  const double bending = 12.0 * (1.0 - nu * nu) / (t * t * t) * (q2 - q * q / length);
  // Hoop force N = B on the level sides, A on the upright ones, x cos + y sin + rho on the corners.
  const double sum_n = B * x + A * y + rho * (x + y + rho * pi / 2.0);
  const double sum_n2 =
      B * B * x + A * A * y +
      rho * (pi / 4.0 * (x * x + y * y) + x * y + rho * rho * pi / 2.0 + 2.0 * rho * (x + y));
  const double enclosed = 4.0 * A * B - (4.0 - pi) * rho * rho;
  const double axial = enclosed / (4.0 * length * t);
  const double membrane =
      4.0 * (sum_n2 / t + axial * axial * t * length - 2.0 * nu * axial * sum_n);
  growth.value =
      units::cubic_metres_per_pascal(header.length.si() * (bending + membrane) / steel.young.si());
  return growth;
}

}  // namespace detail
}  // namespace steamworthy::vessel
