#include "service/hold_service.h"

#include "hold/analyse.h"
#include "hold/from_trace.h"

namespace steamworthy::service {

HoldJudgement judge_hold(const trace::Trace& trace, const trace::TestFacts& facts,
                         std::optional<boiler::Boiler> description) {
  HoldJudgement judgement;
  judgement.description = std::move(description);
  judgement.input =
      hold::input_from(trace, facts, judgement.description ? &*judgement.description : nullptr);
  judgement.answer = hold::analyse(judgement.input);
  return judgement;
}

}  // namespace steamworthy::service
