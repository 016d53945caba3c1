// Use cases around a hold: what the gauge says of a log, with what its test file states.
#pragma once

#include <optional>
#include <string>

#include "boiler/boiler.h"
#include "hold/answer.h"
#include "hold/input.h"
#include "trace/test_facts.h"
#include "trace/trace.h"

namespace steamworthy::service {

/// The answer with what it was computed from.
struct HoldJudgement {
  hold::HoldInput input;
  hold::HoldAnswer answer;
  std::optional<boiler::Boiler> description;  ///< the one that the test file or the user names
};

/// Analyses a log that was read. `description`, if given, stands for the boiler where the
/// facts do not state it. Throws as hold::input_from() and hold::analyse().
HoldJudgement judge_hold(const trace::Trace& trace, const trace::TestFacts& facts,
                         std::optional<boiler::Boiler> description);

}  // namespace steamworthy::service
