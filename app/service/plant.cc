#include "service/plant.h"

#include "closing/order.h"
#include "closing/site.h"

namespace steamworthy::service {
namespace {

void take(Plant& plant, const facts::Fact&, const facts::PersonEnrolled& body) {
  closing::Roles roles = closing::nobody;
  for (const std::string& word : body.roles) {
    if (const auto role = facts::value_of<facts::RoleName>(word)) roles |= closing::bit(*role);
  }
  plant.people[body.who] = {body.name, roles};
  plant.ever_had[body.who] |= roles;
}

void take(Plant& plant, const facts::Fact&, const facts::PersonLeft& body) {
  plant.people.erase(body.who);
}

void take(Plant& plant, const facts::Fact& fact, const facts::DeviceEnrolled& body) {
  const auto key = record::from_hex<record::PublicKey>(body.public_key);
  const auto id = record::from_hex<record::DeviceId>(body.device);
  if (!key || !id || record::device_of(*key) != *id) return;
  const bool revoked = plant.devices[*id].revoked;
  plant.devices[*id] = {body.name, *key, fact.recorded_at_ms, fact.person, revoked};
}

void take(Plant& plant, const facts::Fact&, const facts::DeviceRevoked& body) {
  if (const auto id = record::from_hex<record::DeviceId>(body.device)) {
    plant.devices[*id].revoked = true;
  }
}

void take(Plant& plant, const facts::Fact&, const facts::SiteLimitsSet& body) {
  plant.limits = body;
}

}  // namespace

bool Plant::may(std::string_view person, closing::Roles any_of) const {
  const auto found = people.find(person);
  return found != people.end() && (found->second.roles & any_of) != 0;
}

Plant plant_of(const std::vector<facts::Fact>& facts) {
  closing::Feeds feeds;
  std::vector<closing::Entry> entries;
  for (const facts::Fact& fact : facts) entries.push_back(closing::entry_of(fact, feeds));
  closing::arrange(entries, feeds);
  Plant plant;
  for (const closing::Entry& entry : entries) {
    std::visit(
        [&](const auto& body) {
          if constexpr (requires { take(plant, *entry.fact, body); })
            take(plant, *entry.fact, body);
        },
        entry.fact->body);
  }
  return plant;
}

bool judge_alike(const Plant& one, const Plant& other) {
  return one.ever_had == other.ever_had &&
         closing::site_of(one.limits) == closing::site_of(other.limits);
}

closing::Terms terms_of(const boiler::Boiler& boiler, const Plant& plant) {
  closing::Terms terms(boiler, closing::site_of(plant.limits));
  for (const auto& [who, roles] : plant.ever_had) {
    for (const facts::RoleName role : each_of(roles)) terms.let(who, role);
  }
  return terms;
}

std::vector<facts::RoleName> each_of(closing::Roles roles) {
  std::vector<facts::RoleName> each;
  for (const auto& [role, word] : facts::Words<facts::RoleName>::table) {
    if ((roles & closing::bit(role)) != 0) each.push_back(role);
  }
  return each;
}

std::vector<std::string> role_tokens(closing::Roles roles) {
  std::vector<std::string> tokens;
  for (const facts::RoleName role : each_of(roles)) tokens.emplace_back(facts::token(role));
  return tokens;
}

}  // namespace steamworthy::service
