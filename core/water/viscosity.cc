#include "water/viscosity.h"

#include <cmath>

#include "numerics/math.h"
#include "units/makers.h"

namespace steamworthy::water {
namespace {

// [IAPWS-R12-08] tables 1 and 2, digits as printed.
constexpr double H[] = {1.67752, 2.20462, 0.6366564, -0.241605};
struct Row {
  int i;
  int j;
  double H_ij;
};
constexpr Row table_2[] = {{0, 0, 5.20094e-1},  {1, 0, 8.50895e-2},  {2, 0, -1.08374},
                           {3, 0, -2.89555e-1}, {0, 1, 2.22531e-1},  {1, 1, 9.99115e-1},
                           {2, 1, 1.88797},     {3, 1, 1.26613},     {5, 1, 1.20573e-1},
                           {0, 2, -2.81378e-1}, {1, 2, -9.06851e-1}, {2, 2, -7.72479e-1},
                           {3, 2, -4.89837e-1}, {4, 2, -2.57040e-1}, {0, 3, 1.61913e-1},
                           {1, 3, 2.57399e-1},  {0, 4, -3.25372e-2}, {3, 4, 6.98452e-2},
                           {4, 5, 8.72102e-3},  {3, 6, -4.35673e-3}, {5, 6, -5.93264e-4}};

}  // namespace

units::Viscosity viscosity_at(units::Temperature temperature, units::Density density) {
  const double T = temperature.si() / 647.096;
  const double rho = density.si() / 322.0;
  const double x = 1.0 / T - 1.0;
  const double y = rho - 1.0;
  const double mu0 = 100.0 * std::sqrt(T) / (H[0] + (H[1] + (H[2] + H[3] / T) / T) / T);  // Eq. 11
  double sum = 0.0;
  for (const auto& [i, j, H_ij] : table_2) {
    double term = H_ij;
    for (int k = 0; k < i; ++k) term *= x;
    for (int k = 0; k < j; ++k) term *= y;
    sum += term;
  }
  return units::pascal_seconds(1e-6 * mu0 * numerics::exp(rho * sum));  // Eq. 12
}

units::Viscosity viscosity(State state) { return viscosity_at(state.temperature, density(state)); }

}  // namespace steamworthy::water
