// Accounts: which device and which person a call comes from, and how both come to be known.
//
// People and devices are facts of the plant (service/plant.h); secrets, sessions and codes are in
// the account book. Looking a caller up touches neither: it reads memory only, and may be done on
// the loop. Everything that takes a secret is slow on purpose and belongs on the pool.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>

#include "facts/body.h"
#include "server/http.h"
#include "service/plant.h"
#include "store/account_book.h"
#include "store/fact_log.h"
#include "store/secret.h"
#include "store/surroundings.h"

namespace steamworthy::server {

inline constexpr std::int64_t minute_ms = 60'000;
inline constexpr std::int64_t hour_ms = 60 * minute_ms;
/// A session ends after a shift.
inline constexpr std::int64_t session_ms = 12 * hour_ms;
/// A code on a page is good for so long; the one that the console prints, for an hour.
inline constexpr std::int64_t code_ms = 10 * minute_ms;
/// Trials that fail in a row before a person is locked out: a minute, then two, four ... an hour.
inline constexpr int trials_before_lock = 5;

struct Session {
  std::string id;
  std::string person;
  record::DeviceId device;
  std::int64_t started_at_ms = 0;
  std::int64_t last_used_at_ms = 0;
  std::int64_t expires_at_ms = 0;
};

/// Who calls.
struct Caller {
  std::optional<record::DeviceId> device;
  std::string person;  ///< empty: nobody is signed in
  std::string session;
  std::int64_t expires_at_ms = 0;
  bool revoked = false;  ///< the device was known and is so no more
};

/// A secret as somebody enters it.
struct Secret {
  std::string kind;  ///< "pin", "badge", "passphrase"; empty: told by its form
  std::string text;
};

struct NewPerson {
  std::string who;
  std::string name;
  std::vector<facts::RoleName> roles;
  std::optional<Secret> secret;
};

struct NewDevice {
  std::string code;
  std::string name;
  record::PublicKey key;
  record::Signature signature;  ///< of enrolment_bytes(code)
  std::optional<NewPerson> first_person;
};

/// What a device signs to show that it has the key.
std::string enrolment_bytes(std::string_view code);

/// Appends facts; run by whoever may write to the log.
using Append = std::function<std::vector<store::Receipt>(const std::vector<store::Draft>&)>;

/// What the plant's feed says now.
using PlantNow = std::function<std::shared_ptr<const service::Plant>()>;

class Accounts {
 public:
  /// `append` is called for facts of the plant; what `plant` says from then on knows them, and it
  /// never waits.
  Accounts(store::FactLog& log, store::AccountBook& book, store::Surroundings& surroundings,
           Append append, PlantNow plant, store::SecretCost cost = {});

  std::shared_ptr<const service::Plant> plant() const { return plant_(); }
  record::DeviceId node() const { return log_.device(); }

  /// By the two cookies. Never throws, never waits.
  Caller identify(std::string_view device_token, std::string_view session_token);
  /// The same without counting it as use.
  bool was_here(const record::DeviceId& device, const std::string& person) const;

  /// A code for one device. `made_by`: a person, or empty for the console.
  std::string make_code(const std::string& made_by, std::int64_t good_for_ms);

  struct Enrolled {
    record::DeviceId device;
    std::string token;  ///< for the cookie
  };
  /// Throws   Refusal 403 server.wrong_code, server.used_code, server.expired_code,
  ///          server.bad_proof; 409 server.known_device, server.needs_person,
  ///          server.not_first; 422 as add_person().
  Enrolled enrol(const NewDevice& device);

  struct SignedIn {
    Session session;
    std::string token;  ///< for the cookie
  };
  /// Throws   Refusal 401 server.wrong_secret, 423 server.locked.
  SignedIn sign_in(const record::DeviceId& device, const std::string& person, const Secret& secret);
  void sign_out(const std::string& session);
  std::vector<Session> sessions() const;

  /// Whether the secret is the person's; counts trials.
  /// Throws   Refusal 401 or 403 (`status`) server.wrong_secret, 423 server.locked.
  void prove(const std::string& person, const Secret& secret, int status);

  /// Makes a person known, or gives a known one another name and other roles.
  /// Throws   Refusal 422 server.bad_name, server.no_roles, server.bad_secret.
  std::int64_t add_person(const NewPerson& person, const std::string& by);
  /// Throws   Refusal 404 server.no_person; 409 server.last_lead for the last who may do this.
  std::int64_t remove_person(const std::string& who, const std::string& by);
  /// Throws   Refusal 404 server.no_person, 422 server.bad_secret.
  void set_secret(const std::string& who, const Secret& secret);
  std::map<std::string, std::vector<std::string>> kinds_of_secret() const;

  /// Throws   Refusal 404 server.no_device, 409 server.is_node, server.revoked_before.
  std::int64_t revoke(const record::DeviceId& device, const std::string& by);

  /// Sets the site's limits: the body of a fact site.limits_set, already read.
  std::int64_t set_limits(const facts::SiteLimitsSet& limits, const std::string& by);

 private:
  std::int64_t append(const std::string& by, std::string_view kind, const facts::Body& body);
  void count_trial(const std::string& person);
  void check(const NewPerson& person) const;
  facts::PersonEnrolled enrolled(const NewPerson& person) const;

  store::FactLog& log_;
  store::AccountBook& book_;
  store::Surroundings& surroundings_;
  Append append_;
  PlantNow plant_;
  store::SecretCost cost_;
  std::string no_secret_;  ///< what is tried where a person has none, so that it takes as long

  std::mutex trial_mutex_;
  mutable std::mutex mutex_;                  // guards all below
  std::map<record::Hash, Session> sessions_;  ///< by the hash of the token
  std::map<record::Hash, record::DeviceId> devices_;
  std::set<std::pair<record::DeviceId, std::string>> presences_;
};

/// Roles that may do what an office does: people, devices, beginning a closing.
inline constexpr closing::Roles leads =
    closing::bit(facts::RoleName::LeadHand) | closing::bit(facts::RoleName::Engineer);

}  // namespace steamworthy::server
