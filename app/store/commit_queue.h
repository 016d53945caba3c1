// CommitQueue: many threads hand in work, one of them at a time does all that waits in one group.
//
// Whoever finds nobody at work becomes the leader: he takes everything that waits, his own too,
// does it as one transaction, and wakes the others. So one sync of the disk serves all who came
// while the one before it was under way, and a thread alone waits for nobody.
#pragma once

#include <condition_variable>
#include <exception>
#include <mutex>
#include <vector>

namespace steamworthy::store {

/// One thread's work. `fault` is set if it failed; the others of its group may have been done.
struct Job {
  virtual ~Job() = default;
  std::exception_ptr fault;
  bool done = false;
};

class CommitQueue {
 public:
  /// Runs `job` in a group by `do_group(const std::vector<Job*>&)`, which must mark what failed in
  /// the jobs and not throw. Throws the job's fault.
  template <class DoGroup>
  void run(Job& job, DoGroup&& do_group) {
    std::unique_lock lock(mutex_);
    waiting_.push_back(&job);
    changed_.wait(lock, [&] { return job.done || !led_; });
    if (!job.done) {
      led_ = true;
      std::vector<Job*> group;
      group.swap(waiting_);
      lock.unlock();
      do_group(group);
      lock.lock();
      for (Job* each : group) each->done = true;
      led_ = false;
      changed_.notify_all();
    }
    if (job.fault) std::rethrow_exception(job.fault);
  }

 private:
  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<Job*> waiting_;
  bool led_ = false;
};

}  // namespace steamworthy::store
