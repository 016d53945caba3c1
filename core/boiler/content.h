// Content: how much water a boiler holds, where it stands, how much it gives
// under pressure, and what the metal weighs.
//
// All of it is the sum over the parts, each taken apart into the bodies of
// `vessel`. Volumes are cold (20 °C) and without pressure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "units/quantity.h"
#include "vessel/growth.h"
#include "vessel/shapes.h"

namespace steamworthy::boiler {

/// The simple bodies that a part's water space is made of: a drum is a cylinder
/// and two heads. Plugged tubes are left out. Bodies answer for all `count`
/// identical pieces.
std::vector<vessel::Body> bodies(const Part& part);

/// All the water that the part holds, or the boiler (`bulk` where it has no parts).
///
/// Throws  NotFound "boiler.no_content" for a boiler with neither parts nor bulk.
units::Volume water_content(const Part& part);
units::Volume water_content(const Boiler& boiler);

/// The water below a level, the free surface there.
units::Volume volume_below(const Part& part, units::Level level);
/// Nothing where the boiler is known by its content alone and the level lies
/// between its lowest and highest water.
std::optional<units::Volume> volume_below(const Boiler& boiler, units::Level level);
std::optional<units::Area> surface_at(const Boiler& boiler, units::Level level);

/// The level at which the water stands when the boiler holds that much: the
/// inverse of volume_below(), to a hundredth of a millimetre.
///
/// Throws  OutOfRange "boiler.more_than_it_holds" below zero or above the content.
std::optional<units::Level> level_of(const Boiler& boiler, units::Volume volume);

/// Lowest and highest water of the boiler.
///
/// Throws  NotFound "boiler.no_content" for a boiler with neither parts nor bulk.
units::Level lowest(const Boiler& boiler);
units::Level highest(const Boiler& boiler);
/// Where the test pressure is meant: as stated, else the highest water.
units::Level reference_level(const Boiler& boiler);

/// How much a part's water space grows for each unit of pressure.
struct PartGrowth {
  std::string part;
  units::VolumePerPressure value;
  bool metal_known = false;                   ///< false: an ordinary steel stands in for its metal
  std::vector<vessel::GrowthRemark> remarks;  ///< of its bodies, each once, in order of appearance
};

/// Sum over the part's bodies of vessel::growth_per_pressure().
PartGrowth growth(const Boiler& boiler, const Part& part);

struct BoilerGrowth {
  units::VolumePerPressure value;
  std::vector<PartGrowth> parts;  ///< empty where `bulk` states it
};

/// Throws  NotFound "boiler.no_content" for a boiler with neither parts nor bulk.
BoilerGrowth growth(const Boiler& boiler);

/// How much the water space grows for each kelvin of the metal: the sum of
/// 3 alpha V over the parts. Nothing where no metal is described (`bulk`).
std::optional<units::VolumePerTemperature> growth_per_kelvin(const Boiler& boiler);

/// The metal of one part (all its pieces, heads and tube plates counted, nozzles
/// and internals not), of the boiler, and the heat that it takes for each kelvin.
units::Mass metal_mass(const Boiler& boiler, const Part& part);
std::optional<units::Mass> metal_mass(const Boiler& boiler);
std::optional<units::HeatCapacity> metal_heat_capacity(const Boiler& boiler);

}  // namespace steamworthy::boiler
