// What an inspection of a record found, as JSON.
#pragma once

#include <string>
#include <vector>

#include "record/inspection.h"

namespace steamworthy::wire {

/// {"ok", "whole", "facts", "verified", "keys", "blobs", "quarantined", "damage", "findings":
/// [{"fault", "weight", "message"}], "feeds": [...], "proves": [...], "not_proved": [...]}
/// `damage` are sentences about the file that held the record; empty for an export.
std::string report_json(const record::Report& report, const std::vector<std::string>& damage = {});

}  // namespace steamworthy::wire
