// Shells with furnaces and smoke tubes inside: docs/methods/vessel-firetube.md.
#include "units/makers.h"
#include "vessel/parts.h"
#include "vessel/section.h"

namespace steamworthy::vessel::detail {
namespace {

Disc bore(const FiretubeShell& shell) { return {shell.inner_diameter.si() / 2.0}; }

double length_of(const FiretubeShell& shell, const FlueRow& row) {
  return row.length ? row.length->si() : shell.length.si();
}

// All tubes of a row: their area in the section, counted by their share of the shell's length.
double area_of(const FiretubeShell& shell, const FlueRow& row) {
  return row.tubes * Disc{row.outer_diameter.si() / 2.0}.area() * length_of(shell, row) /
         shell.length.si();
}

// A sum over the rows of f(disc, height above the axis of the shell, tubes times length).
template <class F>
double over_rows(const FiretubeShell& shell, F f) {
  double sum = 0.0;
  for (const FlueRow& row : shell.rows) {
    sum += f(Disc{row.outer_diameter.si() / 2.0}, (row.level - shell.centre).si(),
             row.tubes * length_of(shell, row));
  }
  return sum;
}

}  // namespace

double volume(const FiretubeShell& shell) {
  return bore(shell).area() * shell.length.si() -
         over_rows(shell,
                   [](const Disc& disc, double, double length) { return disc.area() * length; });
}

double below(const FiretubeShell& shell, double level) {
  const double u = level - shell.centre.si();
  return bore(shell).below(u) * shell.length.si() -
         over_rows(shell, [&](const Disc& disc, double at, double length) {
           return disc.below(u - at) * length;
         });
}

double surface(const FiretubeShell& shell, double level) {
  const double u = level - shell.centre.si();
  return bore(shell).chord(u) * shell.length.si() -
         over_rows(shell, [&](const Disc& disc, double at, double length) {
           return disc.chord(u - at) * length;
         });
}

Span span(const FiretubeShell& shell) {
  const double R = shell.inner_diameter.si() / 2.0;
  return {shell.centre.si() - R, shell.centre.si() + R};
}

double centroid(const FiretubeShell& shell) {
  // The shell's own moment about its axis is zero.
  const double moment = -over_rows(
      shell, [](const Disc& disc, double at, double length) { return disc.area() * length * at; });
  return shell.centre.si() + moment / volume(shell);
}

double wetted(const FiretubeShell& shell) {
  return pi * shell.inner_diameter.si() * shell.length.si() +
         over_rows(shell, [](const Disc& disc, double, double length) {
           return 2.0 * pi * disc.r * length;
         });
}

std::optional<double> metal(const FiretubeShell& shell) {
  if (!shell.wall) return std::nullopt;
  const double t = shell.wall->si();
  double sum = pi * (shell.inner_diameter.si() + t) * t * shell.length.si();
  for (const FlueRow& row : shell.rows) {
    sum += row.tubes * pi * (row.outer_diameter.si() - row.wall.si()) * row.wall.si() *
           length_of(shell, row);
  }
  return sum;
}

Growth growth(const FiretubeShell& shell, const materials::Elasticity& steel) {
  Growth growth;
  growth.formula =
      "dV/dp = 2 A_s L e_s - sum 2 A_t l e_t + V e_z, with Lamé's hoop strains e_s, e_t and "
      "E e_z sum A_metal = A_water (1 - 2 nu)";
  growth.method = "vessel-firetube";
  if (!shell.wall) {
    growth.remark = GrowthRemark::WallNotStated;
    return growth;
  }
  growth.remark = GrowthRemark::PlatesMoveAsOne;
  const double nu = steel.poisson;
  const double L = shell.length.si();
  // For one unit of pressure; strains are multiplied by E throughout.
  const double a = bore(shell).r;
  const double b = a + shell.wall->si();
  const double shell_metal = pi * (b - a) * (b + a);
  double water_area = bore(shell).area();
  double pulling_metal = shell_metal;
  double poisson_pull = 2.0 * bore(shell).area();  // sum of metal area times (radial + hoop stress)
  for (const FlueRow& row : shell.rows) {
    const double area = area_of(shell, row);
    water_area -= area;
    if (!row.takes_axial_load) continue;
    const double outer = row.outer_diameter.si() / 2.0;
    const double inner = outer - row.wall.si();
    pulling_metal += area * (outer - inner) * (outer + inner) / (outer * outer);
    poisson_pull -= 2.0 * area;
  }
  const double axial_strain = (water_area - nu * poisson_pull) / pulling_metal;

  const double shell_hoop = (a * a + b * b) / ((b - a) * (b + a));
  const double shell_axial = axial_strain + nu * (shell_hoop - 1.0);
  const double shell_strain = shell_hoop - nu * (shell_axial - 1.0);
  double sum = 2.0 * bore(shell).area() * shell_strain + water_area * axial_strain;
  for (const FlueRow& row : shell.rows) {
    const double outer = row.outer_diameter.si() / 2.0;
    const double inner = outer - row.wall.si();
    const double hoop = -(inner * inner + outer * outer) / ((outer - inner) * (outer + inner));
    const double axial = row.takes_axial_load ? axial_strain + nu * (hoop - 1.0) : 0.0;
    sum -= 2.0 * area_of(shell, row) * (hoop - nu * (axial - 1.0));
  }
  growth.value = units::cubic_metres_per_pascal(sum * L / steel.young.si());
  return growth;
}

}  // namespace steamworthy::vessel::detail
