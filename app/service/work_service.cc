#include "service/work_service.h"

#include "base/error.h"
#include "closing/collector.h"

namespace steamworthy::service {

fitup::FitAnswer judge_plate(const boiler::Boiler& boiler, const PlateFelt& felt) {
  const boiler::Closure* closure = boiler::find_closure(boiler, felt.closure);
  if (closure == nullptr) {
    throw BadInput({{"service.no_subject", "", 0, "closure", felt.closure,
                     "tag of a closure of the description", "is no closure of this boiler"}});
  }
  fitup::FitRequest request;
  request.closure = closure->tag;
  request.outline = {closure->opening, felt.is_standing ? 12.0 : 3.0};
  request.readings = felt.readings;
  request.makers_limit = felt.makers_limit;
  return fitup::judge_fit(request);
}

std::vector<repair::Leak> open_leaks(const closing::State& state) {
  std::vector<repair::Leak> leaks;
  for (const auto& [number, leak] : state.leaks) {
    if (closing::is_closed(state, leak) || leak.repaired.holds) continue;
    leaks.push_back({number, leak.place, leak.at, leak.passes, leak.drops_per_min, std::nullopt});
  }
  return leaks;
}

}  // namespace steamworthy::service
