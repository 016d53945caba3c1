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
  HeadKnuckle,   ///< rim of an ellipsoidal head in compression; knuckle of a torispherical one
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
  double ligament_efficiency = 1.0;       ///< of the wall's tube holes; see ligament.h
};

struct WallStress {
  Place place = Place::Shell;
  int row = 0;  ///< of a firetube shell's rows, counted from 1; 0 elsewhere
  std::optional<units::Stress> membrane;  ///< positive in tension; with the ligament efficiency
  std::optional<units::Stress>
      greatest;  ///< largest principal stress by size at the place: bore, or with bending
  NoAnswer why_not = NoAnswer::None;
  std::optional<units::Length> wall;  ///< the wall used
  bool wall_measured = false;
  double ligament_efficiency = 1.0;
  std::string_view membrane_formula;  ///< plain characters, symbols as in docs/methods/strength.md
  std::string_view greatest_formula;
};

/// Does this place carry the pressure by bending, so that `greatest` is what it must be judged by?
/// Flat plates and the walls of square headers do.
bool carries_by_bending(Place place);

/// Stress at every place of a body under a pressure inside above that outside.
///
/// Cylinder and tube   membrane p D_m/(2 t), D_m middle diameter;  greatest p (a^2 + b^2)/(b^2 -
/// a^2), the bore Ellipsoidal head    p R^2/(2 h t) at the crown or, in a deep head, p R (1 -
/// R^2/(2 h^2))/t round the rim; that rim
///                     stress by itself where it is compression (h < R/sqrt 2)
/// Torispherical head  p L/(2 t) in the crown;  p L M/(2 t), M = (3 + sqrt(L/k))/4, in the knuckle,
/// bending included Hemispherical head  p R_m/(2 t);  greatest p (2 a^3 + b^3)/(2 (b^3 - a^3)), the
/// bore Square header       N/t and N/t + 6 |M|/t^2 of the long frame, at the side and the corner
/// Flat plate          greatest 3 p R^2/(4 t^2) clamped, 3 (3 + nu) p R^2/(8 t^2) hinged; no
/// membrane stress Firetube shell      shell as cylinder; furnaces and tubes in compression, -p
/// D_m/(2 t), greatest -2 p b^2/(b^2 - a^2)
///
/// R, h, L, k of heads are those of the middle of the wall. The ligament efficiency divides
/// membrane stresses of shells, tubes and heads and all stresses of header sides and plates;
/// corners, knuckles, flue tubes and furnaces have no such holes.
///
/// Range     elastic. A measured wall changes the outside only; of tubes, which are given by the
/// outside, the bore; of a
///           firetube shell the shell, not its tubes.
/// Throws    OutOfRange "strength.efficiency" unless 0 < efficiency <= 1; BadInput "vessel.<what>"
/// for impossible sizes. Source    [Timoshenko-II] for Lamé, [Timoshenko-Plates] for plates; M
/// [ASME-VIII-1-4], from memory; docs/methods/strength.md. Checked   stress_test.cc: thin limits,
/// printed Lamé case, equilibrium of the head, frame by hand.
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
/// A yield strength from memory gives no share. Checked: stress_test.cc.
ShareOfYield share_of_yield(const WallStress& stress, const materials::Material* material,
                            units::Temperature temperature);

}  // namespace steamworthy::strength
