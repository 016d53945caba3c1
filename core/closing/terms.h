// Terms: what a closing is judged by besides its facts: the boiler as described, the site's limits,
// who has which role. Fixed for one fold; where they change, fold anew.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "closing/safety.h"
#include "units/quantity.h"

namespace steamworthy::closing {

/// The site's own limits. None ships but those of law; a limit that the site has not set stands in
/// the way of the step that it is for.
struct Site {
  std::optional<int> air_minutes;    ///< greatest age of an air test before somebody goes in
  std::optional<int> count_minutes;  ///< greatest age of a count
  std::optional<units::Temperature> open_below;
  std::optional<double> carbon_monoxide_alarm;        ///< ppm
  std::optional<double> hydrogen_sulfide_alarm;       ///< ppm
  std::optional<units::GaugePressure> tighten_below;  ///< the site's rule; else pressure off
  bool spring_hangers = true;

  friend bool operator==(const Site&, const Site&) = default;
};

/// Occupational limits of oxygen and flammable gas, as fractions of one: under 19.5 % or over
/// 23.5 % oxygen, or more than 10 % of the lower flammable limit, is a hazardous atmosphere.
/// Source  [OSHA-1910.146].
struct AirLimits {
  double least_oxygen = 0.195;
  double greatest_oxygen = 0.235;
  double fresh_oxygen = 0.208;  ///< under this somebody must say why; common practice, no source
  double greatest_flammable = 0.10;
};

struct Space {
  std::string tag;
  boiler::SpaceSide side = boiler::SpaceSide::Water;
  std::vector<std::string> ways_in;
  bool is_water_side() const {
    return side == boiler::SpaceSide::Water || side == boiler::SpaceSide::Steam;
  }
};

struct WayIn {
  std::string tag;
  std::string space;
  std::string closure;  ///< empty for a door
};

/// A boiler's description as the rules look at it. Computed once.
struct Layout {
  std::map<std::string, Space, std::less<>> spaces;
  std::map<std::string, WayIn, std::less<>> ways_in;
  std::map<std::string, std::string, std::less<>> way_of_closure;  ///< closure -> way in
  std::map<std::string, const boiler::Closure*, std::less<>> closures;
  std::vector<std::string> isolations;
  std::vector<std::string> vents;
  std::vector<std::string> drains;  ///< drains and blowdowns
  std::vector<const boiler::Mounting*> safety_valves;
  std::vector<const boiler::Mounting*> limited;     ///< with a test limit
  std::vector<const boiler::Mounting*> protection;  ///< low-water cut-outs and gauge glasses
  std::vector<std::string> places;                  ///< tags of the places to look
  std::map<std::string, std::string, std::less<>> header_of_closure;  ///< closures in headers
  bool traps_air = false;
};

class Terms {
 public:
  /// Keeps a copy of the description.
  Terms(boiler::Boiler boiler, Site site);

  const boiler::Boiler& boiler() const { return boiler_; }
  const Layout& layout() const { return layout_; }
  const Site& site() const { return site_; }
  const AirLimits& air() const { return air_; }

  /// Says that a person has a role, as the plant's feed does.
  void let(const std::string& person, facts::RoleName role) { roles_[person] |= bit(role); }
  bool has_role(const std::string& person, Roles any_of) const;

  /// For tests alone: one check is switched off, so that the exploration can show that it notices.
  std::optional<Check> broken_for_tests;
  bool is_on(Check check) const { return broken_for_tests != check; }

  Terms(const Terms& other);
  Terms& operator=(const Terms&) = delete;

 private:
  boiler::Boiler boiler_;
  Site site_;
  AirLimits air_;
  Layout layout_;
  std::map<std::string, Roles, std::less<>> roles_;
};

}  // namespace steamworthy::closing
