// The log of requests: one line each, and nothing in it that must not be read.
#pragma once

#include <cstdint>
#include <string>

#include "server/door.h"

namespace steamworthy::server {

/// "2026-11-26T00:03:11Z 200 GET /api/plant 412 B 3 ms mara 4f2a9c1e"; the code of an error after
/// the status. What cannot stand on one line of plain text is shown as "?", and a long path is cut.
std::string log_line(const CallLog& call, std::int64_t now_ms, std::size_t bytes, std::int64_t ms);

}  // namespace steamworthy::server
