// Filled: a closing's facts as papers want them: who did what last, and when.
//
// What holds is asked of the state; this says who said so. A paper made without one is blank.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "closing/fold.h"
#include "facts/fact.h"

namespace steamworthy::report {

/// The last fact of one device's feed, for a reader to find it in an export.
struct FeedHead {
  std::string device;
  int device_seq = 0;
  std::string sha256;
};

class Filled {
 public:
  /// Keeps a reference to the fold. `heads` are empty where the facts come from no signed log.
  Filled(const closing::Fold& fold, std::string closing, std::vector<FeedHead> heads = {});

  const closing::State& state() const { return fold_.state(); }
  const closing::Terms& terms() const { return fold_.terms(); }
  const std::string& closing() const { return closing_; }
  const std::vector<FeedHead>& heads() const { return heads_; }

  /// When the latest fact says that it was recorded: what the papers call now.
  std::int64_t now_ms() const { return fold_.state().latest_ms; }
  /// `now` as people read it there.
  std::string now() const;
  std::size_t size() const { return facts_.size(); }

  /// Says by which description the papers are made: its SHA-256.
  void set_described_as(std::string sha256) { described_as_ = std::move(sha256); }
  /// Whether the closing was begun with another description than that of the papers.
  bool is_described_otherwise() const {
    const std::string& pinned = fold_.state().description_sha256;
    return !described_as_.empty() && !pinned.empty() && pinned != described_as_;
  }

  /// Facts in causal order, without those that were withdrawn.
  const std::vector<const facts::Fact*>& facts() const { return facts_; }

  /// Those of a kind about that tag: the first text of the body.
  template <class Body>
  const std::vector<const facts::Fact*>& all(std::string_view tag) const {
    return about(facts::Body(Body{}).index(), tag);
  }
  /// Those of a kind, whatever they are about.
  template <class Body>
  std::vector<const facts::Fact*> all() const {
    std::vector<const facts::Fact*> found;
    for (const facts::Fact* fact : facts_) {
      if (std::holds_alternative<Body>(fact->body)) found.push_back(fact);
    }
    return found;
  }
  /// The last of them, or nothing.
  template <class Body>
  const facts::Fact* last(std::string_view tag) const {
    const auto& found = all<Body>(tag);
    return found.empty() ? nullptr : found.back();
  }
  template <class Body>
  const facts::Fact* last() const {
    const auto found = all<Body>();
    return found.empty() ? nullptr : found.back();
  }

 private:
  const std::vector<const facts::Fact*>& about(std::size_t kind, std::string_view tag) const;

  const closing::Fold& fold_;
  std::string closing_;
  std::string described_as_;
  std::vector<FeedHead> heads_;
  std::vector<const facts::Fact*> facts_;
  std::map<std::pair<std::size_t, std::string>, std::vector<const facts::Fact*>> about_;
  int utc_offset_min_ = 0;
};

/// "2026-11-25 19:57", where it happened.
std::string when(const facts::Fact& fact);
/// The name, then the time on a line of its own. Nothing for no fact.
std::string who_when(const facts::Fact* fact);
/// Device and number: which entry of the log it is.
std::string entry_name(const facts::Fact& fact);
std::string entry_name(const FeedHead& head);

/// The entry of that tag, or nothing where no fact spoke of it.
template <class Value>
const Value* at(const closing::ByTag<Value>& all, std::string_view tag) {
  const auto found = all.find(tag);
  return found == all.end() ? nullptr : &found->second;
}

}  // namespace steamworthy::report
