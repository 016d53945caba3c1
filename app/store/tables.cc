#include "store/tables.h"

#include <fmt/format.h>

#include "base/error.h"
#include "record/sha256.h"

namespace steamworthy::store {
namespace {

using record::Feed;
using record::from_bytes;
using record::Hash;
using record::SealedFact;

std::int64_t whole(std::uint64_t value) { return static_cast<std::int64_t>(value); }

/// What makes two refused facts the same.
Hash fingerprint(const record::QuarantinedFact& fact) {
  record::Sha256 hash;
  hash.add(fact.signature.view());
  hash.add(fact.bytes);
  return hash.finish();
}

}  // namespace

Tables::Tables(Database& database)
    : database_(database),
      insert_fact_(database,
                   "INSERT INTO fact(intake_no, feed, device_seq, hash, signature, bytes)"
                   " VALUES(?, ?, ?, ?, ?, ?)"),
      stored_hash_(database, "SELECT hash FROM fact WHERE feed = ? AND device_seq = ?"),
      intake_no_(database, "SELECT intake_no FROM fact WHERE feed = ? AND device_seq = ?"),
      read_(database,
            "SELECT intake_no, bytes, signature FROM fact WHERE intake_no > ? ORDER BY intake_no"
            " LIMIT ?") {}

void Tables::damaged(const std::string& what) const {
  throw StoreError("store.damaged", database_.path() + ": " + what);
}

std::int64_t Tables::insert_feed(const Feed& feed) {
  Statement insert(database_,
                   "INSERT INTO feed(scope_kind, scope_id, device) VALUES(?, ?, ?)"
                   " RETURNING feed");
  insert.bind(1, static_cast<int>(feed.scope.kind));
  insert.bind_blob(2, feed.scope.id.view()).bind_blob(3, feed.device.view());
  insert.step();
  const std::int64_t feed_no = insert.whole(0);
  insert.run();
  return feed_no;
}

void Tables::insert_fact(std::int64_t intake_no, std::int64_t feed_no, std::uint64_t device_seq,
                         const Hash& hash, const SealedFact& fact) {
  insert_fact_.bind(1, intake_no).bind(2, feed_no).bind(3, whole(device_seq));
  insert_fact_.bind_blob(4, hash.view()).bind_blob(5, fact.signature.view());
  insert_fact_.bind_blob(6, fact.bytes).run();
}

void Tables::insert_key(const record::PublicKey& key) {
  const record::DeviceId device = record::device_of(key);
  Statement insert(database_, "INSERT OR IGNORE INTO device(device, key) VALUES(?, ?)");
  insert.bind_blob(1, device.view()).bind_blob(2, key.view()).run();
}

void Tables::insert_blob(const Hash& hash, std::string_view content) {
  Statement insert(database_, "INSERT OR IGNORE INTO blob(hash, content) VALUES(?, ?)");
  insert.bind_blob(1, hash.view()).bind_blob(2, content).run();
}

void Tables::insert_quarantined(const record::QuarantinedFact& fact) {
  const Hash print = fingerprint(fact);
  Statement insert(database_,
                   "INSERT OR IGNORE INTO"
                   " quarantine(received_at_ms, reason, fingerprint, signature, bytes)"
                   " VALUES(?, ?, ?, ?, ?)");
  insert.bind(1, fact.received_at_ms).bind_text(2, fact.reason).bind_blob(3, print.view());
  insert.bind_blob(4, fact.signature.view()).bind_blob(5, fact.bytes).run();
}

void Tables::erase_quarantined(std::int64_t place) {
  Statement erase(database_, "DELETE FROM quarantine WHERE place = ?");
  erase.bind(1, place).run();
}

std::int64_t Tables::last_intake_no() {
  return database_.whole("SELECT ifnull(max(intake_no), 0) FROM fact");
}

Hash Tables::stored_hash(std::int64_t feed_no, std::uint64_t device_seq) {
  stored_hash_.reset();
  stored_hash_.bind(1, feed_no).bind(2, whole(device_seq));
  const auto hash = stored_hash_.step() ? from_bytes<Hash>(stored_hash_.blob(0)) : std::nullopt;
  stored_hash_.reset();
  if (!hash) damaged(fmt::format("fact {} of feed {} is gone", device_seq, feed_no));
  return *hash;
}

std::int64_t Tables::intake_no(std::int64_t feed_no, std::uint64_t device_seq) {
  intake_no_.reset();
  intake_no_.bind(1, feed_no).bind(2, whole(device_seq));
  const std::int64_t number = intake_no_.step() ? intake_no_.whole(0) : 0;
  intake_no_.reset();
  return number;
}

std::vector<StoredFact> Tables::read(std::int64_t after_intake_no, std::size_t most) {
  read_.reset();
  read_.bind(1, after_intake_no).bind(2, static_cast<std::int64_t>(most));
  std::vector<StoredFact> facts;
  while (read_.step()) {
    StoredFact fact{read_.whole(0), {std::string(read_.blob(1)), {}}};
    const auto signature = from_bytes<record::Signature>(read_.blob(2));
    if (!signature) damaged(fmt::format("intake {}: the signature is cut", fact.intake_no));
    fact.sealed.signature = *signature;
    facts.push_back(std::move(fact));
  }
  read_.reset();
  return facts;
}

std::vector<record::PublicKey> Tables::keys() {
  std::vector<record::PublicKey> keys;
  Statement rows(database_, "SELECT device, key FROM device ORDER BY device");
  while (rows.step()) {
    const auto key = from_bytes<record::PublicKey>(rows.blob(1));
    if (!key || record::device_of(*key).view() != rows.blob(0)) {
      damaged("the key of device " + record::hex(rows.blob(0)) + " was changed");
    }
    keys.push_back(*key);
  }
  return keys;
}

std::optional<std::string> Tables::blob(const Hash& hash) {
  Statement rows(database_, "SELECT content FROM blob WHERE hash = ?");
  rows.bind_blob(1, hash.view());
  if (!rows.step()) return std::nullopt;
  std::string content(rows.blob(0));
  if (record::sha256(content) != hash) damaged("blob " + record::hex(hash) + " was changed");
  return content;
}

std::vector<Hash> Tables::blobs() {
  std::vector<Hash> hashes;
  Statement rows(database_, "SELECT hash FROM blob ORDER BY hash");
  while (rows.step()) {
    const auto hash = from_bytes<Hash>(rows.blob(0));
    if (!hash) damaged("the name of a blob is cut");
    hashes.push_back(*hash);
  }
  return hashes;
}

std::vector<Tables::Place> Tables::quarantined() {
  std::vector<Place> places;
  Statement rows(
      database_,
      "SELECT place, received_at_ms, reason, fingerprint, signature, bytes FROM quarantine"
      " ORDER BY place");
  while (rows.step()) {
    Place place{rows.whole(0), {rows.whole(1), std::string(rows.blob(2)), {}, {}}};
    const auto signature = from_bytes<record::Signature>(rows.blob(4));
    if (signature) place.fact.signature = *signature;
    place.fact.bytes = rows.blob(5);
    if (!signature || fingerprint(place.fact).view() != rows.blob(3)) {
      damaged(fmt::format("quarantined fact {} was changed", place.place));
    }
    places.push_back(std::move(place));
  }
  return places;
}

FeedState Tables::load_feed(const Feed& feed, std::int64_t feed_no, std::int64_t count,
                            std::int64_t last) {
  FeedState state;
  state.feed_no = feed_no;
  auto head_is = [&](std::int64_t seq, std::string_view hash, std::string_view bytes) {
    const record::Parsed parsed = record::parse(bytes);
    const Hash real = record::sha256(bytes);
    if (!parsed || hash != real.view() || !(parsed.fact->envelope.feed() == feed) ||
        parsed.fact->envelope.device_seq != static_cast<std::uint64_t>(seq)) {
      damaged(fmt::format("{} or its row was changed",
                          text(record::FactName{feed, static_cast<std::uint64_t>(seq)})));
    }
    return std::pair(parsed.fact->envelope, real);
  };
  // As a rule nothing is missing, and the last fact says it all.
  const std::int64_t from = count == last ? last : 1;
  Statement rows(database_,
                 "SELECT device_seq, hash, bytes FROM fact WHERE feed = ? AND"
                 " device_seq >= ? ORDER BY device_seq");
  rows.bind(1, feed_no).bind(2, from);
  if (count == last && last > 0) state.head = static_cast<std::uint64_t>(last) - 1;
  while (rows.step()) {
    const auto seq = static_cast<std::uint64_t>(rows.whole(0));
    const auto [envelope, hash] = head_is(rows.whole(0), rows.blob(1), rows.blob(2));
    if (seq == state.head + 1) {
      state.head = seq;
      state.head_hash = hash;
    } else {
      state.loose[seq] = {hash, envelope.prev_hash};
    }
  }
  return state;
}

FeedBook Tables::load_feeds() {
  FeedBook book;
  Statement rows(
      database_,
      "SELECT feed.feed, scope_kind, scope_id, device, count(device_seq),"
      " ifnull(max(device_seq), 0) FROM feed LEFT JOIN fact USING(feed) GROUP BY feed.feed");
  while (rows.step()) {
    const auto scope_id = from_bytes<record::Uuid>(rows.blob(2));
    const auto device = from_bytes<record::DeviceId>(rows.blob(3));
    if (!scope_id || !device) damaged(fmt::format("feed {} was changed", rows.whole(0)));
    const Feed feed{{static_cast<record::ScopeKind>(rows.whole(1)), *scope_id}, *device};
    book.load(feed, load_feed(feed, rows.whole(0), rows.whole(4), rows.whole(5)));
  }
  return book;
}

}  // namespace steamworthy::store
