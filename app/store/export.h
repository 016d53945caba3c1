// Export: a log, or one closing of it, as one file that can be verified without this program.
#pragma once

#include <optional>
#include <string>

#include "store/fact_log.h"

namespace steamworthy::store {

struct Exported {
  std::uint64_t facts = 0;
  std::uint64_t blobs = 0;
  std::vector<record::Hash> missing_blobs;  ///< named by a fact, and not stored here
};

/// Countersigns what is known of each scope by a checkpoint, then writes a new file: the closing
/// and the plant's feeds, or everything; the keys of the devices in it; the blobs that its facts
/// name; what is quarantined. The file is on the disk when this returns. Throws   StoreError
/// "store.exists", "store.cannot_open", "store.io"; NotFound
///          "store.unknown_closing".
Exported export_log(FactLog& log, const std::string& path, std::optional<record::Scope> closing,
                    std::int64_t now_ms);

}  // namespace steamworthy::store
