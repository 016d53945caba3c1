// The alphabets of the exploration.
#include "closing/explore_test.h"

namespace steamworthy::closing {
namespace {

using namespace facts;  // the bodies

Move tell(Body body, std::string person = "L") {
  return {Move::Kind::Tell, std::move(person), std::move(body), 0};
}
Move late(Body body) { return {Move::Kind::TellLate, "Q", std::move(body), 0}; }
Move hold_back(Body body) { return {Move::Kind::HoldBack, "Q", std::move(body), 0}; }
Move give(ClearanceGiven body) { return {Move::Kind::Give, "L", std::move(body), 0}; }
Move sync() { return {Move::Kind::Sync, "Q", {}, 0}; }
Move arrive() { return {Move::Kind::Arrive, "Q", {}, 0}; }
Move wait(int minutes) { return {Move::Kind::Wait, "", {}, minutes}; }

SpaceCounted count(const char* space) { return {space, "Q", 0, 0, true, true}; }
TemperatureTaken metal(double c) { return {"TM", Thing::Metal, measured(units::celsius(c))}; }

Scenario opening() {
  return {"opening",
          [](Story& story) { tell_opened(story); },
          {tell(ReadingTaken{"G1", bar(0)}),
           tell(ReadingTaken{"G1", bar(0.5)}),
           tell(ReadingTaken{"G2", bar(0.5)}),
           tell(VentShut{{"V1"}}),
           tell(VentOpened{{"V1"}}),
           tell(VentMovingAir{{"V1"}}),
           tell(IsolationChanged{{"IS1"}}),
           tell(IsolationMade{"IS1", IsolatedHow::TwoValvesAndTellTale, ""}),
           tell(IsolationMade{"IS1", IsolatedHow::StopCheck, ""}),
           tell(TellTaleSeen{"IS1", true}),
           tell(TellTaleSeen{"IS1", false}),
           tell(metal(60)),
           tell(metal(30)),
           tell(FillingStarted{}),
           tell(DrainProved{{"D1"}}),
           tell(BoilerDrained{}),
           tell(ShiftHandedOver{"L", "N"}),
           give(given(StepName::Open)),
           late(IsolationChanged{{"IS1"}}),
           late(ReadingTaken{"G1", bar(0.5)}),
           sync()},
          {{StepName::Open, "", {}},
           {StepName::BreakJoint, "M1", {}},
           {StepName::Tighten, "M1", {}},
           {StepName::Strike, "M1", {}},
           {StepName::Drain, "", {}},
           {StepName::LeaveFull, "", {}}}};
}

Scenario inside() {
  return {"inside",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_plate_ready(story, "M1");
            story.say(count("SD"));
          },
          {tell(TallyIn{{"SD", "P"}}), tell(TallyOut{{"SD", "P"}}), tell(ToolIn{{"SD", "lamp"}}),
           tell(ToolOut{{"SD", "lamp"}}), tell(count("SD")),
           tell(SpaceCounted{"SD", "L", 0, 0, true, true}),
           tell(SpaceCounted{"SD", "Q", 1, 0, true, true}),
           tell(SpaceCounted{"SD", "Q", 0, 0, false, true}),
           give(given(StepName::CloseLastWayIn, "SD")), tell(ShiftHandedOver{"L", "N"}),
           late(TallyIn{{"SD", "Q"}}), late(TallyOut{{"SD", "Q"}}), hold_back(TallyIn{{"SD", "Q"}}),
           arrive(), sync(), tell(DeviceLost{"B", "Q"}), wait(10), tell(ClosureNippedUp{{"M1"}}),
           tell(ClosureOpened{{"M1"}})},
          {{StepName::CloseLastWayIn, "SD", {}}}};
}

Scenario entering() {
  return {"entering",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
          },
          {tell(air_of("SD", 20.9)),
           tell(air_of("SD", 19.0)),
           tell(air_of("SD", 20.0)),
           tell(AttendantRelieved{{"SD"}}),
           tell(AttendantPosted{"SD", "Q"}),
           tell(IsolationChanged{{"IS1"}}),
           tell(TellTaleSeen{"IS1", false}),
           tell(IsolationMade{"IS1", IsolatedHow::Blank, ""}),
           tell(TellTaleSeen{"IS1", true}),
           tell(IsolationTried{{"IS1"}}),
           tell(FillingStarted{}),
           tell(FillingStopped{false}),
           tell(BoilerDrained{}),
           tell(ShiftHandedOver{"L", "N"}),
           give(given(StepName::Enter, "SD")),
           tell(TallyIn{{"SD", "P"}}),
           late(air_of("SD", 19.0)),
           late(AttendantRelieved{{"SD"}}),
           late(IsolationChanged{{"IS1"}}),
           sync(),
           wait(10)},
          {{StepName::Enter, "SD", {}}}};
}

Scenario filling() {
  return {"filling",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            story.say(DrainShut{{"D1"}}).say(VentManned{"V1", "Q"});
          },
          {late(TallyIn{{"SD", "Q"}}),
           late(TallyOut{{"SD", "Q"}}),
           sync(),
           tell(ClosureTouched{"M1", TouchedHow::Slackened}),
           tell(ClosureOpened{{"M1"}}),
           tell(ClosureNippedUp{{"M1"}}),
           tell(count("SD")),
           give(given(StepName::CloseLastWayIn, "SD")),
           tell(PlateMatched{"M1", false}),
           tell(PlateMatched{"M1", true}),
           tell(GapsMeasured{"M1", {}, GapVerdict::Report}),
           tell(GapsMeasured{"M1", {}, GapVerdict::Good}),
           tell(InternalOut{{"I1"}}),
           tell(InternalIn{{"I1"}}),
           tell(DrainOpened{{"D1"}}),
           tell(DrainShut{{"D1"}}),
           tell(VentShut{{"V1"}}),
           tell(VentOpened{{"V1"}}),
           tell(VentManned{"V1", "Q"}),
           tell(ShiftHandedOver{"L", "N"}),
           give(given(StepName::Fill)),
           late(ClosureOpened{{"M2"}})},
          {{StepName::Fill, "", {}}}};
}

Scenario bores() {
  return {
      "bores",
      [](Story& story) {
        tell_opened(story);
        tell_inside(story);
        tell_closed(story);
        story.say(DrainShut{{"D1"}}).say(VentManned{"V1", "Q"});
      },
      {tell(HeaderSealBroken{{"HD"}}), tell(HeaderLookedInto{"HD", LookedWith::Lamp}),
       tell(HeaderSealed{"HD", ""}), tell(TubesBalled{"CB", 1, 1, 1, BallResult::Stuck, 1, 0}),
       tell(TubesBalled{"CB", 1, 1, 1, BallResult::Passed, 0, 1}),
       tell(TubesBalled{"CB", 1, 1, 1, BallResult::NotTried, 0, 0}),
       tell(TubesBalled{"CB", 1, 1, 1, BallResult::Passed, 0, 0}),
       tell(FindingMade{"F1", "M1", Severity::Report, "a pit"}),
       tell(FindingDecided{"F1", Disposition::AsItIs, RoleName::Engineer}, "E"),
       tell(FindingDecided{"F1", Disposition::AsItIs, RoleName::Engineer}, "P"),
       late(HeaderSealBroken{{"HD"}}), late(TubesBalled{"CB", 1, 1, 1, BallResult::Stuck, 1, 0}),
       sync(), give(given(StepName::Fill))},
      {{StepName::Fill, "", {}}}};
}

Scenario raising() {
  return {"raising",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
            tell_ready_to_raise(story);
          },
          {tell(TallyIn{{"FU", "P"}}), tell(TallyOut{{"FU", "P"}}), late(TallyIn{{"FU", "Q"}}),
           late(TallyOut{{"FU", "Q"}}), tell(count("FU")), sync(), tell(PeopleClear{}),
           tell(StopWordChecked{"stop"}), tell(ShiftHandedOver{"L", "N"}),
           give(given(StepName::RaisePressure, "", 30)), tell(metal(10)), tell(metal(30)),
           tell(ContactLost{Post::Pump}), tell(ContactRegained{Post::Pump}), wait(10),
           late(ClosureTouched{"H1", TouchedHow::Struck}), tell(WayInOpened{{"W3"}})},
          {{StepName::RaisePressure, "", units::bars_gauge(30)}}};
}

Scenario gear() {
  return {"gear",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
            tell_ready_to_raise(story);
          },
          {tell(GaugeRemoved{{"G2"}}),
           tell(GaugeFitted{{"G2"}}),
           tell(TemporaryOff{{"T1"}}),
           tell(TemporaryOn{"T1", "SV1"}),
           tell(MountingPutBack{{"GG"}}),
           tell(MountingIsolated{{"GG"}}),
           tell(HangersFreed{}),
           tell(HangersPinned{}),
           tell(PostLeft{Post::Pump}),
           tell(PostTaken{Post::Pump, "P"}),
           tell(VentOpened{{"V1"}}),
           tell(VentShut{{"V1"}}),
           tell(VentRanSolid{{"V1"}}),
           tell(FillingStarted{}),
           tell(FillingStopped{true}),
           tell(BoilerDrained{}),
           give(given(StepName::RaisePressure, "", 30)),
           late(TemporaryOff{{"T1"}}),
           late(MountingPutBack{{"GG"}}),
           tell(ClosureTouched{"M2", TouchedHow::Slackened}),
           tell(ReliefTried{bar(32)})},
          {{StepName::RaisePressure, "", units::bars_gauge(30)},
           {StepName::RaisePressure, "", units::bars_gauge(31)},
           {StepName::RaisePressure, "", std::nullopt}}};
}

Scenario walking() {
  return {"walking",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
            tell_ready_to_raise(story);
            tell_held(story);
            story.say(PostTaken{Post::LetDown, "P"});
          },
          {give(given(StepName::WalkFireSide, "FU")),
           tell(TallyIn{{"FU", "P"}}),
           tell(TallyOut{{"FU", "P"}}),
           tell(HoldStarted{bar(30)}),
           tell(HoldEnded{true, bar(29)}),
           tell(HoldEnded{false, bar(20)}),
           tell(ReadingTaken{"G1", bar(20)}),
           tell(ReadingTaken{"G2", bar(20)}),
           tell(ReadingTaken{"G1", bar(21)}),
           tell(RaisingStarted{bar(30)}),
           tell(count("FU")),
           tell(PeopleClear{}),
           give(given(StepName::RaisePressure, "", 30)),
           tell(air_of("FU", 19.0)),
           tell(air_of("FU", 20.9)),
           tell(AttendantRelieved{{"FU"}}),
           tell(IsolationChanged{{"IS1"}}),
           tell(PostLeft{Post::LetDown}),
           tell(BoilerLetDown{}),
           tell(VentOpened{{"V1"}}),
           late(AttendantRelieved{{"FU"}}),
           sync()},
          {{StepName::WalkFireSide, "FU", {}},
           {StepName::Tighten, "M1", {}},
           {StepName::LetDown, "", {}},
           {StepName::Drain, "", {}},
           {StepName::LeaveFull, "", {}},
           {StepName::RaisePressure, "", units::bars_gauge(30)}}};
}

void tell_all(Story& story) {
  tell_opened(story);
  tell_inside(story);
  tell_closed(story);
  tell_filled(story);
  tell_ready_to_raise(story);
  tell_held(story);
  tell_walked(story);
  tell_handed_back(story);
}

Scenario handing_back() {
  return {"handing back",
          [](Story& story) { tell_all(story); },
          {tell(TemporaryOn{"T1", "SV1"}),
           tell(TemporaryOff{{"T1"}}),
           tell(TemporarySeenOff{{"T1"}}),
           tell(ClosureTouched{"H1", TouchedHow::Tightened}),
           tell(ClosureTouched{"M1", TouchedHow::Slackened}),
           tell(ClosureHardenedUp{{"M1"}}),
           tell(PlaceSeenDry{"H1", bar(20)}),
           tell(PlaceSeenDry{"H1", bar(10)}),
           tell(MountingIsolated{{"GG"}}),
           tell(MountingPutBack{{"GG"}}),
           tell(MountingProved{{"GG"}}),
           tell(HangersPinned{}),
           tell(HangersFreed{}),
           tell(count("FU")),
           late(TallyIn{{"FU", "Q"}}),
           late(TallyOut{{"FU", "Q"}}),
           sync(),
           give(given(StepName::TakeOver)),
           tell(BoilerGiven{}),
           tell(BoilerReceived{}, "W"),
           tell(ShiftHandedOver{"L", "N"})},
          {{StepName::TakeOver, "", {}}, {StepName::Steam, "", {}}}};
}

Scenario leaks() {
  const auto found = [](LeakKind at) { return LeakFound{"K1", "H1", at, Passing::Out, {}}; };
  return {"leaks",
          [](Story& story) { tell_all(story); },
          {tell(found(LeakKind::Gasket)),
           tell(found(LeakKind::TubeJoint)),
           tell(LeakRepaired{"K1", "remade"}),
           tell(PlaceSeenDry{"H1", bar(20)}),
           tell(PlaceSeenDry{"H1", bar(10)}),
           tell(LeakWatchedHot{"K1", RoleName::Engineer}, "E"),
           tell(LeakWatchedHot{"K1", RoleName::Engineer}, "P"),
           tell(HoldStarted{bar(30)}),
           tell(HoldEnded{false, bar(20)}),
           tell(HoldEnded{true, bar(29)}),
           tell(ClosureOpened{{"H1"}}),
           tell(ClosureNippedUp{{"H1"}}),
           tell(ClosureHardenedUp{{"H1"}}),
           late(found(LeakKind::Gasket)),
           late(ClosureTouched{"M1", TouchedHow::Struck}),
           sync(),
           give(given(StepName::TakeOver)),
           tell(FindingMade{"F1", "M1", Severity::Stop, "a crack"}),
           tell(FindingDecided{"F1", Disposition::AsItIs, RoleName::Engineer}, "E"),
           tell(Unread{"closure.exploded", 1, "{}", "facts.unknown_kind"})},
          {{StepName::TakeOver, "", {}}, {StepName::Steam, "", {}}}};
}

Scenario alarms_and_the_pen() {
  return {
      "alarms",
      [](Story& story) {
        tell_opened(story);
        tell_inside(story);
        tell_plate_ready(story, "M1");
        story.say(count("SD"));
      },
      {tell(given(StepName::CloseLastWayIn, "SD")), late(given(StepName::CloseLastWayIn, "SD")),
       tell(AlarmRaised{"x", "alarm.inside"}), tell(AlarmTaken{"x", RoleName::LeadHand, ""}, "L"),
       tell(AlarmTaken{"x", RoleName::LeadHand, ""}, "P"),
       tell(AlarmTaken{"x", RoleName::Hand, ""}, "P"), late(TallyIn{{"SD", "Q"}}),
       late(TallyOut{{"SD", "Q"}}), tell(count("SD")), tell(PenHandedOn{"B"}), sync(),
       tell(ClearanceLapsed{{StepName::CloseLastWayIn, "SD", {}}})},
      {{StepName::CloseLastWayIn, "SD", {}}}};
}

/// The facts of a stretch as moves, so that they are told in every order and left out in every way.
std::vector<Move> moves_of(void (*stretch)(Story&)) {
  Story story;
  stretch(story);
  std::vector<Move> moves;
  for (const Fact& fact : story.facts) moves.push_back(tell(fact.body));
  return moves;
}

void tell_shut_down(Story& story) {
  story.say(IsolationMade{"IS1", IsolatedHow::TwoValvesAndTellTale, ""})
      .say(TellTaleSeen{"IS1", true})
      .say(IsolationTried{{"IS1"}})
      .say(ReadingTaken{"G1", bar(0)})
      .say(VentOpened{{"V1"}})
      .say(VentMovingAir{{"V1"}})
      .say(DrainProved{{"D1"}})
      .say(metal(30));
}

Scenario shut_down() {
  return {"shut down",
          [](Story& story) {
            story.say(ClosingStarted{"B", "00"}).say(DeviceJoined{{"A"}});
          },
          moves_of(tell_shut_down),
          {{StepName::Open, "", {}}, {StepName::BreakJoint, "M1", {}}, {StepName::Drain, "", {}}}};
}

Scenario full() {
  return {"full",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
          },
          {tell(VentOpened{{"V1"}}), tell(VentMovingAir{{"V1"}}), tell(air_of("MD", 20.9)),
           tell(AttendantPosted{"MD", "Q"}), tell(BoilerDrained{}), tell(DrainProved{{"D1"}}),
           tell(LevelSeen{measured(units::Level::from_si(1.0))}),
           tell(LevelSeen{measured(units::Level::from_si(1.9))})},
          {{StepName::Open, "", {}},
           {StepName::Enter, "MD", {}},
           {StepName::BreakJoint, "M1", {}},
           {StepName::LeaveFull, "", {}}}};
}

Scenario making_ready() {
  std::vector<Move> moves = moves_of(tell_ready_to_raise);
  moves.push_back(sync());
  return {"making ready",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
          },
          moves,
          {{StepName::RaisePressure, "", units::bars_gauge(30)}}};
}

Scenario holding() {
  Story held;
  tell_held(held);
  std::vector<Move> moves;
  for (std::size_t i = 3; i < held.facts.size(); ++i) moves.push_back(tell(held.facts[i].body));
  moves.push_back(tell(HoldEnded{false, bar(20)}));
  return {"holding",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
            tell_ready_to_raise(story);
            story.say(given(StepName::RaisePressure, "", 30)).say(RaisingStarted{bar(30)});
            story.say(ReadingTaken{"G1", bar(30)});
          },
          moves,
          {{StepName::WalkFireSide, "FU", {}}}};
}

Scenario making_good() {
  std::vector<Move> moves = moves_of(tell_handed_back);
  moves.push_back(tell(PlaceSeenDry{"H1", bar(20)}));
  moves.push_back(sync());
  return {"making good",
          [](Story& story) {
            tell_opened(story);
            tell_inside(story);
            tell_closed(story);
            tell_filled(story);
            tell_ready_to_raise(story);
            tell_held(story);
            tell_walked(story);
            // One place was forgotten.
            for (Fact& fact : story.facts) {
              const auto* dry = std::get_if<PlaceSeenDry>(&fact.body);
              if (dry != nullptr && dry->place == "H1") fact.body = RemarkMade{"not looked at"};
            }
          },
          moves,
          {{StepName::TakeOver, "", {}}, {StepName::Steam, "", {}}}};
}

}  // namespace

const std::vector<Scenario>& scenarios() {
  static const std::vector<Scenario> all = {opening(),
                                            entering(),
                                            inside(),
                                            filling(),
                                            bores(),
                                            raising(),
                                            gear(),
                                            walking(),
                                            handing_back(),
                                            leaks(),
                                            alarms_and_the_pen(),
                                            shut_down(),
                                            full(),
                                            making_ready(),
                                            holding(),
                                            making_good()};
  return all;
}

}  // namespace steamworthy::closing
