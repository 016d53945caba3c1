// Use cases around a pressure log: what is overruled of it, what its test file says.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "trace/test_facts.h"
#include "working/message.h"

namespace steamworthy::service {

/// "4=water", "2=psi" as given on a command line. `option` is named in problems.
/// Throws BadInput "service.not_an_overrule".
trace::Overrules read_overrules(const std::vector<std::string>& columns,
                                const std::vector<std::string>& units);

struct Test {
  trace::TestFacts facts;
  std::vector<working::Message> notes;  ///< keys of the file that are not known
};

/// Reads a test file. Throws BadInput with every fault of it.
Test read_test(std::string_view bytes, const std::string& file);

/// What the user says goes before what the test file says.
trace::Overrules joined(trace::Overrules said, const trace::TestFacts& facts);

}  // namespace steamworthy::service
