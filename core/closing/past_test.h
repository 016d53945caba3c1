// For tests: what holds by the facts alone, written apart from the fold that it judges.
//
// The fold keeps conditions that facts set and take back, in one order of all facts. Here there is
// no order and no state: a thing holds if there is a fact that says so and that knew of every fact
// that speaks against it.
#pragma once

#include <bitset>
#include <functional>
#include <set>
#include <string>
#include <vector>

#include "facts/fact.h"

namespace steamworthy::closing {

class Past {
 public:
  static constexpr std::size_t most = 192;
  using Test = std::function<bool(const facts::Fact&)>;

  explicit Past(const std::vector<facts::Fact>& facts) : facts_(facts), before_(facts.size()) {
    complete(0);
  }
  /// The same, where what the first of the facts knew is known already: they knew none of the rest.
  Past(const std::vector<facts::Fact>& facts, const Past& of_first)
      : facts_(facts), before_(of_first.before_) {
    before_.resize(facts.size());
    complete(of_first.before_.size());
  }

  const std::vector<facts::Fact>& facts() const { return facts_; }
  /// Whether fact i knew of fact j.
  bool knew(std::size_t i, std::size_t j) const { return before_[i][j]; }
  bool knew_all(std::size_t i, const Test& of) const {
    for (std::size_t j = 0; j < facts_.size(); ++j) {
      if (j != i && of(facts_[j]) && !knew(i, j)) return false;
    }
    return true;
  }
  bool any(const Test& test) const {
    for (const facts::Fact& fact : facts_) {
      if (test(fact)) return true;
    }
    return false;
  }
  /// There is one that says so and knew of all that speak against it.
  bool holds(const Test& says, const Test& against) const {
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      if (says(facts_[i]) && knew_all(i, against)) return true;
    }
    return false;
  }

 private:
  void complete(std::size_t from) {
    for (bool grew = true; grew;) {
      grew = false;
      for (std::size_t i = from; i < facts_.size(); ++i) grew = reach(i) || grew;
    }
  }
  bool reach(std::size_t i) {
    const std::bitset<most> old = before_[i];
    for (std::size_t j = 0; j < facts_.size(); ++j) {
      if (j != i && names(facts_[i], facts_[j])) {
        before_[i].set(j);
        before_[i] |= before_[j];
      }
    }
    return before_[i] != old;
  }
  /// Whether a says itself that it has seen b.
  static bool names(const facts::Fact& a, const facts::Fact& b) {
    if (a.device == b.device) return b.device_seq < a.device_seq;
    for (const facts::Head& head : a.seen) {
      if (head.device == b.device) return b.device_seq <= head.device_seq;
    }
    return false;
  }

  const std::vector<facts::Fact>& facts_;
  std::vector<std::bitset<most>> before_;
};

/// The body as a T; null if it is another.
template <class T>
const T* as(const facts::Fact& fact) {
  return std::get_if<T>(&fact.body);
}

/// A test for a kind, and one for a kind with a condition on its body.
template <class T>
Past::Test is() {
  return [](const facts::Fact& fact) { return as<T>(fact) != nullptr; };
}
template <class T, class Condition>
Past::Test is(Condition condition) {
  return [condition](const facts::Fact& fact) {
    const T* body = as<T>(fact);
    return body != nullptr && condition(*body);
  };
}
inline auto of_closure(const std::string& tag) {
  return [tag](const auto& body) { return body.closure == tag; };
}
inline auto of_space(const std::string& tag) {
  return [tag](const auto& body) { return body.space == tag; };
}
inline Past::Test operator||(Past::Test a, Past::Test b) {
  return [a, b](const facts::Fact& fact) { return a(fact) || b(fact); };
}

/// Every device that wrote, joined, or was named as seen.
inline std::set<std::string> devices_of(const Past& past) {
  std::set<std::string> devices;
  for (const facts::Fact& fact : past.facts()) {
    devices.insert(fact.device);
    for (const facts::Head& head : fact.seen) devices.insert(head.device);
    if (const auto* joined = as<facts::DeviceJoined>(fact)) devices.insert(joined->device);
  }
  return devices;
}

}  // namespace steamworthy::closing
