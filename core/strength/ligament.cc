#include "strength/ligament.h"

#include <fmt/format.h>

#include <cmath>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::strength {
namespace {

void require_holes(units::Length pitch, double holes_length_m, units::Length hole,
                   const char* what) {
  if (hole.si() > 0.0 && std::isfinite(pitch.si()) && pitch.si() > holes_length_m) return;
  throw OutOfRange("strength.ligament",
                   fmt::format("holes of {:.3f} mm leave no ligament in {} of {:.3f} mm; the holes "
                               "must be above zero and "
                               "take less than that",
                               units::in_millimetres(hole), what, units::in_millimetres(pitch)));
}

}  // namespace

double ligament_equal_pitch(units::Length pitch, units::Length hole) {
  require_holes(pitch, hole.si(), hole, "a pitch");
  return (pitch - hole) / pitch;
}

double ligament_uneven_pitch(units::Length repeat, int holes, units::Length hole) {
  if (holes < 1) {
    throw OutOfRange("strength.ligament",
                     fmt::format("a pattern of {} holes cannot be; it needs at least one", holes));
  }
  require_holes(repeat, holes * hole.si(), hole, "a repeat");
  return (repeat - holes * hole) / repeat;
}

double ligament_diagonal(units::Length along, units::Length around, units::Length hole) {
  if (!(along.si() > 0.0 && around.si() >= 0.0)) {
    throw OutOfRange("strength.ligament",
                     fmt::format("staggered holes {:.3f} mm apart along the drum and {:.3f} mm "
                                 "around it have no slanting ligament; "
                                 "the first must be above zero, the second not below",
                                 units::in_millimetres(along), units::in_millimetres(around)));
  }
  const double pitch = std::sqrt(along.si() * along.si() + around.si() * around.si());
  require_holes(units::metres(pitch), hole.si(), hole, "a slanting pitch");
  const double secant = pitch / along.si();
  const double secant2 = secant * secant;
  const double efficiency =
      (secant2 + 1.0 - hole.si() / pitch * secant * std::sqrt(3.0 + secant2)) /
      (1.5 + 0.5 * secant2);
  return efficiency < 1.0 ? efficiency : 1.0;
}

double ligament_around(units::Length pitch, units::Length hole) {
  require_holes(pitch, hole.si(), hole, "a pitch");
  const double efficiency = 2.0 * ((pitch - hole) / pitch);
  return efficiency < 1.0 ? efficiency : 1.0;
}

}  // namespace steamworthy::strength
