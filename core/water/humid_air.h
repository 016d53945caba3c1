// Humid air: when metal sweats.
#pragma once

#include "units/quantity.h"

namespace steamworthy::water {

/// The temperature at which air of that humidity begins to wet a surface.
///
///   t_d = b f / (a - f),   f = ln(phi) + a t / (b + t),   a = 17.62, b = 243.12 °C
///
/// Range    -45 °C to 60 °C, 0 < phi <= 1.
/// Throws   OutOfRange "water.humid_air".
/// Source   Magnus' form with the constants of [WMO-8] (from memory). Accuracy 0.1 K
///          against psychrometric tables (from memory).
/// Checked  water_test.cc.
units::Temperature dew_point(units::Temperature air, double relative_humidity);

}  // namespace steamworthy::water
