// Standing: where a closing stands, in the pieces that several papers show of it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "closing/outstanding.h"
#include "report/blocks.h"

namespace steamworthy::report {

/// The stage in words.
std::string stage_now(const Context& context);
/// The last reading of each gauge that is fitted: "TG-1 44.80 bar gauge; TG-2 ...".
std::string gauges_now(const Context& context);
/// The last reading of that thing by each thermometer.
std::string temperatures_now(const Context& context, facts::Thing of);
/// The test pressure of the sheet that was issued last; nothing without one.
std::optional<units::GaugePressure> test_pressure(const Filled& filled);

/// What was seen dry of all places to look, and by whom.
struct Seen {
  std::size_t places = 0;
  std::size_t dry = 0;
  std::optional<units::GaugePressure> lowest;    ///< under which, at the reference level
  std::map<std::string, const facts::Fact*> by;  ///< each person's last entry
  const facts::Fact* first = nullptr;
  const facts::Fact* last = nullptr;
};
Seen seen_dry(const Filled& filled);

/// What stands in the way of a step, a row a reason with all that it is about; a sentence where
/// there is nothing.
void outstanding_table(const Context& context, paper::Flow& flow, facts::StepName step);
/// Clearances that lapsed, a row a step and cause.
void lapsed_table(const Context& context, paper::Flow& flow);
/// Who and what is inside now, a row each.
void inside_table(const Context& context, paper::Flow& flow);
/// Temporaries that are on, and isolations that stand.
void still_on_table(const Context& context, paper::Flow& flow);

/// What was found and what becomes of it; nothing where there is none.
void findings_table(const Context& context, paper::Flow& flow);

/// Each signature given for a paper, as the role in which it was given.
std::vector<Signed> signatures_given(const Filled& filled);

/// Several tags as one text.
std::string joined(const std::vector<std::string>& tags);

}  // namespace steamworthy::report
