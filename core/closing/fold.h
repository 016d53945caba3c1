// Fold: facts, in whatever order they arrive, to the state of their closing.
//
// The state depends on the set of facts alone: neither on the order of arrival nor on whether they
// came one by one. Doubled facts count once. Start reading at fold().
#pragma once

#include <deque>
#include <map>
#include <memory>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "closing/order.h"
#include "closing/stage.h"
#include "closing/state.h"
#include "closing/terms.h"
#include "facts/fact.h"

namespace steamworthy::closing {

/// The state after all of these facts.
State fold(std::span<const facts::Fact> facts, const Terms& terms);

/// The same, kept while facts come in.
class Fold {
 public:
  explicit Fold(const Terms& terms);

  /// Takes one more. Late facts are put in their place.
  void add(facts::Fact fact);

  const State& state() const { return state_; }
  const Terms& terms() const { return terms_; }
  /// Every fact once, in the order of cause and effect.
  std::vector<const facts::Fact*> in_order() const;
  std::size_t size() const { return order_.size(); }
  /// Whether the effect of a fact was withdrawn by a later one.
  bool is_withdrawn(const facts::Fact& fact) const;
  /// The stage, and when the fact happened that last changed it; 0 where nothing was told.
  Stage stage() const { return stage_; }
  std::int64_t since_ms() const { return since_ms_; }
  /// The heads of all feeds: what a fact made now has seen.
  std::vector<facts::Head> heads() const;

 private:
  struct Snapshot {
    std::size_t length;  ///< of what was folded
    State state;
    Stage stage;
    std::int64_t since_ms;
  };

  void rearrange();
  void refold(std::size_t from);
  bool was_seen_before_it_came(const Entry& entry) const;
  void note_known(const Entry& entry);

  Terms terms_;
  Feeds feeds_;
  std::deque<facts::Fact> facts_;
  std::deque<Entry> entries_;
  std::vector<const Entry*> order_;
  std::vector<std::vector<const Entry*>> by_feed_;
  Clock known_;  ///< of each feed, the greatest number that any fact names
  std::set<std::pair<std::string, int>> withdrawn_;  ///< device and number
  std::vector<Snapshot> snapshots_;
  State state_;
  Stage stage_ = Stage::ShutDown;
  std::int64_t since_ms_ = 0;
};

}  // namespace steamworthy::closing
