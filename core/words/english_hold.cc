// English: keys of the room hold.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array<Entry, 0> entries = {};

}  // namespace

std::span<const Entry> english_hold() { return entries; }

}  // namespace steamworthy::words
