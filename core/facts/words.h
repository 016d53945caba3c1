// Words: the enumerations of fact bodies and their tokens, one for ever.
//
// token(value) is the word in the body; value_of<Enum>() reads one. The key of its English is
// "<family>.<token>".
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace steamworthy::facts {

enum class IsolatedHow { TwoValvesAndTellTale, Blank, StopCheck, OneValve };
enum class LookedWith { Lamp, Mirror, Scope };
enum class BallResult { Passed, Stuck, NotTried };
enum class Severity { Note, Report, Stop };
enum class Disposition { AsItIs, Repaired, Watch, StopTheJob };
enum class TouchedHow { Tightened, Struck, Slackened };
enum class GapVerdict { Good, Report };
enum class LeakKind { Gasket, Gland, TubeJoint, Weld, Plug, Crack, ValveEnd };
enum class Passing { None, Out, In };
enum class Thing { Water, Metal, Air };
enum class Post { Pump, TestValve, Vent, LetDown, Drain, Attendant, Gag, Lookout };
enum class GaugeAnswer { NoLossSeen, Losing, Gaining, CannotTell };
enum class RoleName { LeadHand, Hand, PumpHand, Attendant, Engineer, Inspector, WatchEngineer };
enum class StepName {
  Open,
  Enter,
  CloseLastWayIn,
  Fill,
  RaisePressure,
  WalkFireSide,
  Tighten,
  Strike,
  BreakJoint,
  LetDown,
  Drain,
  LeaveFull,
  TakeOver,
  Steam,
};
enum class LaidUp { Dry, Wet, Nitrogen };
enum class Precision { Second, Minute, Hour, Day };

template <class Enum>
struct Words;  ///< `family` and `table`

#define STEAMWORTHY_FACT_WORDS(Enum, name, count, ...)                                             \
  template <>                                                                                      \
  struct Words<Enum> {                                                                             \
    static constexpr std::string_view family = name;                                               \
    static constexpr std::array<std::pair<Enum, std::string_view>, count> table = {{__VA_ARGS__}}; \
  }

// clang-format off
STEAMWORTHY_FACT_WORDS(IsolatedHow, "isolated_how", 4,
    {IsolatedHow::TwoValvesAndTellTale, "two_valves_and_tell_tale"}, {IsolatedHow::Blank, "blank"},
    {IsolatedHow::StopCheck, "stop_check"}, {IsolatedHow::OneValve, "one_valve"});
STEAMWORTHY_FACT_WORDS(LookedWith, "looked_with", 3,
    {LookedWith::Lamp, "lamp"}, {LookedWith::Mirror, "mirror"}, {LookedWith::Scope, "scope"});
STEAMWORTHY_FACT_WORDS(BallResult, "ball_result", 3,
    {BallResult::Passed, "passed"}, {BallResult::Stuck, "stuck"},
    {BallResult::NotTried, "not_tried"});
STEAMWORTHY_FACT_WORDS(Severity, "severity", 3,
    {Severity::Note, "note"}, {Severity::Report, "report"}, {Severity::Stop, "stop"});
STEAMWORTHY_FACT_WORDS(Disposition, "disposition", 4,
    {Disposition::AsItIs, "as_it_is"}, {Disposition::Repaired, "repaired"},
    {Disposition::Watch, "watch"}, {Disposition::StopTheJob, "stop_the_job"});
STEAMWORTHY_FACT_WORDS(TouchedHow, "touched_how", 3,
    {TouchedHow::Tightened, "tightened"}, {TouchedHow::Struck, "struck"},
    {TouchedHow::Slackened, "slackened"});
STEAMWORTHY_FACT_WORDS(GapVerdict, "gap_verdict", 2,
    {GapVerdict::Good, "good"}, {GapVerdict::Report, "report"});
STEAMWORTHY_FACT_WORDS(LeakKind, "leak_kind", 7,
    {LeakKind::Gasket, "gasket"}, {LeakKind::Gland, "gland"},
    {LeakKind::TubeJoint, "tube_joint"}, {LeakKind::Weld, "weld"}, {LeakKind::Plug, "plug"},
    {LeakKind::Crack, "crack"}, {LeakKind::ValveEnd, "valve_end"});
STEAMWORTHY_FACT_WORDS(Passing, "passing", 3,
    {Passing::None, "none"}, {Passing::Out, "out"}, {Passing::In, "in"});
STEAMWORTHY_FACT_WORDS(Thing, "thing", 3,
    {Thing::Water, "water"}, {Thing::Metal, "metal"}, {Thing::Air, "air"});
STEAMWORTHY_FACT_WORDS(Post, "post", 8,
    {Post::Pump, "pump"}, {Post::TestValve, "test_valve"}, {Post::Vent, "vent"},
    {Post::LetDown, "let_down"}, {Post::Drain, "drain"}, {Post::Attendant, "attendant"},
    {Post::Gag, "gag"}, {Post::Lookout, "lookout"});
STEAMWORTHY_FACT_WORDS(GaugeAnswer, "gauge_result", 4,
    {GaugeAnswer::NoLossSeen, "no_loss_seen"}, {GaugeAnswer::Losing, "losing"},
    {GaugeAnswer::Gaining, "gaining"}, {GaugeAnswer::CannotTell, "cannot_tell"});
STEAMWORTHY_FACT_WORDS(RoleName, "role", 7,
    {RoleName::LeadHand, "lead_hand"}, {RoleName::Hand, "hand"},
    {RoleName::PumpHand, "pump_hand"}, {RoleName::Attendant, "attendant"},
    {RoleName::Engineer, "engineer"}, {RoleName::Inspector, "inspector"},
    {RoleName::WatchEngineer, "watch_engineer"});
STEAMWORTHY_FACT_WORDS(StepName, "clearance", 14,
    {StepName::Open, "open"}, {StepName::Enter, "enter"},
    {StepName::CloseLastWayIn, "close_last_way_in"}, {StepName::Fill, "fill"},
    {StepName::RaisePressure, "raise_pressure"}, {StepName::WalkFireSide, "walk_fire_side"},
    {StepName::Tighten, "tighten"}, {StepName::Strike, "strike"},
    {StepName::BreakJoint, "break_joint"}, {StepName::LetDown, "let_down"},
    {StepName::Drain, "drain"}, {StepName::LeaveFull, "leave_full"},
    {StepName::TakeOver, "take_over"}, {StepName::Steam, "steam"});
STEAMWORTHY_FACT_WORDS(LaidUp, "laid_up", 3,
    {LaidUp::Dry, "dry"}, {LaidUp::Wet, "wet"}, {LaidUp::Nitrogen, "nitrogen"});
STEAMWORTHY_FACT_WORDS(Precision, "precision", 4,
    {Precision::Second, "second"}, {Precision::Minute, "minute"}, {Precision::Hour, "hour"},
    {Precision::Day, "day"});
// clang-format on

#undef STEAMWORTHY_FACT_WORDS

template <class Enum>
std::string_view token(Enum value) {
  for (const auto& [known, word] : Words<Enum>::table) {
    if (known == value) return word;
  }
  return {};
}

template <class Enum>
std::optional<Enum> value_of(std::string_view written) {
  for (const auto& [value, word] : Words<Enum>::table) {
    if (word == written) return value;
  }
  return std::nullopt;
}

template <class Enum>
std::vector<std::string_view> all_words() {
  std::vector<std::string_view> all;
  for (const auto& [value, word] : Words<Enum>::table) all.push_back(word);
  return all;
}

}  // namespace steamworthy::facts
