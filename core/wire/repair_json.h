// A repair plan as JSON.
#pragma once

#include <string>

#include "repair/plan.h"

namespace steamworthy::wire {

/// {"leaks": [{"number", "place", "at", "cures", "cure", "action"?, "needs_drop", "comes_free",
/// "may_be_watched_hot", "free_below_m"?, "out_alone_l", "above", "notes"}], "drop": {"open",
/// "out_l", "left", "stuck"}, "figures", "notes"}
std::string repair_json(const repair::Plan& plan, bool with_working);

/// [message, ...] of repair::in_the_way().
std::string in_the_way_json(const std::vector<working::Message>& ways);

}  // namespace steamworthy::wire
