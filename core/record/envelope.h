// Envelope: what a fact carries beside its body, and the bytes that are hashed and signed.
//
// A fact is made once, as bytes, by the device that signs it. Those bytes are kept and passed on as
// they are; nothing ever writes them anew. The layout is docs/formats/record.md. There is exactly
// one way to write an envelope: bytes that parse() takes are the bytes that encode() gives.
//
// This room knows nothing of a body but its length.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record/bytes.h"
#include "record/uuid.h"

namespace steamworthy::record {

/// What a feed belongs to: one closing, or the plant (people, devices, rules).
enum class ScopeKind : std::uint8_t { Plant = 1, Closing = 2 };

struct Scope {
  ScopeKind kind = ScopeKind::Closing;
  Uuid id;

  friend bool operator==(const Scope& a, const Scope& b) {
    return a.kind == b.kind && a.id == b.id;
  }
  friend bool operator<(const Scope& a, const Scope& b) {
    return a.kind != b.kind ? a.kind < b.kind : a.id < b.id;
  }
};

/// A feed: the facts of one device in one scope. It never forks.
struct Feed {
  Scope scope;
  DeviceId device;

  friend bool operator==(const Feed& a, const Feed& b) {
    return a.scope == b.scope && a.device == b.device;
  }
  friend bool operator<(const Feed& a, const Feed& b) {
    return a.scope == b.scope ? a.device < b.device : a.scope < b.scope;
  }
};

/// The last fact of another device's feed that was known.
struct Head {
  DeviceId device;
  std::uint64_t device_seq = 0;
  Hash hash;

  friend bool operator==(const Head& a, const Head& b) {
    return a.device == b.device && a.device_seq == b.device_seq && a.hash == b.hash;
  }
};

struct Envelope {
  Uuid id;  ///< version 7
  Scope scope;
  DeviceId device;                  ///< see device_of()
  std::uint64_t device_seq = 0;     ///< 1, 2, 3 ... within the feed
  Hash prev_hash;                   ///< of the feed's fact before it; zero for the first
  std::vector<Head> seen;           ///< of other devices in this scope, by rising device
  std::string person;               ///< who says so; empty where a device speaks by itself
  std::string kind;                 ///< "closure.opened"
  std::uint16_t kind_version = 1;   ///< from 1
  std::int64_t happened_at_ms = 0;  ///< UTC, since 1970; by the clock of the one who says so
  std::uint32_t happened_precision_ms = 0;  ///< it happened at most so long before or after
  std::int64_t recorded_at_ms = 0;          ///< UTC, since 1970; by the device's clock
  std::int16_t utc_offset_min = 0;          ///< local time less UTC where it happened
  std::vector<Hash> blobs;                  ///< photos and traces that belong to it, rising

  Feed feed() const { return {scope, device}; }
};

// Limits of what is written and read.
inline constexpr std::uint64_t greatest_seq = (std::uint64_t{1} << 63) - 1;
inline constexpr std::size_t longest_person = 200;
inline constexpr std::size_t longest_kind = 64;
inline constexpr std::size_t most_seen = 1000;
inline constexpr std::size_t most_blobs = 1000;
inline constexpr std::size_t longest_body = std::size_t{4} << 20;
inline constexpr std::int64_t earliest_ms = -62135596800000;  ///< 0001-01-01
inline constexpr std::int64_t latest_ms = 253402300799999;    ///< 9999-12-31
inline constexpr int greatest_offset_min = 18 * 60;

/// The kind of the facts by which a node countersigns the heads that it knows; their body is "{}".
inline constexpr std::string_view checkpoint_kind = "record.checkpoint";

/// Why bytes are no fact, or an envelope cannot be written.
enum class Flaw {
  TooShort,      ///< the bytes end before the fact does
  TooLong,       ///< bytes follow after the fact's end
  Magic,         ///< they do not begin as a fact does
  Format,        ///< an envelope of a format that this program does not know
  HeaderLength,  ///< the header's fields fill more or less than it says
  Id,            ///< not a UUID of version 7
  Scope,
  DeviceSeq,
  PrevHash,  ///< zero for the first fact of a feed and for no other
  Seen,      ///< not rising by device, own device among them, numbered 0, or too many
  Person,    ///< not UTF-8, a control character, or too long
  Kind,      ///< not two or more words of a-z, 0-9 and _ joined by dots, or too long
  KindVersion,
  Time,
  Offset,
  Blobs,  ///< not rising, or too many
  Body,   ///< longer than any body may be
};

/// "record.flaw.seen": a key with words.
std::string_view key(Flaw flaw);

/// What is wrong with an envelope and its body, if anything; the first flaw in the order of fields.
std::optional<Flaw> flaw_of(const Envelope& envelope, std::string_view body);

/// The bytes that are hashed and signed.
/// Throws   OutOfRange "record.cannot_write" if flaw_of() finds a flaw.
std::string encode(const Envelope& envelope, std::string_view body);

/// What bytes say; `body` points into them.
struct ParsedFact {
  Envelope envelope;
  std::string_view body;
};
struct Parsed {
  std::optional<ParsedFact> fact;
  Flaw flaw = Flaw::TooShort;  ///< where there is no fact
  explicit operator bool() const { return fact.has_value(); }
};
Parsed parse(std::string_view bytes);

/// A fact as it is kept and passed on: the bytes as first made, and their signature.
struct SealedFact {
  std::string bytes;
  Signature signature;
};

/// A device's name: the first half of SHA-256("steamworthy device 1\n" + its public key). Whoever
/// has the key can check the name.
DeviceId device_of(const PublicKey& key);

/// Whether a word may be a kind.
bool may_be_kind(std::string_view kind);

}  // namespace steamworthy::record
