#include "water/water.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "base/error.h"
#include "units/makers.h"
#include "water/r7_97.h"

namespace steamworthy::water {
namespace {

constexpr double R = 461.526;  // J/(kg K), [IAPWS-R7-97] Eq. 1
constexpr double region_1_top = 623.15;
constexpr double critical_temperature = 647.096;

[[noreturn]] void refuse(const std::string& what) { throw OutOfRange("water.out_of_range", what); }

double power(double base, int exponent) {
  double result = 1.0;
  double factor = exponent < 0 ? 1.0 / base : base;
  for (int n = std::abs(exponent); n > 0; n >>= 1) {
    if (n & 1) result *= factor;
    factor *= factor;
  }
  return result;
}

/// gamma of region 1 and its derivatives. [IAPWS-R7-97] Eq. 7, table 4.
struct Gamma {
  double pi = 0.0;
  double tau = 0.0;
  double g_pi = 0.0;
  double g_pipi = 0.0;
  double g_tau = 0.0;
  double g_tautau = 0.0;
  double g_pitau = 0.0;
};

Gamma region_1(State state) {
  const double T = state.temperature.si();
  const double p = state.pressure.si();
  if (!(T >= 273.15 && T <= region_1_top)) {
    refuse(fmt::format("{} K is outside 273.15 K to 623.15 K, the range of liquid water", T));
  }
  if (!(p <= 100e6))
    refuse(fmt::format("{} MPa is above 100 MPa, the limit of liquid water", p / 1e6));
  const double boiling = saturation_pressure(state.temperature).si();
  if (!(p >= boiling * (1.0 - 1e-9))) {
    refuse(fmt::format("{} kPa absolute is below {} kPa, at which water of {} K boils", p / 1e3,
                       boiling / 1e3, T));
  }
  Gamma gamma{.pi = p / 16.53e6, .tau = 1386.0 / T};
  // Powers by table: I runs to 32, J from -41 to 17.
  double a[33];
  double b[60];
  a[0] = 1.0;
  for (int i = 1; i <= 32; ++i) a[i] = a[i - 1] * (7.1 - gamma.pi);
  const double x = gamma.tau - 1.222;
  const double y = 1.0 / x;
  b[42] = 1.0;
  for (int j = 1; j <= 17; ++j) b[42 + j] = b[41 + j] * x;
  for (int j = 1; j <= 42; ++j) b[42 - j] = b[43 - j] * y;
  for (int i = 1; i <= 34; ++i) {
    const auto& [I, J, n] = r7_97::table_2[i];
    const double term = n * a[I];
    const double fall = I > 0 ? n * I * a[I - 1] : 0.0;
    const double rise = J != 0 ? J * b[42 + J - 1] : 0.0;
    gamma.g_pi -= fall * b[42 + J];
    if (I > 1) gamma.g_pipi += n * I * (I - 1) * a[I - 2] * b[42 + J];
    gamma.g_tau += term * rise;
    if (J != 0 && J != 1) gamma.g_tautau += term * J * (J - 1) * b[42 + J] * y * y;
    gamma.g_pitau -= fall * rise;
  }
  return gamma;
}

/// gamma_pi and gamma_tau of region 2. [IAPWS-R7-97] Eq. 15 to 17.
struct SteamGamma {
  double pi = 0.0;
  double tau = 0.0;
  double g_pi = 0.0;
  double g_tau = 0.0;
};

/// Boundary of regions 2 and 3, MPa. [IAPWS-R7-97] Eq. 5, table 1.
double boundary_23(double T) {
  return 0.34805185628969e3 - 0.11671859879975e1 * T + 0.10192970039326e-2 * T * T;
}

SteamGamma region_2(State state) {
  const double T = state.temperature.si();
  const double p = state.pressure.si();
  if (!(T >= 273.15 && T <= 1073.15)) {
    refuse(fmt::format("{} K is outside 273.15 K to 1073.15 K, the range of steam", T));
  }
  const double most = T <= region_1_top ? saturation_pressure(state.temperature).si()
                      : T <= 863.15     ? boundary_23(T) * 1e6
                                        : 100e6;
  if (!(p > 0.0 && p <= most * (1.0 + 1e-9))) {
    refuse(fmt::format("{} MPa is outside 0 to {} MPa, the range of steam of {} K", p / 1e6,
                       most / 1e6, T));
  }
  SteamGamma gamma{.pi = p / 1e6, .tau = 540.0 / T};
  gamma.g_pi = 1.0 / gamma.pi;
  for (int i = 1; i <= 9; ++i) {
    const auto& [J, n] = r7_97::table_10[i];
    if (J != 0) gamma.g_tau += n * J * power(gamma.tau, J - 1);
  }
  for (int i = 1; i <= 43; ++i) {
    const auto& [I, J, n] = r7_97::table_11[i];
    gamma.g_pi += n * I * power(gamma.pi, I - 1) * power(gamma.tau - 0.5, J);
    if (J != 0) gamma.g_tau += n * power(gamma.pi, I) * J * power(gamma.tau - 0.5, J - 1);
  }
  return gamma;
}

State at_saturation(units::Temperature temperature) {
  if (!(temperature.si() <= region_1_top)) {
    refuse(fmt::format("{} K is above 623.15 K, the limit for dry saturated steam here",
                       temperature.si()));
  }
  return {temperature, saturation_pressure(temperature)};
}

}  // namespace

units::Density density(State state) {
  const Gamma g = region_1(state);
  return units::kilograms_per_cubic_metre(16.53e6 / (R * state.temperature.si() * g.g_pi));
}

units::Compressibility isothermal_compressibility(State state) {
  const Gamma g = region_1(state);
  return units::per_pascal(-g.g_pipi / (16.53e6 * g.g_pi));
}

units::Expansivity thermal_expansivity(State state) {
  const Gamma g = region_1(state);
  return units::per_kelvin((1.0 - g.tau * g.g_pitau / g.g_pi) / state.temperature.si());
}

units::SpecificHeat isobaric_heat_capacity(State state) {
  const Gamma g = region_1(state);
  return units::joules_per_kilogram_kelvin(-R * g.tau * g.tau * g.g_tautau);
}

units::SpecificEnthalpy enthalpy(State state) {
  const Gamma g = region_1(state);
  return units::joules_per_kilogram(R * state.temperature.si() * g.tau * g.g_tau);
}

units::AbsolutePressure saturation_pressure(units::Temperature temperature) {
  const double T = temperature.si();
  if (!(T >= 273.15 && T <= critical_temperature)) {
    refuse(fmt::format("{} K is outside 273.15 K to 647.096 K, the range of saturation", T));
  }
  const double* n = r7_97::table_34;
  const double theta = T + n[9] / (T - n[10]);  // Eq. 29b
  const double A = theta * theta + n[1] * theta + n[2];
  const double B = n[3] * theta * theta + n[4] * theta + n[5];
  const double C = n[6] * theta * theta + n[7] * theta + n[8];
  const double x = 2.0 * C / (-B + std::sqrt(B * B - 4.0 * A * C));  // Eq. 30
  return units::megapascals_absolute(x * x * x * x);
}

units::Temperature saturation_temperature(units::AbsolutePressure pressure) {
  const double p = pressure.si() / 1e6;
  if (!(p >= 611.212677e-6 && p <= 22.064)) {
    refuse(
        fmt::format("{} MPa is outside 0.000611213 MPa to 22.064 MPa, the range of saturation", p));
  }
  const double* n = r7_97::table_34;
  const double beta = std::sqrt(std::sqrt(p));  // Eq. 29a
  const double E = beta * beta + n[3] * beta + n[6];
  const double F = n[1] * beta * beta + n[4] * beta + n[7];
  const double G = n[2] * beta * beta + n[5] * beta + n[8];
  const double D = 2.0 * G / (-F - std::sqrt(F * F - 4.0 * E * G));
  const double s = n[10] + D;
  return units::kelvins((s - std::sqrt(s * s - 4.0 * (n[9] + n[10] * D))) / 2.0);  // Eq. 31
}

units::SpecificVolume superheated_volume(State state) {
  const SteamGamma g = region_2(state);
  return units::SpecificVolume::from_si(R * state.temperature.si() * g.g_pi / 1e6);
}

units::SpecificEnthalpy superheated_enthalpy(State state) {
  const SteamGamma g = region_2(state);
  return units::joules_per_kilogram(R * state.temperature.si() * g.tau * g.g_tau);
}

units::Density steam_density(units::Temperature saturation) {
  return 1.0 / superheated_volume(at_saturation(saturation));
}

units::SpecificEnthalpy steam_enthalpy(units::Temperature saturation) {
  return superheated_enthalpy(at_saturation(saturation));
}

}  // namespace steamworthy::water
