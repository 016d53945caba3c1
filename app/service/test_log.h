// The pressure log of a closing: the readings that people entered, or what a logger wrote.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "facts/kinds_pressure.h"
#include "service/closing_book.h"
#include "trace/reader.h"
#include "trace/test_facts.h"

namespace steamworthy::service {

struct TestLog {
  std::string csv;
  trace::Overrules overrules;  ///< what somebody said of its columns
  trace::TestFacts test;       ///< by the facts of the closing
  std::int64_t first_at_ms = 0;
  std::size_t readings = 0;             ///< of entered ones
  std::optional<std::int64_t> hold_ms;  ///< when the last hold began

  /// Reads it, and finds the beginning of the hold in it.
  /// Throws   BadInput with what is wrong with a log of which nothing can be read.
  trace::Reading read(const std::string& name);
};

/// The readings of the gauge that was read most, with the temperatures known then.
TestLog entered_log(const Ledger& ledger);

/// The logger's log that was taken in last, or the one of that hash.
std::optional<facts::TraceAdded> logger_log(const Ledger& ledger, const std::string& sha256 = "");

/// The same test by a logger's bytes instead of the readings entered.
TestLog by_logger(TestLog entered, const facts::TraceAdded& logger, std::string bytes);

/// Parts of a text between commas; none of an empty one.
std::vector<std::string> between_commas(const std::string& text);

}  // namespace steamworthy::service
