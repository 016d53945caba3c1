// Type: how wide text is and where its lines break, by the fonts that print it.
//
// All text is set in DejaVu Sans Condensed (Debian: fonts-dejavu-extra).
#pragma once

#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::paper {

/// The width in millimetres of one line of text as the writers set it.
double text_width(const std::string& text, Font font);

/// From one base line to the next, in millimetres.
double line_height(Font font);

/// From the top of a line to its base line, in millimetres.
double ascent(Font font);

/// The text in lines no wider than `width` millimetres. Breaks at blanks, at line ends of the
/// text, and inside a word only if the word alone is too wide; never at a no-break blank.
std::vector<std::string> wrap(const std::string& text, Font font, double width);

/// The text cut to one line of at most `width` millimetres, with an ellipsis if it was cut.
std::string shorten(const std::string& text, Font font, double width);

/// Where the text's ink may stand, turned as the text says.
Box bounds(const Text& text);

}  // namespace steamworthy::paper
