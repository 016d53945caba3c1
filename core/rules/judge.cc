#include "rules/judge.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "rules/input_names.h"
#include "rules/rounding.h"
#include "units/makers.h"

namespace steamworthy::rules {
namespace {

using units::GaugePressure;
using units::Temperature;
using working::Message;
using working::Origin;

bool binds_at(const Window& window, Stage stage) {
  return window.stage == stage || window.stage == Stage::UnderTest;
}

WindowJudgement against(const Window& window, Temperature found) {
  if (window.from && below(found, window.from->value)) {
    return {WindowVerdict::TooCold,
            {"rules.too_cold",
             {{"found", units::measure(found)}, {"limit", units::measure(window.from->value)}}}};
  }
  if (window.to && above(found, window.to->value)) {
    return {WindowVerdict::TooHot,
            {"rules.too_hot",
             {{"found", units::measure(found)}, {"limit", units::measure(window.to->value)}}}};
  }
  return {WindowVerdict::Within, {}};
}

}  // namespace

WindowJudgement judge_temperature(const Rule& rule, std::optional<BoilerKind> boiler, Stage stage,
                                  Medium medium, Temperature temperature) {
  WindowJudgement result{WindowVerdict::NotStated, {"rules.not_stated", {}}};
  std::optional<WindowVerdict> if_boiler_were;  // what windows of some kinds say, while they agree
  bool kinds_agree = true;
  for (const Window& window : rule.windows) {
    if (window.medium != medium || !binds_at(window, stage)) continue;
    const bool hangs_on_kind = !window.boilers.empty();
    if (hangs_on_kind && boiler &&
        std::find(window.boilers.begin(), window.boilers.end(), *boiler) == window.boilers.end()) {
      continue;
    }
    const WindowJudgement judged = against(window, temperature);
    if (hangs_on_kind && !boiler) {
      if (if_boiler_were && *if_boiler_were != judged.verdict) kinds_agree = false;
      if_boiler_were = judged.verdict;
    }
    // One window broken is enough; within one is not within all.
    if (result.verdict == WindowVerdict::NotStated || result.verdict == WindowVerdict::Within) {
      result = judged;
    }
  }
  if (!kinds_agree) return {WindowVerdict::CannotTell, missing_input("boiler kind")};
  return result;
}

DropJudgement judge_drop(const Rule& rule, GaugePressure start, GaugePressure end,
                         units::Duration elapsed) {
  if (start <= GaugePressure{}) {
    throw OutOfRange("rules.drop_start",
                     fmt::format("the pressure at the start of the drop test is {} bar gauge; it "
                                 "must be above 0",
                                 units::in_bars_gauge(start)));
  }
  if (elapsed < units::Duration{}) {
    throw OutOfRange("rules.drop_elapsed",
                     fmt::format("the drop test lasted {} min; it cannot be below 0",
                                 units::in_minutes(elapsed)));
  }
  DropJudgement result;
  result.least = working::unknown("rules.drop_least", rule.id, {"rules.not_stated", {}});
  result.why = {"rules.not_stated", {}};
  if (!rule.drop) return result;

  const AllowedDrop& allowed = *rule.drop;
  const std::string& source = allowed.source.empty() ? rule.source.key : allowed.source;
  const GaugePressure least = GaugePressure{} + (1.0 - allowed.fraction) * start.from_origin();
  working::Working working;
  working.formula = "p_x = (1 - f) p";
  working.method = "rules";
  working.sources = {source};
  working.inputs = {
      {"f", "rules.drop_share", units::measure_percent(allowed.fraction), Origin::Rule, source},
      {"p", "input.drop_start", units::measure(start), Origin::Stated, ""}};
  working.remarks = {{"rules.met_is_not_tight", {}}};
  result.least =
      working::known("rules.drop_least", rule.id, units::measure(least), std::move(working));

  const bool long_enough = elapsed >= allowed.within.value;
  const bool kept = !below(end, least);
  const std::vector<std::pair<std::string, working::Value>> values{
      {"end", units::measure(end)},
      {"least", units::measure(least)},
      {"elapsed", units::measure(elapsed)},
      {"within", units::measure(allowed.within.value)}};
  if (kept && long_enough) {
    result.verdict = DropVerdict::RuleMet;
    result.why = {"rules.drop_met", values};
  } else if (!kept && elapsed <= allowed.within.value) {
    result.verdict = DropVerdict::RuleNotMet;
    result.why = {"rules.drop_not_met", values};
  } else {
    result.verdict = DropVerdict::CannotTell;
    result.why = {kept ? "rules.drop_too_short" : "rules.drop_not_read_in_time", values};
  }
  return result;
}

}  // namespace steamworthy::rules
