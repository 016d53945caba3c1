// Reading logs: a day of seconds, and ten million lines with the memory that they take.
#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <sys/resource.h>

#include <string>

#include "trace/reader.h"

namespace {

using namespace steamworthy;

/// A block of lines as a logger of seconds writes them, `first` to `last`.
std::string lines(long first, long last) {
  std::string text;
  for (long i = first; i < last; ++i) {
    fmt::format_to(std::back_inserter(text), "{},{}.{:02},{}.{:02},{}.{:02},{}.{:02},{}.{:04}\n", i,
                   40 + i % 3, i % 97, 20 + i % 2, i % 89, 21, i % 83, 18, i % 79, i / 100000,
                   i % 10000);
  }
  return text;
}

constexpr const char* heads = "t_s,p_barg,T_metal_C,T_water_C,T_amb_C,V_pumped_L\n";

double megabytes_of_process() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;  // kilobytes on Linux
}

void read_lines(benchmark::State& state, bool knows_size) {
  const long rows = state.range(0);
  constexpr long block = 10000;
  const double before = megabytes_of_process();
  double bytes = 0.0;
  for (auto _ : state) {
    trace::TraceReader reader("log.csv");
    if (knows_size) reader.expect(static_cast<std::size_t>(rows) * lines(0, block).size() / block);
    reader.feed(heads);
    bytes = 0.0;
    for (long i = 0; i < rows; i += block) {
      state.PauseTiming();
      const std::string text = lines(i, std::min(rows, i + block));
      bytes += static_cast<double>(text.size());
      state.ResumeTiming();
      reader.feed(text);
    }
    const trace::Reading reading = reader.finish();
    if (reading.trace.rows() != static_cast<std::size_t>(rows))
      state.SkipWithError("rows are lost");
  }
  state.counters["rows/s"] =
      benchmark::Counter(static_cast<double>(rows), benchmark::Counter::kIsIterationInvariantRate);
  state.counters["log MB"] = bytes / 1e6;
  state.counters["grown MB"] = megabytes_of_process() - before;
}

// The process only grows: the least comes first, and each shows what it needed beyond those before.
BENCHMARK_CAPTURE(read_lines, day, false)->Arg(86'400)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(read_lines, ten_million, true)
    ->Arg(10'000'000)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

}  // namespace
