// The figures of an answer, each with its working. Part of fitup.h.
#pragma once

#include "fitup/fitup.h"

namespace steamworthy::fitup {

/// "fitup.off_centre", "fitup.clearance", "fitup.smaller_by", "fitup.worst_now",
/// "fitup.worst_then", "fitup.limit"; subject the closure. Without a value where the places felt
/// do not reach all round.
std::vector<working::Figure> figures(const FitRequest& request, const FitAnswer& answer);

}  // namespace steamworthy::fitup
