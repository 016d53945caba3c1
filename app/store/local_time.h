// Local time: how far this machine's clock on the wall is ahead of UTC.
#pragma once

#include <cstdint>

namespace steamworthy::store {

/// Minutes, as the machine's time zone has it at that time; ships move, so it is asked each time.
int utc_offset_min(std::int64_t at_ms);

}  // namespace steamworthy::store
