// Putting measurements to a rule: temperatures to windows, a fall to the allowed drop.
#pragma once

#include <optional>

#include "rules/circumstances.h"
#include "rules/rule.h"
#include "working/figure.h"

namespace steamworthy::rules {

enum class WindowVerdict { Within, TooCold, TooHot, NotStated, CannotTell };

struct WindowJudgement {
  WindowVerdict verdict = WindowVerdict::NotStated;
  working::Message why;  ///< limit and what was found; empty when within
};

/// A temperature at a stage against every window of the rule that binds there.
/// A window for the water under test binds on filling and at the examination too. With windows
/// that differ by kind of boiler and a kind that is not told the answer is CannotTell, unless all
/// agree.
WindowJudgement judge_temperature(const Rule& rule, std::optional<BoilerKind> boiler, Stage stage,
                                  Medium medium, units::Temperature temperature);

/// Meeting a rule about falling pressure is not being tight: a boiler of 10 m3 may lose 190 mL
/// a minute and keep within 10 % in 15 minutes. So there is no such word here.
enum class DropVerdict { RuleMet, RuleNotMet, NotStated, CannotTell };

struct DropJudgement {
  DropVerdict verdict = DropVerdict::NotStated;
  working::Figure least;  ///< "rules.drop_least": what it might have fallen to
  working::Message why;
};

/// A fall from `start` to `end` in `elapsed` against the rule's allowed drop.
///
///   met when  end >= (1 - f) start  and  elapsed >= the rule's time
///
/// After a shorter time a fall within the share cannot tell; after a longer time a fall beyond
/// the share cannot tell, since the share at the rule's time was not read.
///
/// Throws    OutOfRange "rules.drop_start" if start is not above zero gauge;
///           "rules.drop_elapsed" if elapsed is below zero.
/// Checked   judge_test.cc: 750 psi to 676 psi in 15 min [UFC-3-430-07].
DropJudgement judge_drop(const Rule& rule, units::GaugePressure start, units::GaugePressure end,
                         units::Duration elapsed);

}  // namespace steamworthy::rules
