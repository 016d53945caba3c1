// Surroundings: the clock and the chance that the store is given, so that tests can give their own.
#pragma once

#include <cstdint>
#include <span>

namespace steamworthy::store {

class Surroundings {
 public:
  virtual ~Surroundings() = default;
  /// Milliseconds since 1970, UTC.
  virtual std::int64_t now_ms() = 0;
  /// Fills with bytes that nobody can foresee.
  virtual void random(std::span<std::uint8_t> into) = 0;
};

/// The machine's clock and its source of chance. Safe to call from any thread.
class RealSurroundings : public Surroundings {
 public:
  std::int64_t now_ms() override;
  void random(std::span<std::uint8_t> into) override;
};

}  // namespace steamworthy::store
