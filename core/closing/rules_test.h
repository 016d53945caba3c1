// For tests: S1 to S11 as properties of the facts of the small plant (world_test.h).
//
// violated() is asked wherever the program finds nothing outstanding for a step; it says which rule
// the facts speak against all the same, by past_test.h alone.
#pragma once

#include <optional>
#include <string>

#include "closing/outstanding.h"
#include "closing/past_test.h"
#include "closing/state.h"

namespace steamworthy::closing {

/// The rule that giving this clearance now would break; nothing if none.
std::optional<std::string> violated(const Past& past, const Clearance& clearance,
                                    std::int64_t now_ms);

/// A clearance that stands and should have lapsed (S10).
std::optional<std::string> wrongly_standing(const Past& past, const Given& given);

/// A clearance that late entries speak against, and no alarm, taken or not, says so (S11).
std::optional<std::string> without_alarm(const Past& past, const State& state);

}  // namespace steamworthy::closing
