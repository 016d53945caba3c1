// Chain: are the facts that are at hand whole feeds, and which comes before which.
//
// Both work on links: what an envelope says of its place among the others, and the hash of its
// bytes, which somebody else has computed. docs/formats/record.md, "What makes a feed whole".
#pragma once

#include <span>
#include <vector>

#include "record/envelope.h"
#include "record/finding.h"

namespace steamworthy::record {

/// A fact's place among the others.
struct Link {
  Feed feed;
  std::uint64_t device_seq = 0;
  Hash hash;
  Hash prev_hash;
  std::vector<Head> seen;
  Uuid id;
  std::int64_t recorded_at_ms = 0;
  bool is_checkpoint = false;

  FactName name() const { return {feed, device_seq}; }
};

Link link_of(const Envelope& envelope, const Hash& hash);

/// How far a feed goes and who vouches for it.
struct FeedReport {
  Feed feed;
  std::uint64_t facts = 0;       ///< how many numbers are there
  std::uint64_t first = 0;       ///< least number that is there
  std::uint64_t last = 0;        ///< greatest number that is there
  Hash last_hash;                ///< of that one
  std::uint64_t vouched = 0;     ///< greatest number that another device has seen with this hash
  DeviceId voucher;              ///< that device
  std::uint64_t checkpoint = 0;  ///< greatest number that a checkpoint of another device names
  DeviceId checkpoint_by;        ///< that device
};

struct ChainReport {
  std::vector<FeedReport> feeds;  ///< by scope and device
  std::vector<Finding> findings;  ///< by feed and number within each kind of finding
};

/// Checks rules 2 to 7. Links may stand in any order.
ChainReport check_chain(std::span<const Link> links);

/// The indices of the links in causal order: every fact after those that it has seen and those
/// before it in its feed; of facts of which neither comes before the other, first by device (as
/// bytes), then by number. The same for every order of arrival. Doubled and forked facts stand next
/// to each other, by hash.
std::vector<std::size_t> causal_order(std::span<const Link> links);

}  // namespace steamworthy::record
