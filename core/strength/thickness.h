// Thickness: the wall that a pressure needs, and the pressure that a measured wall allows.
//
// The forms are those of common boiler codes, written from memory [ASME-I-PG-27] [ASME-I-PG-29];
// check your copy. A pressure found here is never a new rating. It may only be shown lower than
// the stamped figure, or left to the engineer and the inspector: allowed_pressure() holds to this.
#pragma once

#include <optional>

#include "units/quantity.h"

namespace steamworthy::strength {

/// Boiler tube up to 125 mm outside (5 in), by outside diameter.
struct TubeWall {
  units::Length outer_diameter;
  units::Stress allowable;
  units::Length expanded_allowance;  ///< e: 0.04 in for some expanded tube ends, otherwise zero
};

/// t = P D/(2 S + P) + 0.005 D + e
///
/// Range    P >= 0; D, S > 0; e >= 0; D up to 127 mm.
/// Throws   OutOfRange "strength.wall_inputs".
/// Source   [ASME-I-PG-27], from memory; inputs of the worked case seen [WALL-EXAMPLES].
/// Checked  thickness_test.cc: 580 psi, 2.75 in, 11 800 psi: 0.07971 in; with e = 0.04 in 0.11971
/// in.
units::Length required_wall(const TubeWall& tube, units::PressureDifference pressure);

/// P = S (2 t - 0.01 D - 2 e)/(D - (t - 0.005 D - e)); zero if no wall is left for pressure.
/// Checked: the tube above at 0.105 in: 809.97 psi; round trip with required_wall().
units::PressureDifference pressure_of_wall(const TubeWall& tube, units::Length wall);

/// Drum, header or pipe with weld or ligament efficiency E.
struct DrumWall {
  units::Length diameter;  ///< outside, or inside: see `inside`
  bool inside = false;
  units::Stress allowable;
  double efficiency = 1.0;  ///< the lower of weld and ligaments
  double y = 0.4;           ///< 0.4 for ferritic steel up to 480 °C (900 °F)
  units::Length corrosion_allowance;
};

/// Outside  t = P D/(2 S E + 2 y P) + C;    inside  t = P R/(S E - (1 - y) P) + C, R = D/2
///
/// Range    P >= 0; D, S > 0; 0 < E <= 1; 0 <= y <= 1; C >= 0; by the inside S E > (1 - y) P.
/// Throws   OutOfRange "strength.wall_inputs".
/// Source   [ASME-I-PG-27], from memory.
/// Checked  thickness_test.cc: 900 psi, 10.77 in, 13 800 psi: 0.34227 in; 700 psi, R 24 in,
///          17 500 psi, E 0.375: 2.7350 in.
units::Length required_wall(const DrumWall& drum, units::PressureDifference pressure);

/// The inverse of required_wall(); zero if no wall is left for pressure.
units::PressureDifference pressure_of_wall(const DrumWall& drum, units::Length wall);

/// Unstayed head dished to a sphere, pressure on the hollow side.
struct DishedHeadWall {
  units::Length crown_radius;  ///< inner, L
  units::Stress allowable;
  double efficiency = 1.0;  ///< w
};

/// t = 5 P L/(4.8 S w)
///
/// Range, Throws as above.  Source [ASME-I-PG-29], from memory. A manhole in the head asks for
/// more (15 %, at least 3 mm, from memory), which is not added here.
/// Checked  250 psi, L 60 in, 17 500 psi: 0.8929 in.
units::Length required_wall(const DishedHeadWall& head, units::PressureDifference pressure);
units::PressureDifference pressure_of_wall(const DishedHeadWall& head, units::Length wall);

/// Half sphere: t = P L/(2 S w - 0.2 P).  Source [ASME-I-PG-29], from memory.
struct HemisphereWall {
  units::Length inner_radius;
  units::Stress allowable;
  double efficiency = 1.0;
};
units::Length required_wall(const HemisphereWall& head, units::PressureDifference pressure);
units::PressureDifference pressure_of_wall(const HemisphereWall& head, units::Length wall);

/// What may be printed of a pressure that was worked out from a measured wall.
struct AllowedPressure {
  units::GaugePressure worked_out;              ///< by the formula
  std::optional<units::GaugePressure> stamped;  ///< on the boiler
  std::optional<units::GaugePressure>
      lower_figure;  ///< to print: only if it is below the stamped figure
  bool for_engineer_and_inspector =
      false;  ///< not below it, or nothing is stamped: theirs to decide
};

/// The stamped figure caps it: a pressure worked out is printed only when it is lower.
AllowedPressure allowed_pressure(units::PressureDifference worked_out,
                                 std::optional<units::GaugePressure> stamped);

}  // namespace steamworthy::strength
