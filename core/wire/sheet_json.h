// The test sheet as JSON.
#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "sheet/sheet.h"

namespace steamworthy::wire {

/// {"ok", "boiler", "rule", "missing", "stops", "sections": [{"key", "figures", "notes",
/// "cautions"}]}; each number's key ends in its unit.
std::string sheet_json(const sheet::Sheet& sheet, bool with_working);

/// {"ok": false, "code", "error", "problems"}: the one shape of an error.
std::string error_json(const std::string& code, const std::string& sentence,
                       const std::vector<Problem>& problems = {});

}  // namespace steamworthy::wire
