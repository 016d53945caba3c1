// The readings of the hold as averages, and the water that they say is missing.
#pragma once

#include <Eigen/Dense>
#include <optional>
#include <vector>

#include "hold/instruments_used.h"
#include "hold/lump.h"

namespace steamworthy::hold {

/// Averages of equal spans of time. Volumes in mL at the hold's mean state.
struct HoldRows {
  std::vector<double> seconds;  ///< since the first average
  Eigen::VectorXd pressure_pa, water_k, metal_k, steel_k;
  Eigen::VectorXd readings;                  ///< behind each average
  Eigen::VectorXd missing_ml;                ///< L(t): water gone since the first average
  Eigen::VectorXd apart_k;                   ///< metal less water, against its start
  Eigen::VectorXd driving;                   ///< sqrt(p / p_0), of gauge pressure
  std::vector<Eigen::VectorXd> gauge_steps;  ///< 0 before, 1 from each change of the gauge on
  double start_s = 0.0;                      ///< of the record's own clock
  double end_s = 0.0;
  int reading_count = 0;
  double whole_fall_pa = 0.0;  ///< from the first reading of the hold, not settled, to the last
  double whole_s = 0.0;        ///< between these two
  double k_ml_per_pa = 0.0;
  double theta_ml_per_k = 0.0;  ///< of the water alone
  double steel_ml_per_k = 0.0;
  bool fell_suddenly = false;  ///< the rest of the record was left out
  double fell_at_s = 0.0;
  bool pressure_gone = false;  ///< below a fiftieth of its start; the rest left out
  double used_share = 1.0;     ///< of the hold that is used, where the pressure was gone
};

struct HoldBounds {
  double start_s = 0.0;
  std::optional<double> end_s;  ///< stated by the crew
};

/// Nothing below two averages. `scale`, `air_m3` from the pump-up, else 1 and 0.
std::optional<HoldRows> hold_rows(const HoldInput& input, const CleanRecord& record,
                                  const Lump& lump, const HoldBounds& bounds, double scale,
                                  double air_m3);

}  // namespace steamworthy::hold
