#include "store/schema.h"

#include <fmt/format.h>

#include <array>

#include "base/error.h"
#include "record/sha256.h"

namespace steamworthy::store {
namespace {

constexpr std::int64_t application_id = 0x53574c47;  // "SWLG"

// Step i makes version i + 1 of version i. Never change one that has been released: add another.
constexpr std::array<const char*, store_version> steps = {
    // 1: facts
    "CREATE TABLE meta(name TEXT PRIMARY KEY, value BLOB NOT NULL) STRICT;"
    "CREATE TABLE device(device BLOB PRIMARY KEY, key BLOB NOT NULL) STRICT;"
    "CREATE TABLE feed(feed INTEGER PRIMARY KEY, scope_kind INTEGER NOT NULL,"
    " scope_id BLOB NOT NULL, device BLOB NOT NULL) STRICT;"
    "CREATE UNIQUE INDEX feed_by_name ON feed(scope_kind, scope_id, device);"
    "CREATE TABLE fact(intake_no INTEGER PRIMARY KEY, feed INTEGER NOT NULL REFERENCES feed(feed),"
    " device_seq INTEGER NOT NULL, hash BLOB NOT NULL, signature BLOB NOT NULL,"
    " bytes BLOB NOT NULL) STRICT;"
    "CREATE UNIQUE INDEX fact_by_feed ON fact(feed, device_seq);",
    // 2: blobs, and facts that were refused
    "CREATE TABLE blob(hash BLOB PRIMARY KEY, content BLOB NOT NULL) STRICT;"
    "CREATE TABLE quarantine(place INTEGER PRIMARY KEY, received_at_ms INTEGER NOT NULL,"
    " reason TEXT NOT NULL, fingerprint BLOB NOT NULL UNIQUE, signature BLOB NOT NULL,"
    " bytes BLOB NOT NULL) STRICT;"};

std::string check_of(std::string_view plant) {
  return std::string(record::sha256("steamworthy plant 1\n" + std::string(plant)).view());
}

void run_steps(Database& database, int from, int to) {
  for (int version = from; version < to; ++version) {
    database.run(steps[static_cast<std::size_t>(version)]);
  }
  database.run(fmt::format("PRAGMA user_version = {}", to));
}

/// Everything that the file says of its tables, in one text.
std::string tables_text(Database& database) {
  std::string all;
  Statement rows(database,
                 "SELECT type, name, tbl_name, ifnull(sql, '') FROM sqlite_schema"
                 " ORDER BY type, name");
  while (rows.step()) {
    for (int column = 0; column < 4; ++column) {
      all += rows.blob(column);
      all += '\n';
    }
  }
  return all;
}

std::string expected_tables() {
  Database fresh(":memory:", OpenMode::Create);
  run_steps(fresh, 0, store_version);
  return tables_text(fresh);
}

}  // namespace

void prepare_to_write(Database& database) {
  // A rollback journal that comes back after a power cut would undo what was acknowledged since; so
  // should this be the opening that goes over to the write-ahead log, its deletion must be synced.
  database.run("PRAGMA synchronous = EXTRA");
  if (database.text("PRAGMA journal_mode = WAL") != "wal") {
    throw StoreError("store.no_wal",
                     database.path() +
                         ": this file system cannot hold a write-ahead log, without "
                         "which facts would not be safe");
  }
  database.run("PRAGMA synchronous = FULL");
  database.run("PRAGMA foreign_keys = ON");
  database.run("PRAGMA cell_size_check = ON");
}

void create_tables(Database& database, const record::Uuid& plant, int version) {
  WriteTransaction transaction(database);
  database.run(fmt::format("PRAGMA application_id = {}", application_id));
  run_steps(database, 0, version);
  Statement insert(database, "INSERT INTO meta VALUES(?, ?)");
  const std::string check = check_of(plant.view());
  insert.bind_text(1, "plant").bind_blob(2, plant.view()).run();
  insert.bind_text(1, "plant_check").bind_blob(2, check).run();
  transaction.commit();
}

int version_of(Database& database) {
  if (database.whole("PRAGMA application_id") != application_id) {
    throw StoreError("store.not_a_store", database.path() + " is not a store of this program");
  }
  return static_cast<int>(database.whole("PRAGMA user_version"));
}

void check_tables(Database& database) {
  const int version = version_of(database);
  if (version < 1 || version > store_version) {
    throw StoreError("store.unknown_version",
                     fmt::format("{} is a store of version {}; this program knows 1 to {}, and "
                                 "touches no other",
                                 database.path(), version, store_version));
  }
  if (version < store_version) {
    throw StoreError(
        "store.old_version",
        fmt::format("{} is a store of version {}; open it for writing once, to bring it "
                    "to version {}",
                    database.path(), version, store_version));
  }
  if (tables_text(database) != expected_tables()) {
    throw StoreError("store.damaged",
                     database.path() + ": the tables in its header are not as they were made");
  }
}

int migrate(Database& database) {
  const int version = version_of(database);
  if (version < 1 || version >= store_version) return version;
  WriteTransaction transaction(database);
  run_steps(database, version, store_version);
  transaction.commit();
  return version;
}

record::Uuid plant_of(Database& database) {
  Statement rows(database, "SELECT value FROM meta WHERE name = ?");
  rows.bind_text(1, "plant");
  const std::string plant = rows.step() ? std::string(rows.blob(0)) : std::string();
  rows.reset();
  rows.bind_text(1, "plant_check");
  const std::string check = rows.step() ? std::string(rows.blob(0)) : std::string();
  const auto uuid = record::from_bytes<record::Uuid>(plant);
  if (!uuid || check != check_of(plant)) {
    throw StoreError("store.damaged",
                     database.path() + ": the plant's id in its header was changed");
  }
  return *uuid;
}

}  // namespace steamworthy::store
