// Folding 20,000 parsed facts into the state of their closing: all at once, one more at the end,
// and with some that come late.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "closing/fold.h"
#include "closing/outstanding.h"
#include "service/sheet_service.h"
#include "units/makers.h"
#include "wire/fact_line.h"

namespace steamworthy {
namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream file(std::string(STEAMWORTHY_SOURCE_DIR) + "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

closing::Terms terms() {
  closing::Site site;
  site.air_minutes = 30;
  site.count_minutes = 20;
  site.open_below = units::celsius(45);
  site.carbon_monoxide_alarm = 20;
  site.hydrogen_sulfide_alarm = 5;
  closing::Terms terms(
      service::read_description(bytes_of("examples/watertube.toml"), "watertube.toml"), site);
  const auto plant = wire::read_fact_lines(bytes_of("examples/demo-plant.jsonl"), "plant");
  for (const facts::Fact& fact : plant.facts) {
    const auto* person = std::get_if<facts::PersonEnrolled>(&fact.body);
    if (person == nullptr) continue;
    for (const std::string& role : person->roles) {
      terms.let(person->who, facts::value_of<facts::RoleName>(role).value());
    }
  }
  return terms;
}

/// The demo closing, then readings of a long hold, until there are so many.
std::vector<facts::Fact> facts_of(std::size_t count) {
  std::vector<facts::Fact> facts =
      wire::read_fact_lines(bytes_of("examples/demo-closing.jsonl"), "demo").facts;
  while (facts.size() < count) {
    facts::Fact next = facts.back();
    ++next.device_seq;
    next.id = std::to_string(facts.size());
    next.happened_at_ms += 5'000;
    next.recorded_at_ms = next.happened_at_ms;
    next.body = facts::ReadingTaken{"TG-1", {units::bars_gauge(0), ""}};
    facts.push_back(std::move(next));
  }
  return facts;
}

void BM_Fold(benchmark::State& state) {
  const auto facts = facts_of(static_cast<std::size_t>(state.range(0)));
  const closing::Terms judged_by = terms();
  for (auto _ : state) benchmark::DoNotOptimize(closing::fold(facts, judged_by));
  state.counters["facts"] = static_cast<double>(facts.size());
}
BENCHMARK(BM_Fold)->Arg(1)->Arg(20'000)->Unit(benchmark::kMillisecond);

void BM_FoldOneMore(benchmark::State& state) {
  auto facts = facts_of(20'000);
  closing::Fold folded(terms());
  for (const facts::Fact& fact : facts) folded.add(fact);
  facts::Fact next = facts.back();
  for (auto _ : state) {
    ++next.device_seq;
    folded.add(next);
  }
}
BENCHMARK(BM_FoldOneMore)->Unit(benchmark::kMicrosecond);

void BM_Outstanding(benchmark::State& state) {
  const closing::Terms judged_by = terms();
  const closing::State folded = closing::fold(facts_of(1), judged_by);
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        closing::outstanding(folded, judged_by, {facts::StepName::Steam, "", {}}, 0));
  }
}
BENCHMARK(BM_Outstanding)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace steamworthy
