#include "server/accounts.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/sha256.h"
#include "server/secret_rules.h"
#include "store/ed25519.h"
#include "store/local_time.h"
#include "wire/fact_body.h"

namespace steamworthy::server {
namespace {

std::int64_t lock_ms(int failures) {
  if (failures < trials_before_lock) return 0;
  const int times = std::min(failures - trials_before_lock, 6);
  return std::min(hour_ms, minute_ms << times);
}

[[noreturn]] void locked(std::int64_t for_ms) {
  throw Refusal(
      423, "server.locked",
      fmt::format("too many wrong secrets; the next trial is in {} s", (for_ms + 999) / 1000));
}

}  // namespace

std::string enrolment_bytes(std::string_view code) {
  return "steamworthy enrolment 1\n" + std::string(code);
}

Accounts::Accounts(store::FactLog& log, store::AccountBook& book, store::Surroundings& surroundings,
                   Append append, PlantNow plant, store::SecretCost cost)
    : log_(log),
      book_(book),
      surroundings_(surroundings),
      append_(std::move(append)),
      plant_(std::move(plant)),
      cost_(cost),
      no_secret_(store::hash_secret(store::new_token(surroundings), cost)) {
  const std::int64_t now = surroundings_.now_ms();
  book_.tidy(now);
  for (const store::SessionRow& row : book_.sessions()) {
    sessions_[row.token] = {
        row.id, row.person, row.device, row.started_at_ms, row.started_at_ms, row.expires_at_ms};
  }
  for (const auto& [token, device] : book_.device_tokens()) devices_[token] = device;
  for (auto& presence : book_.presences()) presences_.insert(std::move(presence));
}

Caller Accounts::identify(std::string_view device_token, std::string_view session_token) {
  Caller caller;
  const std::int64_t now = surroundings_.now_ms();
  const std::lock_guard lock(mutex_);
  if (device_token.empty()) return caller;
  const auto known = devices_.find(store::hash_token(device_token));
  if (known == devices_.end()) return caller;
  const auto plant_now = plant();
  const auto entry = plant_now->devices.find(known->second);
  if (entry == plant_now->devices.end()) return caller;
  if (entry->second.revoked) {
    caller.revoked = true;
    return caller;
  }
  caller.device = known->second;
  if (session_token.empty()) return caller;
  const auto session = sessions_.find(store::hash_token(session_token));
  if (session == sessions_.end()) return caller;
  // A session belongs to its device: its cookie is worth nothing on another.
  if (!(session->second.device == *caller.device)) return caller;
  if (session->second.expires_at_ms <= now) {
    sessions_.erase(session);
    return caller;
  }
  if (plant_now->people.count(session->second.person) == 0) return caller;
  session->second.last_used_at_ms = now;
  caller.person = session->second.person;
  caller.session = session->second.id;
  caller.expires_at_ms = session->second.expires_at_ms;
  return caller;
}

bool Accounts::was_here(const record::DeviceId& device, const std::string& person) const {
  const std::lock_guard lock(mutex_);
  return presences_.count({device, person}) != 0;
}

std::string Accounts::make_code(const std::string& made_by, std::int64_t good_for_ms) {
  std::string code = store::new_code(surroundings_);
  book_.add_code(store::hash_token(code), made_by, surroundings_.now_ms() + good_for_ms);
  return code;
}

std::int64_t Accounts::append(const std::string& by, std::string_view kind,
                              const facts::Body& body) {
  store::Draft draft;
  draft.scope = log_.plant();
  draft.person = by;
  draft.kind = kind;
  draft.happened_at_ms = surroundings_.now_ms();
  draft.happened_precision_ms = 1000;
  draft.utc_offset_min = static_cast<std::int16_t>(store::utc_offset_min(draft.happened_at_ms));
  draft.body = wire::body_json(body);
  return append_({draft}).front().intake_no;
}

Accounts::Enrolled Accounts::enrol(const NewDevice& device) {
  const std::string name = plain_name(device.name, "device_name");
  const store::Ed25519Verifier verifier;
  if (!verifier.verify(device.key, enrolment_bytes(device.code), device.signature)) {
    throw Refusal(403, "server.bad_proof",
                  "the signature is not by the key that the device sent, of this code");
  }
  const auto plant_now = plant();
  if (device.first_person && !plant_now->people.empty()) {
    throw Refusal(409, "server.not_first", "people are enrolled here already; sign in as one");
  }
  if (!device.first_person && plant_now->people.empty()) {
    throw Refusal(409, "server.needs_person",
                  "nobody is enrolled here yet: the first device brings its person with it");
  }
  const record::DeviceId id = record::device_of(device.key);
  if (plant_now->devices.count(id) != 0 || id == log_.device()) {
    throw Refusal(409, "server.known_device", "this key is enrolled already; make a new one");
  }
  if (device.first_person) {
    check(*device.first_person);
    const auto& roles = device.first_person->roles;
    if (std::none_of(roles.begin(), roles.end(),
                     [](facts::RoleName role) { return (closing::bit(role) & leads) != 0; })) {
      throw Refusal(422, "server.no_roles",
                    "the first person must be a lead hand or an engineer, to enrol the others");
    }
    if (!device.first_person->secret) {
      throw Refusal(422, "server.bad_secret", "the first person needs a secret");
    }
  }
  const record::Hash code = store::hash_token(device.code);
  const store::TakenCode taken = book_.take_code(code, surroundings_.now_ms());
  switch (taken.state) {
    case store::CodeState::Unknown:
      throw Refusal(403, "server.wrong_code", "there is no such code");
    case store::CodeState::Used:
      throw Refusal(403, "server.used_code", "this code was used; ask for a new one");
    case store::CodeState::Expired:
      throw Refusal(403, "server.expired_code", "this code is too old; ask for a new one");
    case store::CodeState::Good:
      break;
  }
  Enrolled done{id, store::new_token(surroundings_)};
  try {
    log_.add_key(device.key);
    const std::string by = device.first_person ? device.first_person->who : taken.made_by;
    if (device.first_person) add_person(*device.first_person, by);
    append(by, facts::DeviceEnrolled::kind.token,
           facts::DeviceEnrolled{hex(id), hex(device.key), name});
    book_.set_device_token(id, store::hash_token(done.token));
  } catch (const std::exception&) {
    book_.give_code_back(code);
    throw;
  }
  const std::lock_guard lock(mutex_);
  devices_[store::hash_token(done.token)] = id;
  return done;
}

void Accounts::prove(const std::string& person, const Secret& secret, int status) {
  const std::string kind = secret.kind.empty() ? kind_of_secret(secret.text) : secret.kind;
  std::string hash = no_secret_;
  const bool known = plant()->people.count(person) != 0;
  if (known) {
    for (const store::SecretHash& one : book_.secrets(person)) {
      if (one.kind == kind) hash = one.hash;
    }
  }
  if (known) count_trial(person);
  if (!store::is_secret(secret.text, hash) || !known) {
    throw Refusal(status, "server.wrong_secret", "the secret is not that person's");
  }
  book_.set_failures(person, {});
}

void Accounts::count_trial(const std::string& person) {
  const std::int64_t now = surroundings_.now_ms();
  const std::lock_guard lock(trial_mutex_);
  store::Failures failures = book_.failures(person);
  if (failures.locked_until_ms > now) locked(failures.locked_until_ms - now);
  // The trial counts before it is made, so that many at once are not more than one after another.
  ++failures.count;
  failures.locked_until_ms = now + lock_ms(failures.count);
  book_.set_failures(person, failures);
}

Accounts::SignedIn Accounts::sign_in(const record::DeviceId& device, const std::string& person,
                                     const Secret& secret) {
  prove(person, secret, 401);
  SignedIn done;
  done.token = store::new_token(surroundings_);
  const std::int64_t now = surroundings_.now_ms();
  done.session = {
      store::new_token(surroundings_).substr(0, 16), person, device, now, now, now + session_ms};
  const record::Hash token = store::hash_token(done.token);
  book_.add_session({done.session.id, token, person, device, now, done.session.expires_at_ms});
  const std::lock_guard lock(mutex_);
  sessions_[token] = done.session;
  presences_.insert({device, person});
  return done;
}

void Accounts::sign_out(const std::string& session) {
  book_.end_session(session);
  const std::lock_guard lock(mutex_);
  std::erase_if(sessions_, [&](const auto& entry) { return entry.second.id == session; });
}

std::vector<Session> Accounts::sessions() const {
  const std::int64_t now = surroundings_.now_ms();
  const std::lock_guard lock(mutex_);
  std::vector<Session> all;
  for (const auto& [token, session] : sessions_) {
    if (session.expires_at_ms > now) all.push_back(session);
  }
  std::sort(all.begin(), all.end(), [](const Session& a, const Session& b) {
    return std::tie(a.started_at_ms, a.id) < std::tie(b.started_at_ms, b.id);
  });
  return all;
}

void Accounts::check(const NewPerson& person) const {
  if (!may_be_who(person.who)) {
    throw Refusal(422, "server.bad_name",
                  "a short name begins with a letter a-z and has up to 40 of a-z, 0-9, _, - and .");
  }
  plain_name(person.name, "name");
  if (person.roles.empty()) throw Refusal(422, "server.no_roles", "a person needs a role");
  if (person.secret) check_secret(person.secret->kind, person.secret->text);
}

facts::PersonEnrolled Accounts::enrolled(const NewPerson& person) const {
  facts::PersonEnrolled fact{person.who, plain_name(person.name, "name"), {}};
  for (const facts::RoleName role : person.roles) fact.roles.emplace_back(facts::token(role));
  return fact;
}

std::int64_t Accounts::add_person(const NewPerson& person, const std::string& by) {
  check(person);
  const std::int64_t intake_no = append(by, facts::PersonEnrolled::kind.token, enrolled(person));
  if (person.secret) set_secret(person.who, *person.secret);
  return intake_no;
}

std::int64_t Accounts::remove_person(const std::string& who, const std::string& by) {
  const auto plant_now = plant();
  if (plant_now->people.count(who) == 0) {
    throw Refusal(404, "server.no_person", "nobody of this name works here");
  }
  const auto others = std::count_if(
      plant_now->people.begin(), plant_now->people.end(),
      [&](const auto& entry) { return entry.first != who && plant_now->may(entry.first, leads); });
  if (others == 0) {
    throw Refusal(409, "server.last_lead",
                  "this is the last lead hand or engineer; enrol another one first");
  }
  const std::int64_t intake_no = append(by, facts::PersonLeft::kind.token, facts::PersonLeft{who});
  book_.forget_person(who);
  const std::lock_guard lock(mutex_);
  std::erase_if(sessions_, [&](const auto& entry) { return entry.second.person == who; });
  return intake_no;
}

void Accounts::set_secret(const std::string& who, const Secret& secret) {
  if (plant()->people.count(who) == 0) {
    throw Refusal(404, "server.no_person", "nobody of this name works here");
  }
  const std::string kind = check_secret(secret.kind, secret.text);
  book_.set_secret(who, {kind, store::hash_secret(secret.text, cost_)}, surroundings_.now_ms());
  book_.set_failures(who, {});
}

std::map<std::string, std::vector<std::string>> Accounts::kinds_of_secret() const {
  std::map<std::string, std::vector<std::string>> kinds;
  for (auto& [person, kind] : book_.kinds_of_secret()) kinds[person].push_back(kind);
  return kinds;
}

std::int64_t Accounts::set_limits(const facts::SiteLimitsSet& limits, const std::string& by) {
  return append(by, facts::SiteLimitsSet::kind.token, limits);
}

std::int64_t Accounts::revoke(const record::DeviceId& device, const std::string& by) {
  if (device == log_.device()) {
    throw Refusal(409, "server.is_node", "the program itself cannot be revoked");
  }
  const auto plant_now = plant();
  const auto entry = plant_now->devices.find(device);
  if (entry == plant_now->devices.end()) {
    throw Refusal(404, "server.no_device", "no such device is enrolled");
  }
  if (entry->second.revoked) {
    throw Refusal(409, "server.revoked_before", "this device was revoked before");
  }
  const std::int64_t intake_no =
      append(by, facts::DeviceRevoked::kind.token, facts::DeviceRevoked{hex(device)});
  // Its token stays known, so that the device is told why it is refused.
  const std::lock_guard lock(mutex_);
  std::erase_if(sessions_, [&](const auto& session) { return session.second.device == device; });
  return intake_no;
}

}  // namespace steamworthy::server
