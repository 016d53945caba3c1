// Shapes: the simple bodies that a boiler's water space is made of, placed in height.
//
// Lengths are inner sizes unless the name says outer. A level is a height above the boiler's
// datum; nothing here knows where a body stands in plan. A wall that is not stated leaves
// volumes as they are; growth and mass then cannot be told.
//
// Slopes are radians above the horizontal: 0 lies, pi/2 stands.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/error.h"
#include "units/quantity.h"

namespace steamworthy::vessel {

/// How the ends of a cylinder or tube take the axial force of the pressure.
enum class Ends {
  Closed,    ///< heads or free drums: the wall carries it and stretches
  Anchored,  ///< held at both ends: no axial strain
  Open,      ///< no axial stress: carried by something else
};

/// Drum, round header, pipe: the part between the tangent lines, without its heads.
struct Cylinder {
  units::Length inner_diameter;
  std::optional<units::Length> wall;
  units::Length length;
  units::Level middle;     ///< of the axis at half its length
  double slope_rad = 0.0;  ///< of the axis, from 0 to pi/2
  Ends ends = Ends::Closed;
};

struct Ellipsoidal {
  double ratio = 2.0;  ///< inner radius / inner depth
};
struct Torispherical {
  units::Length crown_radius;    ///< inner
  units::Length knuckle_radius;  ///< inner
};
struct Hemispherical {};
/// How a flat end is held. A stayed plate is taken as rigid, and the growth says so.
enum class PlateEdge { Clamped, Hinged, Stayed };
struct Flat {
  PlateEdge edge = PlateEdge::Clamped;
};
using HeadForm = std::variant<Ellipsoidal, Torispherical, Hemispherical, Flat>;

/// One end of a cylinder, beyond the tangent line.
struct Head {
  HeadForm form;
  units::Length inner_diameter;
  std::optional<units::Length> wall;
  units::Level centre;     ///< of the circle in which it meets the cylinder
  double slope_rad = 0.0;  ///< of the axis outward: pi/2 dished up, -pi/2 dished down, 0 at the end
                           ///< of a lying drum
};

/// Header of square or oblong section with an even wall.
struct SquareHeader {
  units::Length inner_width;    ///< across
  units::Length inner_height;   ///< upright when it lies
  units::Length corner_radius;  ///< inner; may be zero
  std::optional<units::Length> wall;
  units::Length length;
  units::Level middle;     ///< of the axis at half its length
  double slope_rad = 0.0;  ///< of the axis, from 0 to pi/2
};

/// Equal tubes whose water is spread evenly between two levels.
struct TubeBank {
  int tubes = 1;
  units::Length outer_diameter;
  units::Length wall;
  units::Length length;  ///< developed length of one tube
  units::Level bottom;
  units::Level top;
  Ends ends = Ends::Closed;
};

/// A row of equal tubes (or one furnace, or one reversing chamber) inside a firetube shell:
/// gas inside, water outside.
struct FlueRow {
  int tubes = 1;
  units::Length outer_diameter;
  units::Length wall;
  units::Level level;                   ///< of the axes
  std::optional<units::Length> length;  ///< nullopt: from end plate to end plate
  bool furnace = false;                 ///< a furnace or chamber rather than a smoke tube
  bool takes_axial_load = true;         ///< false for a corrugated furnace
};

/// Lying shell with furnaces and smoke tubes inside; the water is around them.
struct FiretubeShell {
  units::Length inner_diameter;
  std::optional<units::Length> wall;
  units::Length length;  ///< between the end plates
  units::Level centre;
  std::vector<FlueRow> rows;
};

using Shape = std::variant<Cylinder, Head, SquareHeader, TubeBank, FiretubeShell>;

/// One or several equal bodies at the same level.
struct Body {
  Shape shape;
  int count = 1;
};

/// Everything that is wrong with a body's sizes, each with the code "vessel.<what>", the name of
/// the size as its field, what was found and what would be accepted; empty if it can be built.
std::vector<Problem> faults(const Body& body);

/// Throws BadInput with all of faults() if there is any.
void require_sound(const Body& body);

}  // namespace steamworthy::vessel
