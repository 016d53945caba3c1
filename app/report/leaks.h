// Leaks: what was found, what was done, where each stands now.
#pragma once

#include <string>
#include <vector>

#include "report/context.h"

namespace steamworthy::report {

/// The leaks of a closing by number; those not closed alone if `open_only`. Numbers in a natural
/// order: K2 before K10.
std::vector<std::string> leaks_of(const Filled& filled, bool open_only);
/// The numbers of all leaks ever found at that place.
std::vector<std::string> leaks_at(const Filled& filled, const std::string& place);

/// "open", "repaired, not yet seen dry", "seen dry again", "to be watched hot, signed by ...".
std::string leak_now(const Context& context, const std::string& number);
/// "gasket, outward, 20 drops a minute"
std::string leak_what(const Context& context, const std::string& number);

/// A row a leak, nothing where there is none.
void leak_table(const Context& context, paper::Flow& flow, bool open_only);

}  // namespace steamworthy::report
