// Collector: gathers what is outstanding; part of outstanding.cc and its checks.
#pragma once

#include "closing/outstanding.h"

namespace steamworthy::closing {

class Collector {
 public:
  Collector(const State& state, const Terms& terms, const Clearance& clearance, std::int64_t now_ms,
            const std::vector<Override>& overrides)
      : state(state), terms(terms), clearance(clearance), now_ms(now_ms), overrides_(overrides) {}

  /// Adds one, unless the check is overridden for this step and subject.
  void add(Check check, const std::string& subject = "");

  const State& state;
  const Terms& terms;
  const Clearance& clearance;
  std::int64_t now_ms;
  std::vector<Outstanding> found;

 private:
  const std::vector<Override>& overrides_;
};

/// The value behind a tag, or one that nobody said anything of.
template <class Value>
const Value& of(const ByTag<Value>& values, const std::string& tag) {
  static const Value nothing{};
  const auto found = values.find(tag);
  return found == values.end() ? nothing : found->second;
}

/// Older than so many minutes, dated ahead of the clock, or of an age that the site has not named.
bool is_old(std::int64_t at_ms, std::int64_t now_ms, std::optional<int> minutes);

bool is_shut_off_twice(const Isolation& line);
bool is_at_zero(const State& state);
bool has_vent_moving_air(const State& state, const Terms& terms);

/// Which checks of S3 fail for a space; each with what it is about.
std::vector<std::pair<Check, std::string>> fails_of_count(const State& state, const Terms& terms,
                                                          const std::string& space,
                                                          std::int64_t now_ms);
/// A leak that was repaired and seen dry since; one that passes in: by a hold that was met.
bool is_closed(const State& state, const Leak& leak);
/// Whether a place to look was seen dry, or has a weep there that somebody signed for.
bool is_settled(const State& state, const std::string& place);
/// Whether a way in stands open: a door that was not shut, a closure opened and not nipped up.
bool is_way_open(const State& state, const WayIn& way);

/// Every fitted gauge was read after the hold, and none shows more than examination pressure.
bool is_at_examination(const State& state, const Terms& terms);
/// What a gauge may show, in Pa, while the reference level is at `pressure`: with its head of water
/// and one step of its scale.
double greatest_reading(const Terms& terms, const std::string& gauge, double pressure);
bool is_within_limits(const Air& air, const Terms& terms);
/// Within the window of the sheet; false without a sheet.
bool is_in_window(const State& state, units::Temperature temperature);

void check_air(Collector& into);
void check_findings(Collector& into, Check check);
void check_open(Collector& into);
void check_enter(Collector& into);
void check_close_last_way_in(Collector& into);
void check_fill(Collector& into);
void check_raise(Collector& into);
void check_walk_fire_side(Collector& into);
void check_wrench(Collector& into);
void check_break(Collector& into);
void check_let_down(Collector& into);
void check_drain(Collector& into);
void check_leave_full(Collector& into);
void check_take_over(Collector& into);
void check_steam(Collector& into);
/// What stands in the way of every clearance: entries that cannot be read, alarms.
void check_record(Collector& into);

/// outstanding() with overrides of one's own.
std::vector<Outstanding> outstanding_with(const State& state, const Terms& terms,
                                          const Clearance& clearance, std::int64_t now_ms,
                                          const std::vector<Override>& overrides);

}  // namespace steamworthy::closing
