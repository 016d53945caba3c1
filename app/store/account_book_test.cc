// account_book_test.cc: secrets, sessions and codes survive, end and cannot be used twice.
#include "store/account_book.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <fstream>

#include "base/error.h"
#include "store/fake_surroundings_test.h"
#include "store/secret.h"

namespace steamworthy::store {
namespace {

constexpr SecretCost cheap{std::size_t{8} << 10, 1};

record::DeviceId device(std::uint8_t number) {
  record::DeviceId id;
  id.bytes[0] = number;
  return id;
}

struct Book {
  TemporaryFolder folder;
  std::string path = folder.file("x.accounts");
  std::unique_ptr<AccountBook> book = std::make_unique<AccountBook>(path);
  void reopen() {
    book.reset();
    book = std::make_unique<AccountBook>(path);
  }
};

TEST(Secret, IsKnownByItsHashAndNoOtherIs) {
  const std::string hash = hash_secret("274913", cheap);
  EXPECT_EQ(hash.substr(0, 10), "$argon2id$");  // the form of RFC 9106's reference program
  EXPECT_TRUE(is_secret("274913", hash));
  EXPECT_FALSE(is_secret("274914", hash));
  EXPECT_FALSE(is_secret("", hash));
  EXPECT_FALSE(is_secret("274913", "no hash"));
  EXPECT_NE(hash_secret("274913", cheap), hash);  // a salt of its own each time
}

TEST(Secret, CostsWhatTheDesignSays) {
  const std::string hash = hash_secret("274913");
  EXPECT_NE(hash.find("$m=65536,t=2,p=1$"), std::string::npos) << hash;
}

TEST(Secret, TokensAndCodesHaveTheirLengthAndDiffer) {
  RealSurroundings world;
  EXPECT_EQ(new_token(world).size(), 64u);
  EXPECT_NE(new_token(world), new_token(world));
  EXPECT_EQ(new_code(world).size(), 8u);
  EXPECT_EQ(new_code(world).find_first_of("ILOU"), std::string::npos);
  EXPECT_FALSE(hash_token("a") == hash_token("b"));
}

TEST(AccountBook, KeepsWhatWasWrittenWhenItIsOpenedAgain) {
  Book b;
  b.book->set_secret("mara", {"pin", "hash 1"}, 5);
  b.book->set_secret("mara", {"pin", "hash 2"}, 6);
  b.book->set_secret("mara", {"badge", "hash 3"}, 6);
  b.book->set_failures("mara", {3, 77});
  b.book->add_session({"s1", hash_token("t1"), "mara", device(1), 10, 20});
  b.book->set_device_token(device(1), hash_token("d1"));
  b.reopen();
  ASSERT_EQ(b.book->secrets("mara").size(), 2u);
  EXPECT_EQ(b.book->secrets("mara")[1].hash, "hash 2");
  EXPECT_EQ(b.book->kinds_of_secret().size(), 2u);
  EXPECT_EQ(b.book->failures("mara").count, 3);
  EXPECT_EQ(b.book->failures("mara").locked_until_ms, 77);
  EXPECT_EQ(b.book->failures("ole").count, 0);
  ASSERT_EQ(b.book->sessions().size(), 1u);
  EXPECT_TRUE(b.book->sessions()[0].token == hash_token("t1"));
  EXPECT_EQ(b.book->sessions()[0].person, "mara");
  ASSERT_EQ(b.book->device_tokens().size(), 1u);
  EXPECT_TRUE(b.book->device_tokens()[0].first == hash_token("d1"));
}

TEST(AccountBook, APersonWhoLeavesHasNoSecretAndNoSessionButWasHere) {
  Book b;
  b.book->set_secret("mara", {"pin", "hash"}, 5);
  b.book->add_session({"s1", hash_token("t1"), "mara", device(1), 10, 20});
  b.book->forget_person("mara");
  EXPECT_TRUE(b.book->secrets("mara").empty());
  EXPECT_TRUE(b.book->sessions().empty());
  ASSERT_EQ(b.book->presences().size(), 1u);
  EXPECT_EQ(b.book->presences()[0].second, "mara");
}

TEST(AccountBook, ADeviceThatIsRevokedHasNoTokenAndNoSession) {
  Book b;
  b.book->set_device_token(device(1), hash_token("d1"));
  b.book->set_device_token(device(2), hash_token("d2"));
  b.book->add_session({"s1", hash_token("t1"), "mara", device(1), 10, 20});
  b.book->add_session({"s2", hash_token("t2"), "mara", device(2), 10, 20});
  b.book->forget_device(device(1));
  ASSERT_EQ(b.book->device_tokens().size(), 1u);
  ASSERT_EQ(b.book->sessions().size(), 1u);
  EXPECT_EQ(b.book->sessions()[0].id, "s2");
  b.book->end_session("s2");
  EXPECT_TRUE(b.book->sessions().empty());
}

TEST(AccountBook, ACodeIsGoodOnceAndForItsTime) {
  Book b;
  b.book->add_code(hash_token("C1"), "mara", 100);
  EXPECT_EQ(b.book->take_code(hash_token("C2"), 50).state, CodeState::Unknown);
  EXPECT_EQ(b.book->take_code(hash_token("C1"), 100).state, CodeState::Expired);
  const TakenCode taken = b.book->take_code(hash_token("C1"), 99);
  EXPECT_EQ(taken.state, CodeState::Good);
  EXPECT_EQ(taken.made_by, "mara");
  b.reopen();
  EXPECT_EQ(b.book->take_code(hash_token("C1"), 99).state, CodeState::Used);
  b.book->give_code_back(hash_token("C1"));
  EXPECT_EQ(b.book->take_code(hash_token("C1"), 99).state, CodeState::Good);
}

TEST(AccountBook, TakesAwayWhatHasExpired) {
  Book b;
  b.book->add_code(hash_token("C1"), "", 100);
  b.book->add_session({"s1", hash_token("t1"), "mara", device(1), 10, 20});
  b.book->add_session({"s2", hash_token("t2"), "mara", device(1), 10, 200});
  b.book->tidy(150);
  EXPECT_EQ(b.book->take_code(hash_token("C1"), 0).state, CodeState::Unknown);
  ASSERT_EQ(b.book->sessions().size(), 1u);
  EXPECT_EQ(b.book->sessions()[0].id, "s2");
}

TEST(AccountBook, IsReadableByNobodyElseAndRefusesAFileThatIs) {
  Book b;
  struct stat status {};
  ASSERT_EQ(::stat(b.path.c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777, 0600u);
  b.book.reset();
  ASSERT_EQ(::chmod(b.path.c_str(), 0640), 0);
  try {
    AccountBook again(b.path);
    ADD_FAILURE() << "opened";
  } catch (const StoreError& error) {
    EXPECT_EQ(error.code(), "store.key_unsafe");
  }
}

TEST(AccountBook, RefusesAFileThatIsSomethingElse) {
  TemporaryFolder folder;
  const std::string path = folder.file("x.accounts");
  {
    Database other(path, OpenMode::Create);
    other.run("CREATE TABLE t(x); PRAGMA application_id = 7;");
  }
  ASSERT_EQ(::chmod(path.c_str(), 0600), 0);
  try {
    AccountBook book(path);
    ADD_FAILURE() << "opened";
  } catch (const StoreError& error) {
    EXPECT_EQ(error.code(), "store.not_a_store");
  }
}

}  // namespace
}  // namespace steamworthy::store
