// Checks record/envelope.h against the vectors of tests/record_vectors, which a writer in Python
// made from docs/formats/record.md alone; then that no other bytes are taken.
#include "record/envelope.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "base/error.h"
#include "record/sha256.h"

namespace steamworthy::record {
namespace {

using Json = nlohmann::json;

template <class T>
T fixed(const Json& json) {
  const auto value = from_hex<T>(json.get<std::string>());
  EXPECT_TRUE(value) << json;
  return value.value_or(T{});
}

Json vectors() {
  std::ifstream file(STEAMWORTHY_SOURCE_DIR "/tests/record_vectors/facts.json");
  return Json::parse(file);
}

std::string unhex(const std::string& digits) {
  std::string bytes(digits.size() / 2, '\0');
  EXPECT_TRUE(read_hex(digits, reinterpret_cast<std::uint8_t*>(bytes.data()), bytes.size()));
  return bytes;
}

Envelope envelope_of(const Json& json) {
  Envelope e;
  e.id = *read_uuid(json["id"].get<std::string>());
  e.scope.kind = json["scope"] == "plant" ? ScopeKind::Plant : ScopeKind::Closing;
  e.scope.id = *read_uuid(json["scope_id"].get<std::string>());
  e.device = fixed<DeviceId>(json["device"]);
  e.device_seq = json["device_seq"];
  e.prev_hash = fixed<Hash>(json["prev_hash"]);
  for (const Json& head : json["seen"]) {
    e.seen.push_back(
        {fixed<DeviceId>(head["device"]), head["device_seq"], fixed<Hash>(head["hash"])});
  }
  e.person = json["person"];
  e.kind = json["kind"];
  e.kind_version = json["kind_version"];
  e.happened_at_ms = json["happened_at_ms"];
  e.happened_precision_ms = json["happened_precision_ms"];
  e.recorded_at_ms = json["recorded_at_ms"];
  e.utc_offset_min = json["utc_offset_min"];
  for (const Json& blob : json["blobs"]) e.blobs.push_back(fixed<Hash>(blob));
  return e;
}

TEST(EnvelopeVectors, AreWrittenReadAndHashedAlike) {
  const Json facts = vectors()["facts"];
  ASSERT_GE(facts.size(), 5u);
  for (const Json& row : facts) {
    const std::string bytes = unhex(row["bytes"]);
    const std::string body = unhex(row["body"]);
    const Envelope envelope = envelope_of(row);
    EXPECT_EQ(hex(encode(envelope, body)), hex(bytes)) << row["name"];
    const Parsed parsed = parse(bytes);
    ASSERT_TRUE(parsed) << row["name"];
    EXPECT_EQ(encode(parsed.fact->envelope, parsed.fact->body), bytes);
    EXPECT_EQ(parsed.fact->body, body);
    EXPECT_EQ(hex(sha256(bytes)), row["hash"]);
    EXPECT_EQ(device_of(fixed<PublicKey>(row["public_key"])), envelope.device);
  }
}

TEST(EnvelopeVectors, FlawedOnesAreRefusedForTheSameReason) {
  const Json flawed = vectors()["flawed"];
  std::set<std::string> seen;
  for (const Json& row : flawed) {
    const Parsed parsed = parse(unhex(row["bytes"]));
    ASSERT_FALSE(parsed) << row["name"];
    EXPECT_EQ(key(parsed.flaw), "record.flaw." + row["flaw"].get<std::string>()) << row["name"];
    seen.insert(row["flaw"]);
  }
  for (int flaw = 0; flaw <= static_cast<int>(Flaw::Body); ++flaw) {
    EXPECT_EQ(seen.count(std::string(key(static_cast<Flaw>(flaw)).substr(12))), 1u)
        << "no vector shows " << key(static_cast<Flaw>(flaw));
  }
}

TEST(Envelope, ChangedByOneBitIsAnotherFactOrNone) {
  const std::string bytes = unhex(vectors()["facts"][1]["bytes"]);
  const Hash hash = sha256(bytes);
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    for (int bit = 0; bit < 8; ++bit) {
      std::string changed = bytes;
      changed[i] = static_cast<char>(changed[i] ^ (1 << bit));
      EXPECT_NE(sha256(changed), hash);
      const Parsed parsed = parse(changed);
      if (parsed) {
        EXPECT_EQ(encode(parsed.fact->envelope, parsed.fact->body), changed);
      }
    }
  }
}

TEST(Envelope, CutShortIsNoFact) {
  const std::string bytes = unhex(vectors()["facts"][1]["bytes"]);
  for (std::size_t size = 0; size < bytes.size(); ++size) {
    EXPECT_FALSE(parse(std::string_view(bytes).substr(0, size))) << size;
  }
}

TEST(Envelope, ThatCannotBeReadIsNotWritten) {
  Envelope envelope = envelope_of(vectors()["facts"][0]);
  envelope.kind = "Closure Opened";
  try {
    encode(envelope, "{}");
    FAIL() << "written";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "record.cannot_write");
  }
}

TEST(Kind, IsWordsJoinedByDots) {
  for (const char* good : {"closure.opened", "a.b", "feed_check.passes_in.seen2"}) {
    EXPECT_TRUE(may_be_kind(good)) << good;
  }
  for (const char* bad :
       {"", ".", "opened", "closure.", ".opened", "closure..opened", "Closure.opened",
        "closure.2nd", "closure opened", "closure.opened.", "clo-sure.opened"}) {
    EXPECT_FALSE(may_be_kind(bad)) << bad;
  }
  EXPECT_FALSE(may_be_kind("a." + std::string(longest_kind, 'a')));
}

RC_GTEST_PROP(Envelope, AnyBytesAreReadToTheSameBytesOrNotAtAll, (const std::string& noise)) {
  std::string bytes = unhex(vectors()["facts"][0]["bytes"]);
  if (!noise.empty()) {
    const std::size_t at = *rc::gen::inRange<std::size_t>(0, bytes.size());
    bytes.replace(at, noise.size(), noise);
  }
  const Parsed parsed = parse(bytes);
  if (parsed) RC_ASSERT(encode(parsed.fact->envelope, parsed.fact->body) == bytes);
}

}  // namespace
}  // namespace steamworthy::record
