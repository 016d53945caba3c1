// A log as JSON: what was understood, what was put aside, its summary.
#pragma once

#include <string>
#include <vector>

#include "trace/summary.h"

namespace steamworthy::wire {

/// {"ok", "file", "layout", "columns", "summary", "notes", "bad_line_count", "bad_lines",
/// "test"}; `told` is what the test file adds.
std::string trace_json(const std::string& file, const trace::Reading& reading,
                       const std::vector<working::Message>& told);

}  // namespace steamworthy::wire
