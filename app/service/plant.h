// Plant: what the plant's own feed says: who has which role, which limits the site has set.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "closing/terms.h"
#include "facts/fact.h"

namespace steamworthy::service {

struct Person {
  std::string name;
  closing::Roles roles = closing::nobody;     ///< now; none for one who left
  closing::Roles ever_had = closing::nobody;  ///< what their entries are judged by

  friend bool operator==(const Person&, const Person&) = default;
};

/// The last fact in the order of cause and effect counts.
struct Plant {
  std::map<std::string, Person, std::less<>> people;  ///< by short name
  closing::Site site;
  std::set<std::string> revoked;  ///< devices

  /// Somebody who works here and has one of the roles now.
  bool may(const std::string& person, closing::Roles any_of) const;

  friend bool operator==(const Plant&, const Plant&) = default;
};

/// Reads facts of the plant's feed, in any order.
Plant plant_of(const std::vector<facts::Fact>& facts);

/// What closings of a boiler are judged by. A person's entries count by every role that they ever
/// had: that somebody leaves makes nothing wrong that they did. Limits hold for the whole closing:
/// it is judged anew where the site changes them.
closing::Terms terms_of(const boiler::Boiler& boiler, const Plant& plant);

}  // namespace steamworthy::service
