// Calls about the program itself.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

Outcome health(House& house, const Call& call);
Outcome openapi(House& house, const Call& call);

}  // namespace steamworthy::server
