// The closing view inside this room: its pieces by topic, and how they speak.
#pragma once

#include <set>

#include "boiler/tokens.h"
#include "closing/collector.h"
#include "wire/closing_json.h"
#include "wire/json.h"
#include "words/words.h"

namespace steamworthy::wire {

/// What each piece needs.
struct Speaker {
  const ClosingView& view;
  const words::Style& style;

  const closing::State& state() const { return view.state; }
  const closing::Terms& terms() const { return view.terms; }
  const boiler::Boiler& boiler() const { return view.terms.boiler(); }
  std::string say(const std::string& key) const { return words::label(key, style); }
  std::string sentence(const working::Message& message) const {
    return words::sentence(message, style);
  }
  std::string print(const units::Measure& measure) const { return words::text(measure, style); }
  /// A word of a log entry.
  template <class Enum>
  std::string word(Enum value) const {
    return say(std::string(facts::Words<Enum>::family) + "." + std::string(facts::token(value)));
  }
  /// `name` + suffix, and `name_text` beside it.
  void put(Json& object, const std::string& name, const units::Measure& measure) const {
    put_measure(object, name, measure);
    object[name + "_text"] = print(measure);
  }
};

Json roles_json(closing::Roles roles);
Json names_json(const std::vector<std::string>& names);

/// Every tag that the description or a fact names: the described ones first, in their order.
template <class Described, class Value>
std::vector<std::string> all_tags(const std::vector<Described>& described,
                                  const closing::ByTag<Value>& told) {
  std::vector<std::string> tags;
  std::set<std::string> known;
  for (const Described& one : described) {
    tags.push_back(one.tag);
    known.insert(one.tag);
  }
  for (const auto& [tag, value] : told) {
    if (known.count(tag) == 0) tags.push_back(tag);
  }
  return tags;
}

/// The described piece with that tag; null if nobody described it.
template <class Described>
const Described* described(const std::vector<Described>& pieces, const std::string& tag) {
  for (const Described& piece : pieces) {
    if (piece.tag == tag) return &piece;
  }
  return nullptr;
}

// closing_permission.cc
Json outstanding_list(const std::vector<closing::Outstanding>& items, const words::Style& style);
Json clearance_texts(const closing::Clearance& clearance, const words::Style& style);
Json clearances_json(const Speaker& speaker);
Json alarms_list(const closing::State& state, const words::Style& style);
Json record_json(const Speaker& speaker);

// closing_inside.cc
Json spaces_json(const Speaker& speaker);
Json isolations_json(const Speaker& speaker);

// closing_closures.cc
Json parts_json(const Speaker& speaker);
Json headers_json(const Speaker& speaker);
Json banks_json(const Speaker& speaker);
Json internals_json(const Speaker& speaker);
Json findings_json(const Speaker& speaker);

// closing_gear.cc
Json temporaries_json(const Speaker& speaker);
Json mountings_json(const Speaker& speaker);
Json gauges_json(const Speaker& speaker);
Json temperatures_json(const Speaker& speaker);
Json posts_json(const Speaker& speaker);

// closing_walk.cc
Json sheet_json(const Speaker& speaker);
Json test_json(const Speaker& speaker);
Json leaks_json(const Speaker& speaker);
Json places_json(const Speaker& speaker);

}  // namespace steamworthy::wire
