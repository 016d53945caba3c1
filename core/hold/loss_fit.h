// The net loss over a hold: a mixture of Gaussian answers, one a cell of what is not known
// of the temperatures and of when the loss began.
#pragma once

#include <vector>

#include "hold/hold_rows.h"

namespace steamworthy::hold {

/// One cell: the rate, as its mean from the onset to the end, is normal.
struct LossCell {
  double rate_ml_min = 0.0;
  double variance = 0.0;
  double gain = 0.0;          ///< rate^2 / variance: twice the log likelihood over no loss
  double log_evidence = 0.0;  ///< of no loss, with the cell's prior weight
  double weight = 0.0;        ///< posterior weight with a flat prior on the rate; sums to 1
  double mean_share = 1.0;    ///< mean over the hold / rate
  double end_share = 1.0;     ///< rate at the end / rate
  double onset = 0.0;         ///< as a fraction of the hold
  // fall of the gauge from first to last average that the cell lays to each, Pa
  double relaxing_pa = 0.0;
  double air_pa = 0.0;
  double unseen_cooling_pa = 0.0;  ///< of temperatures, beyond what the thermometers show
};

struct LossOptions {
  double dissolving_air_m3 = 0.0;  ///< volume of the pocket at the hold's pressure
  bool onsets = true;
};

/// Every cell of docs/methods/hold.md. Empty where nothing can be told.
std::vector<LossCell> loss_cells(const HoldRows& rows, const InstrumentsUsed& used,
                                 const LossOptions& options);

/// Of the mixture with a flat prior: mean, standard deviation, 5 % and 95 % points.
struct Spread {
  double mean = 0.0, sd = 0.0, low = 0.0, high = 0.0;
};
Spread spread_while_running(const std::vector<LossCell>& cells);
Spread spread_at_end(const std::vector<LossCell>& cells);
Spread spread_of_mean(const std::vector<LossCell>& cells);

/// Chances with the prior of docs/methods/hold.md. `slab` is the density's scale, mL/min.
struct Chances {
  double nothing = 0.0, losing = 0.0, gaining = 0.0;
  double losing_more = 0.0;  ///< than `concern` or as much
};
Chances chances(const std::vector<LossCell>& cells, double slab_ml_min, double concern_ml_min);

}  // namespace steamworthy::hold
