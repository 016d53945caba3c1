// What the fits take gauge and thermometers to be, stated or standing in.
#pragma once

#include "hold/clean_record.h"
#include "hold/input.h"

namespace steamworthy::hold {

struct InstrumentsUsed {
  double gauge_step_pa = 0.0;
  double gauge_noise_pa = 0.0;
  double thermometer_step_k = 0.0;
  double thermometer_noise_k = 0.02;
  double metal_weight = 0.0;  ///< w: of the metal for the mean water
  double metal_weight_sd = 0.1;
  double unseen_water_k = 0.0;  ///< sd of a temperature that nothing shows
  bool step_assumed = false;
  bool noise_assumed = false;
};

/// `hold_start_s` parts the record for what must be judged on a quiet gauge.
InstrumentsUsed instruments_used(const HoldInput& input, const CleanRecord& record,
                                 double hold_start_s);

}  // namespace steamworthy::hold
