#include "store/store.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "base/error.h"
#include "store/backup.h"
#include "store/key_file.h"
#include "store/schema.h"
#include "store/sqlite_fact_log.h"

namespace steamworthy::store {
namespace {

bool is_there(const std::string& path) { return ::access(path.c_str(), F_OK) == 0; }

std::unique_ptr<Database> open_database(const std::string& path) {
  if (!is_there(path)) {
    throw StoreError("store.missing", "there is no store " + path);
  }
  auto database = std::make_unique<Database>(path, OpenMode::Write);
  const int version = version_of(*database);
  if (version >= 1 && version < store_version) {
    copy_database(*database, fmt::format("{}.before-version-{}", path, store_version));
    prepare_to_write(*database);
    migrate(*database);
  }
  check_tables(*database);
  prepare_to_write(*database);
  return database;
}

}  // namespace

std::string key_path(const std::string& path) { return path + ".key"; }

void create_store(const std::string& path, Surroundings& surroundings) {
  for (const std::string& name : {path, key_path(path)}) {
    if (is_there(name)) {
      throw StoreError("store.exists",
                       "there is a file " + name + " already; a new store needs a new name");
    }
  }
  // Made under another name first, so that a store of this name is whole from its first moment.
  const std::string unfinished = path + ".unfinished";
  std::remove(unfinished.c_str());
  record::RandomForUuid random;
  surroundings.random(random);
  {
    Database database(unfinished, OpenMode::Create);
    create_tables(database, record::uuid7(surroundings.now_ms(), random));
    prepare_to_write(database);
  }
  KeyFile::create(key_path(path), new_seed(surroundings));
  rename_synced(unfinished, path);
}

struct Store::Parts {
  Parts(const std::string& name, Surroundings& surroundings, int patience_ms)
      : path(name),
        key(key_path(name), patience_ms),
        signer(key.seed()),
        log(open_database(name), signer, verifier, surroundings) {}

  std::string path;
  KeyFile key;
  Ed25519Signer signer;
  Ed25519Verifier verifier;
  SqliteFactLog log;
};

Store::Store(const std::string& path, Surroundings& surroundings, int patience_ms) {
  if (!is_there(path)) throw StoreError("store.missing", "there is no store " + path);
  parts_ = std::make_unique<Parts>(path, surroundings, patience_ms);
}

Store::~Store() = default;

FactLog& Store::log() { return parts_->log; }

const std::string& Store::path() const { return parts_->path; }

}  // namespace steamworthy::store
