// Style: in which language, units and words the program speaks.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "units/print.h"

namespace steamworthy::words {

enum class Language { English };

struct Style {
  Language language = Language::English;
  units::PrintStyle print;  ///< unit system and digits
  /// A site's own trade words, by key: {"trade.yoke", "crab"}. They may hold the same
  /// placeholders as the text that they stand in for.
  std::map<std::string, std::string, std::less<>> overrides;
};

}  // namespace steamworthy::words
