// Order: facts in the order of cause and effect, the same whatever the order of arrival.
//
// A fact comes after everything that it has seen, and that that has seen, and after the earlier
// facts of its own device. Facts that did not know of each other stand by how much each had seen,
// then by device and number: never by a clock. (design: by `seen` and `device_seq`.)
#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "facts/fact.h"

namespace steamworthy::closing {

/// Devices by number, as they first came.
class Feeds {
 public:
  int number_of(const std::string& device);  ///< gives a new one a number
  int find(std::string_view device) const;   ///< -1 if there is none
  const std::string& name(int number) const { return names_[static_cast<std::size_t>(number)]; }
  std::size_t size() const { return names_.size(); }

 private:
  std::vector<std::string> names_;
  std::map<std::string, int, std::less<>> numbers_;
};

/// What a fact has seen of each feed, itself included: the greatest number.
using Clock = std::vector<int>;

/// One fact, where it stands and what it has seen.
struct Entry {
  const facts::Fact* fact = nullptr;
  int feed = 0;
  Clock clock;
  std::int64_t weight = 0;  ///< the sum of the clock

  bool has_seen(int of_feed, int device_seq) const {
    return of_feed >= 0 && static_cast<std::size_t>(of_feed) < clock.size() &&
           clock[static_cast<std::size_t>(of_feed)] >= device_seq;
  }
};

/// An entry for a fact with what it says itself that it has seen.
Entry entry_of(const facts::Fact& fact, Feeds& feeds);

/// Within a feed: by number; of two that carry the same one, always in the same order.
bool by_number(const Entry* a, const Entry* b);
/// Whether one stands before the other.
bool stands_before(const Entry& a, const Entry& b, const Feeds& feeds);

/// Completes what each entry has seen by what that had seen, and sorts.
void arrange(std::vector<Entry>& entries, const Feeds& feeds);

/// Completes the clock of one entry from others that are complete. The others are grouped by feed,
/// each group in the order of device_seq.
void complete(Entry& entry, const std::vector<std::vector<const Entry*>>& by_feed);

}  // namespace steamworthy::closing
