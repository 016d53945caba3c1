// For tests: bodies of every kind, filled by a source of numbers.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "facts/fact.h"
#include "facts/table.h"

namespace steamworthy::facts {

/// Fills each field; `next(n)` gives a number from 0 to n - 1.
class Filler {
 public:
  using Source = std::function<unsigned(unsigned)>;
  explicit Filler(Source next) : next_(std::move(next)) {}

  void text(const char* name, std::string& into, const char*) { into = some_text(name); }
  void maybe(const char* name, std::string& into, const char*) {
    if (next_(3) != 0) into = some_text(name);
  }
  void texts(const char* name, std::vector<std::string>& into, const char*) {
    for (unsigned i = 0, n = next_(4); i < n; ++i) into.push_back(some_text(name));
  }
  void flag(const char*, bool& into, const char*) { into = next_(2) != 0; }
  void whole(const char*, int& into, const char*) { into = static_cast<int>(next_(1'000'000)); }
  void moment(const char*, std::int64_t& into, const char*) {
    into = 1'790'000'000'000 + static_cast<std::int64_t>(next_(1'000'000)) * 60'000;
  }
  template <class Enum>
  void word(const char*, Enum& into, const char*) {
    into = Words<Enum>::table[next_(static_cast<unsigned>(Words<Enum>::table.size()))].first;
  }
  template <class Quantity>
  void measure(const char* name, Measured<Quantity>& into, units::Kind kind, const char*) {
    // A value as a border carries it, so that it comes back with the same bits.
    put_si(into.value, units::from_border(kind, next_(100'000) / 64.0).si);
    if (next_(3) != 0) into.as_entered = some_text(name);
  }
  template <class Quantity>
  void maybe_measure(const char* name, std::optional<Measured<Quantity>>& into, units::Kind kind,
                     const char* means) {
    if (next_(3) != 0) measure(name, into.emplace(), kind, means);
  }
  template <class Item>
  void items(const char*, std::vector<Item>& into, const char*) {
    for (unsigned i = 0, n = next_(4); i < n; ++i) Item::fields(into.emplace_back(), *this);
  }

 private:
  std::string some_text(const char* name) {
    static const char* const endings[] = {"",  " 2", "-A07", " \"so\"", " \xC3\xA4\xE2\x82\xAC",
                                          "\n"};
    return name + std::string(endings[next_(6)]);
  }
  Source next_;
};

/// A body of the row's kind.
inline Body sample(const Row& row, Filler::Source next) {
  Body body = row.empty;
  Filler filler(std::move(next));
  std::visit(
      [&](auto& one) {
        using T = std::decay_t<decltype(one)>;
        if constexpr (!std::is_same_v<T, Unread>) T::fields(one, filler);
      },
      body);
  return body;
}

/// The same numbers each time: for golden files. Every optional field is there.
inline Filler::Source steady() {
  return [count = 0u](unsigned n) mutable { return n <= 3 ? n - 1 : (7u * ++count) % n; };
}

}  // namespace steamworthy::facts
