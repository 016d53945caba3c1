#include "closing/order.h"

#include <algorithm>
#include <numeric>

namespace steamworthy::closing {
namespace {

/// Takes the greater of both, feed by feed; whether anything grew.
bool join(Clock& into, const Clock& other) {
  bool grew = false;
  if (into.size() < other.size()) into.resize(other.size(), 0);
  for (std::size_t i = 0; i < other.size(); ++i) {
    if (other[i] > into[i]) {
      into[i] = other[i];
      grew = true;
    }
  }
  return grew;
}

void weigh(Entry& entry) {
  entry.weight = std::accumulate(entry.clock.begin(), entry.clock.end(), std::int64_t{0});
}

/// The last entry of a feed whose number is not above `device_seq`; null if there is none.
const Entry* last_up_to(const std::vector<const Entry*>& feed, int device_seq) {
  auto it = std::upper_bound(feed.begin(), feed.end(), device_seq,
                             [](int n, const Entry* e) { return n < e->fact->device_seq; });
  return it == feed.begin() ? nullptr : *(it - 1);
}

/// Joins what the heads of the entry had seen; whether anything grew.
bool complete_once(Entry& entry, const std::vector<std::vector<const Entry*>>& by_feed) {
  bool grew = false;
  const Entry* before =
      last_up_to(by_feed[static_cast<std::size_t>(entry.feed)], entry.fact->device_seq - 1);
  if (before != nullptr) grew = join(entry.clock, before->clock);
  for (std::size_t feed = 0; feed < by_feed.size() && feed < entry.clock.size(); ++feed) {
    const int head = entry.clock[feed];
    if (head == 0 || static_cast<int>(feed) == entry.feed) continue;
    // What its own device had seen before is in already.
    if (before != nullptr && feed < before->clock.size() && before->clock[feed] == head) continue;
    const Entry* seen = last_up_to(by_feed[feed], head);
    if (seen != nullptr && seen != &entry) grew = join(entry.clock, seen->clock) || grew;
  }
  return grew;
}

}  // namespace

bool by_number(const Entry* a, const Entry* b) {
  if (a->fact->device_seq != b->fact->device_seq) {
    return a->fact->device_seq < b->fact->device_seq;
  }
  if (a->fact->id != b->fact->id) return a->fact->id < b->fact->id;
  // Two that should not be: any order will do that is always the same.
  return a->fact != b->fact && facts::spell(*a->fact) < facts::spell(*b->fact);
}

int Feeds::number_of(const std::string& device) {
  const auto [it, is_new] = numbers_.emplace(device, static_cast<int>(names_.size()));
  if (is_new) names_.push_back(device);
  return it->second;
}

int Feeds::find(std::string_view device) const {
  const auto it = numbers_.find(device);
  return it == numbers_.end() ? -1 : it->second;
}

Entry entry_of(const facts::Fact& fact, Feeds& feeds) {
  Entry entry;
  entry.fact = &fact;
  entry.feed = feeds.number_of(fact.device);
  const auto put = [&](int feed, int device_seq) {
    const auto at = static_cast<std::size_t>(feed);
    if (entry.clock.size() <= at) entry.clock.resize(at + 1, 0);
    entry.clock[at] = std::max(entry.clock[at], device_seq);
  };
  for (const facts::Head& head : fact.seen) {
    // What a device says of its own feed is known from the number.
    if (head.device != fact.device) put(feeds.number_of(head.device), head.device_seq);
  }
  put(entry.feed, fact.device_seq);
  weigh(entry);
  return entry;
}

bool stands_before(const Entry& a, const Entry& b, const Feeds& feeds) {
  if (a.weight != b.weight) return a.weight < b.weight;
  if (a.feed != b.feed) return feeds.name(a.feed) < feeds.name(b.feed);
  return by_number(&a, &b);
}

void complete(Entry& entry, const std::vector<std::vector<const Entry*>>& by_feed) {
  // Each round may show a head that leads further; a clock only grows, so this ends.
  while (complete_once(entry, by_feed)) {
  }
  weigh(entry);
}

void arrange(std::vector<Entry>& entries, const Feeds& feeds) {
  std::sort(entries.begin(), entries.end(),
            [&](const Entry& a, const Entry& b) { return stands_before(a, b, feeds); });
  std::vector<std::vector<const Entry*>> by_feed(feeds.size());
  for (Entry& entry : entries) by_feed[static_cast<std::size_t>(entry.feed)].push_back(&entry);
  for (auto& feed : by_feed) std::sort(feed.begin(), feed.end(), by_number);
  // Mostly one round; more where facts name heads in an order that cannot have been.
  bool first = true;
  bool grew = true;
  bool moved = false;
  while (grew) {
    grew = false;
    for (Entry& entry : entries) grew = complete_once(entry, by_feed) || grew;
    moved = moved || grew;
    if (first && !grew) break;
    first = false;
  }
  if (!moved) return;
  for (Entry& entry : entries) weigh(entry);
  std::sort(entries.begin(), entries.end(),
            [&](const Entry& a, const Entry& b) { return stands_before(a, b, feeds); });
}

}  // namespace steamworthy::closing
