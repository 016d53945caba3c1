// Store: a log with its files. A store at PATH is the database PATH, the private key PATH.key, and
// what SQLite puts beside it while it is open (PATH-wal, PATH-shm).
#pragma once

#include <memory>
#include <string>

#include "store/fact_log.h"
#include "store/surroundings.h"

namespace steamworthy::store {

/// The name of the key file of a store.
std::string key_path(const std::string& path);

/// Makes a new, empty store with a new key: a new device of a new plant.
/// Throws   StoreError "store.exists" if there is something of that name.
void create_store(const std::string& path, Surroundings& surroundings);

/// An open store; closing it is destroying it.
class Store {
 public:
  /// Opens for writing. An older version is brought up, after a copy at PATH.before-version-N.
  /// Throws   StoreError as KeyFile, Database and schema.h do; "store.missing" if there is none.
  Store(const std::string& path, Surroundings& surroundings, int patience_ms = 5000);
  ~Store();
  Store(const Store&) = delete;
  Store& operator=(const Store&) = delete;

  FactLog& log();
  const std::string& path() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace steamworthy::store
