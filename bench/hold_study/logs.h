// Simulated logs as a crew would hand them in: a CSV in one of four layouts, what the crew knows as
// .meta.json beside it, and an entry of truth.
#pragma once

#include <string>

#include "hold_study/cases.h"

namespace steamworthy::hold_study {

enum class Layout {
  Si,      ///< t_s, bar gauge, °C, litres
  Us,      ///< clock, psig, °F, US gallons
  German,  ///< clock; millilitres, kPa, °C; semicolons and decimal commas
  Manual,  ///< copied from paper every five minutes: strokes and remarks
};

/// Layout tokens: "si", "us", "german", "manual". Throws std::invalid_argument for others.
Layout layout_named(const std::string& token);
const char* name_of(Layout layout);

std::string csv_text(const Case& made, Layout layout);
/// As JSON; `file` is the name of the CSV.
std::string meta_text(const Case& made, Layout layout, const std::string& file);
/// One entry of a truth file as JSON: what is true, and which results are honest for the leak of
/// concern.
std::string truth_text(const Case& made, Layout layout);

/// Cases made on purpose, by name; each with instruments worth having. Throws std::invalid_argument
/// for another name.
///
///   gaining          a valve passes in, nothing leaks
///   gaining-hidden   a valve passes in more than a leak loses
///   not-bled         the pump's check passes, the test valve is open
///   no-loss, losing  as the words say
Case named_case(const std::string& name, std::uint64_t seed, double every_s);

}  // namespace steamworthy::hold_study
