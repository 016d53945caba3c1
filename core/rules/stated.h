// Stated: a quantity as a rule states it, with the words it was written in.
#pragma once

#include <string>

namespace steamworthy::rules {

/// A page shows "60 psi" where the law says 60 psi, and not 4.137 bar.
template <class Quantity>
struct Stated {
  Quantity value;
  std::string text;  ///< as written, "60 psi"; may be empty for a rule that was not read from text

  friend bool operator==(const Stated& a, const Stated& b) {
    return a.value == b.value && a.text == b.text;
  }
};

}  // namespace steamworthy::rules
