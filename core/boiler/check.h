// Check: what cannot be right in a description.
#pragma once

#include <vector>

#include "base/error.h"
#include "boiler/boiler.h"
#include "boiler/pattern.h"

namespace steamworthy::boiler {

/// Every fault of a description at once, each with its field ("part[SD].wall"),
/// what was found and what would be accepted; empty if it can be computed from.
/// A quantity that is not a number is passed over: whoever left it so has
/// reported it.
///
/// Codes  boiler.bad_tag, boiler.doubled_tag, boiler.retired_tag, boiler.unknown,
///        boiler.missing, boiler.absurd, boiler.impossible, boiler.outside_part,
///        boiler.does_not_fit, boiler.cycle, boiler.stated_twice.
/// Checked  tests/wrong, by way of wire/wrong_descriptions_test.cc.
std::vector<Problem> faults(const Boiler& boiler);

/// Does a pattern of closures fit on its part: does its last one stay on it, do
/// neighbours stay clear of each other? Adds to `problems`.
void check_fit(const ClosurePattern& pattern, const Part& part, const std::string& field,
               std::vector<Problem>& problems);

}  // namespace steamworthy::boiler
