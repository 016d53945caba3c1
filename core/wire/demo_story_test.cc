#include "wire/demo_story_test.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/sha256.h"
#include "sheet/sheet.h"
#include "testing/examples_test.h"
#include "units/makers.h"
#include "wire/sheet_json.h"

namespace steamworthy::wire {
namespace {

using namespace facts;  // the bodies

constexpr std::int64_t first_morning_ms = 1'793'862'000'000;  // 2026-11-05 07:00 UTC
constexpr int offset_min = 60;
constexpr double reference_head_bar = 0.8;  // of the gauge at the pump, below the reference level

Measured<units::GaugePressure> bar(double value) { return {units::bars_gauge(value), ""}; }
Measured<units::Temperature> celsius(double value) { return {units::celsius(value), ""}; }

/// A UUIDv7 in form; the number of the fact stands for the random bits.
std::string id_of(std::int64_t ms, std::size_t number) {
  return fmt::format("{:08x}-{:04x}-7000-8000-{:012x}", (ms >> 16) & 0xffffffff, ms & 0xffff,
                     number);
}

bool is_opened_this_time(const boiler::Closure& closure) {
  // Superheater and economizer stay shut.
  for (const char* part : {"SI", "SO", "EI", "EO"}) {
    if (closure.part == part) return false;
  }
  return true;
}

std::string sha256_of(const std::string& bytes) { return record::hex(record::sha256(bytes)); }

/// A number of the sheet, in the unit of its suffix.
double figure_of(const sheet::Sheet& sheet, const std::string& key) {
  return units::at_border(sheet::find_figure(sheet, key, sheet.rule_id)->value.value());
}

/// The sheet as computed for the demo boiler. The rule names no examination pressure: the inspector
/// agreed to the working pressure. It names no greatest temperature: the site's limit for touching.
SheetIssued issued_sheet(const boiler::Boiler& boiler) {
  sheet::Request request;
  request.rule_id = "us-marine-ordinary";
  request.work = rules::Work::GasketsOnly;
  request.authority = "the marine inspector of the demo plant";
  request.stated_ceiling = units::bars_gauge(48);
  request.hold = units::minutes(30);
  const sheet::Sheet sheet = sheet::make_sheet(boiler, testing::rule_files(), request);
  SheetIssued issued;
  issued.sheet_sha256 = sha256_of(sheet_json(sheet, true));
  issued.rule = *request.rule_id;
  issued.rule_sha256 = sha256_of(testing::source_file("rules/us-marine-ordinary.toml"));
  issued.program = STEAMWORTHY_VERSION;
  issued.test_pressure = bar(figure_of(sheet, "rules.test_pressure"));
  issued.never_above = bar(figure_of(sheet, "rules.ceiling"));
  issued.examination_pressure = bar(36);
  issued.coldest = celsius(figure_of(sheet, "rules.temperature_from"));
  issued.warmest = celsius(50);
  issued.hold = Measured<units::Duration>{*request.hold, "30 min"};
  return issued;
}

AirRead air(const std::string& space) {
  AirRead read;
  read.space = space;
  read.oxygen_top = read.oxygen_middle = read.oxygen_bottom = {0.209, ""};
  read.flammable = MeasuredNumber{0.0, ""};
  read.instrument = "GD-2";
  return read;
}

}  // namespace

std::vector<PersonEnrolled> demo_people() {
  return {
      {"R. Lind", "Ragna Lind", {"lead_hand"}},     {"K. Aas", "Kari Aas", {"lead_hand"}},
      {"J. Moe", "Jon Moe", {"pump_hand", "hand"}}, {"T. Berg", "Tove Berg", {"hand"}},
      {"S. Dahl", "Siri Dahl", {"attendant"}},      {"A. Holm", "Arne Holm", {"engineer"}},
      {"B. Krog", "Berit Krog", {"inspector"}},     {"M. Ness", "Mons Ness", {"watch_engineer"}}};
}

SiteLimitsSet demo_limits() {
  SiteLimitsSet limits;
  limits.air_holds = Measured<units::Duration>{units::minutes(30), "30 min"};
  limits.count_holds = Measured<units::Duration>{units::minutes(20), "20 min"};
  limits.open_below = celsius(45);
  limits.carbon_monoxide_alarm = MeasuredNumber{20, ""};
  limits.hydrogen_sulfide_alarm = MeasuredNumber{5, ""};
  limits.source = "the demo plant's own instruction";
  return limits;
}

closing::Terms demo_terms() {
  const SiteLimitsSet limits = demo_limits();
  closing::Site site;
  site.air_minutes = static_cast<int>(limits.air_holds->value.si() / 60.0);
  site.count_minutes = static_cast<int>(limits.count_holds->value.si() / 60.0);
  site.open_below = limits.open_below->value;
  site.carbon_monoxide_alarm = limits.carbon_monoxide_alarm->value;
  site.hydrogen_sulfide_alarm = limits.hydrogen_sulfide_alarm->value;
  closing::Terms terms(testing::example_boiler("watertube"), site);
  for (const PersonEnrolled& person : demo_people()) {
    for (const std::string& role : person.roles) {
      terms.let(person.who, value_of<RoleName>(role).value());
    }
  }
  return terms;
}

DemoStory::DemoStory(AtChapter at_chapter, NotClear not_clear, DemoEnd end)
    : closing_(end == DemoEnd::MidWork ? "B1-mid-work" : "B1-2026-11"),
      at_chapter_(std::move(at_chapter)),
      not_clear_(std::move(not_clear)),
      fold_(demo_terms()),
      now_ms_(first_morning_ms) {
  shut_down_and_open();
  work_inside();
  if (end == DemoEnd::MidWork) {
    close_up_half();
    return;
  }
  close_up();
  fill();
  first_test();
  stop_for_the_night();
  repair();
  second_test();
  hand_back();
}

void DemoStory::say(Body body, const std::string& note) {
  Fact fact;
  fact.closing = closing_;
  fact.device = "node";
  fact.device_seq = static_cast<int>(facts_.size()) + 1;
  fact.id = id_of(now_ms_, facts_.size());
  fact.person = person_;
  fact.happened_at_ms = fact.recorded_at_ms = now_ms_;
  fact.utc_offset_min = offset_min;
  fact.body = std::move(body);
  fact.beside.note = note;
  facts_.push_back(fact);
  fold_.add(std::move(fact));
  now_ms_ += 5'000;
}

void DemoStory::give(StepName step, const std::string& subject, double up_to_bar) {
  ClearanceGiven body;
  body.step = step;
  body.subject = subject;
  if (up_to_bar > 0.0) body.up_to = bar(up_to_bar);
  body.second = second_;
  closing::Clearance asked{step, subject, std::nullopt};
  if (up_to_bar > 0.0) asked.up_to = units::bars_gauge(up_to_bar);
  for (const auto& item : closing::outstanding(fold_.state(), fold_.terms(), asked, now_ms_)) {
    not_clear_(std::string(token(step)) + ": " + item.reason.key + " " + item.subject);
  }
  say(body);
}

void DemoStory::count(const std::string& space) {
  say(SpaceCounted{space, second_, 0, 0, true, true});
}

void DemoStory::set_plate(const std::string& closure) {
  say(ClosureCleaned{{closure}});
  say(ClosureLookedAt{{closure}});
  say(PlateMatched{closure, true});
  say(GasketFitted{closure, "flexible_graphite", closure == "FH-A05" ? "G-114" : "G-115"});
}

void DemoStory::end(const std::string& chapter) { at_chapter_(chapter, fold_, now_ms_); }

void DemoStory::shut_down_and_open() {
  const boiler::Boiler& boiler = fold_.terms().boiler();
  say(ClosingStarted{boiler.tag, sha256_of(testing::source_file("examples/watertube.toml"))});
  for (const boiler::Isolation& line : boiler.isolations) {
    const bool is_blank = line.how == boiler::IsolationKind::Blank;
    say(IsolationMade{line.tag, is_blank ? IsolatedHow::Blank : IsolatedHow::TwoValvesAndTellTale,
                      "lock " + line.tag});
    if (!is_blank) say(TellTaleSeen{line.tag, true});
  }
  end("shut down");
  for (const std::string& vent : fold_.terms().layout().vents) {
    say(VentOpened{{vent}});
    say(VentMovingAir{{vent}});
  }
  for (const std::string& drain : fold_.terms().layout().drains) {
    say(DrainOpened{{drain}});
    say(DrainProved{{drain}});
  }
  say(BoilerDrained{});
  say(GaugeFitted{{"TG-1"}});
  say(ReadingTaken{"TG-1", bar(0)});
  say(TemperatureTaken{"TH-2", Thing::Metal, celsius(34)});
  for (const boiler::Isolation& line : boiler.isolations) say(IsolationTried{{line.tag}});
  give(StepName::Open);
  for (const boiler::Closure& closure : boiler.closures) {
    if (is_opened_this_time(closure)) {
      say(ClosureOpened{{closure.tag}});
    } else {
      say(ClosureNotOpened{{closure.tag}});
    }
  }
  end("opened");
}

void DemoStory::work_inside() {
  pass(40);
  for (const char* space : {"SP-SD", "SP-MD"}) {
    say(air(space));
    say(AttendantPosted{space, "S. Dahl"});
    give(StepName::Enter, space);
  }
  say(TallyIn{{"SP-SD", "J. Moe"}});
  say(ToolIn{{"SP-SD", "lamp 3"}});
  for (const char* internal : {"IN-4", "IN-3", "IN-2", "IN-1"}) say(InternalOut{{internal}});
  say(FindingMade{"F1", "SD", Severity::Report, "pits along the water line, up to 0.8 mm"});
  for (int row = 1; row <= 24; ++row) {
    if (row == 3) {
      say(TubesBalled{"CB", 3, 1, 16, BallResult::Passed, 16, 16});
      say(TubesBalled{"CB", 3, 17, 17, BallResult::Stuck, 1, 0}, "the ball does not come out");
      say(TubesBalled{"CB", 3, 18, 30, BallResult::Passed, 13, 13});
    } else {
      say(TubesBalled{"CB", row, 1, 30, BallResult::Passed, 30, 30});
    }
  }
  end("a ball is stuck");
  pass(50);
  say(TubesBalled{"CB", 3, 17, 17, BallResult::Passed, 0, 1},
      "rodded from below: scale; ball back");
  person_ = "A. Holm";
  say(FindingDecided{"F1", Disposition::AsItIs, RoleName::Engineer}, "depth within the allowance");
  person_ = "R. Lind";
  for (const char* internal : {"IN-1", "IN-2", "IN-3", "IN-4"}) say(InternalIn{{internal}});
  say(ToolOut{{"SP-SD", "lamp 3"}});
  say(TallyOut{{"SP-SD", "J. Moe"}});
  end("internals in");
}

void DemoStory::close_up() {
  const boiler::Boiler& boiler = fold_.terms().boiler();
  for (const char* header : {"FH", "RH", "LL", "RL", "LU", "RU"}) {
    say(HeaderLookedInto{header, LookedWith::Scope});
    say(HeaderSealed{header, std::string("S-") + header});
  }
  for (const boiler::Closure& closure : boiler.closures) {
    if (!is_opened_this_time(closure)) continue;
    set_plate(closure.tag);
    if (closure.kind == boiler::ClosureKind::Manhole) continue;
    say(ClosureNippedUp{{closure.tag}});
  }
  end("headers closed");
  for (const char* space : {"SP-SD", "SP-MD"}) {
    const std::string drum = space == std::string("SP-SD") ? "SD" : "MD";
    say(ClosureNippedUp{{drum + "-M2"}});
    count(space);
    give(StepName::CloseLastWayIn, space);
    say(ClosureNippedUp{{drum + "-M1"}});
    for (const char* manhole : {"-M1", "-M2"}) {
      GapsMeasured gaps{drum + manhole, {}, GapVerdict::Good};
      for (const double clock : {12.0, 3.0, 6.0, 9.0}) {
        gaps.gaps.push_back({{clock, ""}, {units::millimetres(clock == 3.0 ? 1.2 : 0.9), ""}});
      }
      say(gaps);
    }
    say(AttendantRelieved{{space}});
  }
  end("closed");
}

void DemoStory::close_up_half() {
  pass(35);
  for (const char* header : {"FH", "RH"}) {
    say(HeaderLookedInto{header, LookedWith::Scope});
    say(HeaderSealed{header, std::string("S-") + header});
  }
  for (const boiler::Closure& closure : fold_.terms().boiler().closures) {
    if (closure.part == "FH") {
      set_plate(closure.tag);
      say(ClosureNippedUp{{closure.tag}});
    } else if (closure.part == "RH") {
      say(ClosureCleaned{{closure.tag}});
      say(ClosureLookedAt{{closure.tag}});
      if (closure.tag != "RH-A03") say(PlateMatched{closure.tag, true});
    } else if (closure.part == "LL") {
      say(ClosureCleaned{{closure.tag}});
    }
  }
  person_ = "T. Berg";
  say(PlateMatched{"RH-A03", false}, "stamped RH-A08: the two were swapped on the bench");
  say(FindingMade{"F2", "RH", Severity::Report, "a score across the seat of RH-A04, 0.2 mm deep"});
  person_ = "R. Lind";
  say(air("SP-SD"));
  give(StepName::Enter, "SP-SD");
  say(TallyIn{{"SP-SD", "J. Moe"}});
  say(TallyIn{{"SP-SD", "T. Berg"}});
  say(ToolIn{{"SP-SD", "lamp 3"}});
  say(ToolIn{{"SP-SD", "feeler gauges 1"}});
  end("half of the headers closed");
}

void DemoStory::fill() {
  say(FillingOrderAgreed{{"SE", "EC"}}, "back-fill the superheater first");
  for (const std::string& drain : fold_.terms().layout().drains) say(DrainShut{{drain}});
  for (const std::string& vent : fold_.terms().layout().vents) say(VentManned{vent, "T. Berg"});
  give(StepName::Fill);
  say(FillingStarted{});
  pass(150);
  for (const std::string& vent : fold_.terms().layout().vents) {
    say(VentRanSolid{{vent}});
    say(VentShut{{vent}});
  }
  say(FillingStopped{true});
  end("filled");
}

void DemoStory::ready_at_the_pump(const std::string& pump_hand) {
  say(TemperatureTaken{"TH-1", Thing::Water, celsius(25.5)});
  say(TemperatureTaken{"TH-2", Thing::Metal, celsius(25)});
  say(PostTaken{Post::Pump, pump_hand});
  say(PostTaken{Post::LetDown, "T. Berg"});
  say(StopWordChecked{"avast"});
  count("SP-FU");
  count("SP-GS");
  say(PeopleClear{});
}

void DemoStory::raise_and_hold(bool met) {
  give(StepName::RaisePressure, "", 45);
  say(TestValveOpened{});
  say(RaisingStarted{bar(45)});
  for (const double stage : {10.0, 20.0, 30.0, 40.0, 45.0}) {
    pass(6);
    say(ReadingTaken{"TG-1", bar(stage)});
    say(ReadingTaken{"TG-2", bar(stage + reference_head_bar)});
  }
  say(RaisingStopped{});
  say(TestValveShut{});
  say(PumpSideHungOpen{});
  say(HoldStarted{bar(45)});
  pass(30);
  say(ReadingTaken{"TG-1", bar(met ? 44.8 : 45.8)});
  say(ReadingTaken{"TG-2", bar((met ? 44.8 : 45.8) + reference_head_bar)});
  say(ResultAccepted{met ? GaugeAnswer::NoLossSeen : GaugeAnswer::Gaining, std::string(64, '3'),
                     STEAMWORTHY_VERSION});
  say(HoldEnded{met, bar(met ? 44.8 : 45.8)});
}

void DemoStory::first_test() {
  say(issued_sheet(fold_.terms().boiler()));
  say(GaugeFitted{{"TG-2"}});
  say(TemporaryOn{"T-1", "SV-1"});
  say(TemporaryOn{"T-2", "SV-2"});
  say(TemporaryOn{"T-3", "SV-3"});
  say(TemporaryOn{"T-4", "MS-1"});
  say(ReliefTried{bar(47.5)});
  for (const char* tag : {"GG-1", "GG-2", "LW-1", "LW-2"}) say(MountingIsolated{{tag}});
  say(HangersPinned{});
  ready_at_the_pump("J. Moe");
  raise_and_hold(false);
  say(LeakFound{"K1", "FC-1.gland", LeakKind::ValveEnd, Passing::In, std::nullopt},
      "pressure rises with the pump side hung open: the feed check passes in");
  say(TellTaleSeen{"IS-2", false});
  end("the feed check passes in");
}

void DemoStory::stop_for_the_night() {
  say(LeakFound{"K2", "FH-A05", LeakKind::Gasket, Passing::Out, MeasuredNumber{20, ""}});
  say(TestStopped{"feed check passes, a gasket leaks, end of the shift"});
  give(StepName::LetDown);
  say(BoilerLetDown{});
  pass(20);
  say(ReadingTaken{"TG-1", bar(0)});
  say(ReadingTaken{"TG-2", bar(0)});
  say(VentOpened{{"VT-1"}});
  give(StepName::LeaveFull);
  say(BoilerLeftFull{""}, "full to the drum vent, vent open, pump disconnected");
  say(BoilerLeftSafe{"K. Aas, inside line 14"});
  say(ShiftHandedOver{"R. Lind", "K. Aas"});
  end("left safe for the night");
}

void DemoStory::repair() {
  pass(9 * 60);
  person_ = "K. Aas";
  second_ = "T. Berg";
  say(IsolationChanged{{"IS-2"}});
  say(IsolationMade{"IS-2", IsolatedHow::Blank, "lock IS-2"}, "blanked at the feed stop");
  say(IsolationTried{{"IS-2"}});
  say(LeakRepaired{"K1", "lapped in; blank between it and the feed line for the test"});
  say(VentMovingAir{{"VT-1"}});
  give(StepName::Drain);
  for (const std::string& drain : fold_.terms().layout().drains) {
    say(DrainOpened{{drain}});
    say(DrainProved{{drain}});
  }
  say(BoilerDrained{});
  give(StepName::BreakJoint, "FH-A05");
  say(ClosureOpened{{"FH-A05"}}, "gasket nicked at four o'clock");
  end("a nicked gasket");
  say(HeaderLookedInto{"FH", LookedWith::Lamp});
  say(HeaderSealed{"FH", "S-FH-2"});
  set_plate("FH-A05");
  say(ClosureNippedUp{{"FH-A05"}});
  say(LeakRepaired{"K2", "new gasket"});
  for (const std::string& drain : fold_.terms().layout().drains) say(DrainShut{{drain}});
  for (const std::string& vent : fold_.terms().layout().vents) {
    say(VentOpened{{vent}});
    say(VentManned{vent, "J. Moe"});
  }
  give(StepName::Fill);
  say(FillingStarted{});
  pass(140);
  for (const std::string& vent : fold_.terms().layout().vents) {
    say(VentRanSolid{{vent}});
    say(VentShut{{vent}});
  }
  say(FillingStopped{true});
  end("filled again");
}

void DemoStory::look_everywhere() {
  for (const char* space : {"SP-FU", "SP-GS"}) {
    say(air(space));
    say(AttendantPosted{space, "S. Dahl"});
    give(StepName::WalkFireSide, space);
    say(TallyIn{{space, "T. Berg"}});
    say(TallyOut{{space, "T. Berg"}});
  }
  for (const std::string& place : fold_.terms().layout().places) {
    if (place == "MS-1.gland") continue;
    say(PlaceSeenDry{place, bar(36)});
  }
  say(LeakFound{"K3", "MS-1.gland", LeakKind::Gland, Passing::Out, MeasuredNumber{2, ""}});
}

void DemoStory::second_test() {
  ready_at_the_pump("J. Moe");
  raise_and_hold(true);
  pass(10);
  say(ReadingTaken{"TG-1", bar(36)});
  say(ReadingTaken{"TG-2", bar(36 + reference_head_bar)});
  look_everywhere();
  end("seen dry");
  person_ = "A. Holm";
  say(LeakWatchedHot{"K3", RoleName::Engineer}, "packing takes up when warm");
  person_ = "B. Krog";
  say(SignatureGiven{"walkdown at examination pressure", RoleName::Inspector, ""});
  person_ = "K. Aas";
  give(StepName::LetDown);
  say(BoilerLetDown{});
  say(ReadingTaken{"TG-1", bar(0)});
  say(ReadingTaken{"TG-2", bar(0)});
  end("passed");
}

void DemoStory::hand_back() {
  for (const boiler::Closure& closure : fold_.terms().boiler().closures) {
    if (!is_opened_this_time(closure)) continue;
    give(StepName::Tighten, closure.tag);
    say(ClosureHardenedUp{{closure.tag}});
  }
  for (const char* number : {"T-1", "T-2", "T-3", "T-4"}) {
    say(TemporaryOff{{number}});
    say(TemporarySeenOff{{number}});
  }
  for (const char* tag : {"GG-1", "GG-2", "LW-1", "LW-2"}) {
    say(MountingPutBack{{tag}});
    say(MountingProved{{tag}});
  }
  say(HangersFreed{});
  say(BoilerNormalised{});
  count("SP-FU");
  count("SP-GS");
  end("normalised");
  give(StepName::TakeOver);
  say(BoilerGiven{});
  person_ = "M. Ness";
  say(BoilerReceived{});
  end("taken over");
}

}  // namespace steamworthy::wire
