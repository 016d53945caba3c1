// Places to look: every place at which water could come out, for the walkdown.
#pragma once

#include <vector>

#include "boiler/boiler.h"

namespace steamworthy::boiler {

/// Everything that follows from the description, then what it states besides:
/// each closure; the tube ends of each bank at each of its parts; head and end
/// seams; the nozzle of each mounting; plugged tubes; glands of valves; bends of
/// loops and coils; the far end of each drain, blowdown and stop valve.
///
/// Tags of derived places are the tag of what they belong to, a full stop and a
/// word: "CB.ends-SD", "BD-1.far-end". Tags written by people hold no full stop,
/// so that the two never meet.
std::vector<PlaceToLook> places_to_look(const Boiler& boiler);

}  // namespace steamworthy::boiler
