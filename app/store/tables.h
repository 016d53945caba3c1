// Tables: the statements that read and write a store, by what they do. Knows no rule.
#pragma once

#include <vector>

#include "record/export_file.h"
#include "store/fact_log.h"
#include "store/feed_book.h"
#include "store/sqlite.h"

namespace steamworthy::store {

class Tables {
 public:
  explicit Tables(Database& database);

  std::int64_t insert_feed(const record::Feed& feed);
  void insert_fact(std::int64_t intake_no, std::int64_t feed_no, std::uint64_t device_seq,
                   const record::Hash& hash, const record::SealedFact& fact);
  void insert_key(const record::PublicKey& key);
  void insert_blob(const record::Hash& hash, std::string_view content);
  /// Nothing if the same bytes and signature are there already.
  void insert_quarantined(const record::QuarantinedFact& fact);
  void erase_quarantined(std::int64_t place);

  std::int64_t last_intake_no();
  record::Hash stored_hash(std::int64_t feed_no, std::uint64_t device_seq);
  std::int64_t intake_no(std::int64_t feed_no, std::uint64_t device_seq);
  std::vector<StoredFact> read(std::int64_t after_intake_no, std::size_t most);
  std::vector<record::PublicKey> keys();
  std::optional<std::string> blob(const record::Hash& hash);
  std::vector<record::Hash> blobs();
  struct Place {
    std::int64_t place;
    record::QuarantinedFact fact;
  };
  std::vector<Place> quarantined();

  /// Every feed as far as it goes. The last fact of each is read and held against its row.
  /// Throws   StoreError "store.damaged" naming what does not agree.
  FeedBook load_feeds();

 private:
  FeedState load_feed(const record::Feed& feed, std::int64_t feed_no, std::int64_t count,
                      std::int64_t last);
  [[noreturn]] void damaged(const std::string& what) const;

  Database& database_;
  Statement insert_fact_, stored_hash_, intake_no_, read_;
};

}  // namespace steamworthy::store
