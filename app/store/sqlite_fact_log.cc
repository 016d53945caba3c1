#include "store/sqlite_fact_log.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "record/sha256.h"

namespace steamworthy::store {

using record::Envelope;
using record::Hash;
using record::SealedFact;

Draft checkpoint_draft(const record::Scope& scope, std::int64_t now_ms) {
  Draft draft;
  draft.scope = scope;
  draft.kind = record::checkpoint_kind;
  draft.happened_at_ms = now_ms;
  draft.body = "{}";
  return draft;
}

namespace {

/// The fields of an envelope that the draft says.
void fill(Envelope& e, const Draft& draft) {
  e.scope = draft.scope;
  e.person = draft.person;
  e.kind = draft.kind;
  e.kind_version = draft.kind_version;
  e.happened_at_ms = draft.happened_at_ms;
  e.happened_precision_ms = draft.happened_precision_ms;
  e.utc_offset_min = draft.utc_offset_min;
  e.blobs = draft.blobs;
  std::sort(e.blobs.begin(), e.blobs.end());
  e.blobs.erase(std::unique(e.blobs.begin(), e.blobs.end()), e.blobs.end());
}

}  // namespace

/// What a thread hands in: done within the group's transaction, with the mutex held.
struct SqliteFactLog::Work : Job {
  virtual void prepare(SqliteFactLog&) {}      ///< may throw what concerns this work alone
  virtual void write(SqliteFactLog& log) = 0;  ///< throws only what ends the whole group
};

struct SqliteFactLog::AppendWork : Work {
  explicit AppendWork(const std::vector<Draft>& given) : drafts(given) {}

  /// A draft that no fact can hold must not stop the others of its group.
  void prepare(SqliteFactLog& log) override {
    if (log.keys_.size() > record::most_seen) {
      throw OutOfRange("store.too_many_devices",
                       fmt::format("this store knows {} devices; a fact can have seen {}",
                                   log.keys_.size(), record::most_seen));
    }
    Envelope envelope;
    envelope.id = record::uuid7(0, {});
    envelope.device_seq = 1;
    for (const Draft& draft : drafts) {
      fill(envelope, draft);
      if (record::flaw_of(envelope, draft.body)) encode(envelope, draft.body);  // throws, naming it
    }
  }

  void write(SqliteFactLog& log) override {
    for (const Draft& draft : drafts) {
      const Envelope envelope = log.envelope_of(draft);
      SealedFact fact{encode(envelope, draft.body), {}};
      fact.signature = log.signer_.sign(fact.bytes);
      const Hash hash = record::sha256(fact.bytes);
      log.store(envelope, hash, fact);
      log.last_id_ = envelope.id;
      receipts.push_back(
          {log.last_intake_no_, envelope.id, {envelope.feed(), envelope.device_seq}, hash});
    }
  }

  const std::vector<Draft>& drafts;
  std::vector<Receipt> receipts;
};

struct SqliteFactLog::ReceiveWork : Work {
  explicit ReceiveWork(const std::vector<SealedFact>& given) : facts(given) {}

  void write(SqliteFactLog& log) override {
    for (const SealedFact& fact : facts) {
      received.push_back(log.take_in(fact));
      const Received& last = received.back();
      if (last.how == Intake::Quarantined) {
        log.tables_.insert_quarantined(
            {log.surroundings_.now_ms(), last.reason, fact.bytes, fact.signature});
      }
    }
  }

  const std::vector<SealedFact>& facts;
  std::vector<Received> received;
};

struct SqliteFactLog::KeyWork : Work {
  explicit KeyWork(const record::PublicKey& given) : key(given) {}

  void write(SqliteFactLog& log) override {
    log.tables_.insert_key(key);
    log.keys_[record::device_of(key)] = key;
    for (const Tables::Place& place : log.tables_.quarantined()) {
      if (place.fact.reason != "no_key") continue;
      const Received received = log.take_in({place.fact.bytes, place.fact.signature});
      if (received.reason == "no_key") continue;
      log.tables_.erase_quarantined(place.place);
      if (received.how == Intake::Quarantined) {
        record::QuarantinedFact fact = place.fact;
        fact.reason = received.reason;
        log.tables_.insert_quarantined(fact);
      }
    }
  }

  const record::PublicKey& key;
};

struct SqliteFactLog::BlobWork : Work {
  BlobWork(const Hash& name, std::string_view bytes) : hash(name), content(bytes) {}
  void write(SqliteFactLog& log) override { log.tables_.insert_blob(hash, content); }
  const Hash& hash;
  std::string_view content;
};

SqliteFactLog::SqliteFactLog(std::unique_ptr<Database> database, record::Signer& signer,
                             const record::Verifier& verifier, Surroundings& surroundings)
    : database_((check_tables(*database), std::move(database))),
      signer_(signer),
      verifier_(verifier),
      surroundings_(surroundings),
      device_(record::device_of(signer.public_key())),
      plant_(plant_of(*database_)),
      tables_(*database_),
      book_(tables_.load_feeds()),
      last_intake_no_(tables_.last_intake_no()) {
  for (const record::PublicKey& key : tables_.keys()) keys_[record::device_of(key)] = key;
  for (const auto& [feed, state] : book_.feeds()) {
    if (feed.device == device_ && !state.loose.empty()) {
      throw StoreError("store.damaged",
                       fmt::format("{}: of this device's own feed in {} facts after number {} are "
                                   "missing",
                                   database_->path(), text(feed.scope.id), state.head));
    }
  }
  if (keys_.count(device_) == 0) add_key(signer.public_key());
}

SqliteFactLog::~SqliteFactLog() = default;

void SqliteFactLog::run(Work& work) {
  queue_.run(work, [this](const std::vector<Job*>& group) { do_group(group); });
}

void SqliteFactLog::do_group(const std::vector<Job*>& group) {
  const std::lock_guard lock(mutex_);
  const std::int64_t intake_before = last_intake_no_;
  const auto keys_before = keys_;
  book_.begin();
  try {
    if (broken_) {
      throw StoreError(
          "store.io", database_->path() + ": the disk failed before; open the store anew to go on");
    }
    WriteTransaction transaction(*database_);
    for (Job* job : group) {
      auto& work = static_cast<Work&>(*job);
      try {
        work.prepare(*this);
      } catch (const OutOfRange&) {
        work.fault = std::current_exception();
        continue;
      }
      work.write(*this);
    }
    transaction.commit();
  } catch (const std::exception& error) {
    book_.take_back();
    last_intake_no_ = intake_before;
    keys_ = keys_before;
    const auto* known = dynamic_cast<const StoreError*>(&error);
    const bool may_go_on =
        known != nullptr && (known->code() == "store.full" || known->code() == "store.in_use");
    broken_ = broken_ || !may_go_on;
    for (Job* job : group) {
      if (!job->fault) job->fault = std::current_exception();
    }
  }
}

Envelope SqliteFactLog::envelope_of(const Draft& draft) {
  Envelope e;
  record::RandomForUuid random;
  surroundings_.random(random);
  const std::int64_t now_ms = surroundings_.now_ms();
  e.id = record::uuid7_after(last_id_, now_ms, random);
  fill(e, draft);
  e.device = device_;
  e.device_seq = 1;
  if (const FeedState* feed = book_.find(e.feed())) {
    e.device_seq = feed->head + 1;
    e.prev_hash = feed->head_hash;
  }
  e.seen = book_.heads(draft.scope, device_);
  e.recorded_at_ms = now_ms;
  return e;
}

void SqliteFactLog::store(const Envelope& envelope, const Hash& hash, const SealedFact& fact) {
  FeedState& feed = book_.put(envelope, hash);
  if (feed.feed_no == 0) feed.feed_no = tables_.insert_feed(envelope.feed());
  tables_.insert_fact(last_intake_no_ + 1, feed.feed_no, envelope.device_seq, hash, fact);
  ++last_intake_no_;
}

Received SqliteFactLog::take_in(const SealedFact& fact) {
  const record::Parsed parsed = record::parse(fact.bytes);
  if (!parsed) {
    return {Intake::Quarantined, 0, std::string(key(parsed.flaw).substr(sizeof "record." - 1))};
  }
  const Envelope& envelope = parsed.fact->envelope;
  const auto key = keys_.find(envelope.device);
  if (key == keys_.end()) return {Intake::Quarantined, 0, "no_key"};
  if (!verifier_.verify(key->second, fact.bytes, fact.signature)) {
    return {Intake::Quarantined, 0, "bad_signature"};
  }
  const Hash hash = record::sha256(fact.bytes);
  const Fit fit = book_.fit(envelope, hash, [this](const FeedState& feed, std::uint64_t seq) {
    return tables_.stored_hash(feed.feed_no, seq);
  });
  if (fit == Fit::Known) {
    return {Intake::Known,
            tables_.intake_no(book_.find(envelope.feed())->feed_no, envelope.device_seq)};
  }
  if (fit != Fit::Fits) return {Intake::Quarantined, 0, reason(fit)};
  store(envelope, hash, fact);
  return {Intake::Stored, last_intake_no_};
}

std::vector<Receipt> SqliteFactLog::append(const std::vector<Draft>& drafts) {
  if (drafts.empty()) return {};
  AppendWork work(drafts);
  run(work);
  return std::move(work.receipts);
}

std::vector<Received> SqliteFactLog::receive(const std::vector<SealedFact>& facts) {
  if (facts.empty()) return {};
  ReceiveWork work(facts);
  run(work);
  return std::move(work.received);
}

void SqliteFactLog::add_key(const record::PublicKey& key) {
  KeyWork work(key);
  run(work);
}

Hash SqliteFactLog::add_blob(std::string_view content) {
  if (content.size() > largest_blob) {
    throw OutOfRange("store.blob_too_large",
                     fmt::format("a blob of {} bytes is larger than {} bytes (64 MiB)",
                                 content.size(), largest_blob));
  }
  const Hash hash = record::sha256(content);
  BlobWork work(hash, content);
  run(work);
  return hash;
}

std::vector<record::PublicKey> SqliteFactLog::keys() const {
  const std::lock_guard lock(mutex_);
  return tables_.keys();
}

std::vector<StoredFact> SqliteFactLog::read(std::int64_t after_intake_no, std::size_t most) const {
  const std::lock_guard lock(mutex_);
  return tables_.read(after_intake_no, most);
}

std::vector<record::Scope> SqliteFactLog::scopes() const {
  const std::lock_guard lock(mutex_);
  std::vector<record::Scope> scopes;
  for (const auto& [feed, state] : book_.feeds()) {
    if (scopes.empty() || !(scopes.back() == feed.scope)) scopes.push_back(feed.scope);
  }
  return scopes;
}

std::vector<record::Head> SqliteFactLog::heads(const record::Scope& scope) const {
  const std::lock_guard lock(mutex_);
  return book_.heads(scope);
}

std::optional<std::string> SqliteFactLog::blob(const Hash& hash) const {
  const std::lock_guard lock(mutex_);
  return tables_.blob(hash);
}

std::vector<Hash> SqliteFactLog::blobs() const {
  const std::lock_guard lock(mutex_);
  return tables_.blobs();
}

std::vector<record::QuarantinedFact> SqliteFactLog::quarantined() const {
  const std::lock_guard lock(mutex_);
  std::vector<record::QuarantinedFact> facts;
  for (Tables::Place& place : tables_.quarantined()) facts.push_back(std::move(place.fact));
  return facts;
}

}  // namespace steamworthy::store
