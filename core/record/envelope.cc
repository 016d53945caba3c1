#include "record/envelope.h"

#include <fmt/format.h>

#include "base/error.h"
#include "base/utf8.h"
#include "record/octets.h"
#include "record/sha256.h"

namespace steamworthy::record {
namespace {

constexpr std::string_view magic = "SWFACT";
constexpr std::uint16_t format = 1;

bool may_be_person(std::string_view person) {
  if (person.size() > longest_person || line_of_bad_utf8(person)) return false;
  for (const char c : person) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return false;
  }
  return true;
}

bool may_be_seen(const Envelope& envelope) {
  if (envelope.seen.size() > most_seen) return false;
  for (std::size_t i = 0; i < envelope.seen.size(); ++i) {
    const Head& head = envelope.seen[i];
    if (head.device == envelope.device || head.device_seq == 0 || head.device_seq > greatest_seq) {
      return false;
    }
    if (i > 0 && !(envelope.seen[i - 1].device < head.device)) return false;
  }
  return true;
}

bool may_be_blobs(const std::vector<Hash>& blobs) {
  if (blobs.size() > most_blobs) return false;
  for (std::size_t i = 1; i < blobs.size(); ++i) {
    if (!(blobs[i - 1] < blobs[i])) return false;
  }
  return true;
}

bool may_be_time(std::int64_t ms) { return ms >= earliest_ms && ms <= latest_ms; }

void write_header(const Envelope& e, OctetWriter& out) {
  out.fixed(e.id);
  out.whole<std::uint8_t>(static_cast<std::uint8_t>(e.scope.kind));
  out.fixed(e.scope.id);
  out.fixed(e.device);
  out.whole<std::uint64_t>(e.device_seq);
  out.fixed(e.prev_hash);
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(e.seen.size()));
  for (const Head& head : e.seen) {
    out.fixed(head.device);
    out.whole<std::uint64_t>(head.device_seq);
    out.fixed(head.hash);
  }
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(e.person.size()));
  out.bytes(e.person);
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(e.kind.size()));
  out.bytes(e.kind);
  out.whole<std::uint16_t>(e.kind_version);
  out.whole<std::uint64_t>(static_cast<std::uint64_t>(e.happened_at_ms));
  out.whole<std::uint32_t>(e.happened_precision_ms);
  out.whole<std::uint64_t>(static_cast<std::uint64_t>(e.recorded_at_ms));
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(e.utc_offset_min));
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(e.blobs.size()));
  for (const Hash& blob : e.blobs) out.fixed(blob);
}

/// Fills the envelope from its header; false if the header's bytes do not match its fields.
bool read_header(std::string_view header, Envelope& e) {
  OctetReader in(header);
  in.fixed(e.id);
  e.scope.kind = static_cast<ScopeKind>(in.whole<std::uint8_t>());
  in.fixed(e.scope.id);
  in.fixed(e.device);
  e.device_seq = in.whole<std::uint64_t>();
  in.fixed(e.prev_hash);
  e.seen.resize(in.count(16 + 8 + 32));
  for (Head& head : e.seen) {
    in.fixed(head.device);
    head.device_seq = in.whole<std::uint64_t>();
    in.fixed(head.hash);
  }
  e.person = in.bytes(in.whole<std::uint16_t>());
  e.kind = in.bytes(in.whole<std::uint16_t>());
  e.kind_version = in.whole<std::uint16_t>();
  e.happened_at_ms = static_cast<std::int64_t>(in.whole<std::uint64_t>());
  e.happened_precision_ms = in.whole<std::uint32_t>();
  e.recorded_at_ms = static_cast<std::int64_t>(in.whole<std::uint64_t>());
  e.utc_offset_min = static_cast<std::int16_t>(in.whole<std::uint16_t>());
  e.blobs.resize(in.count(32));
  for (Hash& blob : e.blobs) in.fixed(blob);
  return in.is_good() && in.left() == 0;
}

Parsed flawed(Flaw flaw) { return {std::nullopt, flaw}; }

}  // namespace

std::string_view key(Flaw flaw) {
  switch (flaw) {
    case Flaw::TooShort:
      return "record.flaw.too_short";
    case Flaw::TooLong:
      return "record.flaw.too_long";
    case Flaw::Magic:
      return "record.flaw.magic";
    case Flaw::Format:
      return "record.flaw.format";
    case Flaw::HeaderLength:
      return "record.flaw.header_length";
    case Flaw::Id:
      return "record.flaw.id";
    case Flaw::Scope:
      return "record.flaw.scope";
    case Flaw::DeviceSeq:
      return "record.flaw.device_seq";
    case Flaw::PrevHash:
      return "record.flaw.prev_hash";
    case Flaw::Seen:
      return "record.flaw.seen";
    case Flaw::Person:
      return "record.flaw.person";
    case Flaw::Kind:
      return "record.flaw.kind";
    case Flaw::KindVersion:
      return "record.flaw.kind_version";
    case Flaw::Time:
      return "record.flaw.time";
    case Flaw::Offset:
      return "record.flaw.offset";
    case Flaw::Blobs:
      return "record.flaw.blobs";
    case Flaw::Body:
      return "record.flaw.body";
  }
  return "record.flaw.format";
}

bool may_be_kind(std::string_view kind) {
  if (kind.empty() || kind.size() > longest_kind) return false;
  bool dotted = false;
  char before = '.';
  for (const char c : kind) {
    const bool letter = c >= 'a' && c <= 'z';
    const bool later = (c >= '0' && c <= '9') || c == '_' || c == '.';
    if (!letter && (!later || before == '.')) return false;
    if (c == '.') dotted = true;
    before = c;
  }
  return dotted && before != '.';
}

std::optional<Flaw> flaw_of(const Envelope& e, std::string_view body) {
  if (!is_uuid7(e.id)) return Flaw::Id;
  if (e.scope.kind != ScopeKind::Plant && e.scope.kind != ScopeKind::Closing) return Flaw::Scope;
  if (!is_uuid7(e.scope.id)) return Flaw::Scope;
  if (e.device_seq == 0 || e.device_seq > greatest_seq) return Flaw::DeviceSeq;
  if ((e.device_seq == 1) != e.prev_hash.is_zero()) return Flaw::PrevHash;
  if (!may_be_seen(e)) return Flaw::Seen;
  if (!may_be_person(e.person)) return Flaw::Person;
  if (!may_be_kind(e.kind)) return Flaw::Kind;
  if (e.kind_version == 0) return Flaw::KindVersion;
  if (!may_be_time(e.happened_at_ms) || !may_be_time(e.recorded_at_ms)) return Flaw::Time;
  if (e.utc_offset_min > greatest_offset_min || e.utc_offset_min < -greatest_offset_min) {
    return Flaw::Offset;
  }
  if (!may_be_blobs(e.blobs)) return Flaw::Blobs;
  if (body.size() > longest_body) return Flaw::Body;
  return std::nullopt;
}

std::string encode(const Envelope& envelope, std::string_view body) {
  if (const auto flaw = flaw_of(envelope, body)) {
    throw OutOfRange(
        "record.cannot_write",
        fmt::format("a fact of kind \"{}\" cannot be written ({})", envelope.kind, key(*flaw)));
  }
  // Room for the fixed fields of the header, 200 bytes at most, and for the rest.
  OctetWriter out;
  out.reserve(200 + 56 * envelope.seen.size() + 32 * envelope.blobs.size() +
              envelope.person.size() + envelope.kind.size() + body.size());
  out.bytes(magic);
  out.whole<std::uint16_t>(format);
  out.whole<std::uint32_t>(0);
  const std::size_t start = out.size();
  write_header(envelope, out);
  out.whole_at(start - 4, static_cast<std::uint32_t>(out.size() - start));
  out.whole<std::uint32_t>(static_cast<std::uint32_t>(body.size()));
  out.bytes(body);
  return out.take();
}

Parsed parse(std::string_view bytes) {
  OctetReader in(bytes);
  const std::string_view start = in.bytes(magic.size());
  if (!in.is_good()) return flawed(Flaw::TooShort);
  if (start != magic) return flawed(Flaw::Magic);
  const auto found = in.whole<std::uint16_t>();
  if (in.is_good() && found != format) return flawed(Flaw::Format);
  const std::string_view header = in.bytes(in.whole<std::uint32_t>());
  const auto body_length = in.whole<std::uint32_t>();
  if (in.is_good() && body_length > longest_body) return flawed(Flaw::Body);
  const std::string_view body = in.bytes(body_length);
  if (!in.is_good()) return flawed(Flaw::TooShort);
  if (in.left() != 0) return flawed(Flaw::TooLong);
  ParsedFact fact;
  if (!read_header(header, fact.envelope)) return flawed(Flaw::HeaderLength);
  if (const auto flaw = flaw_of(fact.envelope, body)) return flawed(*flaw);
  fact.body = body;
  return {std::move(fact), Flaw::TooShort};
}

DeviceId device_of(const PublicKey& key) {
  Sha256 hash;
  hash.add("steamworthy device 1\n");
  hash.add(key.view());
  const Hash whole = hash.finish();
  DeviceId device;
  std::memcpy(device.bytes.data(), whole.bytes.data(), DeviceId::size);
  return device;
}

}  // namespace steamworthy::record
