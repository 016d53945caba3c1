#include "store/sqlite.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include "base/error.h"

namespace steamworthy::store {
namespace {

const char* code_of(int result) {
  switch (result & 0xff) {
    case SQLITE_FULL:
      return "store.full";
    case SQLITE_IOERR:
      return "store.io";
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return "store.damaged";
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "store.in_use";
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return "store.read_only";
    case SQLITE_CANTOPEN:
      return "store.cannot_open";
    default:
      return "store.database";
  }
}

int flags_of(OpenMode mode) {
  switch (mode) {
    case OpenMode::Read:
      return SQLITE_OPEN_READONLY;
    case OpenMode::Write:
      return SQLITE_OPEN_READWRITE;
    case OpenMode::Create:
      return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
  }
  return SQLITE_OPEN_READONLY;
}

}  // namespace

void Statement::Finalizer::operator()(sqlite3_stmt* statement) const {
  sqlite3_finalize(statement);
}

Statement::Statement(Database& database, std::string_view sql) : database_(&database) {
  sqlite3_stmt* statement = nullptr;
  const int result = sqlite3_prepare_v3(database.handle(), sql.data(), static_cast<int>(sql.size()),
                                        SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
  statement_.reset(statement);
  if (result != SQLITE_OK) database.fail(result, "reading the tables");
}

Statement& Statement::bind(int place, std::int64_t value) {
  sqlite3_bind_int64(statement_.get(), place, value);
  return *this;
}

Statement& Statement::bind_blob(int place, std::string_view bytes) {
  // A null pointer would bind NULL.
  const char* data = bytes.empty() ? "" : bytes.data();
  sqlite3_bind_blob64(statement_.get(), place, data, bytes.size(), SQLITE_STATIC);
  return *this;
}

Statement& Statement::bind_text(int place, std::string_view text) {
  const char* data = text.empty() ? "" : text.data();
  sqlite3_bind_text64(statement_.get(), place, data, text.size(), SQLITE_STATIC, SQLITE_UTF8);
  return *this;
}

bool Statement::step() {
  const int result = sqlite3_step(statement_.get());
  if (result == SQLITE_ROW) return true;
  if (result == SQLITE_DONE) return false;
  sqlite3_reset(statement_.get());
  database_->fail(result, "reading or writing");
}

void Statement::run() {
  while (step()) {
  }
  reset();
}

void Statement::reset() { sqlite3_reset(statement_.get()); }

std::int64_t Statement::whole(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}

std::string_view Statement::blob(int column) const {
  const void* data = sqlite3_column_blob(statement_.get(), column);
  const int size = sqlite3_column_bytes(statement_.get(), column);
  if (data == nullptr) return {};
  return {static_cast<const char*>(data), static_cast<std::size_t>(size)};
}

void Database::Closer::operator()(sqlite3* handle) const { sqlite3_close_v2(handle); }

Database::Database(const std::string& path, OpenMode mode, const std::string& vfs) : path_(path) {
  sqlite3* handle = nullptr;
  const int result = sqlite3_open_v2(path.c_str(), &handle, flags_of(mode) | SQLITE_OPEN_NOMUTEX,
                                     vfs.empty() ? nullptr : vfs.c_str());
  handle_.reset(handle);
  if (result != SQLITE_OK) fail(result, "opening");
  sqlite3_extended_result_codes(handle, 1);
  sqlite3_busy_timeout(handle, 5000);
  // A damaged or strange file must not make SQLite run what stands in its schema.
  sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
}

void Database::run(const std::string& sql) {
  const int result = sqlite3_exec(handle(), sql.c_str(), nullptr, nullptr, nullptr);
  if (result != SQLITE_OK) fail(result, "writing");
}

// A statement that writes may fail after it has given its row: both go on to the end.
std::int64_t Database::whole(const std::string& sql) {
  Statement statement(*this, sql);
  const std::int64_t value = statement.step() ? statement.whole(0) : 0;
  statement.run();
  return value;
}

std::string Database::text(const std::string& sql) {
  Statement statement(*this, sql);
  const std::string value = statement.step() ? std::string(statement.blob(0)) : std::string();
  statement.run();
  return value;
}

void Database::fail(int code, std::string_view doing) const {
  const char* reason = handle_ ? sqlite3_errmsg(handle_.get()) : sqlite3_errstr(code);
  throw StoreError(code_of(code),
                   fmt::format("{}: {} (SQLite {}) while {}", path_, reason,
                               handle_ ? sqlite3_extended_errcode(handle_.get()) : code, doing));
}

WriteTransaction::WriteTransaction(Database& database) : database_(database) {
  database_.run("BEGIN IMMEDIATE");
}

WriteTransaction::~WriteTransaction() {
  // After some errors SQLite has rolled back by itself; then this does nothing.
  if (open_) sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void WriteTransaction::commit() {
  database_.run("COMMIT");
  open_ = false;
}

}  // namespace steamworthy::store
