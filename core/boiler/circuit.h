// Circuit: how water and air move through a boiler whose parts open into each
// other: what traps air on filling, what does not drain, in what order to fill,
// which vent and which drain serves which part.
//
// It follows from levels alone. Parts are joined by holes: the ends of tube
// banks and the stated connections. Water in a part leaves through a hole down
// to the hole's level, and goes on from the next part in the same way until it
// comes to a drain; so it stays below
//
//   d(part) = min over paths to a drain of (max of the levels of the holes passed)
//
// and air, which does the same upside down, stays above
//
//   e(part) = max over paths to a vent of (min of the levels of the holes passed).
//
// A hanging loop is passed through its bottom, a standing one over its top: each
// counts as two legs joined there. What this leaves out: air that is carried
// along or stays as bubbles, water held by surface tension, pipes sagging.
// Method and worked example: docs/methods/circuit.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "units/quantity.h"

namespace steamworthy::boiler {

/// What filling and draining mean for one part.
struct PartCircuit {
  std::string part;
  std::vector<std::string> vents;  ///< the nearest of those that let its air out as far as any does
  std::optional<units::Level>
      air_above;              ///< air stays above this level; nothing: no vent is reached
  units::Volume trapped_air;  ///< how much of the part that is
  std::vector<std::string>
      drains;  ///< the nearest of those that let its water out as far as any does
  std::optional<units::Level>
      water_below;                 ///< water stays below this level; nothing: no drain is reached
  units::Volume held_water;        ///< how much of the part that is
  bool fills_by_spilling = false;  ///< a hanging loop: water runs down into it over its air

  bool traps_air() const { return trapped_air.si() > 0.0; }
  bool holds_water() const { return held_water.si() > 0.0; }
};

enum class FillKind {
  BackFill,  ///< through its own drain, slowly, before the rest
  Fill,      ///< from below, until water runs solid at the vents named; then they are shut
};

struct FillStep {
  FillKind kind = FillKind::Fill;
  std::vector<std::string> parts;    ///< BackFill: what is filled
  std::vector<std::string> through;  ///< mountings that the water may come in by; may be empty
  std::vector<std::string> vents;    ///< mountings to be seen running solid at the end of the step
  units::Volume volume;              ///< of this step alone
  units::Level to_level;             ///< where the water then stands
};

struct Circuit {
  bool described = false;          ///< false: no connections, vents or drains are described
  std::vector<PartCircuit> parts;  ///< in the order of the description
  std::vector<FillStep> filling;
};

/// Levels differ for drawings' sake by less than this without meaning it.
inline constexpr units::Length level_tolerance = units::Length::from_si(1e-3);

/// Level of the mounting's hole in its part: as stated, else the mounting's own
/// level brought to the nearest of the part.
units::Level opening_level(const Boiler& boiler, const Mounting& mounting);

/// See the head of this file.
///
/// Range    a description without check faults; volumes as at 20 °C.
/// Checked  circuit_test.cc: hanging, standing and straight loops, dead ends, a drum
///          whose vent is not at its top, turning everything upside down.
Circuit circuit(const Boiler& boiler);

}  // namespace steamworthy::boiler
