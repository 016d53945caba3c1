// Water below a level, by shape; beside it the plainest baseline, a lying cylinder with the
// standard arc cosine.
#include <benchmark/benchmark.h>

#include <cmath>

#include "units/makers.h"
#include "vessel/volume.h"

namespace steamworthy::vessel {
namespace {

using units::level_metres;
using units::metres;

double level_of(int step) { return 8.0 + 1e-3 * (step % 1000); }

void below(benchmark::State& state, const Body& body) {
  int step = 0;
  for (auto _ : state) benchmark::DoNotOptimize(volume_below(body, level_metres(level_of(++step))));
}

Cylinder drum(double slope_rad) {
  return {metres(1.25), metres(0.05), metres(6.6), level_metres(8.5), slope_rad, Ends::Closed};
}
Head end(HeadForm form, double slope_rad) {
  return {form, metres(1.25), metres(0.05), level_metres(8.5), slope_rad};
}

void Baseline_StandardArcCosine(benchmark::State& state) {
  int step = 0;
  for (auto _ : state) {
    const double u = level_of(++step) - 8.5;
    benchmark::DoNotOptimize(6.6 *
                             (0.390625 * std::acos(-u / 0.625) + u * std::sqrt(0.390625 - u * u)));
  }
}
BENCHMARK(Baseline_StandardArcCosine);

BENCHMARK_CAPTURE(below, lying_drum, Body{drum(0.0)});
BENCHMARK_CAPTURE(below, inclined_pipe, Body{drum(0.1)});
BENCHMARK_CAPTURE(below, ellipsoidal_head, Body{end(Ellipsoidal{2.0}, 0.0)});
BENCHMARK_CAPTURE(below, ellipsoidal_head_leaning, Body{end(Ellipsoidal{2.0}, 0.3)});
BENCHMARK_CAPTURE(below, torispherical_head,
                  Body{end(Torispherical{metres(1.25), metres(0.125)}, 0.0)});
BENCHMARK_CAPTURE(
    below, firetube_with_20_rows, Body{[] {
      FiretubeShell shell{metres(2.4), metres(0.016), metres(5.0), level_metres(8.5), {}};
      shell.rows.push_back(
          {1, metres(0.9), metres(0.014), level_metres(8.0), std::nullopt, true, true});
      for (int row = 0; row < 20; ++row) {
        shell.rows.push_back({8, metres(0.06), metres(0.003), level_metres(8.1 + 0.06 * row),
                              std::nullopt, false, true});
      }
      return shell;
    }()});

}  // namespace
}  // namespace steamworthy::vessel
