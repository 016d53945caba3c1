// What is said of a test, as a command line, a query or a form says it: every value as people write
// it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "sheet/sheet.h"

namespace steamworthy::service {

/// Names: rule, work, authority, pick, own_pressure, reason, ceiling, water, metal, hold, heater,
/// and trait, which may stand several times ("lap_seam=no"). An empty value says nothing.
using Said = std::vector<std::pair<std::string, std::string>>;

/// Throws   BadInput with every fault, "service.not_said" for a word and those of units for a
///          quantity; the name is the field.
sheet::Request request_of(const Said& said);

/// What is said under a name, the last if several; empty if nothing is.
std::string value_of(const Said& said, const char* name);

/// One "name=value" a line, of all values that say something: what a paper carries in its hash.
std::string text_of(const Said& said);

}  // namespace steamworthy::service
