// The test record: the log with its stages, the pump-up, what the gauge says beside what was seen.
#pragma once

#include "hold/answer.h"
#include "hold/input.h"
#include "report/papers.h"
#include "trace/test_facts.h"
#include "trace/trace.h"

namespace steamworthy::report {

/// One logged test: the log as read, what the crew knows, what the analysis was given and answers.
struct LoggedTest {
  const trace::Trace& trace;
  const trace::TestFacts& facts;
  const hold::HoldInput& input;
  const hold::HoldAnswer& answer;
};

/// What was seen, by whom, and who signed comes from the closing's facts; without them it is left
/// blank.
paper::Document test_record(const Papers& papers, const LoggedTest& test);

}  // namespace steamworthy::report
