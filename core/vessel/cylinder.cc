// Cylinders: docs/methods/vessel-cylinder.md.
#include <fmt/format.h>

#include <cmath>

#include "base/error.h"
#include "units/makers.h"
#include "vessel/parts.h"
#include "vessel/section.h"

namespace steamworthy::vessel {
namespace {

// Lamé needs a bore and a wall.
void require_wall(units::Length inner_radius, units::Length outer_radius) {
  if (inner_radius.si() > 0.0 && outer_radius > inner_radius) return;
  throw OutOfRange(
      "vessel.radii",
      fmt::format(
          "an inner radius of {:.3f} mm and an outer radius of {:.3f} mm leave no wall; the "
          "inner one must be above zero and the outer one larger",
          units::in_millimetres(inner_radius), units::in_millimetres(outer_radius)));
}

constexpr std::string_view closed_formula =
    "dV/dp = V [3(1 - 2 nu) a^2 + 2(1 + nu) b^2] / [E (b^2 - a^2)]";
constexpr std::string_view anchored_formula =
    "dV/dp = V 2(1 + nu) [(1 - 2 nu) a^2 + b^2] / [E (b^2 - a^2)]";
constexpr std::string_view open_formula =
    "dV/dp = V 2 [(1 - nu) a^2 + (1 + nu) b^2] / [E (b^2 - a^2)]";

std::string_view formula_of(Ends ends) {
  switch (ends) {
    case Ends::Closed:
      return closed_formula;
    case Ends::Anchored:
      return anchored_formula;
    case Ends::Open:
      break;
  }
  return open_formula;
}

}  // namespace

units::Compressibility cylinder_growth(units::Length inner_radius, units::Length outer_radius,
                                       Ends ends, const materials::Elasticity& metal) {
  require_wall(inner_radius, outer_radius);
  const double a2 = inner_radius.si() * inner_radius.si();
  const double b2 = outer_radius.si() * outer_radius.si();
  const double nu = metal.poisson;
  const double denominator = metal.young.si() * (outer_radius.si() - inner_radius.si()) *
                             (outer_radius.si() + inner_radius.si());
  double numerator = 0.0;
  switch (ends) {
    case Ends::Closed:
      numerator = 3.0 * (1.0 - 2.0 * nu) * a2 + 2.0 * (1.0 + nu) * b2;
      break;
    case Ends::Anchored:
      numerator = 2.0 * (1.0 + nu) * ((1.0 - 2.0 * nu) * a2 + b2);
      break;
    case Ends::Open:
      numerator = 2.0 * ((1.0 - nu) * a2 + (1.0 + nu) * b2);
      break;
  }
  return units::per_pascal(numerator / denominator);
}

units::Compressibility sphere_growth(units::Length inner_radius, units::Length outer_radius,
                                     const materials::Elasticity& metal) {
  require_wall(inner_radius, outer_radius);
  const double a = inner_radius.si();
  const double b = outer_radius.si();
  const double nu = metal.poisson;
  return units::per_pascal(3.0 * (2.0 * (1.0 - 2.0 * nu) * a * a * a + (1.0 + nu) * b * b * b) /
                           (2.0 * metal.young.si() * (b - a) * (a * a + a * b + b * b)));
}

namespace detail {

double volume(const Cylinder& cylinder) {
  return Disc{cylinder.inner_diameter.si() / 2.0}.area() * cylinder.length.si();
}

double below(const Cylinder& cylinder, double level) {
  return prism_below(Disc{cylinder.inner_diameter.si() / 2.0}, cylinder.length.si(),
                     slope_of(cylinder.slope_rad), level - cylinder.middle.si());
}

double surface(const Cylinder& cylinder, double level) {
  return prism_surface(Disc{cylinder.inner_diameter.si() / 2.0}, cylinder.length.si(),
                       slope_of(cylinder.slope_rad), level - cylinder.middle.si());
}

Span span(const Cylinder& cylinder) {
  const auto [s, c] = slope_of(cylinder.slope_rad);
  const double half = cylinder.inner_diameter.si() / 2.0 * c + cylinder.length.si() / 2.0 * s;
  return {cylinder.middle.si() - half, cylinder.middle.si() + half};
}

double centroid(const Cylinder& cylinder) { return cylinder.middle.si(); }

double wetted(const Cylinder& cylinder) {
  return pi * cylinder.inner_diameter.si() * cylinder.length.si();
}

std::optional<double> metal(const Cylinder& cylinder) {
  if (!cylinder.wall) return std::nullopt;
  const double t = cylinder.wall->si();
  return pi * (cylinder.inner_diameter.si() + t) * t * cylinder.length.si();
}

Growth growth(const Cylinder& cylinder, const materials::Elasticity& steel) {
  Growth growth;
  growth.formula = formula_of(cylinder.ends);
  growth.method = "vessel-cylinder";
  if (!cylinder.wall) {
    growth.remark = GrowthRemark::WallNotStated;
    return growth;
  }
  const units::Length inner = cylinder.inner_diameter / 2.0;
  growth.value = units::cubic_metres(volume(cylinder)) *
                 cylinder_growth(inner, inner + *cylinder.wall, cylinder.ends, steel);
  return growth;
}

// A bank: many equal tubes whose water is spread evenly between two levels.
namespace {
double bore(const TubeBank& bank) { return bank.outer_diameter.si() - 2.0 * bank.wall.si(); }
}  // namespace

double volume(const TubeBank& bank) {
  return bank.tubes * Disc{bore(bank) / 2.0}.area() * bank.length.si();
}

double below(const TubeBank& bank, double level) {
  const double fraction = (level - bank.bottom.si()) / (bank.top - bank.bottom).si();
  return volume(bank) * clamp(fraction, 0.0, 1.0);
}

double surface(const TubeBank& bank, double level) {
  if (level <= bank.bottom.si() || level >= bank.top.si()) return 0.0;
  return volume(bank) / (bank.top - bank.bottom).si();
}

Span span(const TubeBank& bank) { return {bank.bottom.si(), bank.top.si()}; }

double centroid(const TubeBank& bank) { return 0.5 * (bank.bottom.si() + bank.top.si()); }

double wetted(const TubeBank& bank) { return bank.tubes * pi * bore(bank) * bank.length.si(); }

std::optional<double> metal(const TubeBank& bank) {
  const double t = bank.wall.si();
  return bank.tubes * pi * (bank.outer_diameter.si() - t) * t * bank.length.si();
}

Growth growth(const TubeBank& bank, const materials::Elasticity& steel) {
  Growth growth;
  growth.formula = formula_of(bank.ends);
  growth.method = "vessel-cylinder";
  const units::Length outer = bank.outer_diameter / 2.0;
  growth.value = units::cubic_metres(volume(bank)) *
                 cylinder_growth(outer - bank.wall, outer, bank.ends, steel);
  return growth;
}

}  // namespace detail
}  // namespace steamworthy::vessel
