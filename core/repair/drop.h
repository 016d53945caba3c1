// Drop: which water must go so that places stand free of it, by way of which drains, and what
// stays.
//
// Only the drains that serve those places are opened. Water in any other part then falls to
//
//   max over the way to such a place of (levels of the holes passed, level asked for there)
//
// along its best way; beyond the last hole it stays. Held water and traps are those of
// boiler/circuit.h, worked with an outlet at each place in the place of the boiler's drains.
// Method and worked example: docs/methods/repair.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "working/message.h"

namespace steamworthy::repair {

/// Water in `part` must stand below `level`.
struct Free {
  std::string part;
  units::Level level;
};

/// What a part still holds.
struct PartWater {
  std::string part;
  std::optional<units::Level> stays_below;  ///< nothing: no way out, it stays as it is
  units::Volume held;
};

/// A part whose water does not go as low as is asked.
struct Stuck {
  std::string part;
  std::optional<units::Level> stays_below;  ///< by its drains; nothing: it has none
  units::Level asked;
};

struct Drop {
  std::vector<std::string> open;  ///< drains to open, tags
  units::Volume out;              ///< from the boiler full to the top
  std::vector<PartWater> left;    ///< of every part, in the order of the description
  std::vector<Stuck> stuck;
  std::optional<working::Message> cannot_tell;  ///< why; the rest is then empty
};

/// Range    a description without check faults. The boiler is full and vented.
/// Throws   NotFound "boiler.unknown_part".
/// Checked  repair_test.cc: litres worked by hand on the example boiler.
Drop drop_to(const boiler::Boiler& boiler, const std::vector<Free>& wanted);

/// After that drop the water stands below the place.
bool is_free(const boiler::Boiler& boiler, const Drop& drop, const Free& place);

/// No drain passes more than its bore would let out without any loss: V / sum of A sqrt(2 g h), h
/// from the highest water to the drain's valve. Nothing where a bore is not described.
std::optional<units::Duration> soonest_out(const boiler::Boiler& boiler, const Drop& drop);

}  // namespace steamworthy::repair
