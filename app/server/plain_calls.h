// Calls about the program itself, the rules that it has, and what the site has set.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

Outcome health(House& house, const Call& call);
Outcome openapi(House& house, const Call& call);
Outcome rules_shipped(House& house, const Call& call);
Outcome site_limits(House& house, const Call& call);
Outcome set_site_limits(House& house, const Call& call);

}  // namespace steamworthy::server
