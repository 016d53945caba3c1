// Use cases of work at the boiler: how a plate sits, what to do about the leaks.
#pragma once

#include <string>
#include <vector>

#include "closing/state.h"
#include "fitup/fitup.h"
#include "repair/plan.h"

namespace steamworthy::service {

/// Gap readings round a closure of the description, which gives the opening.
struct PlateFelt {
  std::string closure;
  std::vector<fitup::GapReading> readings;
  std::optional<units::Length> makers_limit;
  bool is_standing = false;  ///< the greater width stands upright; as it ships, it lies
};

/// Throws   BadInput "service.no_subject" for a closure that is not described, and as
///          fitup::judge_fit().
fitup::FitAnswer judge_plate(const boiler::Boiler& boiler, const PlateFelt& felt);

/// The leaks of a closing that nobody has repaired yet, as a repair plan takes them.
std::vector<repair::Leak> open_leaks(const closing::State& state);

}  // namespace steamworthy::service
