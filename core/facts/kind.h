// Kind: what every kind of fact has: its token, its version, what it means.
//
// A kind is a struct with a constant `kind` and a function `fields(self, visitor)` that names each
// field of its body once. Reading, writing, listing and telling a fact all walk that one list
// (body.h names the visitors' calls). A body only grows; a changed meaning is a new kind.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "units/measure.h"

namespace steamworthy::facts {

/// Whether an `entry.withdrawn` takes the fact's effect away. Only what makes a step easier may be
/// withdrawn: that somebody went in, that a plate was opened or that a leak was found stays told
/// until a later fact of its own says otherwise (`tally.out`, `closure.nipped_up`,
/// `leak.repaired`).
enum class Undo { Allowed, Never };

/// Where facts of the kind are written.
enum class Feed { Closing, Plant };

struct Kind {
  std::string_view token;  ///< "closure.opened"
  int version = 1;         ///< the newest that this program knows
  Undo undo = Undo::Never;
  std::string_view means;  ///< one sentence without a full stop
  Feed feed = Feed::Closing;
};

/// A measured value and its text as somebody entered it ("650 psi"); no text where it was computed.
template <class Quantity>
struct Measured {
  Quantity value{};
  std::string as_entered;

  friend bool operator==(const Measured&, const Measured&) = default;
};

/// A plain number that was measured or counted: percent (kept as a fraction of one), ppm.
using MeasuredNumber = Measured<double>;

inline double si_of(double value) { return value; }
template <class Quantity>
double si_of(const Quantity& value) {
  return value.si();
}
inline void put_si(double& into, double si) { into = si; }
template <class Quantity>
void put_si(Quantity& into, double si) {
  into = Quantity::from_si(si);
}

/// What a field is, for the table of kinds and its page.
struct Field {
  std::string name;  ///< as in the body, with its unit
  std::string type;  ///< "text", "list of text", "yes or no", "whole number", "number", ...
  bool needed = true;
  std::string means;

  friend bool operator==(const Field&, const Field&) = default;
};

}  // namespace steamworthy::facts
