// The test sheet: for the example boiler and for one of 600 closures, with and without writing it
// as JSON; then the whole process, beside one that does nothing.
#include <benchmark/benchmark.h>
#include <spawn.h>
#include <sys/wait.h>

#include <fstream>
#include <iterator>
#include <string>

#include "service/sheet_service.h"
#include "wire/sheet_json.h"

extern char** environ;

namespace steamworthy {
namespace {

const std::string source = STEAMWORTHY_SOURCE_DIR;

std::string bytes_of(const std::string& path) {
  std::ifstream file(source + "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

sheet::Request request() {
  sheet::Request request;
  request.rule_id = "us-marine-ordinary";
  request.work = rules::Work::GasketsOnly;
  request.authority = "an inspector";
  request.stated_ceiling = units::GaugePressure::from_si(48e5);
  return request;
}

/// The example boiler with its closures repeated under new tags.
boiler::Boiler boiler_of(std::size_t closures) {
  boiler::Boiler boiler =
      service::read_description(bytes_of("examples/watertube.toml"), "watertube.toml");
  const std::size_t original = boiler.closures.size();
  for (std::size_t i = original; i < closures; ++i) {
    boiler::Closure copy = boiler.closures[i % original];
    copy.tag += "-" + std::to_string(i);
    boiler.closures.push_back(copy);
  }
  return boiler;
}

void BM_ReadDescription(benchmark::State& state) {
  const std::string text = bytes_of("examples/watertube.toml");
  for (auto _ : state) benchmark::DoNotOptimize(service::read_description(text, "watertube.toml"));
}
BENCHMARK(BM_ReadDescription)->Unit(benchmark::kMillisecond);

void BM_ReadShippedRules(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(service::shipped_rules());
}
BENCHMARK(BM_ReadShippedRules)->Unit(benchmark::kMillisecond);

void BM_Sheet(benchmark::State& state) {
  const boiler::Boiler boiler = boiler_of(static_cast<std::size_t>(state.range(0)));
  const auto rules = service::shipped_rules();
  for (auto _ : state) benchmark::DoNotOptimize(sheet::make_sheet(boiler, rules, request()));
}
BENCHMARK(BM_Sheet)->Arg(116)->Arg(600)->Unit(benchmark::kMillisecond);

void BM_SheetAsJson(benchmark::State& state) {
  const auto rules = service::shipped_rules();
  const sheet::Sheet sheet = sheet::make_sheet(boiler_of(600), rules, request());
  for (auto _ : state) benchmark::DoNotOptimize(wire::sheet_json(sheet, true));
}
BENCHMARK(BM_SheetAsJson)->Unit(benchmark::kMillisecond);

int run(const char* const* arguments) {
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", 1, 0);
  pid_t child = 0;
  int status = -1;
  if (posix_spawn(&child, arguments[0], &quiet, nullptr, const_cast<char* const*>(arguments),
                  environ) == 0) {
    waitpid(child, &status, 0);
  }
  posix_spawn_file_actions_destroy(&quiet);
  return status;
}

void BM_WholeProcess(benchmark::State& state) {
  const std::string program = source + "/build/bench/steamworthy";
  const std::string file = source + "/examples/watertube.toml";
  const char* const arguments[] = {
      program.c_str(),      "sheet",       file.c_str(),   "--json", "--work", "gaskets", "--rule",
      "us-marine-ordinary", "--authority", "an inspector", nullptr};
  for (auto _ : state) {
    if (run(arguments) != 0) {
      state.SkipWithError("the program failed");
      break;
    }
  }
}
BENCHMARK(BM_WholeProcess)->Unit(benchmark::kMillisecond)->UseRealTime();

void BM_ProcessThatDoesNothing(benchmark::State& state) {
  const char* const arguments[] = {"/bin/true", nullptr};
  for (auto _ : state) benchmark::DoNotOptimize(run(arguments));
}
BENCHMARK(BM_ProcessThatDoesNothing)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
}  // namespace steamworthy
