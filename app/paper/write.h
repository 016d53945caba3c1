// Writers: a document's pages as the bytes of a file.
//
// The same document gives the same bytes, with the same fonts installed.
//
// Errors  Error "paper.cannot_draw" if the drawing library reports a fault.
#pragma once

#include <string>

#include "paper/display.h"

namespace steamworthy::paper {

/// All pages: text selectable, fonts embedded, structure tagged, outline, properties.
std::string pdf(const Document& document);

/// One page as a greyscale-looking RGB image at that many dots to the inch.
std::string png(const Page& page, double dots_per_inch);

/// One page; its text is text. Viewers without DejaVu Sans set it in another face.
std::string svg(const Page& page, const std::string& title);

}  // namespace steamworthy::paper
