// One case and what each method said of it: the truth beside the answers, without the long columns.
// Flows in mL/min, positive when water leaves.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "hold_study/cases.h"

namespace steamworthy::hold_study {

inline constexpr double leak_of_concern_ml_per_min = 20.0;

enum class Says { NoLoss, Losing, Gaining, CannotTell };
inline const char* name_of(Says says) {
  constexpr const char* names[] = {"no_loss_seen", "losing", "gaining", "cannot_tell"};
  return names[static_cast<int>(says)];
}

struct Interval {
  double estimate = 0.0;
  double low = 0.0;
  double high = 0.0;

  bool covers(double truth) const { return low <= truth && truth <= high; }
};

struct Answer {
  Says says = Says::CannotTell;
  std::optional<Interval> net_loss;
  std::optional<Interval> loss_at_end;
  std::optional<Interval> air_l;
  std::optional<double> detectable;
  double used_until_s = 0.0;  ///< end of the readings used, into the hold; 0: not told
  std::string reason;         ///< the answer's own key
  std::string refused;        ///< what an exception said
};

struct Outcome {
  Case made;  ///< its course and log emptied
  double net_mean = 0.0;
  double net_at_end = 0.0;
  double air_l = 0.0;
  std::optional<double> intercept_air_l;  ///< by the rule of thumb
  double bulk_drift_k_per_h = 0.0;        ///< of the mean water over the hold
  double seconds = 0.0;                   ///< that the recommended method took
  std::vector<Answer> answers;            ///< in the order of `methods`

  /// Large enough to matter, over the hold or at its end.
  bool loses_concern() const {
    return std::max(net_mean, net_at_end) >= leak_of_concern_ml_per_min;
  }
  bool loses_nothing() const { return net_mean <= 0.0 && net_at_end <= 0.0; }
  bool gains_nothing() const { return net_mean >= 0.0 && net_at_end >= 0.0; }
};

/// The recommended method first, then the naive ones.
inline constexpr std::size_t method_count = 3;
inline constexpr const char* methods[method_count] = {"recommended", "raw slope",
                                                      "corrected slope"};

/// Simulates case `number` and asks every method.
Outcome run_case(std::uint64_t seed, std::uint64_t number, const Spread& spread);

/// Cases `first` to `first + count - 1`, on all processors; the same whatever their number.
std::vector<Outcome> run_cases(std::uint64_t seed, std::uint64_t first, std::size_t count,
                               const Spread& spread);

}  // namespace steamworthy::hold_study
