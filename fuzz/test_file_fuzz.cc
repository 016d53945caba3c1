// Fuzzes wire/test_file.h: any bytes as a test file. Either it is refused with reasons, or what it
// says is sound.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "wire/test_file.h"

namespace {

using namespace steamworthy;

void demand(bool holds) {
  if (!holds) std::abort();
}

template <class Quantity>
void above_zero(const std::optional<Quantity>& value) {
  demand(!value || (std::isfinite(value->si()) && value->si() > 0.0));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const wire::TestFile read = wire::read_test_file(text, "fuzz");
  demand(read.facts.has_value() == read.problems.empty());
  for (const Problem& problem : read.problems) {
    demand(!problem.code.empty() && !problem.message.empty());
  }
  if (!read.facts) return 0;
  const trace::TestFacts& facts = *read.facts;
  above_zero(facts.boiler.volume);
  above_zero(facts.hold);
  above_zero(facts.leak_of_concern);
  above_zero(facts.pump.stroke);
  for (const trace::GaugeFact& gauge : facts.gauges) above_zero(gauge.resolution);
  trace::Trace log;
  log.seconds = {0.0, 60.0};
  log.first_clock_s = 0.0;
  if (facts.hold_began) trace::seconds_at(log, *facts.hold_began, facts.clock_zero_s);
  trace::overrules_of(facts);
  return 0;
}
