#include "strength/thickness.h"

#include <fmt/format.h>

#include <cmath>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::strength {
namespace {

using units::Length;
using units::PressureDifference;

// One fault stops the formula: these are programmers' inputs, checked where the user typed them.
void require(bool holds, const std::string& sentence) {
  if (!holds) throw OutOfRange("strength.wall_inputs", sentence);
}

void require_length(const char* what, Length length) {
  require(
      length.si() > 0.0 && std::isfinite(length.si()),
      fmt::format("the {} of {:.3f} mm must be above zero", what, units::in_millimetres(length)));
}

void require_common(units::Stress allowable, double efficiency) {
  require(allowable.si() > 0.0 && std::isfinite(allowable.si()),
          fmt::format("the allowable stress of {:.2f} MPa must be above zero",
                      units::in_megapascals(allowable)));
  require(efficiency > 0.0 && efficiency <= 1.0,
          fmt::format("the efficiency of {:.4f} must be above 0 and at most 1", efficiency));
}

void require_pressure(PressureDifference pressure) {
  require(
      pressure.si() >= 0.0 && std::isfinite(pressure.si()),
      fmt::format("the pressure of {:.3f} bar must not be below zero", units::in_bars(pressure)));
}

PressureDifference not_below_zero(PressureDifference pressure) {
  return pressure.si() > 0.0 ? pressure : PressureDifference{};
}

void check(const TubeWall& tube) {
  constexpr Length largest_tube = units::millimetres(127.0);
  require_length("outer diameter", tube.outer_diameter);
  require(
      tube.outer_diameter <= largest_tube,
      fmt::format("the outer diameter of {:.1f} mm is above 127 mm, the limit of the tube formula",
                  units::in_millimetres(tube.outer_diameter)));
  require(tube.expanded_allowance.si() >= 0.0,
          fmt::format("the allowance for expanded ends of {:.3f} mm must not be below zero",
                      units::in_millimetres(tube.expanded_allowance)));
  require_common(tube.allowable, 1.0);
}

void check(const DrumWall& drum) {
  require_length("diameter", drum.diameter);
  require_common(drum.allowable, drum.efficiency);
  require(drum.y >= 0.0 && drum.y <= 1.0,
          fmt::format("the coefficient y of {:.3f} must be between 0 and 1", drum.y));
  require(drum.corrosion_allowance.si() >= 0.0,
          fmt::format("the allowance of {:.3f} mm must not be below zero",
                      units::in_millimetres(drum.corrosion_allowance)));
}

void check(const DishedHeadWall& head) {
  require_length("crown radius", head.crown_radius);
  require_common(head.allowable, head.efficiency);
}

void check(const HemisphereWall& head) {
  require_length("inner radius", head.inner_radius);
  require_common(head.allowable, head.efficiency);
}

// A thin-wall form loses its meaning where its denominator goes to zero.
void require_formula_holds(double denominator) {
  require(
      denominator > 0.0,
      "the pressure is too high for the allowable stress: no wall is thick enough by this formula");
}

}  // namespace

Length required_wall(const TubeWall& tube, PressureDifference pressure) {
  check(tube);
  require_pressure(pressure);
  const Length D = tube.outer_diameter;
  return (pressure / (2.0 * tube.allowable + pressure)) * D + 0.005 * D + tube.expanded_allowance;
}

PressureDifference pressure_of_wall(const TubeWall& tube, Length wall) {
  check(tube);
  require_length("wall", wall);
  const Length D = tube.outer_diameter;
  const Length bearing = wall - 0.005 * D - tube.expanded_allowance;
  require(bearing < D, fmt::format("the wall of {:.3f} mm is no wall of a tube of {:.3f} mm",
                                   units::in_millimetres(wall), units::in_millimetres(D)));
  return not_below_zero(2.0 * (bearing / (D - bearing)) * tube.allowable);
}

Length required_wall(const DrumWall& drum, PressureDifference pressure) {
  check(drum);
  require_pressure(pressure);
  const units::Stress strength = drum.efficiency * drum.allowable;
  if (drum.inside) {
    const units::Stress denominator = strength - (1.0 - drum.y) * pressure;
    require_formula_holds(denominator.si());
    return (pressure / denominator) * (drum.diameter / 2.0) + drum.corrosion_allowance;
  }
  return (pressure / (2.0 * strength + 2.0 * drum.y * pressure)) * drum.diameter +
         drum.corrosion_allowance;
}

PressureDifference pressure_of_wall(const DrumWall& drum, Length wall) {
  check(drum);
  require_length("wall", wall);
  const units::Stress strength = drum.efficiency * drum.allowable;
  const Length bearing = wall - drum.corrosion_allowance;
  if (drum.inside) {
    return not_below_zero((bearing / (drum.diameter / 2.0 + (1.0 - drum.y) * bearing)) * strength);
  }
  const Length denominator = drum.diameter - 2.0 * drum.y * bearing;
  require(denominator.si() > 0.0,
          fmt::format("the wall of {:.3f} mm is no wall of a drum of {:.3f} mm",
                      units::in_millimetres(wall), units::in_millimetres(drum.diameter)));
  return not_below_zero(2.0 * (bearing / denominator) * strength);
}

Length required_wall(const DishedHeadWall& head, PressureDifference pressure) {
  check(head);
  require_pressure(pressure);
  return 5.0 * (pressure / (4.8 * head.efficiency * head.allowable)) * head.crown_radius;
}

PressureDifference pressure_of_wall(const DishedHeadWall& head, Length wall) {
  check(head);
  require_length("wall", wall);
  return 4.8 * head.efficiency * (wall / (5.0 * head.crown_radius)) * head.allowable;
}

Length required_wall(const HemisphereWall& head, PressureDifference pressure) {
  check(head);
  require_pressure(pressure);
  const units::Stress denominator = 2.0 * head.efficiency * head.allowable - 0.2 * pressure;
  require_formula_holds(denominator.si());
  return (pressure / denominator) * head.inner_radius;
}

PressureDifference pressure_of_wall(const HemisphereWall& head, Length wall) {
  check(head);
  require_length("wall", wall);
  return 2.0 * head.efficiency * (wall / (head.inner_radius + 0.2 * wall)) * head.allowable;
}

AllowedPressure allowed_pressure(PressureDifference worked_out,
                                 std::optional<units::GaugePressure> stamped) {
  AllowedPressure allowed;
  allowed.worked_out = units::GaugePressure{} + worked_out;
  allowed.stamped = stamped;
  if (stamped && allowed.worked_out < *stamped) {
    allowed.lower_figure = allowed.worked_out;
  } else {
    allowed.for_engineer_and_inspector = true;
  }
  return allowed;
}

}  // namespace steamworthy::strength
