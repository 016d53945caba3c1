// Patterns: "two rows of eleven at 190 mm" written out as closures with tags.
#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "boiler/closure.h"

namespace steamworthy::boiler {

struct ClosurePattern {
  Closure each;        ///< what all share; tag, level, position, row and column are set here
  std::string prefix;  ///< "FW": tags are FW-A01, FW-A02 ...
  int rows = 1;
  int per_row = 1;
  units::Length pitch;         ///< along the part
  units::Length first_offset;  ///< of the first one from the part's first end
  std::string row_letters;     ///< one for each row; empty: A, B, C ...
  int first_number = 1;
  std::vector<units::Level> row_levels;  ///< one for each row
  std::vector<std::string> skip;         ///< written tags at which there is no closure

  friend bool operator==(const ClosurePattern&, const ClosurePattern&) = default;
};

/// More closures than any boiler has: a pattern beyond this is refused.
inline constexpr int greatest_pattern = 5000;

/// The closures of a pattern, row by row. What is wrong with it is added to
/// `problems` with fields relative to `field` ("closure_pattern[FW]"); then
/// nothing is returned.
std::vector<Closure> expand(const ClosurePattern& pattern, const std::string& field,
                            std::vector<Problem>& problems);

}  // namespace steamworthy::boiler
