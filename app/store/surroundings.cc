#include "store/surroundings.h"

#include <sodium.h>

#include <chrono>

namespace steamworthy::store {

std::int64_t RealSurroundings::now_ms() {
  using namespace std::chrono;
  return duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
}

void RealSurroundings::random(std::span<std::uint8_t> into) {
  randombytes_buf(into.data(), into.size());
}

}  // namespace steamworthy::store
