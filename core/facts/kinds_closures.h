// Kinds: headers, tubes, findings, plates, internals, closures, temporaries, mountings.
#pragma once

#include <vector>

#include "facts/shapes.h"

namespace steamworthy::facts {

struct HeaderLookedInto {
  static constexpr Kind kind{"header.looked_into", 1, Undo::Allowed,
                             "somebody looked through a header and found it empty"};
  std::string part;
  LookedWith with = LookedWith::Lamp;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("part", self.part, "tag of the header");
    v.word("with", self.with, "with what");
  }
  friend bool operator==(const HeaderLookedInto&, const HeaderLookedInto&) = default;
};

struct HeaderSealed {
  static constexpr Kind kind{"header.sealed", 1, Undo::Allowed,
                             "a header that was looked into was sealed"};
  std::string part;
  std::string seal;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("part", self.part, "tag of the header");
    v.maybe("seal", self.seal, "number of the seal");
  }
  friend bool operator==(const HeaderSealed&, const HeaderSealed&) = default;
};

struct HeaderSealBroken : OfPart {
  static constexpr Kind kind{"header.seal_broken", 1, Undo::Never,
                             "a header's seal was found or made broken"};
};

struct TubesBalled {
  static constexpr Kind kind{"tubes.balled", 1, Undo::Never,
                             "a ball was sent through tubes of a bank"};
  std::string bank;
  int row = 0;
  int first = 0;
  int last = 0;
  BallResult result = BallResult::Passed;
  int balls_in = 0;
  int balls_back = 0;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("bank", self.bank, "tag of the tube bank");
    v.whole("row", self.row, "the row");
    v.whole("first", self.first, "number of the first tube");
    v.whole("last", self.last, "number of the last tube");
    v.word("result", self.result, "of each of them");
    v.whole("balls_in", self.balls_in, "balls sent in");
    v.whole("balls_back", self.balls_back, "balls that came back");
  }
  friend bool operator==(const TubesBalled&, const TubesBalled&) = default;
};

struct FindingMade {
  static constexpr Kind kind{"finding.made", 1, Undo::Never,
                             "something was found that somebody must know of"};
  std::string finding;
  std::string where;
  Severity severity = Severity::Note;
  std::string what;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("finding", self.finding, "its number");
    v.text("where", self.where, "tag of what it is at");
    v.word("severity", self.severity, "how grave");
    v.text("what", self.what, "what was found");
  }
  friend bool operator==(const FindingMade&, const FindingMade&) = default;
};

struct FindingDecided {
  static constexpr Kind kind{"finding.decided", 1, Undo::Allowed,
                             "somebody with the right role decided what becomes of a finding"};
  std::string finding;
  Disposition disposition = Disposition::AsItIs;
  RoleName role = RoleName::Engineer;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("finding", self.finding, "its number");
    v.word("disposition", self.disposition, "what becomes of it");
    v.word("role", self.role, "in which role");
  }
  friend bool operator==(const FindingDecided&, const FindingDecided&) = default;
};

struct InternalOut : OfInternal {
  static constexpr Kind kind{"internal.out", 1, Undo::Never, "an internal was taken out"};
};
struct InternalIn : OfInternal {
  static constexpr Kind kind{"internal.in", 1, Undo::Allowed,
                             "an internal is back and held as described"};
};

struct ClosureOpened : OfClosure {
  static constexpr Kind kind{"closure.opened", 1, Undo::Never, "a closure was opened"};
};
struct ClosureNotOpened : OfClosure {
  static constexpr Kind kind{"closure.not_opened", 1, Undo::Allowed,
                             "a closure stays shut this time"};
};
struct ClosureCleaned : OfClosure {
  static constexpr Kind kind{"closure.cleaned", 1, Undo::Allowed,
                             "seat and plate of a closure were cleaned"};
};
struct ClosureLookedAt : OfClosure {
  static constexpr Kind kind{"closure.looked_at", 1, Undo::Allowed,
                             "seat and plate of a closure were looked at and are fit"};
};

struct PlateMatched {
  static constexpr Kind kind{"plate.matched", 1, Undo::Never,
                             "the mark of a plate was compared with that of its hole"};
  std::string closure;
  bool matches = false;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("closure", self.closure, "tag of the closure");
    v.flag("matches", self.matches, "the plate belongs to this hole");
  }
  friend bool operator==(const PlateMatched&, const PlateMatched&) = default;
};

struct GasketFitted {
  static constexpr Kind kind{"gasket.fitted", 1, Undo::Allowed, "a gasket was put on"};
  std::string closure;
  std::string gasket;
  std::string lot;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("closure", self.closure, "tag of the closure");
    v.text("gasket", self.gasket, "kind of gasket, a word of the description");
    v.maybe("lot", self.lot, "lot or batch");
  }
  friend bool operator==(const GasketFitted&, const GasketFitted&) = default;
};

struct ClosureNippedUp : OfClosure {
  static constexpr Kind kind{"closure.nipped_up", 1, Undo::Never,
                             "a plate was nipped up on its gasket"};
};

struct GapReading {
  MeasuredNumber clock;
  Measured<units::Length> gap;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.measure("clock", self.clock, units::Kind::Count,
              "where, as on a clock facing it from outside");
    v.measure("gap", self.gap, units::Kind::Size, "the thickest feeler that goes in");
  }
  friend bool operator==(const GapReading&, const GapReading&) = default;
};

struct GapsMeasured {
  static constexpr Kind kind{"gaps.measured", 1, Undo::Never,
                             "the gap round a plate's shoulder was measured and judged"};
  std::string closure;
  std::vector<GapReading> gaps;
  GapVerdict verdict = GapVerdict::Report;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("closure", self.closure, "tag of the closure");
    v.items("gaps", self.gaps, "the readings");
    v.word("verdict", self.verdict, "as judged by the limit in force");
  }
  friend bool operator==(const GapsMeasured&, const GapsMeasured&) = default;
};

struct ClosureHardenedUp : OfClosure {
  static constexpr Kind kind{"closure.hardened_up", 1, Undo::Never,
                             "a plate was hardened up, pressure off"};
};

struct ClosureTouched {
  static constexpr Kind kind{"closure.touched", 1, Undo::Never,
                             "somebody put a wrench or hammer to a closure"};
  std::string closure;
  TouchedHow how = TouchedHow::Tightened;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("closure", self.closure, "tag of the closure");
    v.word("how", self.how, "what was done");
  }
  friend bool operator==(const ClosureTouched&, const ClosureTouched&) = default;
};

struct TemporaryOn {
  static constexpr Kind kind{"temporary.on", 1, Undo::Never, "a temporary was fitted"};
  std::string temporary;
  std::string where;
  template <class Self, class Visitor>
  static void fields(Self& self, Visitor& v) {
    v.text("temporary", self.temporary, "number of the temporary");
    v.text("where", self.where, "tag of what it is fitted on");
  }
  friend bool operator==(const TemporaryOn&, const TemporaryOn&) = default;
};

struct TemporaryOff : OfTemporary {
  static constexpr Kind kind{"temporary.off", 1, Undo::Allowed, "a temporary was taken off"};
};
struct TemporarySeenOff : OfTemporary {
  static constexpr Kind kind{"temporary.seen_off", 1, Undo::Allowed,
                             "somebody saw a temporary off, by its number"};
};

struct MountingIsolated : OfMounting {
  static constexpr Kind kind{"mounting.isolated", 1, Undo::Allowed,
                             "an instrument or glass was shut off from the pressure"};
};
struct MountingPutBack : OfMounting {
  static constexpr Kind kind{"mounting.put_back", 1, Undo::Never,
                             "an instrument or glass is open to the boiler again"};
};
struct MountingProved : OfMounting {
  static constexpr Kind kind{"mounting.proved", 1, Undo::Allowed,
                             "a mounting was tried and does what it is for"};
};

struct HangersPinned : Bare {
  static constexpr Kind kind{"hangers.pinned", 1, Undo::Never,
                             "spring hangers were pinned for the weight of water"};
};
struct HangersFreed : Bare {
  static constexpr Kind kind{"hangers.freed", 1, Undo::Never,
                             "spring hangers were freed, expansion is clear"};
};

}  // namespace steamworthy::facts
