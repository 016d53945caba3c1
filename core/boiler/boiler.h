// Boiler: the description of one boiler, everything else is computed from it.
//
// Either it has parts, or, where no drawing is to hand, the maker's water
// content, growth per bar and top level alone (`bulk`). Start reading at
// struct Boiler; content.h, circuit.h and places.h compute from it; check.h
// finds what cannot be right in it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "boiler/closure.h"
#include "boiler/fittings.h"
#include "boiler/instruments.h"
#include "boiler/part.h"
#include "boiler/space.h"
#include "units/quantity.h"

namespace steamworthy::boiler {

enum class BoilerKind { Watertube, Firetube, Other };

/// Parts that share one working pressure: drum, superheater and economizer differ.
struct Section {
  std::string name;
  units::GaugePressure working_pressure;

  friend bool operator==(const Section&, const Section&) = default;
};

/// How two water spaces open into each other. Tube banks bring their own two
/// connections (`from`, `to`); these are the others.
struct Connection {
  std::string from;
  std::string to;
  units::Level from_level;
  units::Level to_level;

  friend bool operator==(const Connection&, const Connection&) = default;
};

enum class PlaceKind {
  Closure,
  TubeEnds,
  Seam,
  Nozzle,
  PluggedTube,
  Gland,
  Bend,
  FarEnd,  ///< the far end of a drain, blowdown or stop valve
  Other,
};

/// A place where water could come out: looked at in the walkdown.
struct PlaceToLook {
  std::string tag;
  PlaceKind kind = PlaceKind::Other;
  std::string part;   ///< tag; empty where it belongs to none
  std::string about;  ///< tag of the closure or mounting that it is of; may be empty
  std::string name;   ///< where the description states the place; may be empty
  units::Level level;
  int count = 1;  ///< tube ends, bends, ... seen under this one line

  friend bool operator==(const PlaceToLook&, const PlaceToLook&) = default;
};

/// All that is known where no drawing is to hand.
struct Bulk {
  units::Volume water_content;      ///< full, at 20 °C
  units::VolumePerPressure growth;  ///< of the metal alone
  units::Level top_level;           ///< of the highest water
  units::Level bottom_level;        ///< of the lowest water

  friend bool operator==(const Bulk&, const Bulk&) = default;
};

/// A metal that the user enters with a source of their own.
struct OwnMaterial {
  std::string name;
  std::optional<units::Modulus> modulus;
  std::optional<double> poisson;
  std::optional<units::Expansivity> expansion;
  std::optional<units::Density> density;
  std::vector<std::pair<units::Temperature, units::Stress>> yield;  ///< by rising temperature
  std::string source;

  friend bool operator==(const OwnMaterial&, const OwnMaterial&) = default;
};

struct Boiler {
  std::string tag;
  std::string name;
  BoilerKind kind = BoilerKind::Other;
  std::string jurisdiction;
  std::vector<std::pair<std::string, std::string>> numbers;  ///< whose, and the number
  std::optional<int> year;
  std::string datum;  ///< in words: "boiler house floor"
  std::optional<units::Level>
      reference_level;  ///< where the test pressure is meant, if not the top
  std::string note;
  std::vector<std::string> retired_tags;  ///< once used and never to be used again

  std::vector<Section> sections;
  std::vector<Part> parts;
  std::optional<Bulk> bulk;
  std::vector<OwnMaterial> materials;
  std::vector<Connection> connections;
  std::vector<Space> spaces;
  std::vector<WayIn> ways_in;
  std::vector<Closure> closures;
  std::vector<Internal> internals;
  std::vector<Mounting> mountings;
  std::vector<Isolation> isolations;
  std::vector<Temporary> temporaries;
  std::vector<PlaceToLook> stated_places;  ///< beyond those that follow from the rest
  std::vector<Gauge> gauges;
  std::vector<Thermometer> thermometers;
  std::optional<Pump> pump;
  House house;

  friend bool operator==(const Boiler&, const Boiler&) = default;
};

/// The piece with that tag or name; null if there is none.
const Part* find_part(const Boiler& boiler, const std::string& tag);
const Section* find_section(const Boiler& boiler, const std::string& name);
const Closure* find_closure(const Boiler& boiler, const std::string& tag);
const Mounting* find_mounting(const Boiler& boiler, const std::string& tag);
const Space* find_space(const Boiler& boiler, const std::string& tag);

/// The part with that tag.
/// Throws  NotFound "boiler.unknown_part".
const Part& part(const Boiler& boiler, const std::string& tag);

/// What the part may carry in service; nothing where its section is not described.
std::optional<units::GaugePressure> working_pressure(const Boiler& boiler, const Part& part);

}  // namespace steamworthy::boiler
