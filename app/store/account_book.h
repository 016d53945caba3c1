// AccountBook: what must never stand in the signed record: hashes of secrets, sessions, one-time
// codes. A file of its own beside the store, PATH.accounts, that nobody else may read; no backup or
// export of the store holds any of it.
//
// Who people are, which roles they have and which devices there are stands in the record, not here.
// All functions may be called from any thread; those that write return once the disk has it.
#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "record/bytes.h"
#include "store/sqlite.h"

namespace steamworthy::store {

/// One of a person's secrets.
struct SecretHash {
  std::string kind;  ///< "pin", "badge", "passphrase"
  std::string hash;  ///< secret.h
};

/// Trials of a person's secrets that failed in a row.
struct Failures {
  int count = 0;
  std::int64_t locked_until_ms = 0;
};

struct SessionRow {
  std::string id;      ///< names it on a page; is no secret
  record::Hash token;  ///< hash of what the cookie holds
  std::string person;
  record::DeviceId device;
  std::int64_t started_at_ms = 0;
  std::int64_t expires_at_ms = 0;
};

/// Why a code does not open the door.
enum class CodeState { Good, Unknown, Used, Expired };

struct TakenCode {
  CodeState state = CodeState::Unknown;
  std::string made_by;  ///< person; empty: the program's console
};

class AccountBook {
 public:
  /// Opens PATH, or makes it with mode 0600.
  /// Throws   StoreError "store.not_a_store", "store.unknown_version", "store.key_unsafe" if others
  ///          may read it, and as Database does.
  explicit AccountBook(const std::string& path);
  ~AccountBook();

  std::vector<SecretHash> secrets(const std::string& person) const;
  /// People with the kinds of secret that they have, by rising name.
  std::vector<std::pair<std::string, std::string>> kinds_of_secret() const;
  void set_secret(const std::string& person, const SecretHash& secret, std::int64_t now_ms);
  /// Takes all secrets and sessions of a person away.
  void forget_person(const std::string& person);

  Failures failures(const std::string& person) const;
  void set_failures(const std::string& person, const Failures& failures);

  void add_session(const SessionRow& session);
  /// Does nothing if there is none.
  void end_session(const std::string& id);
  std::vector<SessionRow> sessions() const;
  /// Everybody who ever signed in at a device.
  std::vector<std::pair<record::DeviceId, std::string>> presences() const;

  /// Hash of the token by which a device is told; a new one takes the place of the old.
  void set_device_token(const record::DeviceId& device, const record::Hash& token);
  void forget_device(const record::DeviceId& device);
  std::vector<std::pair<record::Hash, record::DeviceId>> device_tokens() const;

  void add_code(const record::Hash& code, const std::string& made_by, std::int64_t expires_at_ms);
  /// Looks a code up; a good one is used by that.
  TakenCode take_code(const record::Hash& code, std::int64_t now_ms);
  /// Makes a code that was taken good again: the enrolment for which it was taken failed.
  void give_code_back(const record::Hash& code);

  /// Takes sessions and codes away that expired before then.
  void tidy(std::int64_t before_ms);

 private:
  mutable std::mutex mutex_;
  mutable std::unique_ptr<Database> database_;
};

/// The name of the file of accounts beside a store.
std::string accounts_path(const std::string& store_path);

}  // namespace steamworthy::store
