// Schema: the versions of the store file, and the steps from one to the next.
//
// A file of another program, of an unknown version, or whose tables are not as they were made,
// stops the program. An older version is brought up step by step in one transaction, after a copy.
#pragma once

#include <string>

#include "record/bytes.h"
#include "store/sqlite.h"

namespace steamworthy::store {

/// The version that this program writes.
inline constexpr int store_version = 2;

/// Settings of a connection that writes: write-ahead log, every commit synced.
void prepare_to_write(Database& database);

/// Makes the tables of a new store in an empty database, up to a version.
void create_tables(Database& database, const record::Uuid& plant, int version = store_version);

/// The version that a file says it has.
/// Throws   StoreError "store.not_a_store" for another program's file or an empty one.
int version_of(Database& database);

/// Throws   StoreError "store.unknown_version" for a version that this program does not know,
///          "store.old_version" for an older one (see migrate()), "store.damaged" if the tables are
///          not those of the version.
void check_tables(Database& database);

/// Brings an older store up to store_version; does nothing to one that is. Returns the version that
/// it had. All steps are one transaction.
int migrate(Database& database);

/// The plant's scope, from its row. Throws StoreError "store.damaged" if it was changed.
record::Uuid plant_of(Database& database);

}  // namespace steamworthy::store
