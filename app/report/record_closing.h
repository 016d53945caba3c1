// Record of the closing: what the log says of the test beside what the gauge says.
#pragma once

#include <string>

#include "report/context.h"

namespace steamworthy::report {

/// The day of the last hold, else of the last entry.
std::string test_day(const Filled& filled);
/// What eyes saw: how many places dry, which leaks, who looked, when, at which pressure.
std::string seen_text(const Context& context);
/// Sheet, result accepted, holds, leaks and repairs, findings, tubes, people, signatures, the heads
/// of the feeds.
void record_of_closing(const Context& context, paper::Flow& flow);

}  // namespace steamworthy::report
