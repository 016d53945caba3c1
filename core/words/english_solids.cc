// English: keys of the room solids.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array<Entry, 0> entries = {};

}  // namespace

std::span<const Entry> english_solids() { return entries; }

}  // namespace steamworthy::words
