// Body: what a fact says, as one of the known kinds or, where it cannot be read, verbatim.
//
// A visitor of fields has these calls, each with the name in the body, what it is read into or
// written from, and the meaning for the page:
//
//   text, maybe (a text that may be missing), texts, flag, whole, word, moment, items,
//   measure, maybe_measure (with the kind of quantity, whose suffix follows the name)
#pragma once

#include <string>
#include <type_traits>
#include <utility>
#include <variant>

#include "facts/kinds_closing.h"
#include "facts/kinds_closures.h"
#include "facts/kinds_inside.h"
#include "facts/kinds_pressure.h"

namespace steamworthy::facts {

/// A body that this program cannot read: an unknown kind, or a known one that is not as it should
/// be. It is kept as it came, passed on, shown, and stands in the way of clearances.
struct Unread {
  std::string token;
  int version = 0;
  std::string json;  ///< verbatim
  std::string why;   ///< a code: "facts.unknown_kind", "facts.bad_body"

  friend bool operator==(const Unread&, const Unread&) = default;
};

using AnyKind = std::variant<
    Unread, ClosingStarted, PenHandedOn, DeviceJoined, DeviceReported, DeviceLeft, DeviceLost,
    ShiftHandedOver, EntryWithdrawn, ClearanceAsked, ClearanceGiven, ClearanceLapsed,
    ClearanceOverridden, AlarmRaised, AlarmTaken, SheetIssued, ResultAccepted, SignatureGiven,
    PersonEnrolled, PersonLeft, DeviceEnrolled, DeviceRevoked, RuleAdopted, SiteLimitsSet,
    IsolationMade, TellTaleSeen, IsolationTried, IsolationChanged, ReadingTaken, TemperatureTaken,
    VentOpened, VentShut, VentMovingAir, VentRanSolid, VentManned, DrainOpened, DrainShut,
    DrainProved, WayInOpened, WayInShut, AirRead, AttendantPosted, AttendantRelieved, TallyIn,
    TallyOut, ToolIn, ToolOut, SpaceCounted, HeaderLookedInto, HeaderSealed, HeaderSealBroken,
    TubesBalled, FindingMade, FindingDecided, InternalOut, InternalIn, ClosureOpened,
    ClosureNotOpened, ClosureCleaned, ClosureLookedAt, PlateMatched, GasketFitted, ClosureNippedUp,
    GapsMeasured, ClosureHardenedUp, ClosureTouched, TemporaryOn, TemporaryOff, TemporarySeenOff,
    MountingIsolated, MountingPutBack, MountingProved, HangersPinned, HangersFreed,
    FillingOrderAgreed, FillingStarted, FillingStopped, LevelSeen, GaugeFitted, GaugeRemoved,
    ReliefTried, PostTaken, PostLeft, StopWordChecked, PeopleClear, ContactLost, ContactRegained,
    RaisingStarted, RaisingStopped, TestValveShut, TestValveOpened, PumpSideHungOpen, HoldStarted,
    HoldEnded, TraceAdded, PlaceSeenDry, LeakFound, LeakRepaired, LeakWatchedHot, BoilerLetDown,
    BoilerDrained, BoilerLeftFull, BoilerLeftSafe, BoilerNormalised, BoilerLaidUp, BoilerGiven,
    BoilerReceived, FireLit, SteamLookedRound, ClosureSeenOnSteam, TestStopped, RemarkMade>;

template <class T, class Variant>
inline constexpr bool is_among = false;
template <class T, class... Kinds>
inline constexpr bool is_among<T, std::variant<Kinds...>> = (std::is_same_v<T, Kinds> || ...);

/// One of them. A class of its own, so that copying, comparing and destroying a hundred kinds is
/// compiled once and not in every file that holds a fact: that was most of their compile time.
class Body : public AnyKind {
 public:
  Body();
  Body(const Body& other);
  Body(Body&& other) noexcept;
  Body& operator=(const Body& other);
  Body& operator=(Body&& other) noexcept;
  ~Body();
  template <class T, std::enable_if_t<is_among<T, AnyKind>, int> = 0>
  Body(T kind) noexcept : AnyKind(std::in_place_type<T>, std::move(kind)) {}

  friend bool operator==(const Body& a, const Body& b) { return are_equal(a, b); }

 private:
  static bool are_equal(const AnyKind& a, const AnyKind& b);
};

/// The kind of a body; for an unread one its token and version.
Kind kind_of(const Body& body);

/// Calls `use` with a null pointer of each known body type, in the order of the variant: a loop
/// over types.
template <std::size_t at = 1, class Use>
void for_each_kind(Use&& use) {
  if constexpr (at < std::variant_size_v<AnyKind>) {
    use(static_cast<std::variant_alternative_t<at, AnyKind>*>(nullptr));
    for_each_kind<at + 1>(use);
  }
}

}  // namespace steamworthy::facts
