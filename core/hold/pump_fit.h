// The pump-up fitted: trapped air, water taken per pressure, a loss meanwhile.
#pragma once

#include <optional>
#include <vector>

#include "hold/instruments_used.h"
#include "hold/lump.h"

namespace steamworthy::hold {

/// The rows of the pump-up and what the fit is told. Plain SI, pressures absolute.
struct PumpRows {
  std::vector<double> seconds, pressure_pa, water_k, pumped_m3;
  bool from_vented = true;  ///< row 0 is the vented start, its pressure exact
  bool let_down_before =
      false;  ///< pressure was let down and raised again: the last raising counts
  std::vector<double> changed_at_s;
};

/// What the hold said of a loss, for the pump-up. m3/s at the highest pressure.
struct LossPrior {
  double mean_m3_s = 0.0;
  double sd_m3_s = 2e-5;
};

struct PumpFit {
  double air_m3 = 0.0;  ///< at the barometer's pressure
  double air_sd_m3 = 0.0;
  double scale = 1.0;
  double scale_sd = 0.0;
  double loss_m3_s = 0.0;
  std::vector<double> airless_m3;  ///< by row, with the scale that was found
};

/// The raising that led to the hold: from its last vented (or lowest) row to the first
/// row of the hold, thinned to at most `most_rows`. Nothing below four rows, without a
/// pumped total, or without a rise of pressure.
std::optional<PumpRows> pump_rows(const HoldInput& input, const CleanRecord& record,
                                  const InstrumentsUsed& used, double hold_start_s,
                                  std::size_t most_rows);

/// The rows up to and including row `last`.
PumpRows first_rows(const PumpRows& rows, std::size_t last);

/// Generalised least squares of docs/methods/hold.md. Nothing where it cannot be solved.
std::optional<PumpFit> fit_pump_up(const HoldInput& input, const PumpRows& rows,
                                   const InstrumentsUsed& used, const Lump& lump,
                                   const LossPrior& loss);

}  // namespace steamworthy::hold
