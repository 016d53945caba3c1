// Papers: the test record with three day-long traces and 600 closures, from the log's bytes to the
// PDF's; the closure sheets and the drawing of 600 closures; a page as PNG. tools/bench.sh runs
// bench/paper_weasyprint.py beside it: another library that makes as many pages.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <fstream>
#include <iterator>
#include <string>

#include "hold/analyse.h"
#include "paper/write.h"
#include "report/drawing_paper.h"
#include "report/papers.h"
#include "report/record.h"
#include "service/sheet_service.h"
#include "trace/reader.h"
#include "units/makers.h"

namespace steamworthy {
namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream file(std::string(STEAMWORTHY_SOURCE_DIR) + "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The example with its header openings multiplied, each at a place of its own.
boiler::Boiler boiler_of(std::size_t closures) {
  boiler::Boiler boiler =
      service::read_description(bytes_of("examples/watertube.toml"), "watertube.toml");
  const std::vector<boiler::Closure> original = boiler.closures;
  std::size_t copy = 0;
  for (std::size_t i = 4; boiler.closures.size() < closures;
       i = i + 1 < original.size() ? i + 1 : 4) {
    boiler::Closure one = original[i];
    if (i == 4) ++copy;
    one.tag += "-" + std::to_string(copy);
    one.position = units::metres(one.position->si() + 0.03 * static_cast<double>(copy));
    one.opening = {boiler::OpeningShape::Circle, units::millimetres(24), units::millimetres(24)};
    boiler.closures.push_back(one);
  }
  return boiler;
}

report::Papers papers_of(const boiler::Boiler& boiler) {
  sheet::Request request;
  request.rule_id = "us-marine-ordinary";
  request.work = rules::Work::GasketsOnly;
  request.authority = "an inspector";
  request.stated_ceiling = units::bars_gauge(48);
  report::Papers papers{{.boiler = boiler},
                        sheet::make_sheet(boiler, service::shipped_rules(), request)};
  papers.context.version = "bench";
  return papers;
}

/// A day of three gauges, a reading a second.
std::string day_long_log() {
  std::string text =
      "time [s],gauge 1 [bar gauge],gauge 2 [bar gauge],gauge 3 [bar gauge],"
      "water [degC],pumped [L]\n";
  for (int t = 0; t < 86'400; ++t) {
    const double up = std::min(1.0, t / 1200.0);
    const double pressure = 45.0 * up - std::max(0, t - 1200) * 2e-5;
    text += std::to_string(t) + "," + std::to_string(pressure) + "," +
            std::to_string(pressure + 0.1) + "," + std::to_string(pressure + 0.2) + ",25.00," +
            std::to_string(66.4 * up) + "\n";
  }
  return text;
}

struct Day {
  Day() : reading(trace::read_trace(day_long_log(), "day.csv")) {
    const trace::Trace& trace = reading.trace;
    input.record.seconds = trace.seconds;
    for (std::size_t i = 0; i < trace.rows(); ++i) {
      input.record.pressure_pa_abs.push_back(trace.pressures.front().values.si(i) +
                                             input.barometer.si());
      input.record.water_temperature_k.push_back(trace.water.front().values.si(i));
      input.record.pumped_m3.push_back(trace.pumped->values.si(i));
    }
    input.boiler.volume = units::cubic_metres(26.8);
    input.boiler.growth = units::per_pascal(1e-10);
    input.valves = {true, true};
    input.hold_start_s = 1200.0;
    answer = hold::analyse(input);
  }
  trace::Reading reading;
  trace::TestFacts facts;
  hold::HoldInput input;
  hold::HoldAnswer answer;
};

void report_pages(benchmark::State& state, std::size_t pages, std::size_t bytes) {
  state.counters["pages"] = static_cast<double>(pages);
  state.counters["bytes"] = static_cast<double>(bytes);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  state.counters["peak_MB"] = static_cast<double>(usage.ru_maxrss) / 1024.0;
}

void BM_Record(benchmark::State& state) {
  const boiler::Boiler boiler = boiler_of(600);
  const report::Papers papers = papers_of(boiler);
  const Day day;
  std::size_t pages = 0, bytes = 0;
  for (auto _ : state) {
    const paper::Document document =
        report::test_record(papers, {day.reading.trace, day.facts, day.input, day.answer});
    pages = document.pages.size();
    bytes = paper::pdf(document).size();
  }
  report_pages(state, pages, bytes);
}
BENCHMARK(BM_Record)->Unit(benchmark::kMillisecond);

void BM_Paper(benchmark::State& state, const char* kind) {
  const boiler::Boiler boiler = boiler_of(600);
  const report::Papers papers = papers_of(boiler);
  const report::PaperKind* made = report::find_kind(kind);
  std::size_t pages = 0, bytes = 0;
  for (auto _ : state) {
    const paper::Document document = made->make(papers);
    pages = document.pages.size();
    bytes = paper::pdf(document).size();
  }
  report_pages(state, pages, bytes);
}
BENCHMARK_CAPTURE(BM_Paper, test_sheet, "test-sheet")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(BM_Paper, closures, "closures")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(BM_Paper, walkdown, "walkdown")->Unit(benchmark::kMillisecond);

void BM_Drawing(benchmark::State& state) {
  const boiler::Boiler boiler = boiler_of(600);
  const report::Context context{.boiler = boiler};
  std::size_t pages = 0, bytes = 0;
  for (auto _ : state) {
    const paper::Document document = report::drawing_paper(context);
    pages = document.pages.size();
    bytes = paper::pdf(document).size();
  }
  report_pages(state, pages, bytes);
}
BENCHMARK(BM_Drawing)->Unit(benchmark::kMillisecond);

void BM_PagePng(benchmark::State& state) {
  const boiler::Boiler boiler = boiler_of(116);
  const report::Context context{.boiler = boiler};
  const paper::Document document = report::drawing_paper(context);
  for (auto _ : state) benchmark::DoNotOptimize(paper::png(document.pages.front(), 150.0));
}
BENCHMARK(BM_PagePng)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace steamworthy
