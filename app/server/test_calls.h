// Calls about a test: pressure logs, and what the gauge says.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

Outcome trace(House& house, const Call& call);
Outcome gauge(House& house, const Call& call);

}  // namespace steamworthy::server
