// Stress: what the pressure of a test does to each wall, and what share of yield that is.
//
// For every body a short list of places (shell, head, tube, furnace, side or corner of a square
// header, flat plate), each with its membrane stress, which is what a test is judged by, and the
// greatest stress at the place (Lamé at the bore, membrane with bending), which is for the
// engineer. Holes weaken a wall: the ligament efficiency divides the membrane stress.
//
// A wall that was measured goes before the wall as made. Where wall or material is not known,
// the answer is no number but the reason. docs/methods/strength.md has the formulas.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "materials/material.h"
#include "units/quantity.h"
#include "vessel/shapes.h"

namespace steamworthy::strength {

enum class Place {
  Shell,         ///< cylinder, drum, round header, pipe, shell of a firetube boiler
  HeadCrown,     ///< greatest membrane tension of a dished head
  HeadKnuckle,   ///< greatest membrane compression of a dished head, if it has any
  Tube,          ///< pressure inside
  FlueTube,      ///< pressure outside: compression
  Furnace,       ///< pressure outside: compression; its collapse is not judged here
  HeaderSide,    ///< middle of the long side of a square header
  HeaderCorner,  ///< its corner
  FlatPlate,     ///< bending of an unstayed flat plate
};

/// Why there is no stress or no share of yield.
enum class NoAnswer {
  None,
  WallNotKnown,
  WallGone,  ///< the measured wall is not above zero
  MaterialNotKnown,
  YieldNotStated,
  YieldFromMemory,       ///< never reassure from memory
  TemperatureOutside,    ///< of the yield strengths stated
  WallTooThickForYield,  ///< thicker than the yield strengths are stated for
  StayedPlate,           ///< carried by its stays: needs their pitch and section
};

/// What the body's description does not hold.
struct WallState {
  std::optional<units::Length> measured;  ///< thinnest reading; before the wall as made
  double ligament_efficiency = 1.0;       ///< of the part's tube holes; see ligament.h
};

struct WallStress {
  Place place = Place::Shell;
  std::optional<units::Stress> membrane;  ///< positive in tension; ligament efficiency included
  std::optional<units::Stress>
      greatest;  ///< largest principal stress by size at the place; efficiency not included
  NoAnswer why_not = NoAnswer::None;
  std::optional<units::Length> wall;  ///< the wall used
  bool wall_measured = false;
  double ligament_efficiency = 1.0;
  std::string_view membrane_formula;  ///< plain characters, symbols as in docs/methods/strength.md
  std::string_view greatest_formula;
};

/// Stress at every place of a body under a pressure inside above that outside.
///
/// Cylinder and tube   membrane p D_m / (2 t) with D_m = D_i + t;  greatest p (a^2 + b^2)/(b^2 -
/// a^2), the bore Ellipsoidal head    membrane at the crown p R^2/(2 h t) or at the rim, whichever
/// is greater; compression at the rim Torispherical head  membrane p L/(2 t) of the crown;
/// compression of the knuckle beside it Hemispherical head  membrane p R_m/(2 t);  greatest p (2
/// a^3 + b^3)/(2 (b^3 - a^3)), the bore Square header       membrane N/t and N/t +- 6 M/t^2 of the
/// long frame, at the side and the corner Flat plate          greatest 3 p R^2/(4 t^2) clamped, 3
/// (3 + nu) p R^2/(8 t^2) hinged; no membrane Firetube shell      shell as cylinder; furnace and
/// tubes in compression, p D_m/(2 t) with D_m = D_o - t
///
/// Range     elastic. Inner sizes stay as described; a measured wall changes the outside only.
///           Tubes: the outside stays and the bore is wider, because tubes are given by the
///           outside.
/// Throws    OutOfRange "strength.efficiency" unless 0 < efficiency <= 1; BadInput for impossible
/// sizes. Source    [Timoshenko-II] for Lamé; membrane equilibrium; docs/methods/strength.md.
/// Checked   stress_test.cc: thin limits, printed Lamé case, equilibrium of the head, frame by
/// hand.
std::vector<WallStress> wall_stresses(const vessel::Body& body, units::PressureDifference pressure,
                                      double poisson, const WallState& state = {});

struct ShareOfYield {
  std::optional<double> share;         ///< |membrane| / yield; of a flat plate |greatest| / yield
  std::optional<units::Stress> yield;  ///< at the temperature asked
  NoAnswer why_not = NoAnswer::None;
  materials::Provenance yield_provenance;
};

/// Stress as a share of the least yield strength at the metal's temperature.
///
///   material   nullptr if it is not known
///
/// A yield strength from memory gives no share. Tested: share_test.cc.
ShareOfYield share_of_yield(const WallStress& stress, const materials::Material* material,
                            units::Temperature temperature);

}  // namespace steamworthy::strength
