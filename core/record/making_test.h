// For tests: devices that make facts, with keys that stand in for real ones. A fake signature is
// the hash of key and bytes: it binds what a real one binds, and nobody here wants to forge it.
#pragma once

#include <fmt/format.h>

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "record/chain.h"
#include "record/keys.h"
#include "record/sha256.h"

namespace steamworthy::record {

inline Signature fake_signature(const PublicKey& key, std::string_view bytes) {
  Signature signature;
  for (std::size_t half = 0; half < 2; ++half) {
    Sha256 hash;
    hash.add(half == 0 ? "first" : "second");
    hash.add(key.view());
    hash.add(bytes);
    const Hash value = hash.finish();
    std::memcpy(signature.bytes.data() + 32 * half, value.bytes.data(), 32);
  }
  return signature;
}

class FakeSigner : public Signer {
 public:
  explicit FakeSigner(int number) {
    key_ = *from_bytes<PublicKey>(sha256(fmt::format("fake key {}", number)).view());
  }
  const PublicKey& public_key() const override { return key_; }
  Signature sign(std::string_view bytes) override { return fake_signature(key_, bytes); }

 private:
  PublicKey key_;
};

class FakeVerifier : public Verifier {
 public:
  bool verify(const PublicKey& key, std::string_view bytes,
              const Signature& signature) const override {
    return fake_signature(key, bytes) == signature;
  }
};

inline Scope closing_scope(std::uint8_t number = 1) {
  RandomForUuid random{};
  random[9] = number;
  return {ScopeKind::Closing, uuid7(1764072000000, random)};
}

/// A fact with its link.
struct Made {
  SealedFact sealed;
  Link link;
};

/// Some devices at one closing, each with what it has seen. Clocks agree and go on by a second a
/// fact.
class Crew {
 public:
  explicit Crew(int devices, Scope scope = closing_scope()) : scope_(scope) {
    for (int i = 0; i < devices; ++i) hands_.push_back({FakeSigner(i), 0, {}, {}});
  }

  Made report(int device, const std::string& body = "{}", std::string_view kind = "hand.reported",
              std::vector<Hash> blobs = {}) {
    Hand& hand = hands_[static_cast<std::size_t>(device)];
    Envelope e;
    RandomForUuid random{};
    random[9] = static_cast<std::uint8_t>(device);
    e.id = uuid7_after(last_id_, clock_ms_ += 1000, random);
    last_id_ = e.id;
    e.scope = scope_;
    e.device = device_of(hand.signer.public_key());
    e.device_seq = ++hand.seq;
    e.prev_hash = hand.last;
    for (const auto& [other, head] : hand.seen) e.seen.push_back(head);
    e.person = "P-01";
    e.kind = kind;
    e.happened_at_ms = e.recorded_at_ms = clock_ms_;
    e.blobs = std::move(blobs);
    Made made{{encode(e, body), {}}, {}};
    made.sealed.signature = hand.signer.sign(made.sealed.bytes);
    hand.last = sha256(made.sealed.bytes);
    made.link = link_of(e, hand.last);
    return made;
  }

  /// One device hears all that another has made and seen.
  void hears(int device, int from) {
    Hand& hand = hands_[static_cast<std::size_t>(device)];
    const Hand& other = hands_[static_cast<std::size_t>(from)];
    const DeviceId own = device_of(hand.signer.public_key());
    auto learn = [&](const Head& head) {
      Head& known = hand.seen[head.device];
      if (!(head.device == own) && head.device_seq > known.device_seq) known = head;
    };
    for (const auto& [device_id, head] : other.seen) learn(head);
    if (other.seq > 0) learn({device_of(other.signer.public_key()), other.seq, other.last});
    hand.seen.erase(own);
  }

  PublicKey key(int device) const {
    return hands_[static_cast<std::size_t>(device)].signer.public_key();
  }
  void set_clock(std::int64_t ms) { clock_ms_ = ms; }
  std::int64_t clock() const { return clock_ms_; }

 private:
  struct Hand {
    FakeSigner signer;
    std::uint64_t seq;
    Hash last;
    std::map<DeviceId, Head> seen;
  };
  Scope scope_;
  std::vector<Hand> hands_;
  std::int64_t clock_ms_ = 1764072000000;
  Uuid last_id_;
};

}  // namespace steamworthy::record
