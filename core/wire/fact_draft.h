// Facts as lines of JSON, as somebody types or scripts them, before a log numbers and signs them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "facts/fact.h"

namespace steamworthy::wire {

/// What a line says; the rest of the envelope is the log's to make.
struct FactDraft {
  int line = 0;
  std::string closing;  ///< as written; empty if it was left out
  std::string person;
  std::string kind;
  int kind_version = 1;
  std::optional<std::int64_t> happened_at_ms;
  facts::Precision precision = facts::Precision::Minute;
  int utc_offset_min = 0;
  std::string body;                 ///< the bytes that are to be signed
  std::vector<std::string> photos;  ///< SHA-256 of each, in hexadecimal
};

struct FactDrafts {
  std::vector<FactDraft> drafts;
  std::vector<Problem> problems;
};

/// Whether lines may also say what only a log can make: "id", "device", "device_seq", "seen",
/// "recorded_at_ms". In a script (fact_line.h) they stand; they are then left out.
enum class LogKeys { Refuse, LeaveOut };

/// Reads one JSON object a line; empty lines and lines that begin with "#" are left out. All faults
/// at once, each with its line.
///
///   {"closing", "person", "kind", "kind_version", "happened_at_ms", "precision",
///    "utc_offset_min", "body"}
///
/// Only `person`, `kind` and `body` must be there. Bodies are held to their kinds (fact_body.h).
FactDrafts read_fact_drafts(std::string_view text, const std::string& file, LogKeys log_keys);

}  // namespace steamworthy::wire
