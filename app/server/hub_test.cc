// hub_test.cc, also of crew.h: followers get the newest once; work waits in order and in bounds.
#include "server/hub.h"

#include <gtest/gtest.h>

#include <atomic>
#include <future>

#include "server/crew.h"

namespace steamworthy::server {
namespace {

record::Uuid closing(std::uint8_t number) {
  record::Uuid id;
  id.bytes[0] = number;
  return id;
}

TEST(Hub, TellsAFollowerOfWhatCameSinceAndJoinsIt) {
  Hub hub;
  int woken = 0;
  const auto one = hub.follow(closing(1), 10, 10, false, [&] { ++woken; });
  const auto other = hub.follow(closing(2), 10, 10, false, [&] { ADD_FAILURE(); });
  EXPECT_EQ(hub.followers(), 2);
  EXPECT_EQ(one->take(), std::nullopt);
  hub.publish(closing(1), {11, "{\"a\":11}", "{\"us\":11}"});
  hub.publish(closing(1), {12, "{\"a\":12}", "{\"us\":12}"});
  EXPECT_EQ(woken, 2);
  EXPECT_EQ(one->take(), "id: 12\nevent: facts\ndata: {\"a\":12}\n\n");
  EXPECT_EQ(one->take(), std::nullopt);
  EXPECT_EQ(other->take(), std::nullopt);
  const auto us = hub.follow(closing(1), 11, 12, true, [] {});
  EXPECT_EQ(us->take(), "id: 12\nevent: facts\ndata: {\"us\":12}\n\n");
}

TEST(Hub, TellsToReadAnewWhoIsTooFarBehindOrAhead) {
  Hub hub;
  hub.publish(closing(1), {Hub::too_old + 5, "{}", "{}"});
  for (const std::int64_t after : {std::int64_t{4}, Hub::too_old + 6}) {
    const auto one = hub.follow(closing(1), after, Hub::too_old + 5, false, [] {});
    EXPECT_EQ(one->take(), "id: 100005\nevent: resync\ndata: {\"intake_no\":100005}\n\n") << after;
    EXPECT_EQ(one->take(), std::nullopt);
  }
  // Nothing was published of this one since the program began.
  const auto fresh = hub.follow(closing(2), 3, 7, false, [] {});
  EXPECT_EQ(fresh->take(), "id: 7\nevent: resync\ndata: {\"intake_no\":7}\n\n");
}

TEST(Hub, ForgetsWhoHasGone) {
  Hub hub;
  {
    const auto one = hub.follow(closing(1), {}, 10, false, [] { ADD_FAILURE(); });
  }
  hub.publish(closing(1), {11, "{}", "{}"});
  EXPECT_EQ(hub.followers(), 0);
}

TEST(Bench, RefusesWorkWhenTooMuchWaitsAndDoesWhatWaitedWhenStopped) {
  std::atomic<int> done = 0;
  std::promise<void> go;
  std::promise<void> begun;
  Bench bench(1, 2);
  EXPECT_TRUE(bench.put([&] {
    begun.set_value();
    go.get_future().wait();
    ++done;
  }));
  begun.get_future().wait();
  EXPECT_TRUE(bench.put([&] { ++done; }));
  EXPECT_TRUE(bench.put([&] { ++done; }));
  EXPECT_FALSE(bench.put([&] { ++done; }));
  go.set_value();
  bench.stop();
  EXPECT_EQ(done, 3);
  EXPECT_FALSE(bench.put([&] { ++done; }));
}

TEST(Writer, TakesWhatWaitsAtOnceAndGivesEachItsOwn) {
  std::promise<void> go;
  std::promise<void> begun;
  std::vector<std::size_t> groups;
  std::int64_t number = 0;
  Writer writer(
      [&](const std::vector<record::SealedFact>& facts) {
        groups.push_back(facts.size());
        std::vector<store::Received> received;
        for (std::size_t i = 0; i < facts.size(); ++i) {
          received.push_back({store::Intake::Stored, ++number});
        }
        return received;
      },
      10);
  std::thread other([&] {
    writer.run([&] {
      begun.set_value();
      go.get_future().wait();
    });
  });
  begun.get_future().wait();
  std::vector<std::int64_t> first;
  for (const std::size_t count : {2u, 1u, 3u}) {
    EXPECT_TRUE(writer.put(std::vector<record::SealedFact>(count),
                           [&first, count](const auto& received, const std::exception* error) {
                             EXPECT_EQ(error, nullptr);
                             EXPECT_EQ(received.size(), count);
                             first.push_back(received.front().intake_no);
                           }));
  }
  go.set_value();
  other.join();
  writer.stop();
  EXPECT_EQ(groups, std::vector<std::size_t>{6});
  EXPECT_EQ(first, (std::vector<std::int64_t>{1, 3, 4}));
}

TEST(Writer, TellsAllOfAGroupThatItFailed) {
  Writer writer(
      [](const auto&) -> std::vector<store::Received> { throw StoreError("store.full", "full"); },
      10);
  std::promise<std::string> code;
  EXPECT_TRUE(writer.put({record::SealedFact{}}, [&](const auto&, const std::exception* error) {
    code.set_value(dynamic_cast<const Error&>(*error).code());
  }));
  EXPECT_EQ(code.get_future().get(), "store.full");
  EXPECT_THROW(writer.run([] { throw OutOfRange("server.fault", "x"); }), OutOfRange);
}

}  // namespace
}  // namespace steamworthy::server
