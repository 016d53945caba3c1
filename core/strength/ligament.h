// Ligament: what rows of tube holes leave of a plate's strength.
//
// Efficiency is the strength of the drilled plate over that of the plain plate, between 0 and 1.
// The forms are those that boiler codes use, written from memory [ASME-I-PG-52]; check your copy.
#pragma once

#include "units/quantity.h"

namespace steamworthy::strength {

/// Holes of one diameter at an even pitch along the drum: (p - d)/p.
///
/// Range    p > d > 0.
/// Throws   OutOfRange "strength.ligament".
/// Source   [ASME-I-PG-52], from memory.
/// Checked  ligament_test.cc: 5.25 in and 3.28125 in give 0.375.
double ligament_equal_pitch(units::Length pitch, units::Length hole);

/// Holes of one diameter that repeat after a length p1 holding n of them: (p1 - n d)/p1.
/// Range, Throws, Source as above. Checked: 12 in, 2 holes: 0.453; 29.25 in, 5 holes: 0.439.
double ligament_uneven_pitch(units::Length repeat, int holes, units::Length hole);

/// Holes staggered in neighbouring rows: the slanting ligament set against the hoop stress.
///
///   E = [sec^2 q + 1 - (d/p') sec q sqrt(3 + sec^2 q)] / (1.5 + 0.5 sec^2 q),   never above 1
///   p' = distance of the two holes = sqrt(along^2 + around^2),   cos q = along / p'
///
///   along   distance of the two holes along the drum, above zero
///   around  the same around it, measured on the mean circle
///
/// Range    along > 0, around >= 0, p' > d > 0.
/// Throws   OutOfRange "strength.ligament".
/// Source   [ASME-I-PG-52], from memory.
/// Checked  ligament_test.cc: around = 0 gives ligament_equal_pitch(along); along -> 0 gives
///          twice the plain ligament around.
double ligament_diagonal(units::Length along, units::Length around, units::Length hole);

/// Holes at an even pitch around the drum, set against the hoop stress: the axial stress is half
/// the hoop stress, so 2 (p - d)/p, never above 1. Range, Throws, Source as above.
double ligament_around(units::Length pitch, units::Length hole);

}  // namespace steamworthy::strength
