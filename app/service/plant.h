// Plant: what the plant's own feed says: who has which role, which devices there are, which limits
// the site has set.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "closing/terms.h"
#include "facts/fact.h"
#include "record/envelope.h"

namespace steamworthy::service {

struct Person {
  std::string name;
  closing::Roles roles = closing::nobody;

  friend bool operator==(const Person&, const Person&) = default;
};

struct Device {
  std::string name;
  record::PublicKey key;
  std::int64_t enrolled_at_ms = 0;
  std::string enrolled_by;  ///< empty: the program's console
  bool revoked = false;     ///< for ever

  friend bool operator==(const Device&, const Device&) = default;
};

/// The last fact in the order of cause and effect counts.
struct Plant {
  /// By short name; without those who left.
  std::map<std::string, Person, std::less<>> people;
  /// Every role that somebody ever had, those who left too: what their entries are judged by.
  std::map<std::string, closing::Roles, std::less<>> ever_had;
  std::map<record::DeviceId, Device> devices;
  std::optional<facts::SiteLimitsSet> limits;

  /// Somebody who works here and has one of the roles now.
  bool may(std::string_view person, closing::Roles any_of) const;

  friend bool operator==(const Plant&, const Plant&) = default;
};

/// Reads facts of the plant's feed, in any order. A device's key must be the one that its name
/// follows from.
Plant plant_of(const std::vector<facts::Fact>& facts);

/// Whether closings are judged alike by both.
bool judge_alike(const Plant& one, const Plant& other);

/// What closings of a boiler are judged by. A person's entries count by every role that they ever
/// had: that somebody leaves makes nothing wrong that they did. Limits hold for the whole closing:
/// it is judged anew where the site changes them.
closing::Terms terms_of(const boiler::Boiler& boiler, const Plant& plant);

/// Roles one by one, in the order of the table.
std::vector<facts::RoleName> each_of(closing::Roles roles);
/// The same as the words of facts: "lead_hand".
std::vector<std::string> role_tokens(closing::Roles roles);

}  // namespace steamworthy::service
