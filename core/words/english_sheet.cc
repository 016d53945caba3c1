// English: keys of the room sheet.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array<Entry, 0> entries = {};

}  // namespace

std::span<const Entry> english_sheet() { return entries; }

}  // namespace steamworthy::words
