#include "service/roster.h"

#include <algorithm>

#include "record/chain.h"
#include "record/sha256.h"
#include "service/log_service.h"

namespace steamworthy::service {
namespace {

std::vector<facts::RoleName> roles_of(const std::vector<std::string>& written) {
  std::vector<facts::RoleName> roles;
  for (const auto& [role, word] : facts::Words<facts::RoleName>::table) {
    if (std::find(written.begin(), written.end(), word) != written.end()) roles.push_back(role);
  }
  return roles;
}

}  // namespace

void enter(Roster& roster, const record::Envelope& envelope, std::string_view body) {
  if (!(envelope.scope == roster.plant)) return;
  const auto fact = fact_of(envelope, body);
  if (!fact) return;
  if (const auto* person = std::get_if<facts::PersonEnrolled>(&fact->body)) {
    roster.people[person->who] = {person->name, roles_of(person->roles)};
  } else if (const auto* left = std::get_if<facts::PersonLeft>(&fact->body)) {
    roster.people.erase(left->who);
  } else if (const auto* device = std::get_if<facts::DeviceEnrolled>(&fact->body)) {
    const auto key = record::from_hex<record::PublicKey>(device->public_key);
    const auto id = record::from_hex<record::DeviceId>(device->device);
    if (!key || !id || device_of(*key) != *id) return;
    const bool revoked = roster.devices[*id].revoked;
    roster.devices[*id] = {device->name, *key, envelope.recorded_at_ms, envelope.person, revoked};
  } else if (std::holds_alternative<facts::SiteLimitsSet>(fact->body)) {
    roster.limits = body;
  } else if (const auto* gone = std::get_if<facts::DeviceRevoked>(&fact->body)) {
    if (const auto id = record::from_hex<record::DeviceId>(gone->device)) {
      roster.devices[*id].revoked = true;
    }
  }
}

Roster roster_of(const store::FactLog& log) {
  Roster roster;
  roster.plant = log.plant();
  std::vector<store::StoredFact> facts;
  std::vector<record::Link> links;
  constexpr std::size_t at_once = 1000;
  std::int64_t after = 0;
  for (bool more = true; more;) {
    std::vector<store::StoredFact> read = log.read(after, at_once);
    more = read.size() == at_once;
    for (store::StoredFact& fact : read) {
      after = fact.intake_no;
      const record::Parsed parsed = record::parse(fact.sealed.bytes);
      if (!parsed || !(parsed.fact->envelope.scope == roster.plant)) continue;
      links.push_back(link_of(parsed.fact->envelope, record::sha256(fact.sealed.bytes)));
      facts.push_back(std::move(fact));
    }
  }
  for (const std::size_t at : record::causal_order(links)) {
    const record::Parsed parsed = record::parse(facts[at].sealed.bytes);
    enter(roster, parsed.fact->envelope, parsed.fact->body);
  }
  return roster;
}

bool has_role(const Roster& roster, std::string_view person,
              const std::vector<facts::RoleName>& roles) {
  const auto entry = roster.people.find(person);
  if (entry == roster.people.end()) return false;
  return std::any_of(roles.begin(), roles.end(), [&](facts::RoleName role) {
    const auto& has = entry->second.roles;
    return std::find(has.begin(), has.end(), role) != has.end();
  });
}

}  // namespace steamworthy::service
