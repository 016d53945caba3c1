#include <algorithm>
#include <map>
#include <set>

#include "record/chain.h"

namespace steamworthy::record {
namespace {

/// The feeds of one scope as runs over `order`, which is sorted by device, number and hash.
struct Run {
  DeviceId device;
  std::size_t next;  // index into `order`
  std::size_t end;
};

class Scheduler {
 public:
  Scheduler(std::span<const Link> links, std::span<const std::size_t> order)
      : links_(links), order_(order) {
    for (std::size_t i = 0; i < order.size(); ++i) {
      const DeviceId& device = links[order[i]].feed.device;
      if (runs_.empty() || runs_.back().device != device) runs_.push_back({device, i, i});
      runs_.back().end = i + 1;
    }
  }

  /// Takes from the first feed, by device, whose next fact waits for nothing; so that a fact is
  /// never later than it must be for the sake of one that it does not know.
  void run(std::vector<std::size_t>& into) {
    std::set<std::size_t> ready;
    std::map<std::size_t, std::vector<std::size_t>> waiting;  // run -> runs that wait for it
    for (std::size_t r = 0; r < runs_.size(); ++r) ready.insert(r);
    std::size_t left = order_.size();
    while (left > 0) {
      if (ready.empty()) {
        // Only facts that see each other could lead here, which no hash allows; but the order must
        // not depend on that.
        ready.insert(first_unfinished());
        forced_ = true;
      }
      const std::size_t r = *ready.begin();
      Run& run = runs_[r];
      if (run.next == run.end) {
        ready.erase(r);
        continue;
      }
      const std::size_t blocker = forced_ ? runs_.size() : waits_for(links_[order_[run.next]]);
      forced_ = false;
      if (blocker != runs_.size()) {
        ready.erase(r);
        waiting[blocker].push_back(r);
        continue;
      }
      into.push_back(order_[run.next]);
      ++run.next;
      --left;
      for (const std::size_t waiter : waiting[r]) ready.insert(waiter);
      waiting[r].clear();
    }
  }

 private:
  /// A run that still holds a fact which `link` has seen; runs_.size() if none does.
  std::size_t waits_for(const Link& link) const {
    std::size_t at = 0;
    for (const Head& head : link.seen) {
      while (at < runs_.size() && runs_[at].device < head.device) ++at;
      if (at == runs_.size()) break;
      const Run& run = runs_[at];
      if (run.device == head.device && run.next < run.end &&
          links_[order_[run.next]].device_seq <= head.device_seq) {
        return at;
      }
    }
    return runs_.size();
  }

  std::size_t first_unfinished() const {
    std::size_t r = 0;
    while (runs_[r].next == runs_[r].end) ++r;
    return r;
  }

  std::span<const Link> links_;
  std::span<const std::size_t> order_;
  std::vector<Run> runs_;
  bool forced_ = false;
};

}  // namespace

std::vector<std::size_t> causal_order(std::span<const Link> links) {
  std::vector<std::size_t> sorted(links.size());
  for (std::size_t i = 0; i < sorted.size(); ++i) sorted[i] = i;
  std::sort(sorted.begin(), sorted.end(), [&](std::size_t a, std::size_t b) {
    const Link& x = links[a];
    const Link& y = links[b];
    if (!(x.feed == y.feed)) return x.feed < y.feed;
    if (x.device_seq != y.device_seq) return x.device_seq < y.device_seq;
    if (x.hash != y.hash) return x.hash < y.hash;
    return a < b;
  });
  std::vector<std::size_t> order;
  order.reserve(links.size());
  for (std::size_t from = 0; from < sorted.size();) {
    std::size_t to = from;
    while (to < sorted.size() && links[sorted[to]].feed.scope == links[sorted[from]].feed.scope)
      ++to;
    Scheduler(links, std::span(sorted).subspan(from, to - from)).run(order);
    from = to;
  }
  return order;
}

}  // namespace steamworthy::record
