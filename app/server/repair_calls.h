// The call about the open leaks of a closing.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

/// The plan for all open leaks, by what the crew says of rates and hours.
Outcome repair_plan(House& house, const Call& call);

}  // namespace steamworthy::server
