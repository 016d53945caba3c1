// QR codes: a short text as a square that a phone reads.
#pragma once

#include <string>

#include "paper/display.h"

namespace steamworthy::paper {

/// Draws the code of a text into the largest square of the box, with its quiet zone of four
/// modules; correction level M.
/// Throws  OutOfRange "paper.code_too_long" for more than a code holds (2331 bytes).
void draw_code(Page& page, const Box& box, const std::string& text);

}  // namespace steamworthy::paper
