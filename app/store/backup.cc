#include "store/backup.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "base/error.h"
#include "store/ed25519.h"
#include "store/examine.h"
#include "store/key_file.h"
#include "store/schema.h"
#include "store/store.h"

namespace steamworthy::store {
namespace {

bool is_there(const std::string& path) { return ::access(path.c_str(), F_OK) == 0; }

void must_be_new(const std::string& path) {
  if (is_there(path)) {
    throw StoreError("store.exists",
                     "there is a file " + path + " already; it is not written over");
  }
}

void copy_pages(Database& from, const std::string& path) {
  Database to(path, OpenMode::Create);
  sqlite3_backup* backup = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
  if (backup == nullptr) to.fail(sqlite3_errcode(to.handle()), "beginning a copy");
  int result = SQLITE_OK;
  do {
    result = sqlite3_backup_step(backup, -1);
    if (result == SQLITE_BUSY || result == SQLITE_LOCKED) sqlite3_sleep(10);
  } while (result == SQLITE_OK || result == SQLITE_BUSY || result == SQLITE_LOCKED);
  sqlite3_backup_finish(backup);
  if (result != SQLITE_DONE) to.fail(result, "copying");
  // One plain file, that can be read where nothing may be written.
  if (to.text("PRAGMA journal_mode = DELETE") != "delete") {
    throw StoreError("store.io", path + ": the copy could not be closed");
  }
}

/// A file on its way: taken away again unless it was given its name.
class Unfinished {
 public:
  explicit Unfinished(const std::string& name) : path_(name + ".unfinished") {
    std::remove(path_.c_str());
  }
  ~Unfinished() { std::remove(path_.c_str()); }
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

void must_be_sound(const std::string& path, const std::string& called) {
  const Ed25519Verifier verifier;
  const Examination examination = examine(path, verifier);
  if (!examination.is_sound()) {
    throw StoreError("store.damaged", called + " is not sound: " + examination.first_fault());
  }
}

}  // namespace

void rename_synced(const std::string& from, const std::string& to) {
  const int file = ::open(from.c_str(), O_RDONLY | O_CLOEXEC);
  const bool synced = file >= 0 && ::fsync(file) == 0;
  const std::string reason = std::strerror(errno);
  if (file >= 0) ::close(file);
  if (!synced) throw StoreError("store.io", from + ": " + reason);
  if (std::rename(from.c_str(), to.c_str()) != 0) {
    throw StoreError("store.io", to + ": " + std::strerror(errno));
  }
  sync_folder_of(to);
}

void copy_database(Database& database, const std::string& to) {
  must_be_new(to);
  const Unfinished unfinished(to);
  copy_pages(database, unfinished.path());
  rename_synced(unfinished.path(), to);
}

void back_up(const std::string& store, const std::string& to) {
  if (!is_there(store)) throw StoreError("store.missing", "there is no store " + store);
  must_be_new(to);
  const Unfinished unfinished(to);
  {
    Database database(store, OpenMode::Read);
    check_tables(database);
    copy_pages(database, unfinished.path());
  }
  must_be_sound(unfinished.path(), store);
  rename_synced(unfinished.path(), to);
}

void restore(const std::string& backup, const std::string& store, Surroundings& surroundings) {
  if (!is_there(backup)) throw StoreError("store.missing", "there is no backup " + backup);
  must_be_new(store);
  must_be_new(key_path(store));
  const Unfinished unfinished(store);
  {
    Database database(backup, OpenMode::Read);
    version_of(database);
    copy_pages(database, unfinished.path());
  }
  {
    Database copy(unfinished.path(), OpenMode::Write);
    prepare_to_write(copy);
    migrate(copy);
  }
  must_be_sound(unfinished.path(), backup);
  KeyFile::create(key_path(store), new_seed(surroundings));
  rename_synced(unfinished.path(), store);
}

}  // namespace steamworthy::store
