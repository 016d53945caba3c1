// Kinds: filling, posts, raising, hold, walkdown, leaks, letting down, handing back.
#pragma once

#include <vector>

#include "facts/shapes.h"

namespace steamworthy::facts {

struct FillingOrderAgreed {
  static constexpr Kind kind{"filling.order_agreed", 1, Undo::Allowed,
                             "it is known what is filled first where parts trap air"};
  std::vector<std::string> parts;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.texts("parts", self.parts, "tags of parts, the first to be filled first");
  }
  friend bool operator==(const FillingOrderAgreed&, const FillingOrderAgreed&) = default;
};

struct FillingStarted : Bare {
  static constexpr Kind kind{"filling.started", 1, Undo::Never, "water was let in"};
};
struct FillingStopped {
  static constexpr Kind kind{"filling.stopped", 1, Undo::Never, "filling was stopped"};
  bool full = false;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.flag("full", self.full, "the boiler is full");
  }
  friend bool operator==(const FillingStopped&, const FillingStopped&) = default;
};

struct LevelSeen {
  static constexpr Kind kind{"level.seen", 1, Undo::Never, "the water level was seen"};
  Measured<units::Level> level;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("level", self.level, units::Kind::Level, "above the boiler's datum");
  }
  friend bool operator==(const LevelSeen&, const LevelSeen&) = default;
};

struct GaugeFitted : OfGauge {
  static constexpr Kind kind{"gauge.fitted", 1, Undo::Allowed,
                             "a test gauge with a valid calibration was fitted"};
};
struct GaugeRemoved : OfGauge {
  static constexpr Kind kind{"gauge.removed", 1, Undo::Never, "a test gauge was taken off"};
};

struct ReliefTried {
  static constexpr Kind kind{"relief.tried", 1, Undo::Allowed,
                             "the relief valve of the test pump was tried"};
  Measured<units::GaugePressure> lifted_at;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("lifted_at", self.lifted_at, units::Kind::GaugePressure, "where it lifted");
  }
  friend bool operator==(const ReliefTried&, const ReliefTried&) = default;
};

struct PostTaken {
  static constexpr Kind kind{"post.taken", 1, Undo::Allowed, "somebody stands at a post"};
  Post post = Post::Pump;
  std::string who;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("post", self.post, "which post");
    v.text("who", self.who, "who stands there");
  }
  friend bool operator==(const PostTaken&, const PostTaken&) = default;
};

struct PostLeft {
  static constexpr Kind kind{"post.left", 1, Undo::Never, "nobody stands at a post any more"};
  Post post = Post::Pump;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("post", self.post, "which post");
  }
  friend bool operator==(const PostLeft&, const PostLeft&) = default;
};

struct StopWordChecked {
  static constexpr Kind kind{"stop_word.checked", 1, Undo::Allowed,
                             "everybody on the test repeated the stop word"};
  std::string word;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("word", self.word, "the stop word");
  }
  friend bool operator==(const StopWordChecked&, const StopWordChecked&) = default;
};

struct PeopleClear : Bare {
  static constexpr Kind kind{"people.clear", 1, Undo::Allowed,
                             "everybody not at a post was seen clear of the boiler"};
};

struct ContactLost {
  static constexpr Kind kind{"contact.lost", 1, Undo::Never, "contact with a post was lost"};
  Post post = Post::Pump;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("post", self.post, "which post");
  }
  friend bool operator==(const ContactLost&, const ContactLost&) = default;
};

struct ContactRegained {
  static constexpr Kind kind{"contact.regained", 1, Undo::Never,
                             "contact with a post was regained"};
  Post post = Post::Pump;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("post", self.post, "which post");
  }
  friend bool operator==(const ContactRegained&, const ContactRegained&) = default;
};

struct RaisingStarted {
  static constexpr Kind kind{"raising.started", 1, Undo::Never, "the pump was started"};
  Measured<units::GaugePressure> to;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("to", self.to, units::Kind::GaugePressure, "to this, at the reference level");
  }
  friend bool operator==(const RaisingStarted&, const RaisingStarted&) = default;
};

struct RaisingStopped : Bare {
  static constexpr Kind kind{"raising.stopped", 1, Undo::Never, "the pump was stopped"};
};
struct TestValveShut : Bare {
  static constexpr Kind kind{"test_valve.shut", 1, Undo::Allowed, "the test valve was shut"};
};
struct TestValveOpened : Bare {
  static constexpr Kind kind{"test_valve.opened", 1, Undo::Never, "the test valve was opened"};
};
struct PumpSideHungOpen : Bare {
  static constexpr Kind kind{"pump_side.hung_open", 1, Undo::Allowed,
                             "the pump side was bled and hung open"};
};

struct HoldStarted {
  static constexpr Kind kind{"hold.started", 1, Undo::Never, "a hold was begun"};
  Measured<units::GaugePressure> pressure;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("pressure", self.pressure, units::Kind::GaugePressure, "at the reference level");
  }
  friend bool operator==(const HoldStarted&, const HoldStarted&) = default;
};

struct HoldEnded {
  static constexpr Kind kind{"hold.ended", 1, Undo::Allowed, "a hold was ended"};
  bool rule_met = false;
  Measured<units::GaugePressure> pressure;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.flag("rule_met", self.rule_met, "length and fall were as the rule asks");
    v.measure("pressure", self.pressure, units::Kind::GaugePressure, "at the reference level");
  }
  friend bool operator==(const HoldEnded&, const HoldEnded&) = default;
};

struct TraceAdded {
  static constexpr Kind kind{"trace.added", 2, Undo::Never,
                             "a stretch of a logger's readings, kept as a blob"};
  std::string gauge;
  std::string trace_sha256;
  std::int64_t from_ms = 0;
  std::int64_t to_ms = 0;
  std::string columns;       // since version 2
  std::string column_units;  // since version 2
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("gauge", self.gauge, "tag of the gauge");
    v.text("trace_sha256", self.trace_sha256, "hash of its bytes");
    v.moment("from_ms", self.from_ms, "its first reading");
    v.moment("to_ms", self.to_ms, "its last reading");
    v.maybe("columns", self.columns, "what its columns are, by commas, where somebody overruled");
    v.maybe("column_units", self.column_units, "their units, by commas, where somebody overruled");
  }
  friend bool operator==(const TraceAdded&, const TraceAdded&) = default;
};

struct PlaceSeenDry {
  static constexpr Kind kind{"place.seen_dry", 1, Undo::Allowed,
                             "somebody looked at a place under pressure and it was dry"};
  std::string place;
  Measured<units::GaugePressure> pressure;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("place", self.place, "tag of the place to look");
    v.measure("pressure", self.pressure, units::Kind::GaugePressure,
              "under which, at the reference level");
  }
  friend bool operator==(const PlaceSeenDry&, const PlaceSeenDry&) = default;
};

struct LeakFound {
  static constexpr Kind kind{"leak.found", 1, Undo::Never,
                             "water was seen to come out, or to pass"};
  std::string leak;
  std::string place;
  LeakKind at = LeakKind::Gasket;
  Passing passes = Passing::Out;
  std::optional<MeasuredNumber> drops;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("leak", self.leak, "its number");
    v.text("place", self.place, "tag of the place to look");
    v.word("at", self.at, "what leaks");
    v.word("passes", self.passes, "which way");
    v.maybe_measure("drops_per_min", self.drops, units::Kind::Count, "drops in a minute");
  }
  friend bool operator==(const LeakFound&, const LeakFound&) = default;
};

struct LeakRepaired {
  static constexpr Kind kind{"leak.repaired", 1, Undo::Allowed,
                             "a leak was repaired and is to be looked at under pressure"};
  std::string leak;
  std::string how;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("leak", self.leak, "its number");
    v.text("how", self.how, "what was done");
  }
  friend bool operator==(const LeakRepaired&, const LeakRepaired&) = default;
};

struct LeakWatchedHot {
  static constexpr Kind kind{"leak.watched_hot", 1, Undo::Allowed,
                             "somebody signed that a weep is to be watched hot"};
  std::string leak;
  RoleName role = RoleName::Engineer;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("leak", self.leak, "its number");
    v.word("role", self.role, "in which role");
  }
  friend bool operator==(const LeakWatchedHot&, const LeakWatchedHot&) = default;
};

struct BoilerLetDown : Bare {
  static constexpr Kind kind{"boiler.let_down", 1, Undo::Never,
                             "pressure was let down slowly by a valve"};
};
struct BoilerDrained : Bare {
  static constexpr Kind kind{"boiler.drained", 1, Undo::Never, "the boiler was drained"};
};
struct BoilerLeftFull {
  static constexpr Kind kind{"boiler.left_full", 1, Undo::Never, "the boiler was left full"};
  std::string looked_after_by;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.maybe("looked_after_by", self.looked_after_by, "who stays with it");
  }
  friend bool operator==(const BoilerLeftFull&, const BoilerLeftFull&) = default;
};
struct BoilerLeftSafe {
  static constexpr Kind kind{"boiler.left_safe", 1, Undo::Never,
                             "the test was stopped and the boiler left safe"};
  std::string call;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("call", self.call, "whom to call");
  }
  friend bool operator==(const BoilerLeftSafe&, const BoilerLeftSafe&) = default;
};
struct BoilerNormalised : Bare {
  static constexpr Kind kind{"boiler.normalised", 1, Undo::Allowed,
                             "valves, glasses and controls stand as for steaming"};
};
struct BoilerLaidUp {
  static constexpr Kind kind{"boiler.laid_up", 1, Undo::Never, "the boiler was laid up"};
  LaidUp how = LaidUp::Wet;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.word("how", self.how, "how");
  }
  friend bool operator==(const BoilerLaidUp&, const BoilerLaidUp&) = default;
};
struct BoilerGiven : Bare {
  static constexpr Kind kind{"boiler.given", 1, Undo::Never,
                             "the lead hand signed the boiler over"};
};
struct BoilerReceived : Bare {
  static constexpr Kind kind{"boiler.received", 1, Undo::Never,
                             "the one who will steam the boiler signed for it"};
};
struct FireLit : Bare {
  static constexpr Kind kind{"fire.lit", 1, Undo::Never, "the first fire was lit"};
};
struct SteamLookedRound {
  static constexpr Kind kind{"steam.looked_round", 1, Undo::Allowed,
                             "somebody looked round the boiler on first steam"};
  Measured<units::GaugePressure> pressure;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("pressure", self.pressure, units::Kind::GaugePressure, "at which");
  }
  friend bool operator==(const SteamLookedRound&, const SteamLookedRound&) = default;
};
struct ClosureSeenOnSteam : OfClosure {
  static constexpr Kind kind{"closure.seen_on_steam", 1, Undo::Allowed,
                             "a plate that was hardened up was looked at on first steam"};
};
struct TestStopped {
  static constexpr Kind kind{"test.stopped", 1, Undo::Never, "somebody stopped the test"};
  std::string reason;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("reason", self.reason, "why");
  }
  friend bool operator==(const TestStopped&, const TestStopped&) = default;
};
struct RemarkMade {
  static constexpr Kind kind{"remark.made", 1, Undo::Never, "a remark for the record"};
  std::string text;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("text", self.text, "the remark");
  }
  friend bool operator==(const RemarkMade&, const RemarkMade&) = default;
};

}  // namespace steamworthy::facts
