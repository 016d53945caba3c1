// For tests: the small plant, and facts of it told one after the other by several devices.
//
// The plant: two water spaces SD and MD, the furnace FU; closures M1 (SD) and M2 (MD), manholes,
// and H1, a handhole that is not opened; one internal I1, one temporary T1 for the safety valve
// SV1, one vent V1, one drain D1, one gauge glass GG, one isolation IS1; people P and Q, a lead
// hand L, an engineer E, a watch engineer W.
#pragma once

#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "closing/fold.h"
#include "units/makers.h"

namespace steamworthy::closing {

inline boiler::Mounting small_mounting(const char* tag, boiler::MountingKind kind) {
  boiler::Mounting mounting;
  mounting.tag = mounting.name = tag;
  mounting.kind = kind;
  mounting.level = units::Level::from_si(3.0);
  return mounting;
}

inline boiler::Closure small_closure(const char* tag, boiler::ClosureKind kind) {
  boiler::Closure closure;
  closure.tag = tag;
  closure.kind = kind;
  closure.level = units::Level::from_si(2.0);
  closure.opening = {boiler::OpeningShape::Oval, units::millimetres(400), units::millimetres(300)};
  return closure;
}

inline boiler::Boiler small_boiler() {
  using boiler::MountingKind;
  boiler::Boiler small;
  small.tag = "B";
  small.bulk = boiler::Bulk{units::Volume::from_si(1.0), units::VolumePerPressure::from_si(1e-9),
                            units::Level::from_si(3.0), units::Level::from_si(0.0)};
  small.spaces = {{"SD", "steam drum", boiler::SpaceSide::Steam, {}},
                  {"MD", "mud drum", boiler::SpaceSide::Water, {}},
                  {"FU", "furnace", boiler::SpaceSide::Fire, {}}};
  small.ways_in = {{"W1", "SD", "M1", ""}, {"W2", "MD", "M2", ""}, {"W3", "FU", "", "door"}};
  small.closures = {small_closure("M1", boiler::ClosureKind::Manhole),
                    small_closure("M2", boiler::ClosureKind::Manhole),
                    small_closure("H1", boiler::ClosureKind::Handhole)};
  small.mountings = {small_mounting("V1", MountingKind::Vent),
                     small_mounting("D1", MountingKind::Drain),
                     small_mounting("SV1", MountingKind::SafetyValve),
                     small_mounting("GG", MountingKind::GaugeGlass)};
  small.mountings[3].test_limit = units::bars_gauge(20);
  boiler::Isolation line;
  line.tag = "IS1";
  small.isolations = {line};
  boiler::Gauge gauge;
  gauge.level = units::Level::from_si(3.0);
  gauge.resolution = units::PressureDifference::from_si(1e4);
  for (const char* tag : {"G1", "G2"}) {
    gauge.tag = tag;
    small.gauges.push_back(gauge);
  }
  return small;
}

inline Terms small_terms() {
  Site site;
  site.air_minutes = 15;
  site.count_minutes = 15;
  site.open_below = units::celsius(50);
  Terms terms(small_boiler(), site);
  terms.let("L", facts::RoleName::LeadHand);
  terms.let("N", facts::RoleName::LeadHand);
  terms.let("E", facts::RoleName::Engineer);
  terms.let("W", facts::RoleName::WatchEngineer);
  return terms;
}

template <class Quantity>
facts::Measured<Quantity> measured(Quantity value) {
  return {value, ""};
}
inline facts::Measured<units::GaugePressure> bar(double value) {
  return {units::bars_gauge(value), ""};
}

inline facts::AirRead air_of(const char* space, double percent) {
  facts::AirRead air;
  air.space = space;
  air.oxygen_top = air.oxygen_middle = air.oxygen_bottom = {percent / 100.0, ""};
  return air;
}

inline facts::SheetIssued small_sheet() {
  facts::SheetIssued sheet;
  sheet.sheet_sha256 = sheet.rule_sha256 = "00";
  sheet.rule = "own";
  sheet.program = "0";
  sheet.test_pressure = bar(30);
  sheet.never_above = bar(31);
  sheet.examination_pressure = bar(20);
  sheet.coldest = measured(units::celsius(20));
  sheet.warmest = measured(units::celsius(50));
  return sheet;
}

inline facts::ClearanceGiven given(facts::StepName step, const char* subject = "",
                                   double up_to_bar = 0.0) {
  facts::ClearanceGiven body;
  body.step = step;
  body.subject = subject;
  if (up_to_bar > 0.0) body.up_to = bar(up_to_bar);
  body.second = "Q";
  return body;
}

/// Makes facts as devices do: each numbers its own, and names what it has seen.
class Teller {
 public:
  std::int64_t now_ms = 1'790'000'000'000;

  /// A device that has seen everything told so far.
  facts::Fact tell(const std::string& device, const std::string& person, facts::Body body) {
    sync(device);
    return tell_unsynced(device, person, std::move(body));
  }
  /// A device out of reach: it has seen what it had at its last sync.
  facts::Fact tell_unsynced(const std::string& device, const std::string& person,
                            facts::Body body) {
    facts::Fact fact;
    fact.closing = "C";
    fact.device = device;
    fact.device_seq = ++heads_[device];
    fact.id = device + "-" + std::to_string(fact.device_seq);
    fact.person = person;
    for (const auto& [other, head] : seen_[device]) {
      if (other != device && head > 0) fact.seen.push_back({other, head});
    }
    fact.happened_at_ms = fact.recorded_at_ms = now_ms;
    fact.body = std::move(body);
    return fact;
  }
  void sync(const std::string& device) { seen_[device] = heads_; }
  void minutes_pass(int minutes) { now_ms += minutes * 60'000; }

 private:
  std::map<std::string, int> heads_;
  std::map<std::string, std::map<std::string, int>> seen_;
};

/// Facts told by one device after the other, all in sight of each other.
class Story {
 public:
  Story& by(const std::string& person) {
    person_ = person;
    return *this;
  }
  Story& say(facts::Body body) {
    facts.push_back(teller.tell(device_, person_, std::move(body)));
    return *this;
  }
  Story& from(const std::string& device) {
    device_ = device;
    return *this;
  }

  Teller teller;
  std::vector<facts::Fact> facts;

 private:
  std::string device_ = "A";
  std::string person_ = "L";
};

// Stretches of the small plant's story, each from where the one before it ended.

inline void tell_opened(Story& story) {
  using namespace facts;
  story.say(ClosingStarted{"B", "00"})
      .say(DeviceJoined{{"A"}})
      .say(IsolationMade{"IS1", IsolatedHow::TwoValvesAndTellTale, ""})
      .say(TellTaleSeen{"IS1", true})
      .say(IsolationTried{{"IS1"}})
      .say(ReadingTaken{"G1", bar(0)})
      .say(VentOpened{{"V1"}})
      .say(VentMovingAir{{"V1"}})
      .say(DrainOpened{{"D1"}})
      .say(DrainProved{{"D1"}})
      .say(TemperatureTaken{"TM", Thing::Metal, measured(units::celsius(30))})
      .say(given(StepName::Open))
      .say(BoilerDrained{});
}

inline void tell_inside(Story& story) {
  using namespace facts;
  story.say(ClosureOpened{{"M1"}})
      .say(ClosureOpened{{"M2"}})
      .say(ClosureNotOpened{{"H1"}})
      .say(InternalOut{{"I1"}})
      .say(air_of("SD", 20.9))
      .say(AttendantPosted{"SD", "Q"})
      .say(given(StepName::Enter, "SD"))
      .say(TallyIn{{"SD", "P"}})
      .say(ToolIn{{"SD", "lamp"}})
      .say(ToolOut{{"SD", "lamp"}})
      .say(TallyOut{{"SD", "P"}})
      .say(InternalIn{{"I1"}});
}

inline void tell_plate_ready(Story& story, const char* closure) {
  using namespace facts;
  story.say(ClosureCleaned{{closure}})
      .say(ClosureLookedAt{{closure}})
      .say(PlateMatched{closure, true})
      .say(GasketFitted{closure, "flexible_graphite", "7"});
}

inline void tell_space_closed(Story& story, const char* space, const char* closure) {
  using namespace facts;
  tell_plate_ready(story, closure);
  story.say(SpaceCounted{space, "Q", 0, 0, true, true});
  story.say(given(StepName::CloseLastWayIn, space))
      .say(ClosureNippedUp{{closure}})
      .say(GapsMeasured{closure, {}, GapVerdict::Good});
}

inline void tell_closed(Story& story) {
  tell_space_closed(story, "SD", "M1");
  tell_space_closed(story, "MD", "M2");
}

inline void tell_filled(Story& story) {
  using namespace facts;
  story.say(DrainShut{{"D1"}})
      .say(VentManned{"V1", "Q"})
      .say(given(StepName::Fill))
      .say(FillingStarted{})
      .say(VentRanSolid{{"V1"}})
      .say(FillingStopped{true})
      .say(VentShut{{"V1"}});
}

inline void tell_ready_to_raise(Story& story) {
  using namespace facts;
  story.say(small_sheet())
      .say(GaugeFitted{{"G1"}})
      .say(GaugeFitted{{"G2"}})
      .say(TemperatureTaken{"TW", Thing::Water, measured(units::celsius(30))})
      .say(TemporaryOn{"T1", "SV1"})
      .say(ReliefTried{bar(30.5)})
      .say(MountingIsolated{{"GG"}})
      .say(HangersPinned{})
      .say(PostTaken{Post::Pump, "P"})
      .say(SpaceCounted{"FU", "Q", 0, 0, true, true})
      .say(StopWordChecked{"stop"})
      .say(PeopleClear{});
}

inline void tell_held(Story& story) {
  using namespace facts;
  story.say(given(StepName::RaisePressure, "", 30))
      .say(RaisingStarted{bar(30)})
      .say(ReadingTaken{"G1", bar(30)})
      .say(RaisingStopped{})
      .say(TestValveShut{})
      .say(PumpSideHungOpen{})
      .say(HoldStarted{bar(30)})
      .say(HoldEnded{true, bar(29.5)})
      .say(ReadingTaken{"G1", bar(20)})
      .say(ReadingTaken{"G2", bar(20)})
      .say(air_of("FU", 20.9))
      .say(AttendantPosted{"FU", "Q"});
}

inline void tell_walked(Story& story) {
  using namespace facts;
  story.say(given(StepName::WalkFireSide, "FU")).say(TallyIn{{"FU", "P"}});
  static const Terms terms = small_terms();
  for (const std::string& place : terms.layout().places) {
    story.say(PlaceSeenDry{place, bar(20)});
  }
  story.say(TallyOut{{"FU", "P"}})
      .say(PostTaken{Post::LetDown, "P"})
      .say(BoilerLetDown{})
      .say(ReadingTaken{"G1", bar(0)})
      .say(ReadingTaken{"G2", bar(0)});
}

inline void tell_handed_back(Story& story) {
  using namespace facts;
  story.say(ClosureHardenedUp{{"M1"}})
      .say(ClosureHardenedUp{{"M2"}})
      .say(TemporaryOff{{"T1"}})
      .say(TemporarySeenOff{{"T1"}})
      .say(HangersFreed{})
      .say(MountingPutBack{{"GG"}})
      .say(MountingProved{{"GG"}})
      .say(BoilerNormalised{})
      .say(SpaceCounted{"FU", "Q", 0, 0, true, true});
}

}  // namespace steamworthy::closing
