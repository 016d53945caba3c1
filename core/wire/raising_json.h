// Before fire, first steam and the water to start with, as JSON.
#pragma once

#include <string>
#include <vector>

#include "raising/before_fire.h"
#include "raising/first_steam.h"

namespace steamworthy::wire {

/// [{"task", "subject", "where", "done", "reason"?, "remedy", "role"}]
std::string before_fire_json(const std::vector<raising::Item>& items);

/// {"rounds": [{"pressure": figure, "places": [{"subject", "leak"?, "why"}]}], "notes"}
std::string first_steam_json(const raising::FirstSteam& steam, bool with_working);

/// {"figures", "stops", "notes", "open"}; "open": drains to open.
std::string start_level_json(const raising::StartLevel& start, bool with_working);

}  // namespace steamworthy::wire
