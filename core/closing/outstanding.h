// Outstanding: what stands in the way of a clearance, from everything known.
//
// Start reading at outstanding(). Nothing here reads a clock: `now` is passed in.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "closing/safety.h"
#include "closing/state.h"
#include "closing/terms.h"
#include "working/message.h"

namespace steamworthy::closing {

/// A step that can hurt somebody, and what it is about.
struct Clearance {
  facts::StepName step = facts::StepName::Open;
  /// Enter, CloseLastWayIn, WalkFireSide: the space. Tighten, Strike, BreakJoint: the closure.
  std::string subject;
  std::optional<units::GaugePressure> up_to;  ///< RaisePressure: to what, at the reference level

  friend bool operator==(const Clearance&, const Clearance&) = default;
};

/// One thing that stops a clearance.
struct Outstanding {
  Check check = Check::S1Pressure;
  std::string subject;      ///< tag or name of what it is about; may be empty
  working::Message reason;  ///< "outstanding.TOKEN"
  working::Message remedy;  ///< "remedy.TOKEN"
  facts::RoleName role = facts::RoleName::LeadHand;  ///< who can remove it

  friend bool operator==(const Outstanding&, const Outstanding&) = default;
};

/// Everything that stands in the way, most dangerous first; empty: the clearance may be given.
/// What was overridden for the next clearance of this step is left out.
std::vector<Outstanding> outstanding(const State& state, const Terms& terms,
                                     const Clearance& clearance, std::int64_t now_ms);

/// A clearance that was given, and what has become of it.
struct Standing {
  Given given;
  std::optional<Check> lapsed;  ///< by what; nothing: it stands
  working::Message why = {};    ///< "outstanding.TOKEN" of that, or "clearance.taken_back"
};

/// The clearances given, each with whether it still stands now: it lapses by what happened after it
/// (the fold remembers), and as soon as anything stands in its way.
std::vector<Standing> standing(const State& state, const Terms& terms, std::int64_t now_ms);

/// Whether a clearance of that step stands for that subject now.
bool stands(const State& state, const Terms& terms, facts::StepName step,
            const std::string& subject, std::int64_t now_ms);

/// Alarms that nobody has taken.
std::vector<Alarm> alarms(const State& state);

}  // namespace steamworthy::closing
