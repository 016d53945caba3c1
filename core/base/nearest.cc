#include "base/nearest.h"

#include <algorithm>

namespace steamworthy {
namespace {

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the usual table: two back for swapped neighbours.
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string_view nearest(std::string_view word, const std::vector<std::string_view>& known) {
  constexpr std::size_t longest = 64;  // longer texts are no slips of the pen
  if (word.size() > longest) return {};
  const std::string meant = lower(word);
  std::string_view best;
  std::size_t least = 4;
  for (std::string_view candidate : known) {
    if (candidate.size() > longest) continue;
    const std::size_t distance = edit_distance(meant, lower(candidate));
    if (distance < least && 3 * distance <= std::max(word.size(), candidate.size())) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace steamworthy
