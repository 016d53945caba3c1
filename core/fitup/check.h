// What cannot be right in a request. Part of fitup.h.
#pragma once

#include "fitup/fitup.h"

namespace steamworthy::fitup {

/// Throws  BadInput with every fault; the codes stand at judge_fit().
void check(const FitRequest& request);

}  // namespace steamworthy::fitup
