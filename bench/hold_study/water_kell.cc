#include "hold_study/water_kell.h"

#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

constexpr double modulus_slope = 6.0;

double horner(double x, const double (&coefficients)[6]) {
  double sum = 0.0;
  for (int i = 5; i >= 0; --i) sum = sum * x + coefficients[i];
  return sum;
}

double density_at_atmosphere(double celsius) {
  constexpr double numerator[6] = {999.83952,     16.945176,    -7.9870401e-3,
                                   -46.170461e-6, 105.56302e-9, -280.54253e-12};
  return horner(celsius, numerator) / (1.0 + 16.879850e-3 * celsius);
}

double compressibility_at_atmosphere(double celsius) {
  constexpr double numerator[6] = {50.88496,    0.6163813,    1.459187e-3,
                                   20.08438e-6, -58.47727e-9, 410.4110e-12};
  return 1e-11 * horner(celsius, numerator) / (1.0 + 19.67348e-3 * celsius);
}

double squeeze(double pressure_pa, double celsius) {
  return 1.0 +
         modulus_slope * compressibility_at_atmosphere(celsius) * (pressure_pa - atmosphere_pa);
}

}  // namespace

double density(double pressure_pa, double temperature_k) {
  const double celsius = temperature_k - zero_celsius_k;
  // The sixth root of a number near 1, by elementary steps.
  return density_at_atmosphere(celsius) *
         numerics::exp(numerics::log(squeeze(pressure_pa, celsius)) / modulus_slope);
}

double compressibility(double pressure_pa, double temperature_k) {
  const double celsius = temperature_k - zero_celsius_k;
  return compressibility_at_atmosphere(celsius) / squeeze(pressure_pa, celsius);
}

double expansivity(double pressure_pa, double temperature_k) {
  constexpr double step = 0.01;
  const double below = density(pressure_pa, temperature_k - step);
  const double above = density(pressure_pa, temperature_k + step);
  return (below - above) / (step * (below + above));
}

double vapour_pressure(double temperature_k) {
  const double celsius = temperature_k - zero_celsius_k;
  return 611.21 * numerics::exp((18.678 - celsius / 234.5) * celsius / (257.14 + celsius));
}

}  // namespace steamworthy::hold_study
