// The simulator's water against core's, which is another formulation by other authors.
#include "hold_study/water_kell.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "water/water.h"

namespace steamworthy::hold_study {
namespace {

struct Worst {
  double density = 0.0;          // relative
  double expansivity = 0.0;      // 1/K
  double compressibility = 0.0;  // relative
  double vapour = 0.0;           // relative
};

Worst worst_of(double low_celsius, double high_celsius) {
  Worst worst;
  for (double celsius = low_celsius; celsius <= high_celsius; celsius += 1.0) {
    const double t = celsius + zero_celsius_k;
    const auto temperature = units::Temperature::from_si(t);
    const auto keep = [](double& most, double error) { most = std::max(most, std::fabs(error)); };
    keep(worst.vapour, vapour_pressure(t) / water::saturation_pressure(temperature).si() - 1.0);
    for (double bar = 0.0; bar <= 160.0; bar += 4.0) {
      const double p = atmosphere_pa + bar * 1e5;
      const water::State state{temperature, units::AbsolutePressure::from_si(p)};
      keep(worst.density, density(p, t) / water::density(state).si() - 1.0);
      keep(worst.expansivity, expansivity(p, t) - water::thermal_expansivity(state).si());
      keep(worst.compressibility,
           compressibility(p, t) / water::isothermal_compressibility(state).si() - 1.0);
    }
  }
  return worst;
}

TEST(Kell, AgreesWithTheIndustrialFormulation) {
  const Worst worst = worst_of(2.0, 70.0);
  EXPECT_LT(worst.density, 2e-5);
  EXPECT_LT(worst.expansivity, 8e-7);
  EXPECT_LT(worst.compressibility, 4.5e-3);
  EXPECT_LT(worst.vapour, 2e-3);
}

TEST(Kell, IsNotTheIndustrialFormulation) {
  // They must differ, or the estimator would be judged by its own water.
  EXPECT_GT(worst_of(10.0, 45.0).compressibility, 1e-3);
}

TEST(Kell, GivesTheHandbookDensities) {
  // 999.972 and 997.0449 kg/m3 at 4 and 25 °C, 1 atm, and 0.45247 /GPa at 25 °C, after Kell, as
  // quoted in handbooks (from memory).
  EXPECT_NEAR(density(atmosphere_pa, 277.15), 999.972, 5e-4);
  EXPECT_NEAR(density(atmosphere_pa, 298.15), 997.0449, 5e-5);
  EXPECT_NEAR(compressibility(atmosphere_pa, 298.15) * 1e9, 0.45247, 5e-6);
}

}  // namespace
}  // namespace steamworthy::hold_study
