// State: where a closing stands, folded from its facts. Thrown away and rebuilt at will.
//
// Plain data. apply.h says how a fact changes it, outstanding.h what it still stands in the way of.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "closing/safety.h"
#include "facts/fact.h"

namespace steamworthy::closing {

template <class Value>
using ByTag = std::map<std::string, Value, std::less<>>;

/// Feeds and the number of a fact in each.
using Heads = ByTag<int>;

/// Something that facts set and take back. Of two facts that did not know of each other the one
/// that takes it back counts, whatever the order in which they arrived.
struct Condition {
  bool holds = false;
  Heads against;  ///< the last facts that took it back

  friend bool operator==(const Condition&, const Condition&) = default;
};

/// Which fact, and when at the latest it happened: no later than any fact that has seen it was
/// recorded, whatever the clock of its own device said.
struct Stamp {
  std::string device;
  int device_seq = 0;
  std::int64_t at_ms = 0;

  friend bool operator==(const Stamp&, const Stamp&) = default;
};

struct Device {
  int last = 0;          ///< of its feed, folded
  int claimed = 0;       ///< the greatest number that any fact says exists
  bool has_gap = false;  ///< a number before `last` is not here
  bool joined = false;
  bool left = false;
  std::optional<Stamp> lost;

  bool is_missing_entries() const { return has_gap || claimed > last; }
  friend bool operator==(const Device&, const Device&) = default;
};

struct Isolation {
  std::optional<facts::IsolatedHow> how;
  Condition made;  ///< in a way that counts as double, with its tell-tale
  Condition tell_tale_dry;
  Condition tried;
  friend bool operator==(const Isolation&, const Isolation&) = default;
};

struct Gauge {
  Condition fitted;
  std::optional<units::GaugePressure> reading;
  Condition at_zero;  ///< its last reading, since nothing raised the pressure
  Condition read_since_hold;
  friend bool operator==(const Gauge&, const Gauge&) = default;
};

struct Reading {
  facts::Thing of = facts::Thing::Metal;
  units::Temperature temperature;
  friend bool operator==(const Reading&, const Reading&) = default;
};

struct Vent {
  std::string who;  ///< stood there last
  Condition open;
  Condition shut;
  Condition moving_air;
  Condition ran_solid;
  Condition manned;
  friend bool operator==(const Vent&, const Vent&) = default;
};

struct Drain {
  Condition shut;
  Condition proved;
  friend bool operator==(const Drain&, const Drain&) = default;
};

struct Air {
  Stamp stamp;
  double least_oxygen = 0.0;
  double greatest_oxygen = 0.0;
  double oxygen_top = 0.0;
  double oxygen_middle = 0.0;
  double oxygen_bottom = 0.0;
  std::optional<double> flammable;
  std::optional<double> carbon_monoxide;
  std::optional<double> hydrogen_sulfide;
  bool explained = false;  ///< why oxygen is below that of fresh air
  friend bool operator==(const Air&, const Air&) = default;
};

struct Count {
  Stamp stamp;
  int people = 0;
  int things = 0;
  bool two_names = false;
  bool looked_in = false;
  bool called = false;
  bool valid = false;           ///< no entry, shift change or lost device that it did not know of
  std::set<std::string> heard;  ///< devices that have written since they saw it
  friend bool operator==(const Count&, const Count&) = default;
};

struct SpaceState {
  ByTag<Condition> people;  ///< holds: out
  ByTag<Condition> things;
  Heads entries;  ///< what a count must have seen: entries, openings, shift changes, lost devices
  std::string attendant;
  Condition attended;
  std::optional<Air> air;
  Condition air_good;
  std::optional<Count> count;
  bool was_open = false;
  Condition closed;  ///< the last way in was closed under a clearance that stood
  friend bool operator==(const SpaceState&, const SpaceState&) = default;
};

/// Those who, or what, went in and did not come out again.
std::vector<std::string> inside(const ByTag<Condition>& tally);
inline bool is_empty(const SpaceState& space) {
  return inside(space.people).empty() && inside(space.things).empty();
}

struct ClosureState {
  Condition known_not_opened;
  bool opened = false;
  Condition nipped_up;
  Condition cleaned;
  Condition looked_at;
  Condition matches;
  bool wrong_plate = false;  ///< as last compared
  Condition gasket;
  bool gaps_said = false;
  bool gaps_to_report = false;  ///< as last measured, since it was nipped up
  Condition gaps_good;
  Condition hardened_up;
  Condition untouched;  ///< since it was last seen dry; hardening up does not count
  bool look_on_steam = false;
  friend bool operator==(const ClosureState&, const ClosureState&) = default;
};

struct Header {
  Condition looked_into;
  Condition sealed;
  bool opened = false;
  friend bool operator==(const Header&, const Header&) = default;
};

struct Bank {
  std::map<std::pair<int, int>, Condition> troubled;  ///< row, tube; holds: a ball passed since
  int balls_out = 0;                                  ///< sent in and not back
  friend bool operator==(const Bank&, const Bank&) = default;
};

struct Finding {
  std::string where;
  std::string what;
  facts::Severity severity = facts::Severity::Note;
  std::optional<facts::Disposition> disposition;
  /// A note needs no decision; one that the job was stopped for stays open.
  bool is_undecided() const {
    return severity != facts::Severity::Note &&
           (!disposition || *disposition == facts::Disposition::StopTheJob);
  }
  friend bool operator==(const Finding&, const Finding&) = default;
};

struct Temporary {
  std::string where;
  bool was_on = false;
  Condition on;   ///< for what it is there for
  Condition off;  ///< for what it must not be there for
  Condition seen_off;
  friend bool operator==(const Temporary&, const Temporary&) = default;
};

struct Fitting {
  bool was_isolated = false;
  Condition isolated;  ///< for raising pressure
  Condition back;      ///< for steam
  Condition proved;
  friend bool operator==(const Fitting&, const Fitting&) = default;
};

struct PostState {
  std::string who;
  Condition manned;
  Condition in_contact;
  bool contact_said = false;
  bool is_lost() const { return contact_said && !in_contact.holds; }
  friend bool operator==(const PostState&, const PostState&) = default;
};

struct Leak {
  std::string place;
  facts::LeakKind at = facts::LeakKind::Gasket;
  facts::Passing passes = facts::Passing::Out;
  std::optional<double> drops_per_min;
  Condition repaired;  ///< and to be looked at under pressure
  Condition seen_dry;  ///< after that
  Condition watched_hot;
  friend bool operator==(const Leak&, const Leak&) = default;
};

struct Sheet {
  units::GaugePressure test_pressure;
  units::GaugePressure never_above;
  std::optional<units::GaugePressure> examination_pressure;
  std::optional<units::GaugePressure> safety_valves_in_place_below;
  std::optional<units::Temperature> coldest;
  std::optional<units::Temperature> warmest;
  std::optional<units::Duration> hold;  ///< that the rule asks for
  std::string rule;
  std::string sha256;  ///< of its bytes
  friend bool operator==(const Sheet&, const Sheet&) = default;
};

/// One override waits for the next clearance of its step, once.
struct Override {
  facts::StepName step = facts::StepName::Open;
  Check check = Check::S1Pressure;
  std::string subject;
  friend bool operator==(const Override&, const Override&) = default;
};

struct Given {
  facts::StepName step = facts::StepName::Open;
  std::string subject;
  std::optional<units::GaugePressure> up_to;
  Stamp stamp;
  std::vector<Override> overrides;
  std::optional<Check> lapsed;  ///< by what
  std::string about;            ///< tag or name of what made it lapse; may be empty
  bool taken_back = false;
  std::string by;
  std::string second;
  friend bool operator==(const Given&, const Given&) = default;
};

/// A kind of event after which clearances lapse, and the last facts that told of one.
struct Lapser {
  Check by = Check::S10Shift;
  std::uint32_t steps = 0;  ///< a bit each
  std::string subject;      ///< empty: of any subject
  Heads heads;
  friend bool operator==(const Lapser&, const Lapser&) = default;
};

struct Alarm {
  std::string name;
  working::Message why;
  Roles may_take = nobody;
  bool taken = false;
  bool stops = true;  ///< clearances wait until it was taken
  friend bool operator==(const Alarm&, const Alarm&) = default;
};

struct State {
  std::string boiler;
  std::string description_sha256;
  std::string pen;
  ByTag<Device> devices;
  ByTag<Isolation> isolations;
  ByTag<Gauge> gauges;
  ByTag<Reading> temperatures;  ///< by thermometer
  ByTag<Vent> vents;
  ByTag<Drain> drains;
  ByTag<Condition> doors;  ///< holds: shut
  ByTag<SpaceState> spaces;
  ByTag<ClosureState> closures;
  ByTag<Header> headers;
  ByTag<Bank> banks;
  ByTag<Finding> findings;
  ByTag<Condition> internals;  ///< holds: in
  ByTag<Temporary> temporaries;
  ByTag<Fitting> fittings;
  Condition hangers_pinned;
  Condition hangers_free;
  bool hangers_said = false;
  Condition order_agreed;
  bool water_in = false;  ///< since it was last drained
  Condition drained;
  bool filling = false;
  Condition full;
  std::optional<units::Level> level;
  Condition level_known;
  std::optional<units::GaugePressure> relief;
  Condition relief_tried;
  std::map<facts::Post, PostState> posts;
  Condition stop_word;
  Condition people_clear;
  std::optional<Sheet> sheet;
  std::optional<facts::GaugeAnswer> accepted;
  bool pump_runs = false;
  bool holding = false;
  bool hold_is_high = false;  ///< begun at test pressure, pump side hung open
  bool was_raised = false;    ///< and not let down since
  Condition hold_met;
  Condition test_valve_shut;
  Condition pump_side_open;
  ByTag<Condition> dry;  ///< places seen dry
  ByTag<Leak> leaks;
  bool left_full = false;
  std::string looked_after_by;  ///< while it stands full
  bool left_safe = false;
  std::string call;  ///< whom, while it is left safe
  bool laid_up = false;
  Condition normalised;
  std::string given_by;
  std::string received_by;
  bool fire_lit = false;
  std::vector<Override> overrides;
  std::vector<Given> given;  ///< the last of each step and subject, in the order given
  ByTag<Lapser> lapsers;
  ByTag<Alarm> alarms;
  std::vector<Stamp> unread;  ///< facts that cannot be read here, or only in part
  std::vector<Stamp> forked;  ///< facts whose number another fact carries too
  std::vector<Stamp> withdrawn;
  std::int64_t latest_ms = 0;  ///< when the latest of all facts says it was recorded

  friend bool operator==(const State&, const State&) = default;
};

}  // namespace steamworthy::closing
