// For tests: a clock that goes on by a millisecond a look, chance that is the same each time, a
// folder that is gone afterwards, and devices elsewhere that make facts with real keys.
#pragma once

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <map>
#include <string>

#include "record/sha256.h"
#include "store/ed25519.h"
#include "store/fact_log.h"
#include "store/surroundings.h"

namespace steamworthy::store {

class FakeSurroundings : public Surroundings {
 public:
  explicit FakeSurroundings(std::uint64_t start = 1) : state_(start) {}
  std::int64_t now_ms() override { return clock_ms_++; }
  void random(std::span<std::uint8_t> into) override {
    for (std::uint8_t& byte : into) {
      state_ = state_ * 6364136223846793005u + 1442695040888963407u;
      byte = static_cast<std::uint8_t>(state_ >> 56);
    }
  }

 private:
  std::uint64_t state_;
  std::int64_t clock_ms_ = 1764072000000;
};

class TemporaryFolder {
 public:
  explicit TemporaryFolder(const std::string& base = std::filesystem::temp_directory_path()) {
    std::string name = base + "/steamworthy_test_XXXXXX";
    if (mkdtemp(name.data()) == nullptr) ADD_FAILURE() << "no folder in " << base;
    path_ = name;
  }
  ~TemporaryFolder() { std::filesystem::remove_all(path_); }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  std::string file(const std::string& name) const { return path_ + "/" + name; }

 private:
  std::string path_;
};

inline Seed seed_of(int number) {
  return *record::from_bytes<Seed>(record::sha256(fmt::format("test device {}", number)).view());
}

inline record::Scope test_closing(std::uint8_t number = 1) {
  record::RandomForUuid random{};
  random[9] = number;
  return {record::ScopeKind::Closing, record::uuid7(1764072000000, random)};
}

inline Draft draft_of(const std::string& body, const std::string& kind = "closure.opened",
                      const record::Scope& scope = test_closing()) {
  Draft draft;
  draft.scope = scope;
  draft.person = "P-01";
  draft.kind = kind;
  draft.happened_at_ms = 1764072000000;
  draft.happened_precision_ms = 60000;
  draft.body = body;
  return draft;
}

/// A tablet that makes facts by itself.
class Tablet {
 public:
  explicit Tablet(int number) : signer_(seed_of(number)) {}

  record::SealedFact report(const std::string& body = "{}",
                            const record::Scope& scope = test_closing(),
                            std::vector<record::Head> seen = {}) {
    auto& [seq, last] = feeds_[scope];
    record::Envelope e;
    record::RandomForUuid random;
    std::copy_n(device().bytes.begin(), random.size(), random.begin());
    e.id = record::uuid7_after(last_id_, 1764072000000, random);
    last_id_ = e.id;
    e.scope = scope;
    e.device = device();
    e.device_seq = ++seq;
    e.prev_hash = last;
    e.seen = std::move(seen);
    e.person = "P-02";
    e.kind = "leak.found";
    e.happened_at_ms = e.recorded_at_ms = 1764072000000 + static_cast<std::int64_t>(seq);
    record::SealedFact fact{encode(e, body), {}};
    fact.signature = signer_.sign(fact.bytes);
    last = record::sha256(fact.bytes);
    return fact;
  }

  record::DeviceId device() const { return record::device_of(signer_.public_key()); }
  const record::PublicKey& key() const { return signer_.public_key(); }
  Ed25519Signer& signer() { return signer_; }

 private:
  Ed25519Signer signer_;
  std::map<record::Scope, std::pair<std::uint64_t, record::Hash>> feeds_;
  record::Uuid last_id_;
};

}  // namespace steamworthy::store
