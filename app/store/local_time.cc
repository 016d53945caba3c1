#include "store/local_time.h"

#include <ctime>

namespace steamworthy::store {

int utc_offset_min(std::int64_t at_ms) {
  const std::time_t seconds = static_cast<std::time_t>(at_ms / 1000);
  std::tm local{};
  ::localtime_r(&seconds, &local);
  return static_cast<int>(local.tm_gmtoff / 60);
}

}  // namespace steamworthy::store
