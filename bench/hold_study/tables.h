// The study as Markdown, and its worst cases as text.
#pragma once

#include <string>
#include <vector>

#include "hold_study/outcome.h"

namespace steamworthy::hold_study {

struct Study {
  std::uint64_t seed = study_seed;
  std::vector<Outcome> ordinary;
  std::vector<Outcome> harsh;     ///< thermal disorder x 2.5
  std::vector<Outcome> not_bled;  ///< test valve open, pump check passing
};

/// All tables; the same bytes for the same outcomes.
std::string tables(const Study& study);

/// The `count` cases that the recommended method answered worst: false results first, then by how
/// many half-widths of its interval the truth is away.
std::string worst(const std::vector<Outcome>& outcomes, std::size_t count);

/// One line a case with truth and answers, comma-separated with a head: for a closer look
/// elsewhere.
std::string as_csv(const std::vector<Outcome>& outcomes);

}  // namespace steamworthy::hold_study
