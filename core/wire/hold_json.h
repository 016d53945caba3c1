// What the gauge says, as JSON.
#pragma once

#include <string>

#include "boiler/boiler.h"
#include "hold/answer.h"
#include "hold/input.h"

namespace steamworthy::wire {

/// Keys: ok, result, reason, settle_by, notes, net_loss_ml_per_min {estimate, low_90,
/// high_90} or null, loss_at_end_ml_per_min, detectable_ml_per_min, leak_of_concern_ml_per_min,
/// fall_bar, temperature_effect_bar, fall_parts {cooling_bar, relaxing_bar, air_bar, loss_bar,
/// rest_bar}, trapped_air_l, hold {start_s, end_s, readings}, water_ml_per_bar, allowed_fall,
/// sections with figures. Times count from the log's first row. What is not known is null.
/// `fall_bar` is positive when the gauge fell; its parts add up to it.
std::string hold_json(const hold::HoldInput& input, const hold::HoldAnswer& answer,
                      const boiler::Boiler* description, bool with_working);

/// Keys: ok, trapped_air_l, known_at_bar_gauge, scale_fraction, from_vented, pump_rate_l_per_min,
/// venting_costs_s, points [{time_s, pressure_bar_gauge, pumped_l, airless_l}], notes, section.
std::string pump_up_json(const hold::HoldInput& input, const hold::HoldAnswer& answer,
                         const boiler::Boiler* description, bool with_working);

}  // namespace steamworthy::wire
