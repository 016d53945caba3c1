// Facts as lines of JSON, before they are sealed: for scripts, tests and the command line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "facts/fact.h"

namespace steamworthy::wire {

struct ReadFacts {
  std::vector<facts::Fact> facts;
  std::vector<Problem> problems;
};

/// Reads facts, one JSON object a line; empty lines and lines that begin with "#" are left out. All
/// faults at once, each with its line. A line whose body cannot be read gives a fact all the same,
/// with an unread body, and a problem.
///
///   {"id", "closing", "device", "device_seq", "seen": {device: device_seq}, "person", "kind",
///    "kind_version", "happened_at_ms", "precision", "recorded_at_ms", "utc_offset_min", "body"}
///
/// `seen`, `id`, `kind_version` (1), `precision` ("minute"), `recorded_at_ms` (as it happened) and
/// `utc_offset_min` (0) may be left out.
ReadFacts read_fact_lines(std::string_view text, const std::string& file);

/// The same, one line without a line end.
std::string fact_line(const facts::Fact& fact);

}  // namespace steamworthy::wire
