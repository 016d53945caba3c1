// Materials: what the steel of a boiler is like, and how far each value can be trusted.
//
// A Material is a plain record that a user may fill in; steels.h looks up the ones that we
// ship by generic grade. Every value carries its provenance, and provenance travels: a value
// from memory is good enough for how much a drum stretches, never for whether it is strong
// enough. may_bear_strength() is the one place that decides this.
//
// Modulus, Poisson's ratio, expansion, density and specific heat are for steel at the
// temperatures of a water test, 0 to 60 °C, and taken as constant there
// (docs/methods/materials.md).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "units/quantity.h"

namespace steamworthy::materials {

enum class Trust {
  Published,   ///< the source named was seen
  SecondHand,  ///< seen, but quoted by somebody else: "second-hand, check your copy"
  Remembered,  ///< "from memory, check your copy"
  User,        ///< the user's own value
};

/// Where a value came from.
struct Provenance {
  Trust trust = Trust::Remembered;
  std::string source;  ///< key of docs/bibliography.bib; empty unless published or second-hand
  std::string remark;  ///< for instance the user's "mill certificate 1234"; may be empty

  friend bool operator==(const Provenance&, const Provenance&) = default;
};

/// May a strength be computed from a value of this provenance? Not from memory.
bool may_bear_strength(const Provenance& provenance);

/// A value and where it came from.
template <class Q>
struct Sourced {
  Q value{};
  Provenance provenance;
};

/// What elastic growth needs to know.
struct Elasticity {
  units::Modulus young;
  double poisson = 0.3;
};

struct YieldPoint {
  units::Temperature temperature;
  units::Stress
      yield;  ///< lower yield point or 0.2 % proof stress, the least that the grade promises
};

/// Least yield strength of a grade by temperature.
struct YieldCurve {
  std::vector<YieldPoint> points;  ///< rising in temperature
  std::optional<units::Length>
      greatest_wall;  ///< thicker walls have lower values; nullopt if the source sets none
  Provenance provenance;
};

struct Material {
  std::string name;                      ///< generic grade: "P265GH"
  std::vector<std::string> other_names;  ///< other spellings that find it
  std::string family;                    ///< "carbon steel", "1Cr-0.5Mo steel"; for people
  Sourced<units::Modulus> young;
  Sourced<double> poisson;
  Sourced<units::Expansivity> expansion;  ///< mean linear expansion near room temperature
  Sourced<units::Density> density;
  Sourced<units::SpecificHeat> specific_heat;
  std::vector<YieldCurve>
      yield;  ///< thin walls first, as greatest_wall rises; empty: strength cannot be told

  Elasticity elasticity() const { return {young.value, poisson.value}; }
};

/// Why no yield strength can be told.
enum class NoYield {
  None,           ///< there is one
  NoneStated,     ///< the material states no yield strength
  FromMemory,     ///< it does, but from memory
  OutsideStated,  ///< the temperature is outside the stated points
  WallTooThick,   ///< the wall is above what the values are stated for
};

struct YieldAnswer {
  std::optional<units::Stress> value;
  NoYield why_not = NoYield::None;
  Provenance provenance;
};

/// Least yield strength at a temperature, by straight lines between the stated points.
///
/// Steel yields more easily as it warms. From 0 °C up to the first point the first value
/// therefore stands, on the safe side. A curve of one point at room temperature stands up to
/// 35 °C, the upper end of the room temperature at which tensile tests are made [ISO-6892-1].
/// Above the last point nothing is told.
///
///   wall   chooses the curve among those of the material; without it the thickest wall's counts
///
/// Range    0 °C to the last stated point; outside it the answer says why there is none.
/// Throws   OutOfRange "materials.yield_points" if the points do not rise in temperature or a
///          yield is not above zero.
/// Checked  material_test.cc: stated points, midpoints, both ends, thickness.
YieldAnswer yield_at(const Material& material, units::Temperature temperature,
                     std::optional<units::Length> wall = std::nullopt);

}  // namespace steamworthy::materials
