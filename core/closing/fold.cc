#include "closing/fold.h"

#include <algorithm>

#include "closing/apply.h"

namespace steamworthy::closing {
namespace {

constexpr std::size_t between_snapshots = 512;

using Withdrawn = std::set<std::pair<std::string, int>>;

void note_withdrawal(const facts::Fact& fact, Withdrawn& withdrawn) {
  if (const auto* body = std::get_if<facts::EntryWithdrawn>(&fact.body)) {
    withdrawn.emplace(body->device, body->device_seq);
  }
}

bool is_left_out(const facts::Fact& fact, const Withdrawn& withdrawn) {
  return !withdrawn.empty() && facts::kind_of(fact.body).undo == facts::Undo::Allowed &&
         withdrawn.count({fact.device, fact.device_seq}) != 0;
}

/// Folds one entry; `before` is the one before it in the order.
void step(State& state, const Entry& entry, const Entry* before, const Feeds& feeds,
          const Terms& terms, const Withdrawn& withdrawn) {
  const Told told{entry, feeds, terms};
  if (before != nullptr && before->feed == entry.feed &&
      before->fact->device_seq == entry.fact->device_seq) {
    state.forked.push_back(told.stamp());
  }
  if (!is_left_out(*entry.fact, withdrawn)) {
    apply(state, told);
    return;
  }
  // Of a withdrawn entry only that it exists is known.
  static const facts::Body nothing = facts::RemarkMade{};
  facts::Fact empty = *entry.fact;
  empty.body = nothing;
  Entry hollow = entry;
  hollow.fact = &empty;
  apply(state, {hollow, feeds, terms});
}

}  // namespace

State fold(std::span<const facts::Fact> facts, const Terms& terms) {
  Feeds feeds;
  std::vector<Entry> entries;
  entries.reserve(facts.size());
  Withdrawn withdrawn;
  for (const facts::Fact& fact : facts) {
    entries.push_back(entry_of(fact, feeds));
    note_withdrawal(fact, withdrawn);
  }
  arrange(entries, feeds);
  State state;
  const Entry* before = nullptr;
  for (const Entry& entry : entries) {
    if (before != nullptr && *before->fact == *entry.fact) continue;  // came twice
    step(state, entry, before, feeds, terms, withdrawn);
    before = &entry;
  }
  return state;
}

Fold::Fold(const Terms& terms) : terms_(terms) {}

bool Fold::was_seen_before_it_came(const Entry& entry) const {
  const auto feed = static_cast<std::size_t>(entry.feed);
  return feed < known_.size() && known_[feed] >= entry.fact->device_seq;
}

void Fold::note_known(const Entry& entry) {
  known_.resize(feeds_.size(), 0);
  for (std::size_t i = 0; i < entry.clock.size(); ++i) {
    known_[i] = std::max(known_[i], entry.clock[i]);
  }
}

void Fold::add(facts::Fact fact) {
  Entry entry = entry_of(fact, feeds_);
  by_feed_.resize(feeds_.size());
  auto& feed = by_feed_[static_cast<std::size_t>(entry.feed)];
  const auto same_number = [](const Entry* e, int n) { return e->fact->device_seq < n; };
  for (auto it = std::lower_bound(feed.begin(), feed.end(), fact.device_seq, same_number);
       it != feed.end() && (*it)->fact->device_seq == fact.device_seq; ++it) {
    if (*(*it)->fact == fact) return;
  }
  facts_.push_back(std::move(fact));
  entry.fact = &facts_.back();
  const bool withdraws = std::holds_alternative<facts::EntryWithdrawn>(entry.fact->body);
  note_withdrawal(*entry.fact, withdrawn_);
  const bool is_late = was_seen_before_it_came(entry);
  complete(entry, by_feed_);
  note_known(entry);
  entries_.push_back(std::move(entry));
  const Entry* added = &entries_.back();
  const auto at = std::upper_bound(
      order_.begin(), order_.end(), added,
      [&](const Entry* a, const Entry* b) { return stands_before(*a, *b, feeds_); });
  const auto position = static_cast<std::size_t>(at - order_.begin());
  order_.insert(at, added);
  feed.insert(std::upper_bound(feed.begin(), feed.end(), added, by_number), added);
  if (is_late) rearrange();
  refold(is_late || withdraws ? 0 : position);
}

void Fold::rearrange() {
  std::vector<Entry> entries;
  entries.reserve(entries_.size());
  for (const facts::Fact& fact : facts_) entries.push_back(entry_of(fact, feeds_));
  arrange(entries, feeds_);
  entries_.assign(std::make_move_iterator(entries.begin()), std::make_move_iterator(entries.end()));
  order_.clear();
  by_feed_.assign(feeds_.size(), {});
  for (const Entry& entry : entries_) {
    order_.push_back(&entry);
    by_feed_[static_cast<std::size_t>(entry.feed)].push_back(&entry);
  }
  for (auto& feed : by_feed_) {
    std::sort(feed.begin(), feed.end(), by_number);
  }
}

void Fold::refold(std::size_t from) {
  while (!snapshots_.empty() && snapshots_.back().length > from) snapshots_.pop_back();
  std::size_t at = 0;
  if (from + 1 == order_.size()) {
    at = from;  // the state is that of all before it
  } else if (snapshots_.empty()) {
    state_ = {};
    stage_ = Stage::ShutDown;
    since_ms_ = 0;
  } else {
    state_ = snapshots_.back().state;
    at = snapshots_.back().length;
    stage_ = snapshots_.back().stage;
    since_ms_ = snapshots_.back().since_ms;
  }
  for (; at < order_.size(); ++at) {
    step(state_, *order_[at], at == 0 ? nullptr : order_[at - 1], feeds_, terms_, withdrawn_);
    const Stage now = closing::stage(state_, terms_);
    if (now != stage_ || at == 0) {
      const facts::Fact& fact = *order_[at]->fact;
      stage_ = now;
      since_ms_ = std::min(fact.happened_at_ms, fact.recorded_at_ms);
    }
    if ((at + 1) % between_snapshots == 0) {
      snapshots_.push_back({at + 1, state_, stage_, since_ms_});
    }
  }
}

std::vector<const facts::Fact*> Fold::in_order() const {
  std::vector<const facts::Fact*> all;
  for (const Entry* entry : order_) all.push_back(entry->fact);
  return all;
}

bool Fold::is_withdrawn(const facts::Fact& fact) const { return is_left_out(fact, withdrawn_); }

std::vector<facts::Head> Fold::heads() const {
  std::vector<facts::Head> heads;
  for (std::size_t feed = 0; feed < by_feed_.size(); ++feed) {
    if (by_feed_[feed].empty()) continue;
    heads.push_back({feeds_.name(static_cast<int>(feed)), by_feed_[feed].back()->fact->device_seq});
  }
  return heads;
}

}  // namespace steamworthy::closing
