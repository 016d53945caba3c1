// Parts: the pieces of a boiler that hold water, with shape, level, wall and
// material. A part is one drum, header, tube bank, shell, coil or pipe, or
// several identical ones at the same level (`count`).
//
// All dimensions are as at 20 °C. Levels are heights above the boiler's datum.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "units/quantity.h"

namespace steamworthy::boiler {

enum class PartKind { Drum, Header, TubeBank, Shell, Coil, Pipe };

enum class HeadKind { Flat, Elliptical, Torispherical, Hemispherical };

/// What closes one end of a cylinder.
struct Head {
  HeadKind kind = HeadKind::Elliptical;
  units::Length wall;                           ///< nominal
  std::optional<units::Length> measured_wall;   ///< least found
  double ratio = 2.0;                           ///< Elliptical: radius over depth
  std::optional<units::Length> crown_radius;    ///< Torispherical: inside
  std::optional<units::Length> knuckle_radius;  ///< Torispherical: inside
  bool stayed = false;                          ///< Flat: held by stays, which keep it rigid

  friend bool operator==(const Head&, const Head&) = default;
};

enum class Axis { Horizontal, Vertical, Inclined };

/// A round vessel between two heads, or a pipe. An empty `heads` means that the
/// bore ends in other parts (a pipe) and nothing beyond `length` is counted.
struct Cylinder {
  Axis axis = Axis::Horizontal;
  units::Length inner_diameter;
  units::Length wall;         ///< nominal
  units::Length length;       ///< between tangent lines
  units::Level centre_level;  ///< of the axis, at mid-length
  units::Length rise;         ///< Inclined: second end above first, along the axis
  std::vector<Head> heads;    ///< none, or two: first (lower) and second end

  friend bool operator==(const Cylinder&, const Cylinder&) = default;
};

/// A header of square section with flat ends.
struct SquareHeader {
  units::Length inner_width;
  units::Length corner_radius;  ///< inside; may be zero
  units::Length wall;
  units::Length length;
  units::Level centre_level;

  friend bool operator==(const SquareHeader&, const SquareHeader&) = default;
};

/// How the tubes of a bank lie between their two ends.
enum class Run {
  Straight,  ///< rises from one end to the other: drains and vents through its ends
  Hanging,   ///< a loop below both ends: holds water, fills by spilling over
  Standing,  ///< a loop above both ends: catches air
};

/// Tubes, coils or pipes whose water is spread evenly between two levels; a
/// part's `count` is the number of tubes.
struct Tubes {
  units::Length outer_diameter;
  units::Length wall;    ///< nominal
  units::Length length;  ///< developed length of one tube
  units::Level bottom_level;
  units::Level top_level;
  Run run = Run::Straight;
  int plugged = 0;   ///< of `count`: these hold no water
  std::string from;  ///< tag of the part at the first (lower) end; may be empty
  std::string to;    ///< tag of the part at the second (upper) end; may be empty
  units::Level
      from_level;         ///< of the holes in `from`: the highest of them if the tubes rise from it
  units::Level to_level;  ///< of the holes in `to`: the lowest of them if the tubes come from below

  friend bool operator==(const Tubes&, const Tubes&) = default;
};

enum class InsideKind { Furnace, FireTubes, ReversalChamber };

/// What stands dry inside the water of a firetube shell and takes its room.
struct Inside {
  std::string tag;
  std::string name;
  InsideKind kind = InsideKind::FireTubes;
  int count = 1;  ///< tubes or furnaces in all
  int rows = 1;   ///< evenly spaced between the two levels
  units::Length outer_diameter;
  units::Length wall;
  std::optional<units::Length> length;  ///< where it does not run from plate to plate
  units::Level bottom_level;            ///< of the lowest outside surface
  units::Level top_level;               ///< of the highest outside surface
  bool corrugated = false;              ///< a corrugated furnace carries no axial load
  std::string material;                 ///< may be empty
  std::optional<units::Length> measured_wall;

  friend bool operator==(const Inside&, const Inside&) = default;
};

/// A horizontal shell with furnaces and fire tubes in its water.
struct FiretubeShell {
  units::Length inner_diameter;
  units::Length wall;
  units::Length length;  ///< between the tube plates
  units::Level centre_level;
  units::Length plate_wall;  ///< the flat, stayed end plates
  std::vector<Inside> inside;

  friend bool operator==(const FiretubeShell&, const FiretubeShell&) = default;
};

using Shape = std::variant<Cylinder, SquareHeader, Tubes, FiretubeShell>;

/// Which water moves together with heat: the three groups of a boiler standing
/// full. The analysis of a hold uses them.
enum class ThermalGroup { TopDrum, Tubes, Lower };

/// Where a part stands in plan, for the drawing.
struct Place {
  units::Length x;        ///< of its middle, along the boiler front, from the left
  units::Length y;        ///< of its middle, into the boiler, from the front
  bool across = true;     ///< its axis runs along the front; otherwise front to back
  units::Length spacing;  ///< from one to the next where `count` > 1, square to the axis

  friend bool operator==(const Place&, const Place&) = default;
};

struct Part {
  std::string tag;
  std::string name;
  PartKind kind = PartKind::Drum;
  std::string section;  ///< name of its section: gives its working pressure
  std::string space;    ///< tag of the space it makes or stands in; may be empty
  int count = 1;        ///< identical pieces at the same level
  Shape shape;
  std::string material;                        ///< as written; empty when nobody knows
  std::optional<units::Length> measured_wall;  ///< least wall found of the cylinder, header or tube
  std::optional<double> ligament_efficiency;   ///< of its weakest row of holes or joint, 0 to 1
  std::optional<Place> place;
  std::optional<ThermalGroup> group;

  friend bool operator==(const Part&, const Part&) = default;
};

/// The bore, or the inner width of a square header.
units::Length inner_diameter(const Part& part);
/// Over the metal.
units::Length outer_diameter(const Part& part);
/// As drawn.
units::Length nominal_wall(const Part& part);
/// The least measured wall where there is one, else the nominal one.
units::Length wall_in_use(const Part& part);
/// One piece, between tangent lines or along the tube.
units::Length length(const Part& part);
/// The lowest and the highest water in the part.
units::Level lowest(const Part& part);
units::Level highest(const Part& part);
/// Half-way between the two.
units::Level middle(const Part& part);

}  // namespace steamworthy::boiler
