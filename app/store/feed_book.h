// FeedBook: how far each feed goes, and whether a fact fits onto it.
//
// Held in memory by every log; changes can be taken back until they are kept, as a transaction can.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "record/envelope.h"

namespace steamworthy::store {

/// A fact that is there though one before it is not.
struct LooseFact {
  record::Hash hash;
  record::Hash prev_hash;
};

struct FeedState {
  std::int64_t feed_no = 0;  ///< the log's own number of the feed; 0 until it has one
  std::uint64_t head = 0;    ///< up to here none is missing
  record::Hash head_hash;    ///< of that fact
  std::map<std::uint64_t, LooseFact> loose;  ///< above the head, by number
};

enum class Fit {
  Fits,
  Known,        ///< it is there
  Forked,       ///< another of its number is there
  BrokenChain,  ///< the fact before or after it says otherwise
};

class FeedBook {
 public:
  /// The hash of a stored fact at or below a feed's head.
  using StoredHash = std::function<record::Hash(const FeedState&, std::uint64_t device_seq)>;

  const std::map<record::Feed, FeedState>& feeds() const { return feeds_; }
  const FeedState* find(const record::Feed& feed) const;
  /// Heads of all feeds of a scope but one device's, by rising device.
  std::vector<record::Head> heads(const record::Scope& scope,
                                  const std::optional<record::DeviceId>& but = {}) const;

  Fit fit(const record::Envelope& envelope, const record::Hash& hash,
          const StoredHash& stored_hash) const;
  /// Puts a fact in that fits.
  FeedState& put(const record::Envelope& envelope, const record::Hash& hash);
  /// Puts a feed in as it was found in the store.
  void load(const record::Feed& feed, FeedState state) { feeds_[feed] = std::move(state); }

  /// From here on changes can be taken back.
  void begin() { undo_.clear(); }
  void take_back();

 private:
  std::map<record::Feed, FeedState> feeds_;
  std::vector<std::pair<record::Feed, std::optional<FeedState>>> undo_;
};

/// "forked", "broken_chain": why a fact was quarantined.
std::string reason(Fit fit);

}  // namespace steamworthy::store
