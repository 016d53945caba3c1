// Spaces: where people and tools can be, how they get in, and what goes back
// inside a drum.
#pragma once

#include <string>
#include <vector>

namespace steamworthy::boiler {

enum class SpaceSide { Water, Fire, Gas, Steam };

struct Space {
  std::string tag;
  std::string name;
  SpaceSide side = SpaceSide::Water;
  std::vector<std::string> parts;  ///< tags of the parts that make it, or that stand in it

  friend bool operator==(const Space&, const Space&) = default;
};

/// One way into a space: a closure, or a door of its own.
struct WayIn {
  std::string tag;
  std::string space;
  std::string closure;  ///< tag of the closure; empty for a door
  std::string name;     ///< for a door: what it is called

  friend bool operator==(const WayIn&, const WayIn&) = default;
};

/// What goes back inside a drum. Common practice, no source, for a steam drum:
/// internal feed pipe, desuperheater, dry pipe, steam baffles.
struct Internal {
  std::string tag;
  std::string name;
  std::string part;
  int order = 0;        ///< the first to go back is 1
  std::string held_by;  ///< "4 bolts, wired"

  friend bool operator==(const Internal&, const Internal&) = default;
};

}  // namespace steamworthy::boiler
