// Told: one fact at its place in the order, as the functions that apply it see it.
#pragma once

#include "closing/order.h"
#include "closing/state.h"
#include "closing/terms.h"

namespace steamworthy::closing {

struct Told {
  const Entry& entry;
  const Feeds& feeds;
  const Terms& terms;

  const facts::Fact& fact() const { return *entry.fact; }
  const std::string& person() const { return entry.fact->person; }
  bool has_seen(std::string_view device, int device_seq) const {
    return entry.has_seen(feeds.find(device), device_seq);
  }
  bool has_seen(const Stamp& stamp) const { return has_seen(stamp.device, stamp.device_seq); }
  bool has_seen(const Heads& heads) const {
    for (const auto& [device, device_seq] : heads) {
      if (!has_seen(device, device_seq)) return false;
    }
    return true;
  }
  /// When it happened at the latest: never after it was recorded.
  std::int64_t at_ms() const { return std::min(fact().happened_at_ms, fact().recorded_at_ms); }
  Stamp stamp() const { return {fact().device, fact().device_seq, at_ms()}; }
  void put_into(Heads& heads) const {
    int& head = heads[fact().device];
    head = std::max(head, fact().device_seq);
  }
};

inline void set(Condition& condition, const Told& told) {
  // One that takes it back and that this fact did not know of counts for more.
  if (told.has_seen(condition.against)) condition.holds = true;
}

inline void take_back(Condition& condition, const Told& told) {
  condition.holds = false;
  told.put_into(condition.against);
}

inline void put(Condition& condition, bool holds, const Told& told) {
  if (holds) {
    set(condition, told);
  } else {
    take_back(condition, told);
  }
}

}  // namespace steamworthy::closing
