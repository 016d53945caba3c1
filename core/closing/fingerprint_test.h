// For tests: a number for all that later moves of the exploration can tell of a state.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "closing/state.h"

namespace steamworthy::closing {

/// What somebody who will still tell something has seen.
using Knowledge = std::map<std::string, int>;

/// Numbers of facts are left out; of what took a condition back only whether each of `knowers` has
/// seen it; of times only ages, up to the site's limits.
std::uint64_t fingerprint(const State& state, const std::vector<Knowledge>& knowers,
                          std::int64_t now_ms);

}  // namespace steamworthy::closing
