// How long the analysis of a day of readings takes: 86,400 rows, one a second, pump-up and hold.
// Aim: under 100 ms. bench/hold_scipy.py does the same estimator with numpy and scipy.
#include <benchmark/benchmark.h>

#include <cmath>

#include "hold/analyse.h"
#include "hold/lump.h"
#include "units/makers.h"

namespace steamworthy::hold {
namespace {

// The same record as bench/hold_scipy.py: ten minutes of pumping to 45 bar at constant
// stiffness, then a hold with a slow fall, a little noise from a fixed course.
HoldInput day_of_readings(std::size_t rows) {
  HoldInput input;
  input.boiler.volume = units::cubic_metres(8.0);
  input.boiler.growth = units::per_pascal(1e-10);
  input.valves = {true, true};
  input.leak_of_concern = units::millilitres_per_minute(20);
  input.gauge.resolution = units::bars(0.01);
  input.gauge.noise = units::bars(0.01);
  input.hold_start_s = 600.0;
  const Lump lump = Lump::of(input.boiler, input.barometer);
  const double start = lump.mass_kg(lump.barometer_pa, 298.15, 298.15);
  for (std::size_t i = 0; i < rows; ++i) {
    const double s = static_cast<double>(i);
    const double share = std::fmin(s / 600.0, 1.0);
    const double wave = static_cast<double>((i * 7919) % 101) / 101.0 - 0.5;
    const double held = std::fmax(s - 600.0, 0.0);
    const double pa = lump.barometer_pa + 45e5 * share - 3.0 * held + 2e3 * wave;
    input.record.seconds.push_back(s);
    input.record.pressure_pa_abs.push_back(pa);
    input.record.water_temperature_k.push_back(298.15 - 1e-6 * held + 0.01 * wave);
    input.record.metal_temperature_k.push_back(298.25 - 2e-6 * held - 0.01 * wave);
    const double pumped = lump.mass_kg(lump.barometer_pa + 45e5 * share, 298.15, 298.15) - start;
    input.record.pumped_m3.push_back(pumped / 997.0 + 3e-3 * (1.0 - 1.0 / (1.0 + 45.0 * share)));
  }
  return input;
}

void day(benchmark::State& state) {
  const HoldInput input = day_of_readings(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(analyse(input));
}
BENCHMARK(day)->Arg(3600)->Arg(86400)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace steamworthy::hold
