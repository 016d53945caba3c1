// A FactLog without a disk: the contract in a few lines, for tests that need a log and no faults.
#pragma once

#include <mutex>

#include "base/error.h"
#include "store/fact_log.h"
#include "store/fake_surroundings_test.h"

namespace steamworthy::store {

class MemoryFactLog : public FactLog {
 public:
  MemoryFactLog(record::Signer& signer, const record::Verifier& verifier, Surroundings& world)
      : signer_(signer), verifier_(verifier), world_(world) {
    record::RandomForUuid random;
    world_.random(random);
    plant_ = record::uuid7(world_.now_ms(), random);
    keys_[device()] = signer.public_key();
  }

  record::DeviceId device() const override { return record::device_of(signer_.public_key()); }
  record::Scope plant() const override { return {record::ScopeKind::Plant, plant_}; }

  std::vector<Receipt> append(const std::vector<Draft>& drafts) override {
    const std::lock_guard lock(mutex_);
    const std::size_t before = facts_.size();
    std::vector<Receipt> receipts;
    try {
      for (const Draft& draft : drafts) receipts.push_back(append_one(draft));
    } catch (const OutOfRange&) {
      facts_.resize(before);
      throw;
    }
    return receipts;
  }

  std::vector<Received> receive(const std::vector<record::SealedFact>& facts) override {
    const std::lock_guard lock(mutex_);
    std::vector<Received> all;
    for (const record::SealedFact& fact : facts) {
      all.push_back(take_in(fact));
      if (all.back().how == Intake::Quarantined) keep_aside(fact, all.back().reason);
    }
    return all;
  }

  void add_key(const record::PublicKey& key) override {
    const std::lock_guard lock(mutex_);
    keys_[record::device_of(key)] = key;
    const auto waiting = std::exchange(quarantined_, {});
    for (const record::QuarantinedFact& fact : waiting) {
      const record::SealedFact sealed{fact.bytes, fact.signature};
      const Received received =
          fact.reason == "no_key" ? take_in(sealed) : Received{Intake::Quarantined, 0, fact.reason};
      if (received.how == Intake::Quarantined) keep_aside(sealed, received.reason);
    }
  }

  std::vector<record::PublicKey> keys() const override {
    const std::lock_guard lock(mutex_);
    std::vector<record::PublicKey> keys;
    for (const auto& [device, key] : keys_) keys.push_back(key);
    return keys;
  }

  std::vector<StoredFact> read(std::int64_t after, std::size_t most) const override {
    const std::lock_guard lock(mutex_);
    std::vector<StoredFact> out;
    for (auto i = static_cast<std::size_t>(after); i < facts_.size() && out.size() < most; ++i) {
      out.push_back({static_cast<std::int64_t>(i) + 1, facts_[i].sealed});
    }
    return out;
  }

  std::vector<record::Scope> scopes() const override {
    const std::lock_guard lock(mutex_);
    std::map<record::Scope, int> found;
    for (const Held& fact : facts_) ++found[fact.envelope.scope];
    std::vector<record::Scope> scopes;
    for (const auto& [scope, count] : found) scopes.push_back(scope);
    return scopes;
  }

  std::vector<record::Head> heads(const record::Scope& scope) const override {
    const std::lock_guard lock(mutex_);
    return heads_of(scope);
  }

  record::Hash add_blob(std::string_view content) override {
    const std::lock_guard lock(mutex_);
    const record::Hash hash = record::sha256(content);
    blobs_[hash] = content;
    return hash;
  }
  std::optional<std::string> blob(const record::Hash& hash) const override {
    const std::lock_guard lock(mutex_);
    const auto it = blobs_.find(hash);
    return it == blobs_.end() ? std::nullopt : std::optional(it->second);
  }
  std::vector<record::Hash> blobs() const override {
    const std::lock_guard lock(mutex_);
    std::vector<record::Hash> hashes;
    for (const auto& [hash, content] : blobs_) hashes.push_back(hash);
    return hashes;
  }
  std::vector<record::QuarantinedFact> quarantined() const override {
    const std::lock_guard lock(mutex_);
    return quarantined_;
  }

 private:
  struct Held {
    record::Envelope envelope;
    record::Hash hash;
    record::SealedFact sealed;
  };

  const Held* find(const record::Feed& feed, std::uint64_t seq) const {
    for (const Held& fact : facts_) {
      if (fact.envelope.feed() == feed && fact.envelope.device_seq == seq) return &fact;
    }
    return nullptr;
  }

  std::vector<record::Head> heads_of(const record::Scope& scope) const {
    std::vector<record::Head> heads;
    for (const auto& [device, key] : keys_) {
      std::uint64_t seq = 0;
      while (find({scope, device}, seq + 1) != nullptr) ++seq;
      if (seq > 0) heads.push_back({device, seq, find({scope, device}, seq)->hash});
    }
    return heads;
  }

  Receipt append_one(const Draft& draft) {
    record::Envelope e;
    record::RandomForUuid random;
    world_.random(random);
    e.recorded_at_ms = world_.now_ms();
    e.id = record::uuid7_after(last_id_, e.recorded_at_ms, random);
    last_id_ = e.id;
    e.scope = draft.scope;
    e.device = device();
    e.device_seq = 1;
    for (const record::Head& head : heads_of(draft.scope)) {
      if (head.device == e.device) {
        e.device_seq = head.device_seq + 1;
        e.prev_hash = head.hash;
      } else {
        e.seen.push_back(head);
      }
    }
    e.person = draft.person;
    e.kind = draft.kind;
    e.kind_version = draft.kind_version;
    e.happened_at_ms = draft.happened_at_ms;
    e.happened_precision_ms = draft.happened_precision_ms;
    e.utc_offset_min = draft.utc_offset_min;
    const std::map<record::Hash, int> rising = [&] {
      std::map<record::Hash, int> all;
      for (const record::Hash& blob : draft.blobs) all[blob] = 1;
      return all;
    }();
    for (const auto& [blob, one] : rising) e.blobs.push_back(blob);
    record::SealedFact sealed{encode(e, draft.body), {}};
    sealed.signature = signer_.sign(sealed.bytes);
    const record::Hash hash = record::sha256(sealed.bytes);
    facts_.push_back({e, hash, sealed});
    return {static_cast<std::int64_t>(facts_.size()), e.id, {e.feed(), e.device_seq}, hash};
  }

  Received take_in(const record::SealedFact& fact) {
    const record::Parsed parsed = record::parse(fact.bytes);
    if (!parsed) return {Intake::Quarantined, 0, std::string(key(parsed.flaw).substr(7))};
    const record::Envelope& e = parsed.fact->envelope;
    const auto key = keys_.find(e.device);
    if (key == keys_.end()) return {Intake::Quarantined, 0, "no_key"};
    if (!verifier_.verify(key->second, fact.bytes, fact.signature)) {
      return {Intake::Quarantined, 0, "bad_signature"};
    }
    const record::Hash hash = record::sha256(fact.bytes);
    if (const Held* same = find(e.feed(), e.device_seq)) {
      if (same->hash != hash) return {Intake::Quarantined, 0, "forked"};
      return {Intake::Known, same - facts_.data() + 1};
    }
    const Held* before = find(e.feed(), e.device_seq - 1);
    const Held* after = find(e.feed(), e.device_seq + 1);
    if ((before != nullptr && before->hash != e.prev_hash) ||
        (after != nullptr && after->envelope.prev_hash != hash)) {
      return {Intake::Quarantined, 0, "broken_chain"};
    }
    facts_.push_back({e, hash, fact});
    return {Intake::Stored, static_cast<std::int64_t>(facts_.size())};
  }

  void keep_aside(const record::SealedFact& fact, const std::string& reason) {
    for (const record::QuarantinedFact& known : quarantined_) {
      if (known.bytes == fact.bytes && known.signature == fact.signature) return;
    }
    quarantined_.push_back({world_.now_ms(), reason, fact.bytes, fact.signature});
  }

  record::Signer& signer_;
  const record::Verifier& verifier_;
  Surroundings& world_;
  record::Uuid plant_, last_id_;
  mutable std::mutex mutex_;
  std::vector<Held> facts_;
  std::map<record::DeviceId, record::PublicKey> keys_;
  std::map<record::Hash, std::string> blobs_;
  std::vector<record::QuarantinedFact> quarantined_;
};

}  // namespace steamworthy::store
