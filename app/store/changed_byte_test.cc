// One byte changed in a store's file. In a fact, key, blob or the header it must be found and
// named; anywhere else it is found, or everything reads as before. In no case is something silently
// missing.
//
// A sample of the other bytes; in a long run every byte of the file.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>

#include "base/error.h"
#include "store/examine.h"
#include "store/fake_surroundings_test.h"
#include "store/schema.h"
#include "store/store.h"
#include "store/tables.h"
#include "words/words.h"

namespace steamworthy::store {
namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Everything that a store says, in one text.
std::string all_of(const std::string& path) {
  Database database(path, OpenMode::Read);
  check_tables(database);
  Tables tables(database);
  std::string all = text(plant_of(database)) + "\n";
  for (const record::PublicKey& key : tables.keys()) all += hex(key) + "\n";
  for (const StoredFact& fact : tables.read(0, 1000)) {
    all += fmt::format("{} {} {}\n", fact.intake_no, record::hex(fact.sealed.bytes),
                       hex(fact.sealed.signature));
  }
  for (const record::Hash& blob : tables.blobs()) all += record::hex(*tables.blob(blob)) + "\n";
  for (const Tables::Place& place : tables.quarantined()) {
    all += fmt::format("{} {}\n", place.fact.reason, record::hex(place.fact.bytes));
  }
  const FeedBook book = tables.load_feeds();
  for (const auto& [feed, state] : book.feeds()) {
    all += fmt::format("{} {} {}\n", hex(feed.device), state.head, hex(state.head_hash));
  }
  return all;
}

class ChangedByte : public testing::Test {
 protected:
  void SetUp() override {
    Store store(made(), world_);
    FactLog& log = store.log();
    Tablet tablet(1);
    log.add_key(tablet.key());
    tablet_key_ = tablet.key();
    for (int i = 0; i < 6; ++i) {
      log.append({draft_of(fmt::format("{{\"closure\":\"FW-A{:02}\"}}", i))});
      facts_.push_back(log.receive({tablet.report()})[0].intake_no);
    }
    log.append({draft_of("{}", "person.enrolled", log.plant())});
    blob_ = log.add_blob("a photo of " + std::string(6000, 'p'));  // over more than one page
    Draft with_blob = draft_of(std::string(9000, 'x'), "photo.taken");
    with_blob.blobs = {blob_};
    log.append({with_blob});
    log.receive({{"no fact", {}}});
  }

  void TearDown() override { std::printf("%d found, %d harmless\n", found_, harmless_); }

  const std::string& made() {
    if (path_.empty()) {
      path_ = folder_.file("store");
      create_store(path_, world_);
    }
    return path_;
  }

  /// What is said of the file with one byte changed: sentences, or nothing if it is sound.
  std::string said_of(const std::string& bytes, std::size_t at, int flip) {
    const std::string copy = folder_.file("changed");
    std::string changed = bytes;
    changed[at] = static_cast<char>(changed[at] ^ flip);
    std::ofstream(copy, std::ios::binary) << changed;
    try {
      const Examination examination = examine(copy, verifier_);
      std::string said;
      for (const std::string& damage : examination.damage) said += damage + "\n";
      for (const record::Finding& finding : examination.report.findings) {
        if (weight_of(finding.what) == record::Weight::Remark) continue;
        said += words::sentence(record::message(finding)) + "\n";
      }
      if (said.empty()) check_is_as_before(copy, at);
      ++(said.empty() ? harmless_ : found_);
      return said;
    } catch (const StoreError& error) {
      ++found_;
      return error.what();
    }
  }

  void check_is_as_before(const std::string& copy, std::size_t at) {
    if (original_.empty()) original_ = all_of(path_);
    EXPECT_EQ(all_of(copy), original_) << "byte " << at;
  }

  /// Every byte of `part`, wherever it stands in the file, is told with one of the names.
  void check_part(const std::string& bytes, std::string_view part,
                  const std::vector<std::string>& names) {
    std::size_t places = 0;
    for (std::size_t at = bytes.find(part); at != std::string::npos;
         at = bytes.find(part, at + 1)) {
      ++places;
      for (std::size_t i = 0; i < part.size(); ++i) {
        const std::string said = said_of(bytes, at + i, i % 2 == 0 ? 0x01 : 0x80);
        bool named = false;
        for (const std::string& name : names) named |= said.find(name) != std::string::npos;
        EXPECT_TRUE(named) << "byte " << at + i << " of " << names[0] << ": \"" << said << "\"";
        if (!named) return;
      }
    }
    EXPECT_GE(places, 1u) << names[0];
  }

  TemporaryFolder folder_{"/dev/shm"};
  FakeSurroundings world_;
  Ed25519Verifier verifier_;
  std::string path_, original_;
  std::vector<std::int64_t> facts_;
  record::PublicKey tablet_key_;
  record::Hash blob_;
  int found_ = 0, harmless_ = 0;
};

TEST_F(ChangedByte, OfAFactItsHashOrItsSignatureIsFoundAndNamed) {
  const std::string bytes = bytes_of(path_);
  Database database(path_, OpenMode::Read);
  const auto facts = Tables(database).read(0, 100);
  for (const std::size_t i : {std::size_t{0}, std::size_t{5}, facts.size() - 2}) {
    const StoredFact& fact = facts[i];
    const record::Parsed parsed = record::parse(fact.sealed.bytes);
    ASSERT_TRUE(parsed);
    const std::vector<std::string> names = {
        fmt::format("intake {}", fact.intake_no),
        text(record::FactName{parsed.fact->envelope.feed(), parsed.fact->envelope.device_seq})
            .substr(5)};
    check_part(bytes, fact.sealed.bytes, names);
    check_part(bytes, fact.sealed.signature.view(), names);
  }
  // Its hash stands in the row, and in later facts as what came before and what was seen.
  const std::size_t at = bytes.rfind(record::sha256(facts.front().sealed.bytes).view());
  ASSERT_NE(at, std::string::npos);
  EXPECT_NE(said_of(bytes, at, 1), "");
}

TEST_F(ChangedByte, OfALongFactIsFoundAndNamed) {
  // Longer than a page: its parts stand in several places.
  const std::string bytes = bytes_of(path_);
  const std::size_t at = bytes.find(std::string(500, 'x'));
  ASSERT_NE(at, std::string::npos);
  for (std::size_t i = 0; i < 500; i += 25) {
    EXPECT_NE(said_of(bytes, at + i, 1).find("intake 14"), std::string::npos) << i;
  }
}

TEST_F(ChangedByte, OfAKeyIsFoundAndNamed) {
  const std::string bytes = bytes_of(path_);
  const std::string device = record::hex(record::device_of(tablet_key_));
  check_part(bytes, tablet_key_.view(), {device});
}

TEST_F(ChangedByte, OfABlobIsFoundAndNamed) {
  const std::string bytes = bytes_of(path_);
  check_part(bytes, "a photo of ", {record::hex(blob_)});
  const std::size_t content = bytes.find(std::string(1000, 'p'));  // on a page of its own
  ASSERT_NE(content, std::string::npos);
  for (std::size_t i = 0; i < 1000; i += 20) {
    EXPECT_NE(said_of(bytes, content + i, 1).find(record::hex(blob_)), std::string::npos) << i;
  }
}

TEST_F(ChangedByte, OfTheHeaderIsFoundOrHarmless) {
  const std::string bytes = bytes_of(path_);
  for (std::size_t at = 0; at < 100; ++at) {
    for (const int flip : {0x01, 0x02, 0x80}) said_of(bytes, at, flip);
  }
  // What this program itself relies on there: the version and whose file it is.
  for (std::size_t at = 60; at < 64; ++at) EXPECT_NE(said_of(bytes, at, 1), "") << at;
  for (std::size_t at = 68; at < 72; ++at) EXPECT_NE(said_of(bytes, at, 1), "") << at;
  for (std::size_t at = 0; at < 18; ++at) EXPECT_NE(said_of(bytes, at, 1), "") << at;
  const std::size_t plant = bytes.find("plant_check");
  ASSERT_NE(plant, std::string::npos);
  for (std::size_t i = 0; i < 11 + 32; ++i) EXPECT_NE(said_of(bytes, plant + i, 1), "") << i;
}

TEST_F(ChangedByte, AnywhereElseIsFoundOrHarmless) {
  const std::string bytes = bytes_of(path_);
  const std::size_t step = std::getenv("STEAMWORTHY_LONG") != nullptr ? 1 : 37;
  for (std::size_t at = 100; at < bytes.size(); at += step) {
    said_of(bytes, at, at % 3 == 0 ? 0x01 : at % 3 == 1 ? 0x80 : 0xff);
  }
  EXPECT_GT(found_, 100);
  EXPECT_GT(harmless_, 100);
}

}  // namespace
}  // namespace steamworthy::store
