// Random tests of random boilers: what the study runs. One case a pair of seed and number, the same
// on every machine.
#pragma once

#include <cstdint>

#include "hold_study/observe.h"
#include "hold_study/simulate.h"

namespace steamworthy::hold_study {

inline constexpr std::uint64_t study_seed = 20261125;

/// What the case is drawn from, beyond the ordinary.
struct Spread {
  double thermal_disorder = 1.0;  ///< 2.5: the harsh set
  bool pump_side_open = true;  ///< false: every case has a passing test pump and an open test valve
};

/// What the crew believes of the boiler.
struct Belief {
  double volume_m3 = 0.0;
  double growth_per_pa = 0.0;
  double pocket_below_gauge_m = 0.0;
};

struct Case {
  std::uint64_t seed = 0;
  std::uint64_t number = 0;
  Trial test;
  Instruments instruments;
  Belief belief;
  Course course;
  Log log;

  double hold_s() const { return test.plan.hold_s; }
  /// Mean over the hold, and over its last two minutes; m3/s, positive when water leaves.
  double net_loss_mean() const;
  double net_loss_at_end() const;
  bool begins_within() const {
    return test.leak.at_test_pressure_m3_s > 0.0 && test.leak.begins_in_hold_s > 0.0;
  }
  bool nothing_passes() const;
};

/// Draws, simulates and logs.
Case make_case(std::uint64_t seed, std::uint64_t number, const Spread& spread = {});

/// Three groups in about the proportions of a water-tube boiler of this content.
Plant random_plant(Random& random);

}  // namespace steamworthy::hold_study
