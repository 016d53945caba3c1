// From the fitted loss to a result that may be said.
#pragma once

#include "hold/answer.h"
#include "hold/loss_fit.h"

namespace steamworthy::hold {

struct Judged {
  Spread mean;     ///< over the hold, mL/min, widened by what is not known of K
  Spread running;  ///< from its onset on
  Chances chances;
  double detectable_ml_min = 0.0;
  double concern_ml_min = 0.0;  ///< 0: none set
  int readings = 0;
};

/// Result, reason and what would settle it, by the table of docs/methods/hold.md.
void decide(const Judged& judged, HoldAnswer& answer);

/// Widens an interval by a relative doubt of its middle.
Spread widened(const Spread& spread, double relative_sd);

/// Everything times a share.
Spread scaled(const Spread& spread, double share);

}  // namespace steamworthy::hold
