#include "service/plant.h"

#include <cmath>

#include "closing/order.h"

namespace steamworthy::service {
namespace {

constexpr double seconds_per_minute = 60.0;

void take(Plant& plant, const facts::PersonEnrolled& body) {
  Person& person = plant.people[body.who];
  person.name = body.name;
  person.roles = closing::nobody;
  for (const std::string& word : body.roles) {
    if (const auto role = facts::value_of<facts::RoleName>(word)) {
      person.roles |= closing::bit(*role);
    }
  }
  person.ever_had |= person.roles;
}

void take(Plant& plant, const facts::PersonLeft& body) {
  const auto person = plant.people.find(body.who);
  if (person != plant.people.end()) person->second.roles = closing::nobody;
}

void take(Plant& plant, const facts::DeviceRevoked& body) { plant.revoked.insert(body.device); }

/// Whole minutes, never more than the site said.
std::optional<int> minutes(const std::optional<facts::Measured<units::Duration>>& limit) {
  if (!limit) return std::nullopt;
  return static_cast<int>(std::floor(limit->value.si() / seconds_per_minute + 1e-9));
}

template <class Value>
std::optional<Value> value(const std::optional<facts::Measured<Value>>& limit) {
  return limit ? std::optional<Value>(limit->value) : std::nullopt;
}

void take(Plant& plant, const facts::SiteLimitsSet& body) {
  closing::Site site;
  site.air_minutes = minutes(body.air_holds);
  site.count_minutes = minutes(body.count_holds);
  site.open_below = value(body.open_below);
  site.carbon_monoxide_alarm = value(body.carbon_monoxide_alarm);
  site.hydrogen_sulfide_alarm = value(body.hydrogen_sulfide_alarm);
  site.tighten_below = value(body.tighten_below);
  site.spring_hangers = body.spring_hangers;
  plant.site = site;
}

}  // namespace

bool Plant::may(const std::string& person, closing::Roles any_of) const {
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
          if constexpr (requires { take(plant, body); }) take(plant, body);
        },
        entry.fact->body);
  }
  return plant;
}

closing::Terms terms_of(const boiler::Boiler& boiler, const Plant& plant) {
  closing::Terms terms(boiler, plant.site);
  for (const auto& [who, person] : plant.people) {
    for (const auto& [role, word] : facts::Words<facts::RoleName>::table) {
      if ((person.ever_had & closing::bit(role)) != 0) terms.let(who, role);
    }
  }
  return terms;
}

}  // namespace steamworthy::service
