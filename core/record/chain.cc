#include "record/chain.h"

#include <algorithm>
#include <map>

namespace steamworthy::record {
namespace {

/// The links of each feed by number; of one number, by hash.
using Feeds = std::map<Feed, std::vector<const Link*>>;

Feeds by_feed(std::span<const Link> links) {
  Feeds feeds;
  for (const Link& link : links) feeds[link.feed].push_back(&link);
  for (auto& [feed, members] : feeds) {
    std::stable_sort(members.begin(), members.end(), [](const Link* a, const Link* b) {
      return a->device_seq != b->device_seq ? a->device_seq < b->device_seq : a->hash < b->hash;
    });
  }
  return feeds;
}

/// The links of one number.
std::span<const Link* const> numbered(const std::vector<const Link*>& members, std::uint64_t seq) {
  const auto first =
      std::lower_bound(members.begin(), members.end(), seq,
                       [](const Link* link, std::uint64_t s) { return link->device_seq < s; });
  auto last = first;
  while (last != members.end() && (*last)->device_seq == seq) ++last;
  return std::span<const Link* const>(members).subspan(
      static_cast<std::size_t>(first - members.begin()), static_cast<std::size_t>(last - first));
}

bool holds(std::span<const Link* const> links, const Hash& hash) {
  for (const Link* link : links) {
    if (link->hash == hash) return true;
  }
  return false;
}

class Checker {
 public:
  explicit Checker(std::span<const Link> links) : links_(links), feeds_(by_feed(links)) {}

  ChainReport run() {
    for (const auto& [feed, members] : feeds_) {
      reports_[feed] = {feed, 0, members.front()->device_seq, members.back()->device_seq,
                        members.back()->hash};
      check_feed(feed, members);
    }
    for (const auto& [feed, members] : feeds_) {
      for (const Link* link : members) check_seen(*link);
    }
    check_ids();
    for (const auto& [where, finding] : seen_) add(finding);
    for (const auto& [where, finding] : clocks_) add(finding);
    for (const auto& [feed, feed_report] : reports_) report_.feeds.push_back(feed_report);
    return std::move(report_);
  }

 private:
  void add(Finding finding) { report_.findings.push_back(std::move(finding)); }

  void check_feed(const Feed& feed, const std::vector<const Link*>& members) {
    std::uint64_t before_seq = 0;
    std::size_t from = 0;  // of the number before
    for (std::size_t i = 0; i < members.size();) {
      const auto same = numbered(members, members[i]->device_seq);
      const std::uint64_t seq = members[i]->device_seq;
      ++reports_[feed].facts;
      for (std::size_t k = 1; k < same.size(); ++k) {
        const bool again = same[k]->hash == same[k - 1]->hash;
        add({again ? Fault::Doubled : Fault::Forked, {feed, seq}, {feed, seq}});
      }
      if (seq != before_seq + 1) {
        Finding gap{Fault::Gap, {feed, before_seq + 1}, {feed, seq}};
        gap.until = seq - 1;
        add(gap);
      } else if (before_seq != 0) {
        for (const Link* link : same) check_step(*link, {&members[from], &members[i]});
      }
      before_seq = seq;
      from = i;
      i += same.size();
    }
  }

  void check_step(const Link& link, std::span<const Link* const> before) {
    if (!holds(before, link.prev_hash)) {
      add({Fault::BrokenChain, link.name(), before.front()->name()});
      return;
    }
    const auto it = std::find_if(before.begin(), before.end(),
                                 [&](const Link* b) { return b->hash == link.prev_hash; });
    const Link& previous = **it;
    std::size_t at = 0;
    for (const Head& head : previous.seen) {
      while (at < link.seen.size() && link.seen[at].device < head.device) ++at;
      const bool named = at < link.seen.size() && link.seen[at].device == head.device;
      if (!named || link.seen[at].device_seq < head.device_seq) {
        add({Fault::SeenShrank, link.name(), {{link.feed.scope, head.device}, head.device_seq}});
      }
    }
    note_clock(Fault::ClockBack, link, previous);
  }

  void note_clock(Fault fault, const Link& link, const Link& earlier) {
    if (link.recorded_at_ms >= earlier.recorded_at_ms) return;
    const auto [it, fresh] =
        clocks_.try_emplace({fault, link.feed}, Finding{fault, link.name(), earlier.name()});
    Finding& finding = it->second;
    if (!fresh) ++finding.times;
    finding.by_ms = std::max(finding.by_ms, earlier.recorded_at_ms - link.recorded_at_ms);
  }

  void check_seen(const Link& link) {
    for (const Head& head : link.seen) {
      const Feed feed{link.feed.scope, head.device};
      const auto found = feeds_.find(feed);
      const auto there = found == feeds_.end() ? std::span<const Link* const>{}
                                               : numbered(found->second, head.device_seq);
      if (!holds(there, head.hash)) {
        const Fault fault = there.empty() ? Fault::SeenMissing : Fault::SeenDiffers;
        const auto [it, fresh] = seen_.try_emplace(
            {feed, head.device_seq}, Finding{fault, {feed, head.device_seq}, link.name()});
        if (!fresh) ++it->second.times;
        continue;
      }
      note_clock(Fault::ClockBehindSeen, link, *there.front());
      FeedReport& report = reports_[feed];
      if (head.device_seq > report.vouched) {
        report.vouched = head.device_seq;
        report.voucher = link.feed.device;
      }
      if (link.is_checkpoint && head.device_seq > report.checkpoint) {
        report.checkpoint = head.device_seq;
        report.checkpoint_by = link.feed.device;
      }
    }
  }

  void check_ids() {
    std::vector<const Link*> by_id;
    for (const Link& link : links_) by_id.push_back(&link);
    std::sort(by_id.begin(), by_id.end(), [](const Link* a, const Link* b) {
      return a->id == b->id ? a->hash < b->hash : a->id < b->id;
    });
    for (std::size_t i = 1; i < by_id.size(); ++i) {
      const Link& a = *by_id[i - 1];
      const Link& b = *by_id[i];
      if (a.id == b.id && a.hash != b.hash) add({Fault::SameId, b.name(), a.name()});
    }
  }

  struct ByNumber {
    Feed feed;
    std::uint64_t seq;
    bool operator<(const ByNumber& other) const {
      return feed == other.feed ? seq < other.seq : feed < other.feed;
    }
  };
  struct ByFeed {
    Fault fault;
    Feed feed;
    bool operator<(const ByFeed& other) const {
      return fault != other.fault ? fault < other.fault : feed < other.feed;
    }
  };

  std::span<const Link> links_;
  Feeds feeds_;
  std::map<Feed, FeedReport> reports_;
  std::map<ByNumber, Finding> seen_;
  std::map<ByFeed, Finding> clocks_;
  ChainReport report_;
};

}  // namespace

Link link_of(const Envelope& envelope, const Hash& hash) {
  return {envelope.feed(),
          envelope.device_seq,
          hash,
          envelope.prev_hash,
          envelope.seen,
          envelope.id,
          envelope.recorded_at_ms,
          envelope.kind == checkpoint_kind};
}

ChainReport check_chain(std::span<const Link> links) { return Checker(links).run(); }

}  // namespace steamworthy::record
