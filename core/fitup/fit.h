// The fit: least squares of g = c - u . n, and the move that makes the greatest gap least.
// Part of fitup.h; millimetres.
#pragma once

#include <array>
#include <vector>

#include "fitup/opening.h"

namespace steamworthy::fitup {

/// A reading with the normal at its place.
struct Felt {
  double bearing = 0.0;
  Plane normal;
  double least = 0.0;  ///< g
  double most = 0.0;   ///< g + step

  double middle() const { return 0.5 * (least + most); }
};

/// c, u and their covariance.
struct Fit {
  double clearance = 0.0;
  Plane off_centre;
  std::array<std::array<double, 3>, 3> covariance{};  ///< of (c, u.right, u.up)
  double greatest_misfit = 0.0;                       ///< of a reading's middle against the fit
  std::size_t misfit_at = 0;                          ///< index of that reading

  /// Gap that the fit gives where the edge faces `normal`, the plate moved by `move`.
  double gap(Plane normal, Plane move) const;
  /// One standard deviation of it.
  double sd(Plane normal) const;
};

/// Weighted least squares. A reading is even within its step: standard deviation step / sqrt(12).
/// Where the readings scatter more than that about the fit, the covariance grows by as much.
/// Range    at least four readings whose normals do not all lie in one line.
Fit fit_plate(const std::vector<Felt>& felt);

/// The move v that makes the greatest of (gap_i - v . n_i) least, and that gap.
struct Centring {
  Plane move;
  double greatest = 0.0;
};

/// Exact, by trying every three readings that the optimum may rest on; of equals the one
/// nearest to `near`. Range: normals that do not all lie within one half turn.
Centring best_centring(const std::vector<Felt>& felt, bool at_most, Plane near);

/// The widest part of the way round without a reading, in radians.
double widest_unfelt(const std::vector<Felt>& felt);

}  // namespace steamworthy::fitup
