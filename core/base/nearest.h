// Nearest: which of the known words somebody may have meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace steamworthy {

/// How many letters must be put in, left out, changed or swapped with their
/// neighbour to turn one word into the other (Damerau and Levenshtein, each
/// stretch edited once).
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word at the least distance, if that is no more than a third of the
/// longer word's letters and at most three; empty where none is so near. Capitals
/// count for nothing; of equal ones the first.
std::string_view nearest(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace steamworthy
