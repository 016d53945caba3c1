#include "store/reader.h"

#include <unistd.h>

#include <limits>

#include "base/error.h"
#include "store/schema.h"
#include "store/tables.h"

namespace steamworthy::store {

StoreContents read_store(const std::string& path) {
  if (::access(path.c_str(), F_OK) != 0) {
    throw StoreError("store.missing", "there is no store " + path);
  }
  Database database(path, OpenMode::Read);
  check_tables(database);
  Tables tables(database);
  StoreContents contents;
  contents.plant = {record::ScopeKind::Plant, plant_of(database)};
  contents.keys = tables.keys();
  contents.facts = tables.read(0, static_cast<std::size_t>(std::numeric_limits<int>::max()));
  for (Tables::Place& place : tables.quarantined()) {
    contents.quarantined.push_back(std::move(place.fact));
  }
  return contents;
}

}  // namespace steamworthy::store
