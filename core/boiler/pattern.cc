#include "boiler/pattern.h"

#include <fmt/format.h>

#include <algorithm>

namespace steamworthy::boiler {
namespace {

std::string written_tag(const ClosurePattern& pattern, char letter, int number, int last) {
  return fmt::format("{}-{}{:0{}d}", pattern.prefix, letter, number, last > 99 ? 3 : 2);
}

class Faults {
 public:
  Faults(const std::string& field, std::vector<Problem>& problems)
      : field_(field), problems_(problems), before_(problems.size()) {}

  void add(const std::string& key, const std::string& found, const std::string& accepted,
           const std::string& message) {
    problems_.push_back({"boiler.pattern", "", 0, field_ + "." + key, found, accepted, message});
  }
  bool any() const { return problems_.size() != before_; }

 private:
  const std::string& field_;
  std::vector<Problem>& problems_;
  std::size_t before_;
};

}  // namespace

std::vector<Closure> expand(const ClosurePattern& pattern, const std::string& field,
                            std::vector<Problem>& problems) {
  Faults faults(field, problems);
  std::string letters = pattern.row_letters;
  if (letters.empty()) letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
  if (pattern.rows < 1 || pattern.rows > 26) {
    faults.add("rows", fmt::format("{}", pattern.rows), "1 to 26", "the number of rows cannot be");
  } else if (!pattern.row_letters.empty() &&
             letters.size() != static_cast<std::size_t>(pattern.rows)) {
    faults.add("row_letters", pattern.row_letters,
               fmt::format("one letter for each of {} rows", pattern.rows),
               "letters and rows do not match");
  } else if (pattern.row_levels.size() != static_cast<std::size_t>(pattern.rows)) {
    faults.add("row_levels", fmt::format("{} levels", pattern.row_levels.size()),
               fmt::format("one level for each of {} rows", pattern.rows),
               "levels and rows do not match");
  }
  if (pattern.per_row < 1 || pattern.per_row > 999) {
    faults.add("per_row", fmt::format("{}", pattern.per_row), "1 to 999",
               "the number in a row cannot be");
  } else if (pattern.rows >= 1 && pattern.rows <= 26 &&
             pattern.rows * pattern.per_row > greatest_pattern) {
    faults.add("per_row", fmt::format("{}", pattern.per_row),
               fmt::format("at most {} closures in one pattern", greatest_pattern),
               "the pattern makes too many closures");
  }
  if (pattern.first_number < 0 || pattern.first_number > 999) {
    faults.add("first_number", fmt::format("{}", pattern.first_number), "0 to 999",
               "the first number cannot be");
  }
  if (faults.any()) return {};

  const int last = pattern.first_number + pattern.per_row - 1;
  std::vector<Closure> closures;
  std::vector<std::string> unused = pattern.skip;
  for (int row = 0; row < pattern.rows; ++row) {
    const auto at = static_cast<std::size_t>(row);
    for (int column = 0; column < pattern.per_row; ++column) {
      const std::string tag =
          written_tag(pattern, letters[at], pattern.first_number + column, last);
      const auto skipped = std::find(unused.begin(), unused.end(), tag);
      if (skipped != unused.end()) {
        unused.erase(skipped);
        continue;
      }
      Closure closure = pattern.each;
      closure.tag = tag;
      closure.level = pattern.row_levels[at];
      closure.position = pattern.first_offset + static_cast<double>(column) * pattern.pitch;
      closure.row = row + 1;
      closure.column = column + 1;
      closures.push_back(std::move(closure));
    }
  }
  for (const std::string& tag : unused) {
    faults.add("skip", tag,
               fmt::format("tags that the pattern makes, such as \"{}\"",
                           written_tag(pattern, letters[0], pattern.first_number, last)),
               "the pattern makes no such tag");
  }
  if (faults.any()) return {};
  return closures;
}

}  // namespace steamworthy::boiler
