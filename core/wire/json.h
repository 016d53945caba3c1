// JSON inside this room: one writer for figures, messages and measures.
//
// Only files of `wire` include this header; other rooms get strings.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "working/section.h"

namespace steamworthy::wire {

/// Keys keep the order in which they were put, so that files read like papers.
using Json = nlohmann::ordered_json;

/// Puts `name` + the kind's suffix: ("working_pressure", 36 bar) ->
/// "working_pressure_bar_gauge": 36.0. Throws OutOfRange "wire.not_finite" for a
/// NaN or an infinity: neither may ever stand in a record.
void put_measure(Json& object, const std::string& name, const units::Measure& measure);

/// {"key": ..., "values": {...}}; measured values carry their suffix.
Json message_json(const working::Message& message);

/// {"key", "subject", "value_<suffix>" | "cannot_tell", "working"?}
Json figure_json(const working::Figure& figure, bool with_working);

Json messages_json(const std::vector<working::Message>& messages);

/// {"key", "figures", "notes", "cautions"}
Json section_json(const working::Section& section, bool with_working);

/// Serialises; text that is not valid UTF-8 is shown with replacement signs.
std::string text(const Json& json);

}  // namespace steamworthy::wire
