// Examine: reads every byte of a store that means something and says what is not as it was made.
#pragma once

#include <string>
#include <vector>

#include "record/inspection.h"

namespace steamworthy::store {

struct Examination {
  /// Of the database itself: damaged pages, rows without an entry in their index, changed header.
  std::vector<std::string> damage;
  /// Of what is stored.
  record::Report report;

  bool is_sound() const { return damage.empty() && report.is_sound(); }
  /// One sentence: the first thing that is wrong.
  std::string first_fault() const;
};

/// Opens a store's database for reading and examines it. Never throws for what is wrong with the
/// file: what makes it unreadable stands in `damage`. Throws   StoreError "store.missing",
/// "store.unknown_version", "store.old_version",
///          "store.not_a_store".
Examination examine(const std::string& path, const record::Verifier& verifier,
                    const std::string& vfs = {});

}  // namespace steamworthy::store
