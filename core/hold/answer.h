// What the gauge says: the answer of the analysis of a pump-up and a hold.
#pragma once

#include <optional>
#include <vector>

#include "units/quantity.h"
#include "working/message.h"

namespace steamworthy::hold {

/// Tokens "no_loss_seen", "losing", "gaining", "cannot_tell".
enum class Result { NoLossSeen, Losing, Gaining, CannotTell };

/// Best value with its 90 % interval: 5 % of the belief lies on either side of it.
template <class Quantity>
struct Estimate {
  Quantity estimate;
  Quantity low_90;
  Quantity high_90;
};

/// What the fall of the gauge over the hold is made of. Each part is positive when
/// it made the gauge fall; cooling + relaxing + air + loss + rest = fall.
struct FallSplit {
  units::PressureDifference fall;      ///< first reading of the hold less the last
  units::PressureDifference cooling;   ///< water and steel changing temperature
  units::PressureDifference relaxing;  ///< heat of compression and stretched steel evening out
  units::PressureDifference air;       ///< trapped air going into solution
  units::PressureDifference loss;      ///< the net loss
  units::PressureDifference rest;      ///< what none of these explains
};

/// One point of the pump-up as logged, and what an airless boiler would have taken.
struct PumpUpPoint {
  double seconds = 0.0;
  units::AbsolutePressure pressure;
  units::Volume pumped;
  units::Volume airless;
};

struct PumpUpAnswer {
  Estimate<units::Volume>
      trapped_air;     ///< moist, at the barometer's pressure, as the vent was shut
  double scale = 1.0;  ///< water taken per pressure, against what the description says
  double scale_sd = 0.0;
  bool from_vented = true;  ///< the record begins before pumping
  std::vector<PumpUpPoint> points;
  /// Lowest pressure in the record by which the air was known to a quarter of itself or
  /// half a millilitre a litre; nothing where it never was.
  std::optional<units::AbsolutePressure> known_at;
  std::optional<units::VolumeFlow> pump_rate;    ///< while it ran
  std::optional<units::Duration> venting_costs;  ///< letting down as fast as pumping, pumping again
};

struct AllowedFallAnswer {
  bool met = false;
  units::PressureDifference seen;  ///< over the rule's time
  units::VolumeFlow means;         ///< the loss that the allowed fall stands for
};

struct HoldAnswer {
  Result result = Result::CannotTell;
  working::Message reason;                  ///< why this result
  std::vector<working::Message> settle_by;  ///< what would settle it, where it cannot tell
  std::vector<working::Message> notes;      ///< assumptions and cautions, in order of weight

  double hold_start_s = 0.0;
  double hold_end_s = 0.0;  ///< of the readings used
  int readings = 0;         ///< of the hold

  /// Mean over the hold; positive when water leaves. Nothing where the valves were not
  /// seen set for a hold or the record does not reach into it.
  std::optional<Estimate<units::VolumeFlow>> net_loss;
  /// At the end of the hold, where the loss may have begun within it.
  std::optional<Estimate<units::VolumeFlow>> loss_at_end;
  double began_within_probability = 0.0;
  /// The loss that is missed once in twenty when a false alarm is allowed once in twenty.
  std::optional<units::VolumeFlow> detectable;
  std::optional<double> no_loss_probability;
  std::optional<FallSplit> split;
  units::VolumePerPressure per_pressure;        ///< at the hold's mean pressure
  units::VolumePerTemperature per_temperature;  ///< apparent loss per kelvin of cooling
  std::optional<PumpUpAnswer> pump_up;
  std::optional<AllowedFallAnswer> allowed_fall;
};

}  // namespace steamworthy::hold
