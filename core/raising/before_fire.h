// Before fire: what must come off, go back and be proved, one line a thing, most dangerous first.
//
// The list is that of the description and of the facts together: what is described and was never
// told of is on it too, undone, so that an empty closing gives the whole list for paper. It is a
// list to walk; whether steam may be raised is closing::outstanding()'s to say (S9).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "closing/state.h"
#include "closing/terms.h"
#include "facts/words.h"
#include "working/message.h"

namespace steamworthy::raising {

enum class Task {
  TakeOffTemporary,  ///< a gag, a blank, test gear: off, and seen off by its number
  ProveProtection,   ///< low-water cut-outs and gauge glasses: open to the boiler, and tried
  PutBack,           ///< what was shut off for the test
  HardenUp,          ///< a plate that was opened
  DisconnectPump,
  TakeOffGauge,  ///< a test gauge
  FreeHangers,
  RestoreLine,  ///< a line of the isolation list, for service again
};
std::string_view token(Task task);

struct Item {
  Task task = Task::TakeOffTemporary;
  std::string subject;  ///< tag or number; empty for the hangers
  std::string where;    ///< tag of what it is on, or what lies behind it; may be empty
  bool done = false;
  working::Message
      reason;  ///< "raising.why.TOKEN": why it is still to be done; empty if it is done
  working::Message remedy;                           ///< "raising.do.TOKEN"
  facts::RoleName role = facts::RoleName::LeadHand;  ///< who can do it
};

/// Every thing, done or not. Gags stand before blanks, and those before test gear.
///
/// A temporary is done when it is off and was seen off by its number; one that is described but was
/// never told of is done when somebody saw it off. Pump and lines are done with "normalised".
/// Source   what is on the list: S9 of docs/safety.md; common practice, no source.
/// Checked  raising_test.cc.
std::vector<Item> before_fire(const closing::Terms& terms, const closing::State& state);

/// Those that are not done.
std::vector<Item> still_to_do(const std::vector<Item>& items);

}  // namespace steamworthy::raising
