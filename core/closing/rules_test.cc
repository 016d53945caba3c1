#include "closing/rules_test.h"

#include <set>

#include "closing/world_test.h"

namespace steamworthy::closing {
namespace {

using namespace facts;  // the bodies
using Found = std::optional<std::string>;

constexpr std::int64_t quarter_hour_ms = 15 * 60'000;

bool is_fresh(const Fact& fact, std::int64_t now_ms) {
  return now_ms - fact.happened_at_ms <= quarter_hour_ms && now_ms >= fact.happened_at_ms;
}

/// Each gauge that was ever read was read at or below `bars` after all that speaks against it.
bool gauges_at_most(const Past& past, double bars, const Past::Test& raises) {
  std::set<std::string> gauges;
  for (const Fact& fact : past.facts()) {
    if (const auto* r = as<ReadingTaken>(fact)) gauges.insert(r->gauge);
  }
  for (const std::string& gauge : gauges) {
    const auto at = [&](bool above) {
      return is<ReadingTaken>([=](const ReadingTaken& r) {
        return r.gauge == gauge && (r.pressure.value.si() > bars * 1e5) == above;
      });
    };
    if (!past.holds(at(false), at(true) || raises)) return false;
  }
  return !gauges.empty();
}

Past::Test made_as(IsolatedHow how, bool yes) {
  return is<IsolationMade>([=](const IsolationMade& m) { return (m.how == how) == yes; });
}

bool is_isolated(const Past& past, bool tried) {
  const auto wet = is<TellTaleSeen>([](const TellTaleSeen& t) { return !t.dry; });
  const auto dry = is<TellTaleSeen>([](const TellTaleSeen& t) { return t.dry; });
  const auto moved = is<IsolationChanged>();
  const auto two = IsolatedHow::TwoValvesAndTellTale;
  const bool blanked =
      past.holds(made_as(IsolatedHow::Blank, true), moved || made_as(IsolatedHow::Blank, false));
  const bool shut_twice =
      past.holds(made_as(two, true), moved || made_as(two, false)) && past.holds(dry, wet || moved);
  return (blanked || shut_twice) && (!tried || past.holds(is<IsolationTried>(), wet || moved));
}

bool has_moving_vent(const Past& past) {
  return past.holds(is<VentOpened>(), is<VentShut>()) &&
         past.holds(is<VentMovingAir>(), is<VentShut>() || is<FillingStarted>());
}

Found open_breaks(const Past& past) {
  if (!gauges_at_most(past, 0.0, is<RaisingStarted>() || is<FireLit>())) return "S1 pressure";
  if (!has_moving_vent(past)) return "S1 vent";
  if (!is_isolated(past, false)) return "S1 isolation";
  if (!past.holds(is<DrainProved>(), is<FillingStarted>())) return "S1 drained";
  const auto metal = [](bool hot) {
    return is<TemperatureTaken>([hot](const TemperatureTaken& t) {
      return t.of == Thing::Metal && (t.temperature.value > units::celsius(50)) == hot;
    });
  };
  if (!past.holds(metal(false), metal(true))) return "S1 hot";
  return std::nullopt;
}

Found air_breaks(const Past& past, const std::string& space, std::int64_t now_ms) {
  const auto is_good = [](const AirRead& a) {
    return a.oxygen_top.value >= 0.195 && a.oxygen_top.value <= 0.235;
  };
  const auto bad = is<AirRead>([=](const AirRead& a) { return a.space == space && !is_good(a); });
  const Past::Test good = [=](const Fact& fact) {
    const auto* air = as<AirRead>(fact);
    return air != nullptr && air->space == space && is_good(*air) && is_fresh(fact, now_ms) &&
           (air->oxygen_top.value >= 0.208 || !air->why_low.empty());
  };
  if (!past.holds(good, bad)) return "S2 air";
  if (!past.holds(is<AttendantPosted>(of_space(space)), is<AttendantRelieved>(of_space(space)))) {
    return "S2 attendant";
  }
  return std::nullopt;
}

Found enter_breaks(const Past& past, const std::string& space, std::int64_t now_ms) {
  if (!is_isolated(past, true)) return "S2 isolation";
  if (past.any(is<FillingStarted>()) && !past.holds(is<BoilerDrained>(), is<FillingStarted>())) {
    return "S2 water";
  }
  return air_breaks(past, space, now_ms);
}

/// Entries, openings, and what else a count must have known of.
Past::Test entries_of(const std::string& space) {
  const std::string plate = space == "SD" ? "M1" : space == "MD" ? "M2" : "";
  return is<TallyIn>(of_space(space)) || is<ToolIn>(of_space(space)) ||
         is<ClosureOpened>(of_closure(plate)) ||
         is<WayInOpened>([=](const WayInOpened& w) { return w.way_in == "W3" && space == "FU"; }) ||
         is<ShiftHandedOver>() || is<DeviceLost>() || is<SpaceCounted>([=](const SpaceCounted& c) {
           return c.space == space && (c.people_inside != 0 || c.tools_inside != 0);
         });
}

bool is_good_count(const Fact& fact, const std::string& space) {
  const auto* c = as<SpaceCounted>(fact);
  return c != nullptr && c->space == space && c->second != fact.person && c->looked_in &&
         c->called && c->people_inside == 0 && c->tools_inside == 0;
}

bool is_tally_empty(const Past& past, const std::string& space) {
  for (const Fact& fact : past.facts()) {
    if (const auto* in = as<TallyIn>(fact); in != nullptr && in->space == space) {
      const auto same = [&](const auto& b) { return b.space == space && b.who == in->who; };
      if (!past.holds(is<TallyOut>(same), is<TallyIn>(same))) return false;
    }
    if (const auto* in = as<ToolIn>(fact); in != nullptr && in->space == space) {
      const auto same = [&](const auto& b) { return b.space == space && b.tool == in->tool; };
      if (!past.holds(is<ToolOut>(same), is<ToolIn>(same))) return false;
    }
  }
  return true;
}

bool is_lost(const Past& past, const std::string& device) {
  for (const Fact& fact : past.facts()) {
    const auto* lost = as<DeviceLost>(fact);
    if (lost != nullptr && lost->device == device && lost->second != fact.person) return true;
  }
  return false;
}

bool is_complete(const Past& past, const std::string& device) {
  std::set<int> here;
  int claimed = 0;
  for (const Fact& fact : past.facts()) {
    if (fact.device == device) here.insert(fact.device_seq);
    for (const Head& head : fact.seen) {
      if (head.device == device) claimed = std::max(claimed, head.device_seq);
    }
  }
  const int last = here.empty() ? 0 : *here.rbegin();
  return static_cast<int>(here.size()) == last && claimed <= last;
}

/// Every device has told of something since it knew of fact `at`, or is lost.
bool are_all_heard(const Past& past, std::size_t at) {
  for (const std::string& device : devices_of(past)) {
    if (is_lost(past, device)) continue;
    bool heard = false;
    for (std::size_t i = 0; i < past.facts().size(); ++i) {
      heard = heard || (past.facts()[i].device == device && (i == at || past.knew(i, at)));
    }
    if (!heard || !is_complete(past, device)) return false;
  }
  return true;
}

Found count_breaks(const Past& past, const std::string& space, std::int64_t now_ms) {
  if (!is_tally_empty(past, space)) return "S3 inside";
  for (std::size_t i = 0; i < past.facts().size(); ++i) {
    const Fact& fact = past.facts()[i];
    if (is_good_count(fact, space) && is_fresh(fact, now_ms) &&
        past.knew_all(i, entries_of(space)) && are_all_heard(past, i)) {
      return std::nullopt;
    }
  }
  return "S3 count";
}

/// The last way in was closed on a clearance that rested on a count of all entries known.
bool is_closed_by_count(const Past& past, const std::string& space) {
  for (std::size_t g = 0; g < past.facts().size(); ++g) {
    const auto* body = as<ClearanceGiven>(past.facts()[g]);
    if (body == nullptr || body->step != StepName::CloseLastWayIn || body->subject != space)
      continue;
    for (std::size_t c = 0; c < past.facts().size(); ++c) {
      // Shift changes and lost devices after the closing do not open it again.
      const auto entered = is<TallyIn>(of_space(space)) || is<ToolIn>(of_space(space)) ||
                           is<ClosureOpened>(of_closure(space == "SD" ? "M1" : "M2"));
      if (past.knew(g, c) && is_good_count(past.facts()[c], space) && past.knew_all(c, entered)) {
        return true;
      }
    }
  }
  return false;
}

bool is_nipped_up(const Past& past, const std::string& plate) {
  const auto slackened = is<ClosureTouched>([=](const ClosureTouched& t) {
    return t.closure == plate && t.how == TouchedHow::Slackened;
  });
  return past.holds(is<ClosureNippedUp>(of_closure(plate)),
                    is<ClosureOpened>(of_closure(plate)) || slackened);
}

bool has_open_finding(const Past& past) {
  const auto decided = [](const Fact& fact) {
    const auto* d = as<FindingDecided>(fact);
    return d != nullptr && fact.person == "E" && d->disposition != Disposition::StopTheJob;
  };
  return past.any(is<FindingMade>()) && !past.holds(decided, is<FindingMade>());
}

/// Headers, tubes and findings.
Found bores_break(const Past& past) {
  const auto broken = is<HeaderSealBroken>();
  if (past.any(broken) &&
      !(past.holds(is<HeaderLookedInto>(), broken) && past.holds(is<HeaderSealed>(), broken))) {
    return "S4 header";
  }
  const auto balled = [](bool passed) {
    return is<TubesBalled>(
        [=](const TubesBalled& t) { return (t.result == BallResult::Passed) == passed; });
  };
  int missing = 0;
  for (const Fact& fact : past.facts()) {
    if (const auto* t = as<TubesBalled>(fact)) missing += t->balls_in - t->balls_back;
  }
  if (missing != 0 || (past.any(balled(false)) && !past.holds(balled(true), balled(false)))) {
    return "S4 tubes";
  }
  return has_open_finding(past) ? Found("S4 finding") : std::nullopt;
}

Found fill_breaks(const Past& past) {
  if (auto found = bores_break(past)) return found;
  for (const char* space : {"SD", "MD"}) {
    if (!is_tally_empty(past, space)) return "S4 inside";
    if (!is_closed_by_count(past, space)) return "S4 space";
  }
  if (!is_nipped_up(past, "M1") || !is_nipped_up(past, "M2")) return "S4 closure";
  if (!past.any(is<ClosureNotOpened>())) return "S4 closure";
  for (const char* plate : {"M1", "M2"}) {
    const auto match = [&](bool yes) {
      return is<PlateMatched>(
          [=](const PlateMatched& m) { return m.closure == plate && m.matches == yes; });
    };
    const auto gaps = [&](GapVerdict verdict) {
      return is<GapsMeasured>(
          [=](const GapsMeasured& m) { return m.closure == plate && m.verdict == verdict; });
    };
    const auto opened = is<ClosureOpened>(of_closure(plate));
    if (!past.holds(match(true), match(false) || opened) ||
        !past.holds(is<GasketFitted>(of_closure(plate)), opened)) {
      return "S4 plate";
    }
    if (!past.holds(gaps(GapVerdict::Good), gaps(GapVerdict::Report) || opened)) return "S4 gap";
  }
  if (past.any(is<InternalOut>()) && !past.holds(is<InternalIn>(), is<InternalOut>())) {
    return "S4 internal";
  }
  if (!past.holds(is<DrainShut>(), is<DrainOpened>())) return "S4 drain";
  if (!past.holds(is<VentOpened>(), is<VentShut>())) return "S4 vent";
  if (!past.holds(is<VentManned>(), is<VentShut>())) return "S4 vent manned";
  return std::nullopt;
}

bool is_manned(const Past& past, Post post) {
  const auto same = [=](const auto& b) { return b.post == post; };
  return past.holds(is<PostTaken>(same), is<PostLeft>(same));
}

Found window_breaks(const Past& past) {
  for (const Thing thing : {Thing::Water, Thing::Metal}) {
    const auto read = [&](bool inside) {
      return is<TemperatureTaken>([=](const TemperatureTaken& t) {
        const auto value = t.temperature.value;
        return t.of == thing &&
               (value >= units::celsius(20) && value <= units::celsius(50)) == inside;
      });
    };
    if (!past.holds(read(true), read(false))) return "S5 temperature";
  }
  return std::nullopt;
}

Found raise_breaks(const Past& past, const Clearance& clearance, std::int64_t now_ms) {
  if (count_breaks(past, "FU", now_ms)) return "S5 fire side";
  if (!past.any(is<SheetIssued>()) || !clearance.up_to) return "S5 sheet";
  if (*clearance.up_to > units::bars_gauge(30)) return "S5 above";
  const auto full = [](bool yes) {
    return is<FillingStopped>([yes](const FillingStopped& f) { return f.full == yes; });
  };
  if (!past.holds(full(true), full(false) || is<FillingStarted>() || is<BoilerDrained>()) ||
      !is_nipped_up(past, "M1") || !is_nipped_up(past, "M2")) {
    return "S5 filled";
  }
  if (!past.holds(is<VentShut>(), is<VentOpened>()) ||
      !past.holds(is<VentRanSolid>(), is<FillingStarted>() || is<BoilerDrained>())) {
    return "S5 vent";
  }
  if (auto found = window_breaks(past)) return found;
  for (const char* gauge : {"G1", "G2"}) {
    const auto same = [=](const auto& b) { return b.gauge == gauge; };
    if (!past.holds(is<GaugeFitted>(same), is<GaugeRemoved>(same))) return "S5 gauges";
  }
  if (!past.holds(is<TemporaryOn>(), is<TemporaryOff>())) return "S5 safety valve";
  if (!past.any(is<ReliefTried>(
          [](const ReliefTried& r) { return r.lifted_at.value <= units::bars_gauge(31); }))) {
    return "S5 relief";
  }
  if (!past.holds(is<MountingIsolated>(), is<MountingPutBack>())) return "S5 instrument";
  if (!past.holds(is<HangersPinned>(), is<HangersFreed>())) return "S5 hangers";
  if (!is_manned(past, Post::Pump)) return "S5 pump";
  if (past.any(is<ContactLost>()) && !past.holds(is<ContactRegained>(), is<ContactLost>())) {
    return "S5 contact";
  }
  if (!past.holds(is<PeopleClear>(), is<TallyIn>() || is<ShiftHandedOver>())) return "S5 people";
  if (!past.holds(is<StopWordChecked>(), is<ShiftHandedOver>())) return "S5 stop word";
  return std::nullopt;
}

Past::Test hold_ended(bool met) {
  return is<HoldEnded>([met](const HoldEnded& h) { return h.rule_met == met; });
}

Found walk_breaks(const Past& past, const std::string& space, std::int64_t now_ms) {
  const auto to_raise =
      is<ClearanceGiven>([](const ClearanceGiven& g) { return g.step == StepName::RaisePressure; });
  const auto lapses = is<HoldEnded>() || is<BoilerLetDown>() || is<PostLeft>() ||
                      is<VentOpened>() || is<IsolationChanged>() || is<TallyIn>();
  const auto stops = is<HoldEnded>() || is<HoldStarted>() || is<BoilerLetDown>();
  if (!past.holds(lapses, to_raise) || !past.holds(stops, is<RaisingStarted>())) {
    return "S6 raising";
  }
  if (!past.holds(hold_ended(true), hold_ended(false) || is<ClosureOpened>())) return "S6 hold";
  if (!gauges_at_most(past, 20.1, is<RaisingStarted>() || is<HoldEnded>())) return "S6 pressure";
  if (!is_isolated(past, true)) return "S6 isolation";
  return air_breaks(past, space, now_ms);
}

Found break_breaks(const Past& past, const std::string& plate) {
  if (!gauges_at_most(past, 0.0, is<RaisingStarted>() || is<FireLit>())) return "S7 pressure";
  if (plate.empty()) return std::nullopt;  // to tighten or strike no more is asked
  if (!has_moving_vent(past)) return "S7 vent";
  const auto below = is<LevelSeen>(
      [](const LevelSeen& l) { return l.level.value.si() < 2.0 - 0.15; });  // of each closure
  const auto not_below =
      is<LevelSeen>([](const LevelSeen& l) { return l.level.value.si() >= 2.0 - 0.15; });
  if (!past.holds(is<BoilerDrained>(), is<FillingStarted>()) &&
      !past.holds(below, not_below || is<FillingStarted>())) {
    return "S7 water";
  }
  return std::nullopt;
}

Found leave_breaks(const Past& past) {
  const bool is_open = past.holds(is<VentOpened>(), is<VentShut>());
  return is_open || is_manned(past, Post::Lookout) ? Found() : "S8 shut solid";
}

Found drain_breaks(const Past& past) {
  if (!gauges_at_most(past, 0.0, is<RaisingStarted>() || is<FireLit>())) return "S8 pressure";
  if (!past.holds(is<VentOpened>(), is<VentShut>())) return "S8 vent";
  return std::nullopt;
}

/// Somebody with the role signed that a weep of this place, or with this number, is watched hot.
bool is_watched(const Past& past, const std::function<bool(const LeakFound&)>& which) {
  for (const Fact& fact : past.facts()) {
    const auto* leak = as<LeakFound>(fact);
    if (leak == nullptr || !which(*leak)) continue;
    if (leak->at != LeakKind::Gasket && leak->at != LeakKind::Gland) continue;
    const Past::Test signed_for = [&](const Fact& f) {
      const auto* w = as<LeakWatchedHot>(f);
      return w != nullptr && w->leak == leak->leak && f.person == "E";
    };
    const auto same = [&](const auto& b) { return b.leak == leak->leak; };
    if (past.holds(signed_for, is<LeakFound>(same))) return true;
  }
  return false;
}

Found places_break(const Past& past) {
  static const Terms terms = small_terms();
  for (const std::string& place : terms.layout().places) {
    const auto same = [&](const auto& b) { return b.place == place; };
    const Past::Test dry = is<PlaceSeenDry>([&](const PlaceSeenDry& b) {
      return b.place == place && b.pressure.value >= units::bars_gauge(20);
    });
    if (is_watched(past, same)) continue;
    if (!past.holds(dry, is<LeakFound>(same) || is<ClosureOpened>(of_closure(place)))) {
      return "S9 not seen";
    }
    if (!past.holds(
            dry, is<ClosureTouched>(of_closure(place)) || is<ClosureNippedUp>(of_closure(place)))) {
      return "S9 touched";
    }
  }
  return std::nullopt;
}

Found leaks_break(const Past& past) {
  for (const Fact& fact : past.facts()) {
    const auto* leak = as<LeakFound>(fact);
    if (leak == nullptr) continue;
    const auto same = [&](const auto& b) { return b.leak == leak->leak; };
    if (past.holds(is<LeakRepaired>(same), is<LeakFound>(same))) continue;
    // The last word on what leaks counts: every telling of it must be one that may weep.
    const bool all_weeps = !past.any(is<LeakFound>([&](const LeakFound& l) {
      return same(l) && l.at != LeakKind::Gasket && l.at != LeakKind::Gland;
    }));
    const bool last_weeps = past.holds(
        is<LeakFound>([&](const LeakFound& l) { return same(l) && l.at == LeakKind::Gasket; }),
        is<LeakFound>([&](const LeakFound& l) { return same(l) && l.at != LeakKind::Gasket; }));
    if (!(all_weeps || last_weeps) || !is_watched(past, same)) return "S9 leak";
  }
  return std::nullopt;
}

Found take_over_breaks(const Past& past, std::int64_t now_ms) {
  if (count_breaks(past, "FU", now_ms)) return "S9 inside";
  for (const char* space : {"SD", "MD"}) {
    if (!is_tally_empty(past, space) || !is_closed_by_count(past, space)) return "S9 inside";
  }
  if (!past.holds(is<TemporaryOff>(), is<TemporaryOn>())) return "S9 temporary";
  if (!past.holds(is<TemporarySeenOff>(), is<TemporaryOn>())) return "S9 seen off";
  if (!past.holds(hold_ended(true), hold_ended(false) || is<ClosureOpened>())) return "S9 hold";
  if (auto found = places_break(past)) return found;
  if (auto found = leaks_break(past)) return found;
  for (const char* plate : {"M1", "M2"}) {
    const auto off =
        is<ClosureOpened>(of_closure(plate)) || is<ClosureTouched>([=](const ClosureTouched& t) {
          return t.closure == plate && t.how == TouchedHow::Slackened;
        });
    if (!past.holds(is<ClosureHardenedUp>(of_closure(plate)), off)) return "S9 hardened";
  }
  if (!past.holds(is<MountingPutBack>(), is<MountingIsolated>()) ||
      !past.holds(is<MountingProved>(), is<MountingIsolated>())) {
    return "S9 protection";
  }
  if (!past.holds(is<HangersFreed>(), is<HangersPinned>())) return "S9 hangers";
  if (!past.any(is<BoilerNormalised>())) return "S9 normalised";
  if (has_open_finding(past)) return "S9 finding";
  return std::nullopt;
}

Found steam_breaks(const Past& past, std::int64_t now_ms) {
  if (auto found = take_over_breaks(past, now_ms)) return found;
  bool given_by_lead = false;
  bool received = false;
  for (const Fact& fact : past.facts()) {
    given_by_lead = given_by_lead || (as<BoilerGiven>(fact) != nullptr && fact.person == "L");
    received = received || (as<BoilerReceived>(fact) != nullptr && fact.person == "W");
  }
  return given_by_lead && received ? Found() : "S9 taken over";
}

}  // namespace

std::optional<std::string> violated(const Past& past, const Clearance& clearance,
                                    std::int64_t now_ms) {
  if (past.any(is<Unread>())) return "S11 unread";
  const Past::Test taken = [](const Fact& f) {
    return as<AlarmTaken>(f) != nullptr && (f.person == "L" || f.person == "E");
  };
  if (past.any(is<AlarmRaised>()) && !past.any(taken)) return "S11 alarm";
  switch (clearance.step) {
    case StepName::Open:
      return open_breaks(past);
    case StepName::Enter:
      return enter_breaks(past, clearance.subject, now_ms);
    case StepName::CloseLastWayIn:
      return count_breaks(past, clearance.subject, now_ms);
    case StepName::Fill:
      return fill_breaks(past);
    case StepName::RaisePressure:
      return raise_breaks(past, clearance, now_ms);
    case StepName::WalkFireSide:
      return walk_breaks(past, clearance.subject, now_ms);
    case StepName::Tighten:
    case StepName::Strike:
      return break_breaks(past, "");
    case StepName::BreakJoint:
      return break_breaks(past, clearance.subject);
    case StepName::LetDown:
      return is_manned(past, Post::LetDown) ? Found() : "S8 valve";
    case StepName::Drain:
      return drain_breaks(past);
    case StepName::LeaveFull:
      return leave_breaks(past);
    case StepName::TakeOver:
      return take_over_breaks(past, now_ms);
    case StepName::Steam:
      return steam_breaks(past, now_ms);
  }
  return "no such step";
}

}  // namespace steamworthy::closing
