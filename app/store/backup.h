// Backup and restore: a copy of a store's database, taken while it is in use, and a new store made
// from such a copy.
//
// A backup has no private key. A restored store is a new device: the facts of the old one may go
// further than the backup, and a device that numbers on from there would fork its own feed.
#pragma once

#include <string>

#include "store/sqlite.h"
#include "store/surroundings.h"

namespace steamworthy::store {

/// Copies an open database page by page into a new file, on the disk when this returns.
/// Throws   StoreError "store.exists" if the file is there.
void copy_database(Database& database, const std::string& to);

/// Copies a store into a new file, while others may write to it, and examines the copy.
/// Throws   as copy_database(), "store.damaged" if the copy does not pass: then it is not kept.
void back_up(const std::string& store, const std::string& to);

/// Makes a new store of a backup, with a new key, after examining the backup.
/// Throws   StoreError "store.damaged" naming what is wrong with the backup; "store.exists".
void restore(const std::string& backup, const std::string& store, Surroundings& surroundings);

/// Renames a file of which everything is written, both on the disk when this returns.
void rename_synced(const std::string& from, const std::string& to);

}  // namespace steamworthy::store
