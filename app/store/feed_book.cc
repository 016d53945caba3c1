#include "store/feed_book.h"

namespace steamworthy::store {

using record::Feed;
using record::Hash;
using record::Head;

const FeedState* FeedBook::find(const Feed& feed) const {
  const auto it = feeds_.find(feed);
  return it == feeds_.end() ? nullptr : &it->second;
}

std::vector<Head> FeedBook::heads(const record::Scope& scope,
                                  const std::optional<record::DeviceId>& but) const {
  std::vector<Head> heads;
  for (auto it = feeds_.lower_bound({scope, {}}); it != feeds_.end() && it->first.scope == scope;
       ++it) {
    if (it->second.head == 0 || it->first.device == but) continue;
    heads.push_back({it->first.device, it->second.head, it->second.head_hash});
  }
  return heads;
}

Fit FeedBook::fit(const record::Envelope& envelope, const Hash& hash,
                  const StoredHash& stored_hash) const {
  const FeedState* found = find(envelope.feed());
  const FeedState none;
  const FeedState& feed = found != nullptr ? *found : none;
  const std::uint64_t seq = envelope.device_seq;
  if (seq <= feed.head) return stored_hash(feed, seq) == hash ? Fit::Known : Fit::Forked;
  if (const auto same = feed.loose.find(seq); same != feed.loose.end()) {
    return same->second.hash == hash ? Fit::Known : Fit::Forked;
  }
  if (seq == feed.head + 1) {
    if (feed.head != 0 && envelope.prev_hash != feed.head_hash) return Fit::BrokenChain;
  } else if (const auto before = feed.loose.find(seq - 1);
             before != feed.loose.end() && before->second.hash != envelope.prev_hash) {
    return Fit::BrokenChain;
  }
  if (const auto after = feed.loose.find(seq + 1);
      after != feed.loose.end() && after->second.prev_hash != hash) {
    return Fit::BrokenChain;
  }
  return Fit::Fits;
}

FeedState& FeedBook::put(const record::Envelope& envelope, const Hash& hash) {
  const Feed feed = envelope.feed();
  const auto [it, fresh] = feeds_.try_emplace(feed);
  undo_.emplace_back(feed, fresh ? std::nullopt : std::optional(it->second));
  FeedState& state = it->second;
  if (envelope.device_seq != state.head + 1) {
    state.loose[envelope.device_seq] = {hash, envelope.prev_hash};
    return state;
  }
  state.head = envelope.device_seq;
  state.head_hash = hash;
  while (!state.loose.empty() && state.loose.begin()->first == state.head + 1) {
    state.head_hash = state.loose.begin()->second.hash;
    ++state.head;
    state.loose.erase(state.loose.begin());
  }
  return state;
}

void FeedBook::take_back() {
  for (auto it = undo_.rbegin(); it != undo_.rend(); ++it) {
    if (it->second) {
      feeds_[it->first] = std::move(*it->second);
    } else {
      feeds_.erase(it->first);
    }
  }
  undo_.clear();
}

std::string reason(Fit fit) { return fit == Fit::Forked ? "forked" : "broken_chain"; }

}  // namespace steamworthy::store
