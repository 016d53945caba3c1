// Whether a rule makes sense in itself, wherever it came from.
#pragma once

#include <vector>

#include "base/error.h"
#include "rules/rule.h"

namespace steamworthy::rules {

/// Everything that is wrong with a rule, all at once; fields by their names in a rule file,
/// line and file left empty. Codes are "rules.*", listed in docs/reference/rules.md.
std::vector<Problem> check(const Rule& rule);

}  // namespace steamworthy::rules
