// SqliteFactLog: a FactLog in one SQLite file, with a write-ahead log and every commit synced.
//
// One writer: facts of many threads are committed in groups, and acknowledged only after the sync.
// After an I/O error nothing more is written: what a disk says after it has failed once cannot be
// relied on, so the file must be opened anew, which reads what is really there.
#pragma once

#include <map>
#include <memory>
#include <mutex>

#include "record/keys.h"
#include "store/commit_queue.h"
#include "store/fact_log.h"
#include "store/schema.h"
#include "store/surroundings.h"
#include "store/tables.h"

namespace steamworthy::store {

class SqliteFactLog : public FactLog {
 public:
  /// Takes a database that was opened for writing and has this program's tables (see schema.h). The
  /// signer's device is the log's own.
  SqliteFactLog(std::unique_ptr<Database> database, record::Signer& signer,
                const record::Verifier& verifier, Surroundings& surroundings);
  ~SqliteFactLog() override;

  record::DeviceId device() const override { return device_; }
  record::Scope plant() const override { return {record::ScopeKind::Plant, plant_}; }
  std::vector<Receipt> append(const std::vector<Draft>& drafts) override;
  std::vector<Received> receive(const std::vector<record::SealedFact>& facts) override;
  void add_key(const record::PublicKey& key) override;
  std::vector<record::PublicKey> keys() const override;
  std::vector<StoredFact> read(std::int64_t after_intake_no, std::size_t most) const override;
  std::vector<record::Scope> scopes() const override;
  std::vector<record::Head> heads(const record::Scope& scope) const override;
  record::Hash add_blob(std::string_view content) override;
  std::optional<std::string> blob(const record::Hash& hash) const override;
  std::vector<record::Hash> blobs() const override;
  std::vector<record::QuarantinedFact> quarantined() const override;

 private:
  struct Work;
  struct AppendWork;
  struct ReceiveWork;
  struct KeyWork;
  struct BlobWork;

  void run(Work& work);
  void do_group(const std::vector<Job*>& group);
  record::Envelope envelope_of(const Draft& draft);
  void store(const record::Envelope& envelope, const record::Hash& hash,
             const record::SealedFact& fact);
  Received take_in(const record::SealedFact& fact);

  std::unique_ptr<Database> database_;
  record::Signer& signer_;
  const record::Verifier& verifier_;
  Surroundings& surroundings_;
  record::DeviceId device_;
  record::Uuid plant_;

  CommitQueue queue_;
  mutable std::mutex mutex_;  // guards all below, and the database
  mutable Tables tables_;
  FeedBook book_;
  std::map<record::DeviceId, record::PublicKey> keys_;
  std::int64_t last_intake_no_ = 0;
  record::Uuid last_id_;
  bool broken_ = false;
};

}  // namespace steamworthy::store
