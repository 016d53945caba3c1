// same_bits: what core's numeric functions give on seeded random inputs, bit by bit.
//
// Built natively and for WebAssembly by tools/same_bits.sh, which compares the outputs.
//   same_bits              one line a function: name, inputs, hash of the bits of all results
//   same_bits rows NAME    one line an input of that function: number, bits of the result
// A function is added by a line in one of the lists below; it draws its own inputs.
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "hold/detectable.h"
#include "hold/water_filled.h"
#include "numerics/math.h"
#include "same_bits/random.h"
#include "strength/stress.h"
#include "units/makers.h"
#include "vessel/growth.h"
#include "vessel/volume.h"
#include "water/humid_air.h"
#include "water/viscosity.h"
#include "water/water.h"

namespace steamworthy::same_bits {
namespace {

constexpr int inputs = 10'000;

struct Named {
  std::string_view name;
  double (*draw_and_compute)(Random&);
};

water::State liquid(Random& random) {
  // Below 623 K and above the saturation pressure there, 16.53 MPa.
  const double kelvin = random.uniform(273.15, 623.0);
  return {units::kelvins(kelvin), units::megapascals_absolute(random.uniform(16.53, 100.0))};
}
water::State cold_liquid(Random& random) {
  const double kelvin = random.uniform(273.16, 360.0);
  return {units::kelvins(kelvin), units::megapascals_absolute(random.uniform(0.07, 30.0))};
}
units::Temperature saturation(Random& random) {
  return units::kelvins(random.uniform(273.15, 623.0));
}

const Named mathematics[] = {
    {"exp", [](Random& r) { return numerics::exp(r.uniform(-750.0, 715.0)); }},
    {"exp_near_zero", [](Random& r) { return numerics::exp(r.uniform(-1.0, 1.0)); }},
    {"expm1", [](Random& r) { return numerics::expm1(r.uniform(-5.0, 5.0)); }},
    {"log", [](Random& r) { return numerics::log(r.positive()); }},
    {"log_near_one", [](Random& r) { return numerics::log(r.uniform(0.5, 2.0)); }},
    {"log1p", [](Random& r) { return numerics::log1p(r.uniform(-1.0, 3.0)); }},
    {"log10", [](Random& r) { return numerics::log10(r.positive()); }},
    {"pow",
     [](Random& r) {
       const double x = r.uniform(0.0, 100.0);
       return numerics::pow(x, r.uniform(-100.0, 100.0));
     }},
    {"power",
     [](Random& r) {
       const double x = r.uniform(-9.0, 9.0);
       return numerics::power(x, static_cast<int>(r.uniform(-40.0, 41.0)));
     }},
    {"hypot",
     [](Random& r) {
       const double x = r.uniform(-9.0, 9.0);
       return numerics::hypot(x, r.positive());
     }},
    {"cbrt", [](Random& r) { return numerics::cbrt(r.positive()); }},
    {"sin", [](Random& r) { return numerics::sin(r.uniform(-10.0, 10.0)); }},
    {"cos", [](Random& r) { return numerics::cos(r.uniform(-10.0, 10.0)); }},
    {"tan", [](Random& r) { return numerics::tan(r.uniform(-10.0, 10.0)); }},
    {"sin_of_any_size", [](Random& r) { return numerics::sin(r.positive()); }},
    {"cos_of_any_size", [](Random& r) { return numerics::cos(r.positive()); }},
    {"asin", [](Random& r) { return numerics::asin(r.uniform(-1.0, 1.0)); }},
    {"acos", [](Random& r) { return numerics::acos(r.uniform(-1.0, 1.0)); }},
    {"atan", [](Random& r) { return numerics::atan(r.uniform(-5.0, 5.0)); }},
    {"atan2",
     [](Random& r) {
       const double y = r.uniform(-5.0, 5.0);
       return numerics::atan2(y, r.uniform(-5.0, 5.0));
     }},
    {"erf", [](Random& r) { return numerics::erf(r.uniform(-6.0, 6.0)); }},
    {"erfc", [](Random& r) { return numerics::erfc(r.uniform(-6.0, 28.0)); }},
    {"normal_cdf", [](Random& r) { return numerics::normal_cdf(r.uniform(-38.0, 9.0)); }},
    {"normal_quantile", [](Random& r) { return numerics::normal_quantile(r.uniform(0.0, 1.0)); }},
};

const Named waters[] = {
    {"density", [](Random& r) { return water::density(liquid(r)).si(); }},
    {"density_cold", [](Random& r) { return water::density(cold_liquid(r)).si(); }},
    {"compressibility",
     [](Random& r) { return water::isothermal_compressibility(cold_liquid(r)).si(); }},
    {"expansivity", [](Random& r) { return water::thermal_expansivity(cold_liquid(r)).si(); }},
    {"heat_capacity", [](Random& r) { return water::isobaric_heat_capacity(liquid(r)).si(); }},
    {"enthalpy", [](Random& r) { return water::enthalpy(liquid(r)).si(); }},
    {"viscosity", [](Random& r) { return water::viscosity(liquid(r)).si(); }},
    {"saturation_pressure",
     [](Random& r) { return water::saturation_pressure(saturation(r)).si(); }},
    {"saturation_temperature",
     [](Random& r) {
       return water::saturation_temperature(units::megapascals_absolute(r.uniform(0.001, 22.0)))
           .si();
     }},
    {"steam_density", [](Random& r) { return water::steam_density(saturation(r)).si(); }},
    {"steam_enthalpy", [](Random& r) { return water::steam_enthalpy(saturation(r)).si(); }},
    {"dew_point",
     [](Random& r) {
       const units::Temperature air = units::celsius(r.uniform(0.0, 50.0));
       return water::dew_point(air, r.uniform(0.05, 1.0)).si();
     }},
};

units::Length size(Random& random, double low, double high) {
  return units::metres(random.uniform(low, high));
}
vessel::Body inclined_pipe(Random& r) {
  const units::Length bore = size(r, 0.05, 1.5);
  const units::Length wall = size(r, 0.003, 0.08);
  const units::Length length = size(r, 0.5, 8.0);
  return {vessel::Cylinder{bore, wall, length, units::level_metres(0.0), r.uniform(0.0, 1.57)}, 1};
}
vessel::Body head(Random& r, vessel::HeadForm form) {
  const units::Length bore = size(r, 0.3, 2.0);
  return {vessel::Head{form, bore, size(r, 0.005, 0.06), units::level_metres(0.0),
                       r.uniform(-1.57, 1.57)},
          1};
}
vessel::Body dished(Random& r) {
  const units::Length bore = size(r, 0.5, 2.0);
  return {vessel::Head{vessel::Torispherical{bore, 0.1 * bore}, bore, size(r, 0.005, 0.04),
                       units::level_metres(0.0), r.uniform(-1.57, 1.57)},
          1};
}
double below(const vessel::Body& body, Random& r) {
  return vessel::volume_below(body, units::level_metres(r.uniform(-1.5, 1.5))).si();
}
double growth_of(const vessel::Body& body) {
  return vessel::growth_per_pressure(body, {units::megapascals(200e3), 0.3}).value->si();
}
hold::FilledBoiler filled(Random& r) {
  hold::FilledBoiler boiler;
  for (int i = 0; i < 3; ++i) {
    boiler.pieces.push_back({units::cubic_metres(r.uniform(0.5, 10.0)),
                             units::millilitres_per_bar(r.uniform(5.0, 120.0)),
                             units::level_metres(r.uniform(0.0, 9.0))});
  }
  boiler.gauge = units::level_metres(9.4);
  boiler.steel_expansion = units::per_kelvin(11.5e-6);
  return boiler;
}
hold::FilledState state(Random& r) {
  const auto pressure = units::bars_absolute(r.uniform(5.0, 150.0));
  const auto temperature = units::celsius(r.uniform(5.0, 60.0));
  return {pressure, temperature, temperature};
}

const Named bodies[] = {
    {"volume_below_pipe", [](Random& r) { return below(inclined_pipe(r), r); }},
    {"volume_below_ellipsoidal",
     [](Random& r) { return below(head(r, vessel::Ellipsoidal{r.uniform(1.5, 2.5)}), r); }},
    {"volume_below_torispherical", [](Random& r) { return below(dished(r), r); }},
    {"growth_pipe", [](Random& r) { return growth_of(inclined_pipe(r)); }},
    {"growth_ellipsoidal",
     [](Random& r) { return growth_of(head(r, vessel::Ellipsoidal{r.uniform(1.5, 2.5)})); }},
    {"stress_pipe",
     [](Random& r) {
       const auto body = inclined_pipe(r);
       return strength::wall_stresses(body, units::bars(r.uniform(1.0, 100.0)), 0.3)
           .front()
           .membrane->si();
     }},
};

const Named boilers[] = {
    {"water_mass",
     [](Random& r) {
       const auto boiler = filled(r);
       return hold::water_mass(boiler, state(r)).si();
     }},
    {"volume_per_pressure",
     [](Random& r) {
       const auto boiler = filled(r);
       return hold::volume_per_pressure(boiler, state(r)).si();
     }},
    {"pressure_per_kelvin",
     [](Random& r) {
       const auto boiler = filled(r);
       return hold::pressure_per_kelvin(boiler, state(r)).si();
     }},
    {"detectable_loss",
     [](Random& r) {
       hold::HoldLimits limits;
       limits.hold = units::minutes(r.uniform(5.0, 200.0));
       limits.per_pressure = units::millilitres_per_bar(r.uniform(50.0, 2000.0));
       limits.per_temperature = units::millilitres_per_kelvin(r.uniform(100.0, 8000.0));
       limits.unseen_drift = hold::usual_unseen_drift(limits.hold);
       limits.gauge_resolution = units::bars(r.uniform(0.01, 1.0));
       return hold::detectable_loss(limits).si();
     }},
};

std::uint64_t bits_of(double value) {
  if (value != value) return 0x7ff8000000000000U;  // one NaN: its sign and payload are nobody's
  std::uint64_t bits = 0;
  std::memcpy(&bits, &value, sizeof bits);
  return bits;
}

std::vector<Named> all_functions() {
  std::vector<Named> all(std::begin(mathematics), std::end(mathematics));
  all.insert(all.end(), std::begin(waters), std::end(waters));
  all.insert(all.end(), std::begin(bodies), std::end(bodies));
  all.insert(all.end(), std::begin(boilers), std::end(boilers));
  return all;
}

void print(const Named& function, bool rows) {
  Random random(function.name);
  std::uint64_t hash = 0xcbf29ce484222325U;  // FNV-1a over 64-bit words
  for (int i = 0; i < inputs; ++i) {
    const std::uint64_t bits = bits_of(function.draw_and_compute(random));
    hash = (hash ^ bits) * 0x100000001b3U;
    if (rows) std::printf("%d %016llx\n", i, static_cast<unsigned long long>(bits));
  }
  if (!rows) {
    std::printf("%.*s %d %016llx\n", static_cast<int>(function.name.size()), function.name.data(),
                inputs, static_cast<unsigned long long>(hash));
  }
}

}  // namespace
}  // namespace steamworthy::same_bits

int main(int count, char** arguments) {
  using namespace steamworthy;
  const bool rows = count == 3 && std::string_view(arguments[1]) == "rows";
  bool found = false;
  try {
    for (const same_bits::Named& function : same_bits::all_functions()) {
      if (rows && function.name != arguments[2]) continue;
      found = true;
      same_bits::print(function, rows);
    }
  } catch (const Error& error) {
    std::printf("%s\n", error.what());
    return 1;
  }
  return found ? 0 : 2;
}
