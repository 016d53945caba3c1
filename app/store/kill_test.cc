// A process that writes under load is killed at random instants (SIGKILL): nothing that it had
// acknowledged is lost, and the store opens and is sound every time.
//
// 500 kills, 2,000 in a long run. This shows that the store is never half written; what a power cut
// does to what was not synced is fault_test.cc.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <random>
#include <thread>

#include "store/backup.h"
#include "store/examine.h"
#include "store/fake_surroundings_test.h"
#include "store/store.h"

namespace steamworthy::store {
namespace {

struct Acknowledged {
  std::int64_t intake_no;
  record::Hash hash;
};

/// The process that will be killed: four threads that append, one that receives, and one that makes
/// backups and blobs. What is acknowledged goes into the pipe, in one write each.
[[noreturn]] void write_until_killed(const std::string& path, int pipe, int round) {
  RealSurroundings world;
  Store store(path, world, 5000);
  auto tell = [pipe](std::int64_t intake_no, const record::Hash& hash) {
    const Acknowledged row{intake_no, hash};
    if (::write(pipe, &row, sizeof row) != sizeof row) ::_exit(3);
  };
  std::vector<std::thread> threads;
  for (int t = 0; t < 4; ++t) {
    threads.emplace_back([&] {
      for (;;) {
        const auto receipts = store.log().append({draft_of(std::string(200, 'b')), draft_of("{}")});
        for (const Receipt& receipt : receipts) tell(receipt.intake_no, receipt.hash);
      }
    });
  }
  threads.emplace_back([&] {
    Tablet tablet(1000 + round);
    store.log().add_key(tablet.key());
    for (;;) {
      const record::SealedFact fact = tablet.report(std::string(300, 'r'));
      const auto received = store.log().receive({fact});
      tell(received[0].intake_no, record::sha256(fact.bytes));
    }
  });
  for (int i = 0;; ++i) {
    const record::Hash blob =
        store.log().add_blob(fmt::format("{} {}", round, std::string(20000, 'p')));
    tell(0, blob);
    back_up(path, fmt::format("{}.backup-{}-{}", path, round, i));
  }
}

class Killed : public testing::TestWithParam<const char*> {};

TEST_P(Killed, LosesNothingThatWasAcknowledged) {
  const int kills = std::getenv("STEAMWORTHY_LONG") != nullptr ? 1000 : 250;
  const TemporaryFolder folder(GetParam());
  RealSurroundings world;
  const Ed25519Verifier verifier;
  std::mt19937 chance(20261125);
  std::string path;
  std::map<std::int64_t, record::Hash> facts;
  std::vector<record::Hash> blobs;
  std::size_t acknowledged = 0;
  for (int round = 0; round < kills; ++round) {
    if (round % 10 == 0) {  // a new store now and then, so that reading it stays short
      path = folder.file("store" + std::to_string(round));
      create_store(path, world);
      facts.clear();
      blobs.clear();
    }
    int ends[2];
    ASSERT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      ::close(ends[0]);
      write_until_killed(path, ends[1], round);
    }
    ::close(ends[1]);
    std::this_thread::sleep_for(std::chrono::microseconds(chance() % 60'000));
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status)) << "it ended by itself with " << WEXITSTATUS(status);
    Acknowledged row{};
    while (::read(ends[0], &row, sizeof row) == sizeof row) {
      ++acknowledged;
      if (row.intake_no == 0) {
        blobs.push_back(row.hash);
      } else {
        facts[row.intake_no] = row.hash;
      }
    }
    ::close(ends[0]);

    std::map<std::int64_t, record::Hash> stored;
    {
      Store store(path, world, 5000);
      for (const StoredFact& fact : store.log().read(0, 1'000'000)) {
        stored[fact.intake_no] = record::sha256(fact.sealed.bytes);
      }
      for (const record::Hash& blob : blobs) EXPECT_TRUE(store.log().blob(blob));
    }
    for (const auto& [intake_no, hash] : facts) {
      ASSERT_EQ(stored.count(intake_no), 1u) << "round " << round << ", intake " << intake_no;
      ASSERT_EQ(stored[intake_no], hash) << "round " << round << ", intake " << intake_no;
    }
    const Examination examination = examine(path, verifier);
    ASSERT_TRUE(examination.is_sound()) << examination.first_fault();
    ASSERT_EQ(examination.report.count(record::Weight::Missing), 0u);
  }
  EXPECT_GT(acknowledged, static_cast<std::size_t>(kills));
  RecordProperty("acknowledged", static_cast<int>(acknowledged));
  std::printf("%d kills, %zu facts and blobs acknowledged, none lost\n", kills, acknowledged);
}

// Half of the kills each: on the disk, where a sync takes its time, and in memory, where it does
// not.
INSTANTIATE_TEST_SUITE_P(Where, Killed, testing::Values("/tmp", "/dev/shm"), [](const auto& row) {
  return row.param == std::string("/tmp") ? "disk" : "memory";
});

}  // namespace
}  // namespace steamworthy::store
