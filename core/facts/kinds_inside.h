// Kinds: making the boiler safe to open, going in, who and what is inside, the count.
#pragma once

#include <vector>

#include "facts/shapes.h"

namespace steamworthy::facts {

struct IsolationMade {
  static constexpr Kind kind{"isolation.made", 1, Undo::Allowed,
                             "a line of the isolation list was isolated, locked and tagged"};
  std::string isolation;
  IsolatedHow how = IsolatedHow::Blank;
  std::string lock;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("isolation", self.isolation, "tag of the line of the isolation list");
    v.word("how", self.how, "how it is isolated");
    v.maybe("lock", self.lock, "numbers of locks and tags");
  }
  friend bool operator==(const IsolationMade&, const IsolationMade&) = default;
};

struct TellTaleSeen {
  static constexpr Kind kind{"tell_tale.seen", 1, Undo::Never,
                             "somebody looked at an open tell-tale"};
  std::string isolation;
  bool dry = false;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("isolation", self.isolation, "tag of the line of the isolation list");
    v.flag("dry", self.dry, "it was dry");
  }
  friend bool operator==(const TellTaleSeen&, const TellTaleSeen&) = default;
};

struct IsolationTried : OfIsolation {
  static constexpr Kind kind{"isolation.tried", 1, Undo::Allowed,
                             "an isolation was tried and held"};
};

struct IsolationChanged : OfIsolation {
  static constexpr Kind kind{"isolation.changed", 1, Undo::Never,
                             "a lock, valve or blank of an isolation was moved"};
};

struct ReadingTaken {
  static constexpr Kind kind{"reading.taken", 1, Undo::Never, "a pressure gauge was read"};
  std::string gauge;
  Measured<units::GaugePressure> pressure;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("gauge", self.gauge, "tag of the gauge");
    v.measure("pressure", self.pressure, units::Kind::GaugePressure, "as it stood at the gauge");
  }
  friend bool operator==(const ReadingTaken&, const ReadingTaken&) = default;
};

struct TemperatureTaken {
  static constexpr Kind kind{"temperature.taken", 1, Undo::Never, "a thermometer was read"};
  std::string thermometer;
  Thing of = Thing::Metal;
  Measured<units::Temperature> temperature;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("thermometer", self.thermometer, "tag of the thermometer");
    v.word("of", self.of, "what it measures");
    v.measure("temperature", self.temperature, units::Kind::Temperature, "as read");
  }
  friend bool operator==(const TemperatureTaken&, const TemperatureTaken&) = default;
};

struct VentOpened : OfMounting {
  static constexpr Kind kind{"vent.opened", 1, Undo::Allowed, "a vent was opened"};
};
struct VentShut : OfMounting {
  static constexpr Kind kind{"vent.shut", 1, Undo::Never, "a vent was shut"};
};
struct VentMovingAir : OfMounting {
  static constexpr Kind kind{"vent.moving_air", 1, Undo::Allowed,
                             "an open vent was seen to draw or blow air"};
};
struct VentRanSolid : OfMounting {
  static constexpr Kind kind{"vent.ran_solid", 1, Undo::Allowed,
                             "water ran from a vent without air"};
};

struct VentManned {
  static constexpr Kind kind{"vent.manned", 1, Undo::Allowed, "somebody stands at a vent"};
  std::string mounting;
  std::string who;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("mounting", self.mounting, "tag of the vent");
    v.text("who", self.who, "who stands there");
  }
  friend bool operator==(const VentManned&, const VentManned&) = default;
};

struct DrainOpened : OfMounting {
  static constexpr Kind kind{"drain.opened", 1, Undo::Never, "a drain or blowdown was opened"};
};
struct DrainShut : OfMounting {
  static constexpr Kind kind{"drain.shut", 1, Undo::Allowed, "a drain or blowdown was shut"};
};
struct DrainProved : OfMounting {
  static constexpr Kind kind{"drain.proved", 1, Undo::Allowed,
                             "an open drain was proved clear, and nothing more runs from it"};
};

struct WayInOpened : OfWayIn {
  static constexpr Kind kind{"way_in.opened", 1, Undo::Never, "a door was opened"};
};
struct WayInShut : OfWayIn {
  static constexpr Kind kind{"way_in.shut", 1, Undo::Allowed, "a door was shut"};
};

/// Oxygen at the three heights; the other gases as the greatest of the three.
struct AirRead {
  static constexpr Kind kind{"air.read", 1, Undo::Allowed, "the air in a space was tested"};
  std::string space;
  MeasuredNumber oxygen_top;
  MeasuredNumber oxygen_middle;
  MeasuredNumber oxygen_bottom;
  std::optional<MeasuredNumber> flammable;
  std::optional<MeasuredNumber> carbon_monoxide;
  std::optional<MeasuredNumber> hydrogen_sulfide;
  std::string instrument;
  std::string why_low;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("space", self.space, "tag of the space");
    v.measure("oxygen_top", self.oxygen_top, units::Kind::Percent, "near the top");
    v.measure("oxygen_middle", self.oxygen_middle, units::Kind::Percent, "in the middle");
    v.measure("oxygen_bottom", self.oxygen_bottom, units::Kind::Percent, "near the bottom");
    v.maybe_measure("flammable", self.flammable, units::Kind::Percent,
                    "of the lower flammable limit");
    v.maybe_measure("carbon_monoxide_ppm", self.carbon_monoxide, units::Kind::Count,
                    "parts in a million");
    v.maybe_measure("hydrogen_sulfide_ppm", self.hydrogen_sulfide, units::Kind::Count,
                    "parts in a million");
    v.maybe("instrument", self.instrument, "which instrument");
    v.maybe("why_low", self.why_low, "why oxygen is below that of fresh air, if it is");
  }
  friend bool operator==(const AirRead&, const AirRead&) = default;
};

struct AttendantPosted {
  static constexpr Kind kind{"attendant.posted", 1, Undo::Allowed,
                             "an attendant stands at a space"};
  std::string space;
  std::string who;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("space", self.space, "tag of the space");
    v.text("who", self.who, "the attendant");
  }
  friend bool operator==(const AttendantPosted&, const AttendantPosted&) = default;
};

struct AttendantRelieved : OfSpace {
  static constexpr Kind kind{"attendant.relieved", 1, Undo::Never,
                             "no attendant stands at a space any more"};
};

/// Somebody and a space: going in, coming out.
struct OfTally {
  std::string space;
  std::string who;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("space", self.space, "tag of the space");
    v.text("who", self.who, "who");
  }
  friend bool operator==(const OfTally&, const OfTally&) = default;
};

struct TallyIn : OfTally {
  static constexpr Kind kind{"tally.in", 1, Undo::Never, "somebody went in"};
};
struct TallyOut : OfTally {
  static constexpr Kind kind{"tally.out", 1, Undo::Never, "somebody came out"};
};

struct OfTool {
  std::string space;
  std::string tool;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("space", self.space, "tag of the space");
    v.text("tool", self.tool, "the tool, rag or part, by its own name or number");
  }
  friend bool operator==(const OfTool&, const OfTool&) = default;
};

struct ToolIn : OfTool {
  static constexpr Kind kind{"tool.in", 1, Undo::Never, "something was taken in"};
};
struct ToolOut : OfTool {
  static constexpr Kind kind{"tool.out", 1, Undo::Never, "something was brought out"};
};

struct SpaceCounted {
  static constexpr Kind kind{"space.counted", 1, Undo::Allowed,
                             "people and things were counted before the last way in is closed"};
  std::string space;
  std::string second;
  int people_inside = 0;
  int tools_inside = 0;
  bool looked_in = false;
  bool called = false;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("space", self.space, "tag of the space");
    v.text("second", self.second, "the second of the two names");
    v.whole("people_inside", self.people_inside, "people found inside");
    v.whole("tools_inside", self.tools_inside, "things found inside");
    v.flag("looked_in", self.looked_in, "looked in with a lamp");
    v.flag("called", self.called, "called, and nobody answered");
  }
  friend bool operator==(const SpaceCounted&, const SpaceCounted&) = default;
};

}  // namespace steamworthy::facts
