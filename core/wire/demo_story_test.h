// For tests and papers: closings of the invented plant's watertube boiler, as facts with a story: a
// whole one, and one in the middle of its work. examples/demo-closing.jsonl and
// examples/demo-mid-work.jsonl are written from them (demo_closing_test.cc).
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "closing/fold.h"
#include "closing/outstanding.h"
#include "facts/fact.h"
#include "facts/kinds_closing.h"

namespace steamworthy::wire {

/// The people of the story with their roles, as the plant's feed tells them.
std::vector<facts::PersonEnrolled> demo_people();

/// The site's limits, as the plant's feed tells them.
facts::SiteLimitsSet demo_limits();

/// The site's limits and the people of the story.
closing::Terms demo_terms();

/// How far a story goes: to its end, or until half of the headers are closed.
enum class DemoEnd { TakenOver, MidWork };

/// Tells a story. Every clearance is given only if nothing is outstanding for it; one that is not
/// clear is reported to `not_clear` with what is in its way. `at_chapter` is called as each ends.
class DemoStory {
 public:
  using AtChapter = std::function<void(const std::string& chapter, const closing::Fold& fold,
                                       std::int64_t now_ms)>;
  using NotClear = std::function<void(const std::string& what)>;
  DemoStory(AtChapter at_chapter, NotClear not_clear, DemoEnd end = DemoEnd::TakenOver);

  const std::vector<facts::Fact>& facts() const { return facts_; }

 private:
  // The chapters, in their order.
  void shut_down_and_open();
  void work_inside();
  void close_up();
  void close_up_half();  ///< instead of all that follows
  void fill();
  void first_test();
  void stop_for_the_night();
  void repair();
  void second_test();
  void hand_back();

  void say(facts::Body body, const std::string& note = "");
  void give(facts::StepName step, const std::string& subject = "", double up_to_bar = 0.0);
  void count(const std::string& space);
  void set_plate(const std::string& closure);
  void ready_at_the_pump(const std::string& pump_hand);
  void raise_and_hold(bool met);
  void look_everywhere();
  void pass(int minutes) { now_ms_ += minutes * 60'000; }
  void end(const std::string& chapter);

  std::string closing_;
  AtChapter at_chapter_;
  NotClear not_clear_;
  closing::Fold fold_;
  std::vector<facts::Fact> facts_;
  std::string person_ = "R. Lind";
  std::string second_ = "J. Moe";
  std::int64_t now_ms_;
};

}  // namespace steamworthy::wire
