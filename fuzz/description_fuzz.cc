// Fuzzes wire/description.h: any bytes as a description, JSON if they begin with a brace, else
// TOML. It is either refused with reasons, or it comes back from JSON to the last bit and
// everything that is computed from it can be computed.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "boiler/circuit.h"
#include "boiler/content.h"
#include "boiler/places.h"
#include "wire/description.h"

namespace {

using namespace steamworthy;

void demand(bool holds) {
  if (!holds) std::abort();
}

void compute(const boiler::Boiler& boiler) {
  const double content = water_content(boiler).si();
  demand(std::isfinite(content) && content >= 0.0);
  demand(std::isfinite(growth(boiler).value.si()));
  demand(lowest(boiler) <= highest(boiler));
  if (const auto all = volume_below(boiler, highest(boiler))) {
    demand(std::fabs(all->si() - content) <= 1e-9 * content);
  }
  if (const auto mass = metal_mass(boiler)) demand(std::isfinite(mass->si()));
  places_to_look(boiler);
  for (const boiler::PartCircuit& part : circuit(boiler).parts) {
    demand(part.trapped_air.si() >= -1e-9 * content && part.held_water.si() >= -1e-9 * content);
    demand(part.trapped_air.si() <= content * (1.0 + 1e-9));
    demand(part.held_water.si() <= content * (1.0 + 1e-9));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const bool json = !text.empty() && text.front() == '{';
  const wire::Description read =
      json ? wire::read_boiler_json(text, "fuzz") : wire::read_boiler_toml(text, "fuzz");
  demand(read.boiler.has_value() == read.problems.empty());
  for (const Problem& problem : read.problems) {
    demand(!problem.code.empty() && !problem.message.empty());
  }
  if (!read.boiler) return 0;
  const std::string written = wire::boiler_json(*read.boiler);
  const wire::Description again = wire::read_boiler_json(written, "again");
  demand(again.boiler.has_value());
  demand(json || *again.boiler == *read.boiler);
  compute(*read.boiler);
  return 0;
}
