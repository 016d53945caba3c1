// The closing view: where a closing stands, as JSON for pages and for `log state`.
//
// Every text that a person reads comes from `words`, in the style's language and units. The shape
// is in docs/formats/closing-view.md. Start reading at ClosingView.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "closing/outstanding.h"
#include "facts/fact.h"
#include "words/style.h"

namespace steamworthy::wire {

/// A fact with the number under which this node took it in.
struct TakenIn {
  std::int64_t intake_no = 0;
  const facts::Fact* fact = nullptr;
};

/// What a view is made of. Refers to what it is given, and keeps nothing.
struct ClosingView {
  const closing::State& state;
  const closing::Terms& terms;
  std::string closing;  ///< its id
  std::int64_t now_ms = 0;
  std::int64_t since_ms = 0;       ///< since when the stage is what it is
  std::int64_t intake_no = 0;      ///< of the last fact that is in the state
  int utc_offset_min = 0;          ///< in which times are written
  std::vector<TakenIn> last = {};  ///< what happened last, newest first
};

/// The view as JSON.
std::string closing_json(const ClosingView& view, const words::Style& style);

/// One sentence: where the closing stands, since when, who is inside, what comes next.
std::string closing_sentence(const ClosingView& view, const words::Style& style);

/// {"step", "step_text", "subject", "up_to_bar_gauge", "up_to_text", "permits_text",
/// "lapses_when_text", "may_be_given", "intake_no", "outstanding": [...]}.
std::string outstanding_json(const closing::Clearance& clearance,
                             const std::vector<closing::Outstanding>& items, std::int64_t intake_no,
                             const words::Style& style);

/// [{"check", "rule", "subject", "danger", "reason", "remedy", "role", "role_text",
/// "overridable_by"}], for the body of a refusal.
std::string outstanding_items_json(const std::vector<closing::Outstanding>& items,
                                   const words::Style& style);

/// The alarms as in the view.
std::string alarms_json(const closing::State& state, const words::Style& style);

/// The clearance of that step and subject as in the view; "null" if none was given.
std::string clearance_json(const ClosingView& view, facts::StepName step,
                           const std::string& subject, const words::Style& style);

/// {"intake_no", "id", "kind", "sentence", "note"?, "at_ms", "at_text", "person", "device"}
std::string taken_in_json(const TakenIn& fact, const words::Style& style);

}  // namespace steamworthy::wire
