// Mark: the state of a closure as one shape, for pages, drawings and papers alike.
//
// The table of marks: each state is told by shape first. What is filled was seen dry and not
// touched since; so a plate that was hardened up before the test is not filled yet.
#pragma once

#include <string>
#include <string_view>

#include "closing/state.h"

namespace steamworthy::closing {

enum class Mark {
  NotOpened,    ///< thin outline, crossed once
  Open,         ///< dashed outline
  Cleaned,      ///< solid outline: seat and plate cleaned and looked at
  NippedUp,     ///< the yoke drawn across
  GapMeasured,  ///< a dot in the middle: measured since it was nipped up, and good
  SeenDry,      ///< filled
  HardenedUp,   ///< filled, the yoke left light
  Touched,      ///< lower half filled: touched, other than by hardening up, since seen dry
};

/// "not_opened"; its English is mark.TOKEN.
std::string_view token(Mark mark);

/// Of several states that hold, the last in the order of the work. A closure that nobody said
/// anything of was not opened.
Mark mark(const State& state, const std::string& closure);

/// What stands beside the mark.
struct Signs {
  std::string leak;     ///< number of the first open leak there; empty: none
  bool decide = false;  ///< gaps to be reported, a wrong plate, an undecided finding

  friend bool operator==(const Signs&, const Signs&) = default;
};
Signs signs(const State& state, const std::string& closure);

}  // namespace steamworthy::closing
