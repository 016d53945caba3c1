#include "server/crew.h"

#include <algorithm>
#include <exception>
#include <future>
#include <iterator>

namespace steamworthy::server {

Bench::Bench(int threads, std::size_t most_waiting) : most_waiting_(most_waiting) {
  for (int i = 0; i < threads; ++i) threads_.emplace_back([this] { run(); });
}

Bench::~Bench() { stop(); }

bool Bench::put(std::function<void()> work) {
  {
    const std::lock_guard lock(mutex_);
    if (stopping_ || waiting_.size() >= most_waiting_) return false;
    waiting_.push_back(std::move(work));
  }
  changed_.notify_one();
  return true;
}

void Bench::stop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  changed_.notify_all();
  for (std::thread& thread : threads_) {
    if (thread.joinable()) thread.join();
  }
}

void Bench::run() {
  for (;;) {
    std::function<void()> work;
    {
      std::unique_lock lock(mutex_);
      changed_.wait(lock, [this] { return stopping_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      work = std::move(waiting_.front());
      waiting_.pop_front();
    }
    work();
  }
}

Writer::Writer(TakeIn take_in, std::size_t most_waiting)
    : take_in_(std::move(take_in)), most_waiting_(most_waiting), thread_([this] { loop(); }) {}

Writer::~Writer() { stop(); }

bool Writer::put(std::vector<record::SealedFact> facts, Finish finish) {
  {
    const std::lock_guard lock(mutex_);
    if (stopping_ || waiting_.size() >= most_waiting_) return false;
    waiting_.push_back({std::move(facts), std::move(finish), {}});
  }
  changed_.notify_one();
  return true;
}

void Writer::run(const std::function<void()>& work) {
  if (std::this_thread::get_id() == thread_.get_id()) {
    work();
    return;
  }
  std::packaged_task<void()> task(work);
  std::future<void> done = task.get_future();
  {
    const std::lock_guard lock(mutex_);
    if (stopping_ || waiting_.size() >= most_waiting_) {
      throw Refusal(503, "server.busy", "too much waits to be stored; try again");
    }
    waiting_.push_back({{}, {}, [&task] { task(); }});
  }
  changed_.notify_one();
  done.get();
}

void Writer::stop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  changed_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Writer::take(std::vector<Job>& jobs, std::size_t from, std::size_t to) {
  std::vector<record::SealedFact> facts;
  std::vector<std::ptrdiff_t> counts;
  for (std::size_t i = from; i < to; ++i) {
    counts.push_back(static_cast<std::ptrdiff_t>(jobs[i].facts.size()));
    std::move(jobs[i].facts.begin(), jobs[i].facts.end(), std::back_inserter(facts));
  }
  std::vector<store::Received> received;
  try {
    received = take_in_(facts);
  } catch (const std::exception& error) {
    for (std::size_t i = from; i < to; ++i) jobs[i].finish({}, &error);
    return;
  }
  auto at = received.begin();
  for (std::size_t i = from; i < to; ++i) {
    const auto end = at + counts[i - from];
    jobs[i].finish({at, end}, nullptr);
    at = end;
  }
}

void Writer::loop() {
  for (;;) {
    std::vector<Job> jobs;
    {
      std::unique_lock lock(mutex_);
      changed_.wait(lock, [this] { return stopping_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      jobs.swap(waiting_);
    }
    for (std::size_t i = 0; i < jobs.size();) {
      if (jobs[i].work) {
        jobs[i++].work();
        continue;
      }
      const std::size_t from = i;
      while (i < jobs.size() && !jobs[i].work) ++i;
      take(jobs, from, i);
    }
  }
}

}  // namespace steamworthy::server
