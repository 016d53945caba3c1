// Words: core's messages and figures as sentences.
//
// The only room that knows a language. A key without a text is shown as the key
// in angle brackets, a value that is missing as its name; nothing throws, so
// that a page is never lost to a missing word. words_test.cc finds both before
// they reach a page. Start reading at sentence().
#pragma once

#include <string>
#include <string_view>

#include "words/style.h"
#include "working/figure.h"

namespace steamworthy::words {

/// The words of a key without values: "test pressure", "drum internals".
std::string label(std::string_view key, const Style& style = {});

/// A measure with its unit, in the style's unit system.
std::string text(const units::Measure& measure, const Style& style = {});

/// A message as a sentence, with a capital and a full stop.
std::string sentence(const working::Message& message, const Style& style = {});

/// The same without either, for use within a longer line.
std::string phrase(const working::Message& message, const Style& style = {});

/// "Test pressure (SD): 54.00 bar gauge", or "...: cannot tell. The wall is not known."
std::string render_figure(const working::Figure& figure, const Style& style = {});

/// The figure unfolded, a few lines: formula, inputs with where each came from, sources, method,
/// remarks. Lines end in "\n" and are indented under the figure's own.
std::string render_working(const working::Figure& figure, const Style& style = {});

}  // namespace steamworthy::words
