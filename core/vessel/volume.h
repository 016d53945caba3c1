// Volume: how much water a body holds, all of it and below a level.
//
// Cold and without pressure, at the sizes stated; heat and pressure are in growth.h. All
// functions throw BadInput (code "vessel.<what>") if the body's sizes cannot be. A body with a
// count answers for all of them together.
//
// Method, derivations and limits: docs/methods/vessel-{cylinder,heads,headers,firetube}.md.
#pragma once

#include <optional>

#include "units/quantity.h"
#include "vessel/shapes.h"

namespace steamworthy::vessel {

/// All the water that it holds.
units::Volume volume(const Body& body);

/// The water that it holds below a level: nothing below its bottom, volume() from its top up.
///
/// Closed forms for cylinders and square headers at any slope, ellipsoidal and hemispherical
/// heads at any slope, banks and firetube shells; torispherical heads by Gauss quadrature of the
/// disc segments between the points where their kind changes.
///
/// Accuracy  1e-12 of volume(); see the method pages.
/// Checked   *_test.cc of this room: numerical integration to 1e-9, halves, additivity, rising.
units::Volume volume_below(const Body& body, units::Level level);

/// The free water surface when the water stands at that level: d(volume_below)/d(level).
units::Area surface_at(const Body& body, units::Level level);

/// Lowest and highest point of the water space.
units::Level bottom(const Body& body);
units::Level top(const Body& body);

/// Level of the centre of gravity of its water when full.
units::Level centroid(const Body& body);

/// Inner surface that the water touches when full: for a firetube shell the shell's bore and the
/// outside of furnaces and tubes. End plates are left out.
units::Area wetted_area(const Body& body);

/// Volume of its metal; nothing if the wall is not stated.
std::optional<units::Volume> metal_volume(const Body& body);

/// Mass of its metal; nothing if the wall is not stated.
std::optional<units::Mass> metal_mass(const Body& body, units::Density density);

}  // namespace steamworthy::vessel
