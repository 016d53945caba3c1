// Hub: who follows which closing, and what is newest there.
//
// An event tells of everything up to its number, so a follower who is slow needs only the newest:
// there is never more than one waiting for anybody. May be called from any thread.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "record/bytes.h"

namespace steamworthy::server {

/// What is new in a closing; its data as JSON in both unit systems.
struct News {
  std::int64_t intake_no = 0;
  std::string si;
  std::string us;
};

class Hub {
 public:
  /// More than this behind, and a page had better read everything anew.
  static constexpr std::int64_t too_old = 100'000;

  /// One follower. Destroying it ends it.
  class Following {
   public:
    /// The next event as text/event-stream; nothing if there is nothing new.
    std::optional<std::string> take();

   private:
    friend class Hub;
    Hub* hub_ = nullptr;
    record::Uuid closing_;
    std::int64_t told_ = 0;  ///< up to here
    bool us_units_ = false;
    bool resync_ = false;
    std::function<void()> wake_;

   public:
    Following() = default;
    ~Following();
    Following(const Following&) = delete;
    Following& operator=(const Following&) = delete;
  };

  /// `after`: what the follower has; nothing: it wants to know only what comes. `newest` is the
  /// last number of the closing. `wake` is called, from any thread and with a lock held, when there
  /// may be something to take.
  std::unique_ptr<Following> follow(const record::Uuid& closing, std::optional<std::int64_t> after,
                                    std::int64_t newest, bool us_units, std::function<void()> wake);

  /// Tells the followers of a closing.
  void publish(const record::Uuid& closing, News news);

  int followers() const;

 private:
  mutable std::mutex mutex_;
  std::map<record::Uuid, News> news_;
  std::multimap<record::Uuid, Following*> following_;
};

}  // namespace steamworthy::server
