// Random walks of 100,000 steps on the demo boiler: after each step a clearance may be given
// exactly when a second, simple account of what was told says so.
//
// The account knows nothing of folds: a set of what is wrong, kept by hand for each move.
#include <gtest/gtest.h>

#include <random>
#include <set>

#include "units/makers.h"
#include "wire/demo_story_test.h"

namespace steamworthy::wire {
namespace {

using namespace facts;  // the bodies

constexpr int steps = 100'000;  // of each walk

/// The fold of the story up to where `ends` first says so.
closing::Fold fold_up_to(const std::function<bool(const Fact&)>& ends, std::int64_t& now_ms) {
  const DemoStory story([](const auto&, const auto&, auto) {}, [](const auto&) {});
  closing::Fold folded(demo_terms());
  for (const Fact& fact : story.facts()) {
    if (ends(fact)) break;
    now_ms = fact.recorded_at_ms;
    folded.add(fact);
  }
  return folded;
}

class Walk {
 public:
  Walk(closing::Fold folded, std::int64_t now_ms, unsigned seed)
      : folded_(std::move(folded)), now_ms_(now_ms), random_(seed) {}

  unsigned below(unsigned n) { return static_cast<unsigned>(random_() % n); }
  void tell(Body body) {
    Fact fact;
    fact.closing = "B1-2026-11";
    fact.device = "node";
    fact.device_seq = static_cast<int>(folded_.size()) + 1;
    fact.id = std::to_string(fact.device_seq);
    fact.person = "R. Lind";
    fact.happened_at_ms = fact.recorded_at_ms = now_ms_;
    fact.body = std::move(body);
    folded_.add(std::move(fact));
  }
  void wrong(const std::string& what) { wrong_.insert(what); }
  void right(const std::string& what) { wrong_.erase(what); }
  bool is_right() const { return wrong_.empty(); }
  const std::set<std::string>& all_wrong() const { return wrong_; }
  bool may(const closing::Clearance& asked) const {
    return closing::outstanding(folded_.state(), folded_.terms(), asked, now_ms_).empty();
  }
  /// Two people count.
  void count(const std::string& space) {
    tell(SpaceCounted{space, "J. Moe", 0, 0, true, true});
    counted_ms_[space] = now_ms_;
    right("count " + space);
  }
  void wait(int minutes) {
    now_ms_ += minutes * 60'000;
    for (const auto& [space, at] : counted_ms_) {
      if (now_ms_ - at > 20 * 60'000) wrong("count " + space);
    }
  }

 private:
  closing::Fold folded_;
  std::int64_t now_ms_;
  std::mt19937 random_;
  std::set<std::string> wrong_;
  std::map<std::string, std::int64_t> counted_ms_;
};

/// A pair of moves: one that makes it wrong, one that makes it right.
struct Pair {
  const char* name;
  Body spoils;
  Body mends;
};

TEST(DemoWalk, PressureMayBeRaisedExactlyWhenNothingIsWrong) {
  std::int64_t now_ms = 0;
  Walk walk(fold_up_to(
                [](const Fact& fact) {
                  const auto* given = std::get_if<ClearanceGiven>(&fact.body);
                  return given != nullptr && given->step == StepName::RaisePressure;
                },
                now_ms),
            now_ms, 1);
  const closing::Clearance raise{StepName::RaisePressure, "", units::bars_gauge(45)};
  const Measured<units::Temperature> cold{units::celsius(10), ""};
  const Measured<units::Temperature> good{units::celsius(25), ""};
  const std::vector<Pair> pairs = {
      {"gauge", GaugeRemoved{{"TG-2"}}, GaugeFitted{{"TG-2"}}},
      {"gag", TemporaryOff{{"T-1"}}, TemporaryOn{"T-1", "SV-1"}},
      {"glass", MountingPutBack{{"GG-1"}}, MountingIsolated{{"GG-1"}}},
      {"hangers", HangersFreed{}, HangersPinned{}},
      {"pump", PostLeft{Post::Pump}, PostTaken{Post::Pump, "J. Moe"}},
      {"contact", ContactLost{Post::Pump}, ContactRegained{Post::Pump}},
      {"metal", TemperatureTaken{"TH-2", Thing::Metal, cold},
       TemperatureTaken{"TH-2", Thing::Metal, good}},
      {"vent", VentOpened{{"VT-1"}}, VentShut{{"VT-1"}}},
      {"plate", ClosureTouched{"FH-A01", TouchedHow::Slackened}, ClosureNippedUp{{"FH-A01"}}}};
  walk.count("SP-FU");
  walk.count("SP-GS");
  int clear = 0;
  for (int step = 0; step < steps; ++step) {
    const unsigned dice = walk.below(40);
    if (dice < 14) {
      const Pair& pair = pairs[walk.below(static_cast<unsigned>(pairs.size()))];
      // Rather mended than spoilt, so that the walk comes back to where it is clear.
      const bool spoil = walk.below(4) == 0;
      walk.tell(spoil ? pair.spoils : pair.mends);
      spoil ? walk.wrong(pair.name) : walk.right(pair.name);
    } else if (dice < 16) {
      walk.tell(TallyIn{{"SP-FU", "T. Berg"}});
      for (const char* what : {"inside", "clear", "count SP-FU"}) walk.wrong(what);
    } else if (dice < 22) {
      walk.tell(TallyOut{{"SP-FU", "T. Berg"}});
      walk.right("inside");
    } else if (dice < 30) {
      walk.count(walk.below(2) == 0 ? "SP-FU" : "SP-GS");
    } else if (dice < 34) {
      walk.tell(PeopleClear{});
      walk.right("clear");
    } else if (dice < 37) {
      walk.tell(StopWordChecked{"avast"});
      walk.right("stop word");
    } else if (dice < 38) {
      walk.tell(ShiftHandedOver{"R. Lind", "K. Aas"});
      for (const char* what : {"clear", "stop word", "count SP-FU", "count SP-GS"}) {
        walk.wrong(what);
      }
    } else {
      walk.wait(3);
    }
    ASSERT_EQ(walk.may(raise), walk.is_right())
        << "step " << step << ": " << (walk.is_right() ? "nothing" : *walk.all_wrong().begin())
        << " is wrong";
    clear += walk.is_right() ? 1 : 0;
  }
  EXPECT_GT(clear, steps / 200);  // the walk was there often enough
}

TEST(DemoWalk, TheLastWayInMayBeClosedExactlyWhenNobodyCanBeInside) {
  std::int64_t now_ms = 0;
  Walk walk(
      fold_up_to([](const Fact& fact) { return std::holds_alternative<SpaceCounted>(fact.body); },
                 now_ms),
      now_ms, 2);
  const closing::Clearance close{StepName::CloseLastWayIn, "SP-SD", std::nullopt};
  walk.wrong("count SP-SD");
  int clear = 0;
  for (int step = 0; step < steps; ++step) {
    const unsigned dice = walk.below(20);
    const std::string who = walk.below(2) == 0 ? "T. Berg" : "J. Moe";
    const std::string tool = walk.below(2) == 0 ? "lamp 3" : "rag 7";
    if (dice < 2) {
      walk.tell(TallyIn{{"SP-SD", who}});
      walk.wrong(who);
      walk.wrong("count SP-SD");
    } else if (dice < 6) {
      walk.tell(TallyOut{{"SP-SD", who}});
      walk.right(who);
    } else if (dice < 8) {
      walk.tell(ToolIn{{"SP-SD", tool}});
      walk.wrong(tool);
      walk.wrong("count SP-SD");
    } else if (dice < 12) {
      walk.tell(ToolOut{{"SP-SD", tool}});
      walk.right(tool);
    } else if (dice < 17) {
      walk.count("SP-SD");
    } else if (dice < 18) {
      walk.tell(ShiftHandedOver{"R. Lind", "K. Aas"});
      walk.wrong("count SP-SD");
    } else {
      walk.wait(5);
    }
    ASSERT_EQ(walk.may(close), walk.is_right())
        << "step " << step << ": " << (walk.is_right() ? "nothing" : *walk.all_wrong().begin())
        << " is wrong";
    clear += walk.is_right() ? 1 : 0;
  }
  EXPECT_GT(clear, steps / 200);
}

}  // namespace
}  // namespace steamworthy::wire
