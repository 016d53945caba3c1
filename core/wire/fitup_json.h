// How a plate sits, as JSON.
#pragma once

#include <string>

#include "fitup/fitup.h"

namespace steamworthy::wire {

/// {"verdict", "sentence", "notes", "off_centre_right_mm", "off_centre_up_mm", "clearance_mm",
/// their "..._sd_mm", "move_right_mm", "move_up_mm", "figures"}; directions facing it from outside.
std::string fitup_json(const fitup::FitAnswer& answer, bool with_working);

}  // namespace steamworthy::wire
