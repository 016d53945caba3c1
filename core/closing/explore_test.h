// For tests: exhaustive exploration of the small plant.
//
// From the end of a stretch of its story every sequence of moves up to a depth is tried, breadth
// first. A move is a fact told by device A, which sees everything that has arrived; or by device B,
// which is out of reach and has seen what it had at its last sync, so that its facts come late; or
// a fact that B holds back and that arrives later, perhaps after a later one of B (re-ordered); or
// B coming within reach; or time passing. Two states that the program cannot tell apart, and that
// no later move can, are one: fingerprint_test.h says what is compared.
//
// Symmetry: people are alike, so P goes in by A's tally and Q by B's, never the other way round;
// the two water spaces are alike, so moves inside are told of SD alone.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "closing/outstanding.h"
#include "closing/world_test.h"

namespace steamworthy::closing {

struct Move {
  enum class Kind { Tell, TellLate, HoldBack, Arrive, Sync, Wait, Give };
  Kind kind = Kind::Tell;
  std::string person = "L";
  facts::Body body;  ///< Tell, TellLate, HoldBack; Give: a ClearanceGiven, told if nothing stands
                     ///< in its way
  int minutes = 0;   ///< Wait
};

struct Scenario {
  std::string name;
  std::function<void(Story&)> before;
  std::vector<Move> moves;
  std::vector<Clearance> asked;  ///< in every state
};

struct Explored {
  std::size_t states = 0;
  int depth = 0;                      ///< reached in full
  std::optional<std::string> broken;  ///< a rule that the facts speak against, and the moves to it
};

/// Explores to a depth, or until a rule is found broken.
Explored explore(const Scenario& scenario, const Terms& terms, int depth);

/// All scenarios, each with its alphabet.
const std::vector<Scenario>& scenarios();

}  // namespace steamworthy::closing
