#include "closing/fingerprint_test.h"

#include <algorithm>

namespace steamworthy::closing {
namespace {

class Hasher {
 public:
  Hasher(const std::vector<Knowledge>& knowers, std::int64_t now_ms)
      : knowers_(knowers), now_ms_(now_ms) {}

  std::uint64_t value() const { return a_; }

  void number(std::uint64_t x) {
    // The steps of splitmix64, public domain (S. Vigna), chained.
    a_ += 0x9e3779b97f4a7c15ULL + x;
    a_ = (a_ ^ (a_ >> 30)) * 0xbf58476d1ce4e5b9ULL;
    a_ = (a_ ^ (a_ >> 27)) * 0x94d049bb133111ebULL;
    a_ ^= a_ >> 31;
  }
  void text(std::string_view text) {
    number(text.size());
    for (const char c : text) number(static_cast<unsigned char>(c));
  }
  void real(double x) { number(static_cast<std::uint64_t>(static_cast<std::int64_t>(x * 1e3))); }

  void known(const Heads& heads) {
    for (const Knowledge& knower : knowers_) {
      bool all = true;
      for (const auto& [device, head] : heads) {
        const auto it = knower.find(device);
        all = all && it != knower.end() && it->second >= head;
      }
      number(all ? 1 : 0);
    }
  }
  void known(const Stamp& stamp) { known(Heads{{stamp.device, stamp.device_seq}}); }
  void age(const Stamp& stamp) {
    known(stamp);
    const std::int64_t minutes = (now_ms_ - stamp.at_ms) / 60'000;
    number(static_cast<std::uint64_t>(std::min<std::int64_t>(minutes, 16)));
  }
  void condition(const Condition& c) {
    number(c.holds ? 1 : 0);
    known(c.against);
  }
  template <class Value, class One>
  void each(const ByTag<Value>& values, One one) {
    number(values.size());
    for (const auto& [tag, value] : values) {
      text(tag);
      one(value);
    }
  }

 private:
  const std::vector<Knowledge>& knowers_;
  std::int64_t now_ms_;
  std::uint64_t a_ = 0x243f6a8885a308d3ULL;
};

void spaces(Hasher& h, const State& s) {
  h.each(s.spaces, [&](const SpaceState& space) {
    h.each(space.people, [&](const Condition& c) { h.condition(c); });
    h.each(space.things, [&](const Condition& c) { h.condition(c); });
    h.known(space.entries);
    h.condition(space.attended);
    h.condition(space.air_good);
    h.number(space.air ? 1 : 0);
    if (space.air) {
      h.age(space.air->stamp);
      h.real(space.air->least_oxygen);
      h.number(space.air->explained ? 1 : 0);
    }
    h.number(space.count ? 1 : 0);
    if (space.count) {
      const Count& c = *space.count;
      h.age(c.stamp);
      h.number(static_cast<std::uint64_t>(c.people + 10 * c.things));
      h.number((c.two_names ? 1 : 0) + (c.looked_in ? 2 : 0) + (c.called ? 4 : 0) +
               (c.valid ? 8 : 0));
      h.number(c.heard.size());
      for (const std::string& device : c.heard) h.text(device);
    }
    h.number(space.was_open ? 1 : 0);
    h.condition(space.closed);
  });
}

void closures(Hasher& h, const State& s) {
  h.each(s.closures, [&](const ClosureState& c) {
    for (const Condition* one :
         {&c.known_not_opened, &c.nipped_up, &c.cleaned, &c.looked_at, &c.matches, &c.gasket,
          &c.gaps_good, &c.hardened_up, &c.untouched}) {
      h.condition(*one);
    }
    h.number((c.opened ? 1 : 0) + (c.gaps_said ? 2 : 0) + (c.look_on_steam ? 4 : 0));
  });
  h.each(s.headers, [&](const Header& x) {
    h.condition(x.looked_into);
    h.condition(x.sealed);
    h.number(x.opened ? 1 : 0);
  });
  h.each(s.internals, [&](const Condition& c) { h.condition(c); });
  h.each(s.findings, [&](const Finding& f) {
    h.number(static_cast<std::uint64_t>(f.severity));
    h.number(f.disposition ? 1 + static_cast<std::uint64_t>(*f.disposition) : 0);
  });
  h.each(s.dry, [&](const Condition& c) { h.condition(c); });
  h.each(s.leaks, [&](const Leak& leak) {
    h.text(leak.place);
    h.number(static_cast<std::uint64_t>(leak.at));
    for (const Condition* one : {&leak.repaired, &leak.seen_dry, &leak.watched_hot}) {
      h.condition(*one);
    }
  });
}

void gear(Hasher& h, const State& s) {
  h.each(s.isolations, [&](const Isolation& x) {
    h.number(x.how ? 1 + static_cast<std::uint64_t>(*x.how) : 0);
    for (const Condition* one : {&x.made, &x.tell_tale_dry, &x.tried}) h.condition(*one);
  });
  h.each(s.gauges, [&](const Gauge& x) {
    h.real(x.reading ? x.reading->si() : -1.0);
    for (const Condition* one : {&x.fitted, &x.at_zero, &x.read_since_hold}) h.condition(*one);
  });
  h.each(s.temperatures, [&](const Reading& x) {
    h.number(static_cast<std::uint64_t>(x.of));
    h.real(x.temperature.si());
  });
  h.each(s.vents, [&](const Vent& x) {
    for (const Condition* one : {&x.open, &x.shut, &x.moving_air, &x.ran_solid, &x.manned}) {
      h.condition(*one);
    }
  });
  h.each(s.drains, [&](const Drain& x) {
    h.condition(x.shut);
    h.condition(x.proved);
  });
  h.each(s.doors, [&](const Condition& c) { h.condition(c); });
  h.each(s.temporaries, [&](const Temporary& x) {
    h.number(x.was_on ? 1 : 0);
    for (const Condition* one : {&x.on, &x.off, &x.seen_off}) h.condition(*one);
  });
  h.each(s.fittings, [&](const Fitting& x) {
    h.number(x.was_isolated ? 1 : 0);
    for (const Condition* one : {&x.isolated, &x.back, &x.proved}) h.condition(*one);
  });
  for (const auto& [post, x] : s.posts) {
    h.number(static_cast<std::uint64_t>(post));
    h.condition(x.manned);
    h.condition(x.in_contact);
    h.number(x.contact_said ? 1 : 0);
  }
}

void boiler_as_a_whole(Hasher& h, const State& s) {
  for (const Condition* one :
       {&s.hangers_pinned, &s.hangers_free, &s.order_agreed, &s.drained, &s.full, &s.level_known,
        &s.relief_tried, &s.stop_word, &s.people_clear, &s.hold_met, &s.test_valve_shut,
        &s.pump_side_open, &s.normalised}) {
    h.condition(*one);
  }
  std::uint64_t bits = 0;
  for (const bool one :
       {s.hangers_said, s.water_in, s.filling, s.pump_runs, s.holding, s.hold_is_high, s.was_raised,
        s.left_full, s.left_safe, s.laid_up, s.fire_lit, s.sheet.has_value()}) {
    bits = bits * 2 + (one ? 1 : 0);
  }
  h.number(bits);
  h.real(s.level ? s.level->si() : -1.0);
  h.real(s.relief ? s.relief->si() : -1.0);
  h.text(s.pen);
  h.text(s.given_by);
  h.text(s.received_by);
}

/// An alarm's name without the numbers of facts.
std::string plain(const std::string& name) {
  std::string out;
  std::copy_if(name.begin(), name.end(), std::back_inserter(out),
               [](char c) { return c < '0' || c > '9'; });
  return out;
}

void permission(Hasher& h, const State& s) {
  h.number(s.given.size());
  for (const Given& g : s.given) {
    h.number(static_cast<std::uint64_t>(g.step));
    h.text(g.subject);
    h.real(g.up_to ? g.up_to->si() : -1.0);
    h.known(g.stamp);
    h.number(g.lapsed ? 1 + static_cast<std::uint64_t>(*g.lapsed) : 0);
    h.number(g.overrides.size());
  }
  h.each(s.lapsers, [&](const Lapser& x) { h.known(x.heads); });
  std::vector<std::string> alarms;
  for (const auto& [name, alarm] : s.alarms) {
    if (!alarm.stops) continue;  // no rule reads it
    alarms.push_back(plain(name) + (alarm.taken ? "+" : "-"));
  }
  std::sort(alarms.begin(), alarms.end());
  alarms.erase(std::unique(alarms.begin(), alarms.end()), alarms.end());
  for (const std::string& alarm : alarms) h.text(alarm);
  h.number(s.overrides.size());
  h.number(std::min<std::size_t>(s.unread.size(), 1));
  h.number(std::min<std::size_t>(s.forked.size(), 1));
  h.each(s.devices, [&](const Device& d) {
    h.number((d.is_missing_entries() ? 1 : 0) + (d.left ? 2 : 0) + (d.lost ? 4 : 0));
  });
}

}  // namespace

std::uint64_t fingerprint(const State& state, const std::vector<Knowledge>& knowers,
                          std::int64_t now_ms) {
  Hasher h(knowers, now_ms);
  spaces(h, state);
  closures(h, state);
  gear(h, state);
  boiler_as_a_whole(h, state);
  permission(h, state);
  return h.value();
}

}  // namespace steamworthy::closing
