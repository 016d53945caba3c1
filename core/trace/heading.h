// Heading: what the head of a column says, in English or German.
//
// "Water temp (F)" is water temperature in °F; "p_barg" a gauge pressure in bar;
// "Druck_kPa" a pressure in kPa of which nobody says whether gauge or absolute.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "trace/meaning.h"
#include "units/unit_text.h"

namespace steamworthy::trace {

/// A unit as it stood in a head, in a cell or in an overrule.
struct UnitText {
  std::string text;  ///< as written: "psig", "°F"
  units::Unit unit;
};

struct Heading {
  std::string text;  ///< as written
  std::string name;  ///< without its unit
  /// Of a time column Elapsed stands for any kind of time: the cells tell which.
  Meaning meaning = Meaning::Unknown;
  std::optional<UnitText> unit;
  std::string unreadable_unit;   ///< what stands in brackets and is no unit of this kind of column
  std::optional<bool> absolute;  ///< of a pressure, said by the head's words or unit
  bool says_clock = false;       ///< "Uhrzeit", "clock": a time of day
  bool says_elapsed = false;     ///< "elapsed", "Dauer"
  bool minutes_first = false;    ///< "(mm:ss)"
  bool is_rate = false;          ///< "L/min": none of ours
  bool of_pump = false;          ///< a pressure on the pump's side
};

Heading read_heading(std::string_view text);

/// A unit by itself, of one of the dimensions that logs hold (time, pressure, temperature, volume).
std::optional<UnitText> read_log_unit(std::string_view text);

/// The unit as a page writes it: "°F" for "F", "degF" or "Fahrenheit"; "bar" for "barg".
std::string shown_unit(const UnitText& unit);

/// Whether the letters are a unit or a mark of one that may stand alone in a row under the heads:
/// "s", "[bar]", "°C", "-", "hh:mm:ss", "".
bool is_unit_row_cell(std::string_view cell);

}  // namespace steamworthy::trace
