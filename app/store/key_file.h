// The key file: a device's private key, beside its store, readable by nobody else.
//
// Three lines of text: "steamworthy key 1", "seed " and 64 hexadecimal digits, "public " and 64
// more, which follow from the seed; so any changed byte shows. While a store is open for writing
// its key file is locked: one device, one writer.
#pragma once

#include <string>

#include "store/ed25519.h"

namespace steamworthy::store {

class KeyFile {
 public:
  /// Makes a new one with mode 0600, on the disk when this returns.
  /// Throws   StoreError "store.key_exists" if there is a file of that name, "store.cannot_open".
  static void create(const std::string& path, const Seed& seed);

  /// Reads and locks.
  /// Throws   StoreError "store.key_missing", "store.key_unsafe" (others may read it, it belongs to
  ///          somebody else, it is no plain file), "store.key_damaged", "store.in_use" if another
  ///          process holds it for longer than `patience_ms`.
  KeyFile(const std::string& path, int patience_ms);
  ~KeyFile();
  KeyFile(const KeyFile&) = delete;
  KeyFile& operator=(const KeyFile&) = delete;

  const Seed& seed() const { return seed_; }

 private:
  int file_ = -1;
  Seed seed_;
};

/// Makes what was done to the names in a file's folder safe on the disk.
void sync_folder_of(const std::string& path);

}  // namespace steamworthy::store
