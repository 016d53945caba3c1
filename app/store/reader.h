// Reader: a store's facts without its key and without its lock, while others may write to it.
#pragma once

#include <string>
#include <vector>

#include "store/fact_log.h"

namespace steamworthy::store {

struct StoreContents {
  record::Scope plant;
  std::vector<record::PublicKey> keys;
  std::vector<StoredFact> facts;  ///< in the order of arrival
  std::vector<record::QuarantinedFact> quarantined;
};

/// Throws   StoreError "store.missing", "store.not_a_store", "store.unknown_version",
///          "store.old_version", "store.damaged".
StoreContents read_store(const std::string& path);

}  // namespace steamworthy::store
