// Crew: the threads behind the loop. One reads, one writes, two do what is heavy.
//
// The writer is the only one that stores facts of closings; it takes all that waits at once, so
// that one sync of the disk serves many calls. Queues are bounded: who finds one full is told to
// come again, and nobody else is held.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

#include "server/call.h"

namespace steamworthy::server {

/// A queue of work for some threads. Work must not throw.
class Bench {
 public:
  Bench(int threads, std::size_t most_waiting);
  ~Bench();
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  /// False if too much waits already, or it was stopped.
  bool put(std::function<void()> work);
  /// Lets what waits be done, and ends the threads.
  void stop();

 private:
  void run();

  std::size_t most_waiting_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<std::function<void()>> waiting_;
  bool stopping_ = false;
  std::vector<std::thread> threads_;
};

/// The writer: work one by one, facts of many calls together.
class Writer {
 public:
  using TakeIn =
      std::function<std::vector<store::Received>(const std::vector<record::SealedFact>&)>;

  Writer(TakeIn take_in, std::size_t most_waiting);
  ~Writer();
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;

  using Finish = std::function<void(const std::vector<store::Received>&, const std::exception*)>;
  /// `finish` gets what became of these facts, or what was thrown; it must not throw. False if too
  /// much waits.
  bool put(std::vector<record::SealedFact> facts, Finish finish);
  /// Does `work` on the writer's thread and waits for it; throws what it throws. From the writer's
  /// own thread: at once.
  /// Throws   Refusal 503 server.busy if too much waits.
  void run(const std::function<void()>& work);
  void stop();

 private:
  struct Job {
    std::vector<record::SealedFact> facts;
    Finish finish;
    std::function<void()> work;  ///< instead of facts
  };
  void loop();
  void take(std::vector<Job>& jobs, std::size_t from, std::size_t to);

  TakeIn take_in_;
  std::size_t most_waiting_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<Job> waiting_;
  bool stopping_ = false;
  std::thread thread_;
};

}  // namespace steamworthy::server
