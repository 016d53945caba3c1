// Properties of water per state; beside them the plainest baseline, a polynomial for the density of
// water at one atmosphere, which is what a program without a formulation would use.
#include <benchmark/benchmark.h>

#include "units/makers.h"
#include "water/viscosity.h"
#include "water/water.h"

namespace steamworthy::water {
namespace {

/// 15 to 65 °C and 0.1 to 10.1 MPa, a new state each time.
State state_of(int step) {
  return {units::celsius(15.0 + 0.05 * (step % 1000)),
          units::megapascals_absolute(0.1 + 0.01 * (step % 997))};
}

template <auto property>
void per_state(benchmark::State& state) {
  int step = 0;
  for (auto _ : state) benchmark::DoNotOptimize(property(state_of(++step)).si());
}

void Baseline_Polynomial(benchmark::State& state) {
  int step = 0;
  for (auto _ : state) {
    const double t = units::in_celsius(state_of(++step).temperature);
    benchmark::DoNotOptimize(999.84 + t * (0.0679 + t * (-0.00909 + t * (1e-4 - t * 1.1e-6))));
  }
}
BENCHMARK(Baseline_Polynomial);
BENCHMARK(per_state<density>)->Name("density");
BENCHMARK(per_state<isothermal_compressibility>)->Name("isothermal_compressibility");
BENCHMARK(per_state<thermal_expansivity>)->Name("thermal_expansivity");
BENCHMARK(per_state<isobaric_heat_capacity>)->Name("isobaric_heat_capacity");
BENCHMARK(per_state<enthalpy>)->Name("enthalpy");
BENCHMARK(per_state<viscosity>)->Name("viscosity");

void saturation_both_ways(benchmark::State& state) {
  int step = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        saturation_temperature(saturation_pressure(state_of(++step).temperature)).si());
  }
}
BENCHMARK(saturation_both_ways);

void all_properties(benchmark::State& state) {
  int step = 0;
  for (auto _ : state) {
    const State at = state_of(++step);
    benchmark::DoNotOptimize(density(at).si() + isothermal_compressibility(at).si() +
                             thermal_expansivity(at).si() + isobaric_heat_capacity(at).si() +
                             enthalpy(at).si() + viscosity(at).si());
  }
}
BENCHMARK(all_properties);

}  // namespace
}  // namespace steamworthy::water
