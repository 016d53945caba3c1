#include "store/account_book.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "base/error.h"
#include "store/schema.h"

namespace steamworthy::store {
namespace {

constexpr std::int64_t application_id = 0x53574143;  // "SWAC"
constexpr std::int64_t version = 1;

constexpr const char* tables =
    "CREATE TABLE secret(person TEXT NOT NULL, kind TEXT NOT NULL, hash TEXT NOT NULL,"
    " set_at_ms INTEGER NOT NULL, PRIMARY KEY(person, kind)) STRICT;"
    "CREATE TABLE failure(person TEXT PRIMARY KEY, count INTEGER NOT NULL,"
    " locked_until_ms INTEGER NOT NULL) STRICT;"
    "CREATE TABLE session(id TEXT PRIMARY KEY, token BLOB NOT NULL UNIQUE, person TEXT NOT NULL,"
    " device BLOB NOT NULL, started_at_ms INTEGER NOT NULL, expires_at_ms INTEGER NOT NULL) STRICT;"
    "CREATE TABLE presence(device BLOB NOT NULL, person TEXT NOT NULL,"
    " PRIMARY KEY(device, person)) STRICT;"
    "CREATE TABLE device_token(device BLOB PRIMARY KEY, token BLOB NOT NULL UNIQUE) STRICT;"
    "CREATE TABLE code(code BLOB PRIMARY KEY, made_by TEXT NOT NULL,"
    " expires_at_ms INTEGER NOT NULL, used INTEGER NOT NULL) STRICT;"
    "PRAGMA application_id = 1398227267; PRAGMA user_version = 1;";
static_assert(application_id == 1398227267);

/// Makes an empty file of mode 0600 if there is none, and refuses one that others may read.
void make_file(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0600);
  if (file < 0) {
    throw StoreError("store.cannot_open", path + ": " + std::strerror(errno));
  }
  struct stat status {};
  const bool good = ::fstat(file, &status) == 0 && S_ISREG(status.st_mode) &&
                    (status.st_mode & 077) == 0 && status.st_uid == ::geteuid();
  ::close(file);
  if (!good) {
    throw StoreError("store.key_unsafe",
                     path +
                         ": the accounts must be a plain file of one's own that nobody else may "
                         "read (chmod 600)");
  }
}

std::string text_at(const Statement& row, int column) { return std::string(row.blob(column)); }

template <class T>
T bytes_at(const Statement& row, int column) {
  const auto value = record::from_bytes<T>(row.blob(column));
  if (!value) throw StoreError("store.damaged", "the accounts hold bytes of a wrong length");
  return *value;
}

}  // namespace

std::string accounts_path(const std::string& store_path) { return store_path + ".accounts"; }

AccountBook::AccountBook(const std::string& path) {
  make_file(path);
  database_ = std::make_unique<Database>(path, OpenMode::Write);
  const std::int64_t id = database_->whole("PRAGMA application_id");
  if (id == 0 && database_->whole("SELECT count(*) FROM sqlite_schema") == 0) {
    WriteTransaction transaction(*database_);
    database_->run(tables);
    transaction.commit();
  } else if (id != application_id) {
    throw StoreError("store.not_a_store", path + " holds no accounts of this program");
  }
  if (database_->whole("PRAGMA user_version") != version) {
    throw StoreError("store.unknown_version",
                     path + " is of a version that this program does not know");
  }
  prepare_to_write(*database_);
}

AccountBook::~AccountBook() = default;

std::vector<SecretHash> AccountBook::secrets(const std::string& person) const {
  const std::lock_guard lock(mutex_);
  Statement rows(*database_, "SELECT kind, hash FROM secret WHERE person = ? ORDER BY kind");
  rows.bind_text(1, person);
  std::vector<SecretHash> all;
  while (rows.step()) all.push_back({text_at(rows, 0), text_at(rows, 1)});
  return all;
}

std::vector<std::pair<std::string, std::string>> AccountBook::kinds_of_secret() const {
  const std::lock_guard lock(mutex_);
  Statement rows(*database_, "SELECT person, kind FROM secret ORDER BY person, kind");
  std::vector<std::pair<std::string, std::string>> all;
  while (rows.step()) all.emplace_back(text_at(rows, 0), text_at(rows, 1));
  return all;
}

void AccountBook::set_secret(const std::string& person, const SecretHash& secret,
                             std::int64_t now_ms) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "INSERT OR REPLACE INTO secret VALUES(?, ?, ?, ?)")
      .bind_text(1, person)
      .bind_text(2, secret.kind)
      .bind_text(3, secret.hash)
      .bind(4, now_ms)
      .run();
}

void AccountBook::forget_person(const std::string& person) {
  const std::lock_guard lock(mutex_);
  WriteTransaction transaction(*database_);
  Statement(*database_, "DELETE FROM secret WHERE person = ?").bind_text(1, person).run();
  Statement(*database_, "DELETE FROM failure WHERE person = ?").bind_text(1, person).run();
  Statement(*database_, "DELETE FROM session WHERE person = ?").bind_text(1, person).run();
  transaction.commit();
}

Failures AccountBook::failures(const std::string& person) const {
  const std::lock_guard lock(mutex_);
  Statement row(*database_, "SELECT count, locked_until_ms FROM failure WHERE person = ?");
  row.bind_text(1, person);
  if (!row.step()) return {};
  return {static_cast<int>(row.whole(0)), row.whole(1)};
}

void AccountBook::set_failures(const std::string& person, const Failures& failures) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "INSERT OR REPLACE INTO failure VALUES(?, ?, ?)")
      .bind_text(1, person)
      .bind(2, failures.count)
      .bind(3, failures.locked_until_ms)
      .run();
}

void AccountBook::add_session(const SessionRow& session) {
  const std::lock_guard lock(mutex_);
  WriteTransaction transaction(*database_);
  Statement(*database_, "INSERT INTO session VALUES(?, ?, ?, ?, ?, ?)")
      .bind_text(1, session.id)
      .bind_blob(2, session.token.view())
      .bind_text(3, session.person)
      .bind_blob(4, session.device.view())
      .bind(5, session.started_at_ms)
      .bind(6, session.expires_at_ms)
      .run();
  Statement(*database_, "INSERT OR IGNORE INTO presence VALUES(?, ?)")
      .bind_blob(1, session.device.view())
      .bind_text(2, session.person)
      .run();
  transaction.commit();
}

void AccountBook::end_session(const std::string& id) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "DELETE FROM session WHERE id = ?").bind_text(1, id).run();
}

std::vector<SessionRow> AccountBook::sessions() const {
  const std::lock_guard lock(mutex_);
  Statement rows(*database_,
                 "SELECT id, token, person, device, started_at_ms, expires_at_ms FROM session"
                 " ORDER BY started_at_ms, id");
  std::vector<SessionRow> all;
  while (rows.step()) {
    all.push_back({text_at(rows, 0), bytes_at<record::Hash>(rows, 1), text_at(rows, 2),
                   bytes_at<record::DeviceId>(rows, 3), rows.whole(4), rows.whole(5)});
  }
  return all;
}

std::vector<std::pair<record::DeviceId, std::string>> AccountBook::presences() const {
  const std::lock_guard lock(mutex_);
  Statement rows(*database_, "SELECT device, person FROM presence");
  std::vector<std::pair<record::DeviceId, std::string>> all;
  while (rows.step()) all.emplace_back(bytes_at<record::DeviceId>(rows, 0), text_at(rows, 1));
  return all;
}

void AccountBook::set_device_token(const record::DeviceId& device, const record::Hash& token) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "INSERT OR REPLACE INTO device_token VALUES(?, ?)")
      .bind_blob(1, device.view())
      .bind_blob(2, token.view())
      .run();
}

void AccountBook::forget_device(const record::DeviceId& device) {
  const std::lock_guard lock(mutex_);
  WriteTransaction transaction(*database_);
  Statement(*database_, "DELETE FROM device_token WHERE device = ?")
      .bind_blob(1, device.view())
      .run();
  Statement(*database_, "DELETE FROM session WHERE device = ?").bind_blob(1, device.view()).run();
  transaction.commit();
}

std::vector<std::pair<record::Hash, record::DeviceId>> AccountBook::device_tokens() const {
  const std::lock_guard lock(mutex_);
  Statement rows(*database_, "SELECT token, device FROM device_token");
  std::vector<std::pair<record::Hash, record::DeviceId>> all;
  while (rows.step()) {
    all.emplace_back(bytes_at<record::Hash>(rows, 0), bytes_at<record::DeviceId>(rows, 1));
  }
  return all;
}

void AccountBook::add_code(const record::Hash& code, const std::string& made_by,
                           std::int64_t expires_at_ms) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "INSERT INTO code VALUES(?, ?, ?, 0)")
      .bind_blob(1, code.view())
      .bind_text(2, made_by)
      .bind(3, expires_at_ms)
      .run();
}

TakenCode AccountBook::take_code(const record::Hash& code, std::int64_t now_ms) {
  const std::lock_guard lock(mutex_);
  WriteTransaction transaction(*database_);
  TakenCode taken;
  {
    Statement row(*database_, "SELECT made_by, expires_at_ms, used FROM code WHERE code = ?");
    row.bind_blob(1, code.view());
    if (!row.step()) return taken;
    taken.made_by = text_at(row, 0);
    taken.state = row.whole(2) != 0        ? CodeState::Used
                  : row.whole(1) <= now_ms ? CodeState::Expired
                                           : CodeState::Good;
  }
  if (taken.state != CodeState::Good) return taken;
  Statement(*database_, "UPDATE code SET used = 1 WHERE code = ?").bind_blob(1, code.view()).run();
  transaction.commit();
  return taken;
}

void AccountBook::give_code_back(const record::Hash& code) {
  const std::lock_guard lock(mutex_);
  Statement(*database_, "UPDATE code SET used = 0 WHERE code = ?").bind_blob(1, code.view()).run();
}

void AccountBook::tidy(std::int64_t before_ms) {
  const std::lock_guard lock(mutex_);
  WriteTransaction transaction(*database_);
  Statement(*database_, "DELETE FROM session WHERE expires_at_ms < ?").bind(1, before_ms).run();
  Statement(*database_, "DELETE FROM code WHERE expires_at_ms < ?").bind(1, before_ms).run();
  transaction.commit();
}

}  // namespace steamworthy::store
