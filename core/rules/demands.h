// What a rule demands beside its pressure: temperatures, time, gauges, rise, stress.
#pragma once

#include <optional>

#include "rules/evaluate.h"

namespace steamworthy::rules {

/// Fills in the rest of an evaluation. `target` is the pressure that the test
/// would go to, whether or not something forbids it.
void put_other_demands(const Rule& rule, const Circumstances& circumstances,
                       std::optional<units::GaugePressure> target, Evaluation& evaluation);

}  // namespace steamworthy::rules
