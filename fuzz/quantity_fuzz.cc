// Fuzzes units/parse.h: any bytes as any kind of quantity. The first byte picks the kind.
// A text gives either a finite value that can be printed and read back, or a problem that says why.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "units/parse.h"
#include "units/print.h"

namespace {

void demand(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steamworthy;
  if (size == 0) return 0;
  constexpr unsigned kinds = static_cast<unsigned>(units::Kind::Count) + 1;
  const auto kind = static_cast<units::Kind>(data[0] % kinds);
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto parsed = units::parse_measure(kind, text);
  demand(parsed.value.has_value() == parsed.problem.code.empty());
  if (!parsed.value) {
    demand(!parsed.problem.message.empty() && !parsed.problem.accepted.empty());
    return 0;
  }
  demand(std::isfinite(parsed.value->si));
  for (const auto system : {units::System::Si, units::System::Us}) {
    const std::string printed = units::print(*parsed.value, {system, 17, " "});
    const auto again = units::parse_measure(kind, printed);
    // At the very end of a scale the last digit may fall over the edge in the other unit.
    const bool at_an_end = std::fabs(parsed.value->si) > 1e280 ||
                           (kind == units::Kind::Temperature && parsed.value->si < 1e-6) ||
                           (kind == units::Kind::GaugePressure && parsed.value->si < -1.09e5);
    if (!at_an_end) demand(again.value.has_value());
  }
  return 0;
}
