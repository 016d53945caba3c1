// Closures: the openings that are undone to get in, and what closes them.
#pragma once

#include <optional>
#include <string>

#include "units/quantity.h"

namespace steamworthy::boiler {

enum class ClosureKind { Manhole, Handhole, Plug, Cap, Flange };

enum class OpeningShape { Oval, Circle, Oblong };

/// The hole: for a circle, width and height are both its diameter.
struct Opening {
  OpeningShape shape = OpeningShape::Oval;
  units::Length width;   ///< the greater
  units::Length height;  ///< the lesser

  friend bool operator==(const Opening&, const Opening&) = default;
};

/// Area of the hole as its shape says: pi/4 w h for oval and circle, a
/// rectangle with half-round ends for oblong.
units::Area area(const Opening& opening);

enum class GasketKind {
  CompressedFibre,
  FlexibleGraphite,
  SpiralWound,
  Rubber,
  WovenTape,
  SoftMetal,
  MetalToMetal,  ///< no gasket: a ground seat or an expanded plug
  Other,
};

struct Gasket {
  GasketKind kind = GasketKind::Other;
  std::optional<units::Length> thickness;
  std::optional<units::Length> land_width;

  friend bool operator==(const Gasket&, const Gasket&) = default;
};

/// Which wall of its part a closure stands in, seen from the boiler front.
enum class Side { Front, Rear, Left, Right, Top, Bottom };

struct Closure {
  std::string tag;
  std::string part;
  ClosureKind kind = ClosureKind::Handhole;
  Opening opening;
  units::Level level;                     ///< of the middle of the opening
  std::optional<units::Length> position;  ///< along the part, from its first end
  Side side = Side::Front;
  int row = 0;  ///< counted from 1 within its pattern; 0 if it stands alone
  int column = 0;
  std::optional<Gasket> gasket;  ///< none when nobody said
  int yokes = 0;                 ///< dogs, crabs, bridges, strongbacks
  int studs = 0;
  bool inside = true;        ///< the plate sits inside: pressure closes it
  bool makers_book = false;  ///< expanded or special plug: by the maker's book only

  friend bool operator==(const Closure&, const Closure&) = default;
};

}  // namespace steamworthy::boiler
