// Roster: who works at the plant in which roles, and which devices it knows, from the plant's
// feeds.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "facts/words.h"
#include "record/envelope.h"
#include "store/fact_log.h"

namespace steamworthy::service {

struct PersonEntry {
  std::string name;
  std::vector<facts::RoleName> roles;  ///< in the order of the table, each once
};

struct DeviceEntry {
  std::string name;
  record::PublicKey key;
  std::int64_t enrolled_at_ms = 0;
  std::string enrolled_by;  ///< empty: the program's console
  bool revoked = false;     ///< for ever
};

struct Roster {
  record::Scope plant;
  std::map<std::string, PersonEntry, std::less<>>
      people;  ///< by short name; without those who left
  std::map<record::DeviceId, DeviceEntry> devices;
  std::string limits;  ///< body of the last site.limits_set; empty: none
};

/// Lets one fact of the plant count; others, and those that cannot be read, change nothing. A
/// device's key must be the one that its name follows from.
void enter(Roster& roster, const record::Envelope& envelope, std::string_view body);

/// The roster of a log, its facts in causal order.
Roster roster_of(const store::FactLog& log);

/// Whether somebody has one of the roles.
bool has_role(const Roster& roster, std::string_view person,
              const std::vector<facts::RoleName>& roles);

}  // namespace steamworthy::service
