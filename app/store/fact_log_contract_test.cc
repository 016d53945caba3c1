// What every FactLog must do, whatever it is kept in: run on the SQLite file and on the log in
// memory.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <memory>
#include <thread>

#include "base/error.h"
#include "store/fact_log.h"
#include "store/fake_surroundings_test.h"
#include "store/memory_fact_log_test.h"
#include "store/schema.h"
#include "store/sqlite_fact_log.h"

namespace steamworthy::store {
namespace {

using record::SealedFact;

/// Makes logs of one kind, all of them gone at the end.
class Maker {
 public:
  virtual ~Maker() = default;
  virtual std::unique_ptr<FactLog> make() = 0;

 protected:
  Ed25519Signer signer_{seed_of(0)};
  Ed25519Verifier verifier_;
  FakeSurroundings surroundings_;
};

class MemoryMaker : public Maker {
  std::unique_ptr<FactLog> make() override {
    return std::make_unique<MemoryFactLog>(signer_, verifier_, surroundings_);
  }
};

class SqliteMaker : public Maker {
  std::unique_ptr<FactLog> make() override {
    auto database =
        std::make_unique<Database>(folder_.file(std::to_string(++count_)), OpenMode::Create);
    create_tables(*database, record::uuid7(1, {}));
    prepare_to_write(*database);
    return std::make_unique<SqliteFactLog>(std::move(database), signer_, verifier_, surroundings_);
  }
  TemporaryFolder folder_{"/dev/shm"};
  int count_ = 0;
};

std::unique_ptr<Maker> maker_of(const std::string& name) {
  if (name == "sqlite") return std::make_unique<SqliteMaker>();
  return std::make_unique<MemoryMaker>();
}

class FactLogContract : public testing::TestWithParam<const char*> {
 protected:
  std::unique_ptr<Maker> maker_ = maker_of(GetParam());
  std::unique_ptr<FactLog> log_ = maker_->make();
};

record::Envelope envelope(const SealedFact& fact) {
  const record::Parsed parsed = record::parse(fact.bytes);
  EXPECT_TRUE(parsed);
  return parsed ? parsed.fact->envelope : record::Envelope{};
}

TEST_P(FactLogContract, GivesBackWhatWasAppendedSignedAndInOrder) {
  const auto first = log_->append({draft_of("{\"n\":1}"), draft_of("{\"n\":2}")});
  const auto second = log_->append({draft_of("{\"n\":3}")});
  ASSERT_EQ(first.size(), 2u);
  const auto facts = log_->read(0, 100);
  ASSERT_EQ(facts.size(), 3u);
  const Ed25519Verifier verifier;
  std::vector<record::Link> links;
  for (std::size_t i = 0; i < facts.size(); ++i) {
    EXPECT_EQ(facts[i].intake_no, static_cast<std::int64_t>(i) + 1);
    const record::Parsed parsed = record::parse(facts[i].sealed.bytes);
    ASSERT_TRUE(parsed);
    EXPECT_EQ(parsed.fact->body, fmt::format("{{\"n\":{}}}", i + 1));
    EXPECT_EQ(parsed.fact->envelope.person, "P-01");
    EXPECT_EQ(parsed.fact->envelope.device, log_->device());
    EXPECT_TRUE(
        verifier.verify(log_->keys().front(), facts[i].sealed.bytes, facts[i].sealed.signature));
    links.push_back(link_of(parsed.fact->envelope, record::sha256(facts[i].sealed.bytes)));
  }
  EXPECT_TRUE(record::check_chain(links).findings.empty());
  EXPECT_EQ(second[0].hash, links[2].hash);
  EXPECT_EQ(second[0].intake_no, 3);
  EXPECT_EQ(second[0].name.device_seq, 3u);
}

TEST_P(FactLogContract, ReadsFromAnIntakeNumberOnAndNoMoreThanAsked) {
  for (int i = 0; i < 10; ++i) log_->append({draft_of("{}")});
  const auto facts = log_->read(4, 3);
  ASSERT_EQ(facts.size(), 3u);
  EXPECT_EQ(facts[0].intake_no, 5);
  EXPECT_TRUE(log_->read(10, 5).empty());
  EXPECT_TRUE(log_->append({}).empty());
}

TEST_P(FactLogContract, KeepsScopesApart) {
  log_->append({draft_of("{}"), draft_of("{}", "person.enrolled", log_->plant())});
  log_->append({draft_of("{}", "closure.opened", test_closing(2))});
  for (const StoredFact& fact : log_->read(0, 10)) {
    EXPECT_EQ(envelope(fact.sealed).device_seq, 1u);
  }
  const std::vector<record::Scope> expected = {log_->plant(), test_closing(1), test_closing(2)};
  EXPECT_EQ(log_->scopes(), expected);
}

TEST_P(FactLogContract, RefusesWhatNoFactCanHoldAndStoresNothingOfIt) {
  log_->append({draft_of("{}")});
  for (const auto& wrong : {draft_of("{}", "No Kind"), draft_of("{}", "a.b", record::Scope{})}) {
    try {
      log_->append({draft_of("{}"), wrong});
      ADD_FAILURE() << "stored";
    } catch (const OutOfRange& error) {
      EXPECT_EQ(error.code(), "record.cannot_write");
    }
  }
  EXPECT_EQ(log_->read(0, 10).size(), 1u);
  EXPECT_EQ(log_->append({draft_of("{}")})[0].name.device_seq, 2u);
}

TEST_P(FactLogContract, TakesInFactsOfOthersAndSeesThem) {
  Tablet tablet(1);
  log_->add_key(tablet.key());
  const SealedFact one = tablet.report();
  const SealedFact two = tablet.report();
  const auto received = log_->receive({one, two, one});
  EXPECT_EQ(received[0].how, Intake::Stored);
  EXPECT_EQ(received[1].how, Intake::Stored);
  EXPECT_EQ(received[2].how, Intake::Known);
  EXPECT_EQ(received[2].intake_no, 1);
  log_->append({draft_of("{}")});
  const auto facts = log_->read(0, 10);
  ASSERT_EQ(facts.size(), 3u);
  EXPECT_EQ(facts[0].sealed.bytes, one.bytes);
  EXPECT_EQ(facts[0].sealed.signature, one.signature);
  const auto seen = envelope(facts[2].sealed).seen;
  ASSERT_EQ(seen.size(), 1u);
  EXPECT_EQ(seen[0].device, tablet.device());
  EXPECT_EQ(seen[0].device_seq, 2u);
  EXPECT_EQ(seen[0].hash, record::sha256(two.bytes));
}

TEST_P(FactLogContract, ReceivesInAnyOrderAndSaysHeadsWithoutGap) {
  Tablet tablet(1);
  log_->add_key(tablet.key());
  std::vector<SealedFact> facts;
  for (int i = 0; i < 5; ++i) facts.push_back(tablet.report(fmt::format("{{\"n\":{}}}", i)));
  auto head = [&]() -> std::uint64_t {
    const auto heads = log_->heads(test_closing());
    return heads.empty() ? 0 : heads[0].device_seq;
  };
  log_->receive({facts[1], facts[3]});
  EXPECT_EQ(head(), 0u);
  log_->receive({facts[0]});
  EXPECT_EQ(head(), 2u);
  log_->receive({facts[4]});
  EXPECT_EQ(head(), 2u);
  log_->receive({facts[2]});
  EXPECT_EQ(head(), 5u);
  EXPECT_EQ(log_->heads(test_closing())[0].hash, record::sha256(facts[4].bytes));
  EXPECT_EQ(log_->read(0, 10).size(), 5u);
}

TEST_P(FactLogContract, QuarantinesAndShowsWhatIsWrong) {
  Tablet tablet(1);
  log_->add_key(tablet.key());
  const SealedFact one = tablet.report();
  Tablet twin(1);
  const SealedFact fork = twin.report("{\"other\":true}");
  SealedFact changed = tablet.report();
  changed.bytes.back() = ' ';
  SealedFact nonsense{"no fact at all", {}};
  const SealedFact after_fork = twin.report();
  const auto received = log_->receive({one, fork, changed, nonsense, after_fork, fork});
  EXPECT_EQ(received[0].how, Intake::Stored);
  EXPECT_EQ(received[1].reason, "forked");
  EXPECT_EQ(received[2].reason, "bad_signature");
  EXPECT_EQ(received[3].reason, "flaw.magic");
  EXPECT_EQ(received[4].reason, "broken_chain");
  EXPECT_EQ(received[5].reason, "forked");
  EXPECT_EQ(log_->read(0, 10).size(), 1u);
  const auto kept = log_->quarantined();
  ASSERT_EQ(kept.size(), 4u);  // each once
  EXPECT_EQ(kept[0].bytes, fork.bytes);
  EXPECT_EQ(kept[0].signature, fork.signature);
  EXPECT_EQ(kept[1].reason, "bad_signature");
  EXPECT_EQ(kept[2].bytes, "no fact at all");
}

TEST_P(FactLogContract, ALateFactThatDoesNotFitTheOneAfterItIsQuarantined) {
  Tablet tablet(1);
  Tablet twin(1);
  log_->add_key(tablet.key());
  const SealedFact real = tablet.report("{\"real\":1}");
  const SealedFact other = twin.report("{\"other\":1}");
  const auto received = log_->receive({tablet.report(), other, real});
  EXPECT_EQ(received[0].how, Intake::Stored);
  EXPECT_EQ(received[1].reason, "broken_chain");
  EXPECT_EQ(received[2].how, Intake::Stored);
  EXPECT_EQ(log_->heads(test_closing())[0].device_seq, 2u);
}

TEST_P(FactLogContract, TakesFactsInWhenTheirKeyArrives) {
  Tablet tablet(1);
  const auto received = log_->receive({tablet.report(), tablet.report()});
  EXPECT_EQ(received[0].reason, "no_key");
  EXPECT_TRUE(log_->read(0, 10).empty());
  EXPECT_EQ(log_->quarantined().size(), 2u);
  log_->add_key(tablet.key());
  EXPECT_EQ(log_->read(0, 10).size(), 2u);
  EXPECT_TRUE(log_->quarantined().empty());
  EXPECT_EQ(log_->heads(test_closing())[0].device_seq, 2u);
  log_->add_key(tablet.key());
  EXPECT_EQ(log_->keys().size(), 2u);
}

TEST_P(FactLogContract, KeepsBlobsByTheirContent) {
  const std::string photo(100000, '\x7f');
  const record::Hash hash = log_->add_blob(photo);
  EXPECT_EQ(hash, record::sha256(photo));
  EXPECT_EQ(log_->add_blob(photo), hash);
  EXPECT_EQ(log_->add_blob(""), record::sha256(""));
  EXPECT_EQ(log_->blobs().size(), 2u);
  EXPECT_EQ(log_->blob(hash), photo);
  EXPECT_EQ(log_->blob(record::sha256("")), "");
  EXPECT_FALSE(log_->blob(record::sha256("another")));
  Draft draft = draft_of("{}");
  draft.blobs = {hash, record::sha256(""), hash};
  log_->append({draft});
  EXPECT_EQ(envelope(log_->read(0, 1)[0].sealed).blobs.size(), 2u);
}

TEST_P(FactLogContract, KeepsBodiesByteForByte) {
  std::string all;
  for (int i = 0; i < 256; ++i) all += static_cast<char>(i);
  for (const std::string& body : {std::string(), all, std::string(300000, 'x')}) {
    log_->append({draft_of(body)});
  }
  const auto facts = log_->read(0, 10);
  EXPECT_EQ(record::parse(facts[0].sealed.bytes).fact->body, "");
  EXPECT_EQ(record::parse(facts[1].sealed.bytes).fact->body, all);
  EXPECT_EQ(record::parse(facts[2].sealed.bytes).fact->body.size(), 300000u);
}

TEST_P(FactLogContract, CountersignsByACheckpoint) {
  Tablet tablet(1);
  log_->add_key(tablet.key());
  log_->receive({tablet.report()});
  log_->append({checkpoint_draft(test_closing(), 1764072000000)});
  std::vector<record::Link> links;
  for (const StoredFact& fact : log_->read(0, 10)) {
    links.push_back(link_of(envelope(fact.sealed), record::sha256(fact.sealed.bytes)));
  }
  for (const record::FeedReport& feed : record::check_chain(links).feeds) {
    if (feed.feed.device == tablet.device()) {
      EXPECT_EQ(feed.checkpoint, 1u);
    }
  }
}

TEST_P(FactLogContract, MayBeUsedByManyThreadsAtOnce) {
  constexpr int threads = 8;
  constexpr int each = 50;
  std::vector<std::thread> pool;
  std::atomic<int> refused = 0;
  for (int t = 0; t < threads; ++t) {
    pool.emplace_back([&, t] {
      for (int i = 0; i < each; ++i) {
        log_->append({draft_of(fmt::format("{{\"t\":{},\"i\":{}}}", t, i))});
        try {
          log_->append({draft_of("{}", "WRONG")});
        } catch (const OutOfRange&) {
          ++refused;
        }
      }
    });
  }
  for (std::thread& thread : pool) thread.join();
  EXPECT_EQ(refused, threads * each);
  const auto facts = log_->read(0, 10000);
  ASSERT_EQ(facts.size(), static_cast<std::size_t>(threads * each));
  std::vector<record::Link> links;
  for (const StoredFact& fact : facts) {
    links.push_back(link_of(envelope(fact.sealed), record::sha256(fact.sealed.bytes)));
  }
  EXPECT_TRUE(record::check_chain(links).findings.empty());
}

/// The same facts to every kind of log in any order: the same feeds, the same quarantine.
RC_GTEST_PROP(FactLogs, AgreeOnWhateverArrives, (const std::vector<std::uint8_t>& order)) {
  Tablet tablet(1);
  Tablet twin(1);
  Tablet unknown(2);
  std::vector<SealedFact> facts;
  for (int i = 0; i < 4; ++i) {
    facts.push_back(tablet.report("{\"a\":1}"));
    facts.push_back(twin.report(i < 2 ? "{\"a\":1}" : "{\"b\":1}"));
    facts.push_back(unknown.report());
  }
  std::vector<std::vector<std::string>> results;
  for (const char* name : {"memory", "sqlite"}) {
    const auto maker = maker_of(name);
    const auto log = maker->make();
    log->add_key(tablet.key());
    std::vector<std::string> said;
    for (const std::uint8_t pick : order) {
      if (pick % 13 == 12) log->add_key(unknown.key());
      const auto received = log->receive({facts[pick % facts.size()]});
      said.push_back(fmt::format("{} {} {}", static_cast<int>(received[0].how),
                                 received[0].intake_no, received[0].reason));
    }
    for (const StoredFact& fact : log->read(0, 1000)) said.push_back(fact.sealed.bytes);
    for (const record::Head& head : log->heads(test_closing())) said.push_back(hex(head.hash));
    for (const record::QuarantinedFact& fact : log->quarantined()) {
      said.push_back(fact.reason + fact.bytes);
    }
    results.push_back(said);
  }
  RC_ASSERT(results[0] == results[1]);
}

INSTANTIATE_TEST_SUITE_P(Logs, FactLogContract, testing::Values("memory", "sqlite"),
                         [](const auto& row) { return std::string(row.param); });

}  // namespace
}  // namespace steamworthy::store
