// Checks store/store.h, key_file.h, schema.h and backup.h: files on a disk, and what refuses to
// open.
//
// tests/stores/version1.steamworthy was made with the tables of version 1 alone: three facts, one
// key.
#include "store/store.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include "base/error.h"
#include "store/backup.h"
#include "store/examine.h"
#include "store/fake_surroundings_test.h"
#include "store/key_file.h"
#include "store/schema.h"
#include "store/sqlite.h"

namespace steamworthy::store {
namespace {

namespace fs = std::filesystem;

template <class Action>
std::string code_of(Action action) {
  try {
    action();
  } catch (const StoreError& error) {
    EXPECT_NE(std::string(error.what()), "");
    return error.code();
  }
  return "";
}

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

void write(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

class StoreFiles : public testing::Test {
 protected:
  void SetUp() override { create_store(path_, world_); }

  std::string open_code() {
    return code_of([this] { Store(path_, world_, 0); });
  }

  TemporaryFolder folder_;
  FakeSurroundings world_;
  std::string path_ = folder_.file("plant.steamworthy");
  Ed25519Verifier verifier_;
};

TEST_F(StoreFiles, KeepFactsBetweenOneOpeningAndTheNext) {
  record::DeviceId device;
  {
    Store store(path_, world_);
    device = store.log().device();
    store.log().append({draft_of("{\"n\":1}")});
    store.log().add_blob("a photo");
  }
  Store store(path_, world_);
  EXPECT_EQ(store.log().device(), device);
  EXPECT_EQ(store.log().append({draft_of("{\"n\":2}")})[0].name.device_seq, 2u);
  EXPECT_EQ(store.log().read(0, 10).size(), 2u);
  EXPECT_EQ(store.log().blob(record::sha256("a photo")), "a photo");
}

TEST_F(StoreFiles, AreNotMadeOverOthers) {
  EXPECT_EQ(code_of([this] { create_store(path_, world_); }), "store.exists");
  const std::string other = folder_.file("other");
  write(key_path(other), "");
  EXPECT_EQ(code_of([&] { create_store(other, world_); }), "store.exists");
  EXPECT_FALSE(fs::exists(other));
}

TEST_F(StoreFiles, AreMissedWhenTheyAreNotThere) {
  EXPECT_EQ(code_of([this] { Store(folder_.file("none"), world_); }), "store.missing");
  EXPECT_FALSE(fs::exists(folder_.file("none")));
  fs::remove(key_path(path_));
  EXPECT_EQ(open_code(), "store.key_missing");
}

TEST_F(StoreFiles, HaveAKeyThatNobodyElseMayRead) {
  struct stat status {};
  ASSERT_EQ(stat(key_path(path_).c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 07777, 0600u);
  for (const mode_t mode : {0640u, 0604u, 0660u, 0601u}) {
    ASSERT_EQ(chmod(key_path(path_).c_str(), mode), 0);
    EXPECT_EQ(open_code(), "store.key_unsafe") << mode;
  }
  ASSERT_EQ(chmod(key_path(path_).c_str(), 0600), 0);
  fs::rename(key_path(path_), folder_.file("elsewhere"));
  fs::create_symlink(folder_.file("elsewhere"), key_path(path_));
  EXPECT_EQ(open_code(), "store.key_unsafe");
}

TEST_F(StoreFiles, TellAnyChangedByteOfTheKey) {
  const std::string key = bytes_of(key_path(path_));
  ASSERT_GT(key.size(), 100u);
  for (std::size_t i = 0; i < key.size(); ++i) {
    std::string changed = key;
    changed[i] = static_cast<char>(changed[i] ^ 1);
    write(key_path(path_), changed);
    EXPECT_EQ(open_code(), "store.key_damaged") << i;
  }
  for (const std::string& changed : {key.substr(0, key.size() - 1), key + "\n", std::string()}) {
    write(key_path(path_), changed);
    EXPECT_EQ(open_code(), "store.key_damaged");
  }
}

TEST_F(StoreFiles, HaveOneWriterAtATime) {
  {
    const Store store(path_, world_);
    EXPECT_EQ(open_code(), "store.in_use");
  }
  EXPECT_EQ(open_code(), "");
}

TEST_F(StoreFiles, WaitForAWriterThatIsAboutToClose) {
  auto store = std::make_unique<Store>(path_, world_);
  std::thread closer([&store] {
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    store.reset();
  });
  EXPECT_EQ(code_of([this] { Store(path_, world_, 5000); }), "");
  closer.join();
}

TEST_F(StoreFiles, OfAnUnknownVersionStopTheProgramAndAreNotTouched) {
  for (const int version : {0, -1, 3, 99}) {
    { Database(path_, OpenMode::Write).run("PRAGMA user_version = " + std::to_string(version)); }
    const std::string before = bytes_of(path_);
    EXPECT_EQ(open_code(), "store.unknown_version") << version;
    EXPECT_EQ(code_of([this] { examine(path_, verifier_); }), "store.unknown_version");
    EXPECT_EQ(code_of([this] { back_up(path_, folder_.file("backup")); }), "store.unknown_version");
    EXPECT_EQ(bytes_of(path_), before);
  }
}

TEST_F(StoreFiles, OfOtherProgramsAreNoStores) {
  { Database(path_, OpenMode::Write).run("PRAGMA application_id = 1"); }
  EXPECT_EQ(open_code(), "store.not_a_store");
  write(path_, "");
  EXPECT_EQ(open_code(), "store.not_a_store");
  write(path_, std::string(5000, 'x'));
  EXPECT_EQ(open_code(), "store.damaged");
}

TEST_F(StoreFiles, WithOtherTablesAreDamaged) {
  { Database(path_, OpenMode::Write).run("CREATE TABLE extra(x)"); }
  EXPECT_EQ(open_code(), "store.damaged");
}

TEST_F(StoreFiles, OfVersionOneAreBroughtUpAfterACopy) {
  const std::string old = folder_.file("old");
  fs::copy(STEAMWORTHY_SOURCE_DIR "/tests/stores/version1.steamworthy", old);
  EXPECT_EQ(code_of([&] { examine(old, verifier_); }), "store.old_version");
  KeyFile::create(key_path(old), seed_of(7));
  {
    Store store(old, world_);
    EXPECT_EQ(store.log().read(0, 10).size(), 3u);
    store.log().append({draft_of("{}")});
    store.log().add_blob("new in version 2");
  }
  const Examination after = examine(old, verifier_);
  EXPECT_TRUE(after.is_sound()) << after.first_fault();
  EXPECT_EQ(after.report.verified, 4u);
  Database copy(old + ".before-version-2", OpenMode::Read);
  EXPECT_EQ(version_of(copy), 1);
  EXPECT_EQ(copy.whole("SELECT count(*) FROM fact"), 3);
}

TEST_F(StoreFiles, AreBackedUpWhileTheyAreWrittenTo) {
  Store store(path_, world_);
  store.log().append({draft_of("{\"n\":0}")});
  std::atomic<bool> stop = false;
  std::atomic<int> written = 1;
  std::thread writer([&] {
    while (!stop) {
      store.log().append({draft_of("{}"), draft_of("{}")});
      written += 2;
    }
  });
  for (int i = 0; i < 5; ++i) {
    const int before = written;
    const std::string copy = folder_.file("backup" + std::to_string(i));
    back_up(path_, copy);
    const Examination examination = examine(copy, verifier_);
    EXPECT_TRUE(examination.is_sound()) << examination.first_fault();
    EXPECT_GE(examination.report.facts, static_cast<std::uint64_t>(before));
    EXPECT_EQ(examination.report.facts % 2, 1u);  // whole groups only
  }
  stop = true;
  writer.join();
  EXPECT_EQ(code_of([this] { back_up(path_, folder_.file("backup0")); }), "store.exists");
}

TEST_F(StoreFiles, AreRestoredAsAnotherDevice) {
  record::DeviceId old_device;
  record::Scope plant;
  {
    Store store(path_, world_);
    old_device = store.log().device();
    plant = store.log().plant();
    store.log().append({draft_of("{\"n\":1}")});
    store.log().add_blob("a photo");
    back_up(path_, folder_.file("backup"));
    // Said after the backup: the restored store must not number on from there.
    store.log().append({draft_of("{\"n\":2}")});
  }
  const std::string restored = folder_.file("restored");
  restore(folder_.file("backup"), restored, world_);
  Store store(restored, world_);
  EXPECT_NE(store.log().device(), old_device);
  EXPECT_EQ(store.log().plant(), plant);
  EXPECT_EQ(store.log().read(0, 10).size(), 1u);
  EXPECT_EQ(store.log().blobs().size(), 1u);
  const auto receipt = store.log().append({draft_of("{\"n\":3}")})[0];
  EXPECT_EQ(receipt.name.device_seq, 1u);
  // What the old device said after the backup can still be taken in from the old file.
  Store old(path_, world_);
  std::vector<record::SealedFact> all;
  for (const StoredFact& fact : old.log().read(0, 10)) all.push_back(fact.sealed);
  for (const Received& received : store.log().receive(all)) {
    EXPECT_NE(received.how, Intake::Quarantined);
  }
  EXPECT_EQ(store.log().read(0, 10).size(), 3u);
  EXPECT_EQ(code_of([&] { restore(folder_.file("backup"), restored, world_); }), "store.exists");
}

TEST_F(StoreFiles, AreNotRestoredFromADamagedBackup) {
  {
    Store store(path_, world_);
    store.log().append({draft_of("{\"closure\":\"FW-A07\"}")});
  }
  const std::string copy = folder_.file("backup");
  back_up(path_, copy);
  std::string bytes = bytes_of(copy);
  const std::size_t at = bytes.find("FW-A07");
  ASSERT_NE(at, std::string::npos);
  bytes[at + 5] = '8';
  write(copy, bytes);
  EXPECT_EQ(code_of([&] { restore(copy, folder_.file("restored"), world_); }), "store.damaged");
  EXPECT_FALSE(fs::exists(folder_.file("restored")));
  EXPECT_FALSE(fs::exists(key_path(folder_.file("restored"))));
}

TEST_F(StoreFiles, OfVersionOneCanBeRestored) {
  const std::string restored = folder_.file("restored");
  restore(STEAMWORTHY_SOURCE_DIR "/tests/stores/version1.steamworthy", restored, world_);
  Store store(restored, world_);
  EXPECT_EQ(store.log().read(0, 10).size(), 3u);
}

}  // namespace
}  // namespace steamworthy::store
