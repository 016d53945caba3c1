// Check: what cannot be right in a description.
#pragma once

#include <limits>
#include <vector>

#include "base/error.h"
#include "boiler/boiler.h"
#include "boiler/pattern.h"

namespace steamworthy::boiler {

/// What a whole number is that could not be read: passed over like a quantity that
/// is not a number.
inline constexpr int unread = std::numeric_limits<int>::min();

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

/// Is the part of a pattern described, does the last closure stay on it, do
/// neighbours stay clear of each other? Adds to `problems`.
void check_fit(const ClosurePattern& pattern, const Boiler& boiler, const std::string& field,
               std::vector<Problem>& problems);

}  // namespace steamworthy::boiler
