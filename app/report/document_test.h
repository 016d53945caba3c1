// For tests of this room: the texts of a document.
#pragma once

#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::report {

inline std::vector<paper::Text> texts(const paper::Page& page) {
  std::vector<paper::Text> found;
  for (const paper::Item& item : page.items) {
    if (const auto* text = std::get_if<paper::Text>(&item)) found.push_back(*text);
  }
  return found;
}

/// The same with blanks for those at which no line may break.
inline std::string with_plain_blanks(std::string text) {
  const std::string no_break = "\u00a0";
  for (std::size_t at = text.find(no_break); at != std::string::npos; at = text.find(no_break)) {
    text.replace(at, no_break.size(), " ");
  }
  return text;
}

/// All of them, a plain blank after each and in place of each other blank.
inline std::string all_text(const paper::Document& document) {
  std::string text;
  for (const paper::Page& page : document.pages) {
    for (const paper::Text& one : texts(page)) text += one.text + " ";
  }
  return with_plain_blanks(std::move(text));
}

}  // namespace steamworthy::report
