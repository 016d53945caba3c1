// The analysis of one record: trapped air from its pump-up, net loss from its hold.
#pragma once

#include "hold/answer.h"
#include "hold/input.h"

namespace steamworthy::hold {

/// What the gauge says of this record.
///
/// Two passes: the pump-up gives trapped air and the water taken per pressure, these give
/// the loss over the hold, that loss corrects the pump-up, and so once more. Method,
/// equations and measured performance: docs/methods/hold.md.
///
/// Range   gauge pressures to 400 bar, liquid water of 0.01 to 95 °C, a volume above zero.
///         Readings outside are left out, and a note says how many.
/// Throws  OutOfRange "hold.record" when columns differ in length or a value is not
///         finite; "hold.boiler" for a volume, growth or deviation that cannot be.
///         Everything else that stands in the way is an answer: CannotTell with its reason.
HoldAnswer analyse(const HoldInput& input);

}  // namespace steamworthy::hold
