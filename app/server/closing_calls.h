// Calls about a closing: where it stands, its facts, permission, live updates.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

Outcome plant(House& house, const Call& call);
Outcome begin_closing(House& house, const Call& call);
Outcome closing(House& house, const Call& call);
Outcome facts_of(House& house, const Call& call);
Outcome report_facts(House& house, const Call& call);
Outcome feed(House& house, const Call& call);
Outcome outstanding(House& house, const Call& call);
Outcome give_clearance(House& house, const Call& call);
Outcome events(House& house, const Call& call);

}  // namespace steamworthy::server
