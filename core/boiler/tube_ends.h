// Tube ends: where tubes open into the parts at their ends, when nobody said so.
#pragma once

#include <optional>
#include <string_view>

#include "boiler/boiler.h"

namespace steamworthy::boiler {

/// Gives a level to every tube end whose level is not a number.
///
/// An end at a header opens at the header's top if the tubes rise from it, at its
/// bottom if they come to it from below: drawings give the header's centre line.
/// Any other end opens at the end of the tubes: `bottom_level` for a first end,
/// `top_level` for a second, the upper one for both ends of a hanging loop, the
/// lower one for both of a standing one.
void complete_tube_ends(Boiler& boiler);

/// The usual place of a drum internal in the order of going back in, 1 for the
/// first: internal feed pipe, desuperheater, dry pipe, steam baffles.
///
/// Source  common practice, no source.
std::optional<int> usual_order(std::string_view name);

}  // namespace steamworthy::boiler
