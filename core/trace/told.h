// Told: a log's summary as messages, and where the test file's times fall on it.
#pragma once

#include <vector>

#include "trace/summary.h"
#include "trace/test_facts.h"

namespace steamworthy::trace {

/// "1125 readings over 1 h 34 min, usually 5 s apart", gaps, the highest pressure of each gauge.
std::vector<working::Message> tell(const Summary& summary);

/// Where the hold begins and at what pressure, the volume pumped by the strokes, columns that the
/// test file names and the log has not.
std::vector<working::Message> tell(const Trace& trace, const TestFacts& facts);

}  // namespace steamworthy::trace
