// Meaning: what a column of a pressure log holds.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "units/measure.h"
#include "units/unit_text.h"

namespace steamworthy::trace {

enum class Meaning {
  Elapsed,           ///< time since some zero: "0", "5", "10"
  Clock,             ///< "07:05"; with a date column beside it or without
  DateTime,          ///< "2026-11-25T07:05:00"
  Date,              ///< "2026-11-25", beside a clock
  Pressure,          ///< what a gauge or transmitter reads
  Water,             ///< temperature in the water
  Metal,             ///< temperature of metal
  Ambient,           ///< temperature of the air around
  Supply,            ///< temperature of the water that is pumped in
  OtherTemperature,  ///< a temperature of which the head does not say what of
  Pumped,            ///< volume pumped so far
  Strokes,           ///< strokes of the pump so far
  Remarks,           ///< what somebody wrote
  Ignored,           ///< a number of the line, a serial number, or overruled so
  Unknown,           ///< nothing of this could be told from the head
};

/// The word of the command line and of JSON: "water", "elapsed".
std::string_view token(Meaning meaning);
std::optional<Meaning> meaning_of(std::string_view token);
std::vector<std::string_view> meaning_tokens();

/// Key of its words: "trace_meaning.water".
std::string_view words_key(Meaning meaning);

bool is_time(Meaning meaning);
bool is_temperature(Meaning meaning);
/// Pressures, temperatures, volumes, strokes: columns of numbers that are kept.
bool is_measured(Meaning meaning);

/// What a unit of this column must measure; nothing where the column has no unit.
std::optional<units::Dimension> dimension(Meaning meaning);

}  // namespace steamworthy::trace
