// The site's limits as its own feed tells them.
#pragma once

#include <optional>

#include "closing/terms.h"
#include "facts/kinds_closing.h"

namespace steamworthy::closing {

/// The last limits that the site set; none: nothing is set, and each stands in the way of its step.
/// Ages are taken in whole minutes, rounded down.
Site site_of(const std::optional<facts::SiteLimitsSet>& limits);

}  // namespace steamworthy::closing
