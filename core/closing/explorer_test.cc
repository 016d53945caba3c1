// The engine of explore_test.h.
#include <algorithm>
#include <unordered_set>

#include "closing/apply.h"
#include "closing/explore_test.h"
#include "closing/fingerprint_test.h"
#include "closing/rules_test.h"

namespace steamworthy::closing {
namespace {

using facts::Fact;

/// Where every sequence of moves begins.
struct Start {
  std::vector<Fact> facts;
  State state;
  Feeds feeds;
  int a_head = 0;
  int b_head = 0;
  std::int64_t now_ms = 0;
};

/// One sequence of moves as it goes.
struct Run {
  std::vector<Fact> told;  ///< arrived, in the order of arrival
  std::optional<Fact> held;
  std::size_t held_move = 0;
  State state;
  int a_head = 0;
  int b_head = 0;     ///< of what B made
  int b_arrived = 0;  ///< of B's, without a gap
  int b_sees = 0;     ///< of A's
  std::int64_t now_ms = 0;
};

class Explorer {
 public:
  Explorer(const Scenario& scenario, const Terms& terms) : scenario_(scenario), terms_(terms) {
    Story story;
    scenario.before(story);
    story.from("B").say(facts::DeviceReported{});
    start_.facts = story.facts;
    start_.state = fold(story.facts, terms);
    start_.now_ms = story.teller.now_ms;
    start_.feeds.number_of("A");
    start_.feeds.number_of("B");
    for (const Fact& fact : story.facts) {
      (fact.device == "A" ? start_.a_head : start_.b_head) = fact.device_seq;
    }
    all_ = start_.facts;
    past_of_start_.emplace(start_.facts);
  }

  Explored to(int depth) {
    Explored result;
    std::unordered_set<std::uint64_t> seen;
    std::vector<std::vector<std::uint8_t>> frontier = {{}};
    const Run first = begin();
    seen.insert(mark(first));
    result.broken = judge(first, {});
    for (int at = 0; at < depth && !result.broken; ++at) {
      std::vector<std::vector<std::uint8_t>> next;
      for (const auto& moves : frontier) {
        const Run parent = play(moves);
        for (std::size_t m = 0; m < scenario_.moves.size() && !result.broken; ++m) {
          Run child = parent;
          if (!make(child, m)) continue;
          auto path = moves;
          path.push_back(static_cast<std::uint8_t>(m));
          // Rules are about what was told: two ways to one state may differ in that, so each move
          // is judged, though only a new state is gone on from.
          result.broken = judge(child, path);
          if (seen.insert(mark(child)).second) next.push_back(std::move(path));
        }
      }
      frontier = std::move(next);
      if (!result.broken) result.depth = at + 1;
      if (frontier.empty()) break;
    }
    result.states = seen.size();
    return result;
  }

 private:
  Run begin() const {
    Run run;
    run.state = start_.state;
    run.a_head = run.b_sees = start_.a_head;
    run.b_head = run.b_arrived = start_.b_head;
    run.now_ms = start_.now_ms;
    return run;
  }

  Run play(const std::vector<std::uint8_t>& moves) {
    Run run = begin();
    for (const std::uint8_t m : moves) make(run, m);
    return run;
  }

  static Fact fact_of(const Run& run, const std::string& device, int device_seq, int sees,
                      const std::string& person, facts::Body body) {
    Fact fact;
    fact.closing = "C";
    fact.device = device;
    fact.device_seq = device_seq;
    fact.id = device + std::to_string(device_seq);
    fact.person = person;
    fact.seen = {{device == "A" ? "B" : "A", sees}};
    fact.happened_at_ms = fact.recorded_at_ms = run.now_ms;
    fact.body = std::move(body);
    return fact;
  }

  void tell_by_a(Run& run, const std::string& person, facts::Body body) {
    arrive(run, fact_of(run, "A", ++run.a_head, run.b_arrived, person, std::move(body)));
  }
  Fact made_by_b(Run& run, const std::string& person, facts::Body body) {
    return fact_of(run, "B", ++run.b_head, run.b_sees, person, std::move(body));
  }

  /// Whether the move can be made.
  bool make(Run& run, std::size_t m) {
    const Move& move = scenario_.moves[m];
    switch (move.kind) {
      case Move::Kind::Tell:
        tell_by_a(run, move.person, move.body);
        return true;
      case Move::Kind::Give: {
        const auto& body = std::get<facts::ClearanceGiven>(move.body);
        Clearance asked{body.step, body.subject, std::nullopt};
        if (body.up_to) asked.up_to = body.up_to->value;
        if (!outstanding(run.state, terms_, asked, run.now_ms).empty()) return false;
        tell_by_a(run, move.person, move.body);
        return true;
      }
      case Move::Kind::TellLate:
        arrive(run, made_by_b(run, move.person, move.body));
        return true;
      case Move::Kind::HoldBack:
        if (run.held) return false;
        run.held = made_by_b(run, move.person, move.body);
        run.held_move = m + 1;
        return true;
      case Move::Kind::Arrive:
        return release(run);
      case Move::Kind::Sync:
        release(run);
        run.b_sees = run.a_head;
        arrive(run, made_by_b(run, "P", facts::DeviceReported{}));
        return true;
      case Move::Kind::Wait:
        run.now_ms += move.minutes * 60'000;
        return true;
    }
    return false;
  }

  bool release(Run& run) {
    if (!run.held) return false;
    Fact fact = std::move(*run.held);
    run.held.reset();
    run.held_move = 0;
    arrive(run, std::move(fact));
    return true;
  }

  void arrive(Run& run, Fact fact) {
    run.told.push_back(std::move(fact));
    if (!run.held) {
      run.b_arrived = run.b_head;
    } else {
      run.b_arrived = run.held->device_seq - 1;
    }
    std::vector<Entry> entries;
    for (const Fact& one : run.told) entries.push_back(entry_of(one, start_.feeds));
    const auto before = [&](const Entry& a, const Entry& b) {
      return stands_before(a, b, start_.feeds);
    };
    const Entry last = entries.back();
    const bool is_last = std::all_of(entries.begin(), entries.end() - 1,
                                     [&](const Entry& one) { return before(one, last); });
    if (is_last) {
      apply(run.state, {last, start_.feeds, terms_});
      return;
    }
    run.state = start_.state;
    std::sort(entries.begin(), entries.end(), before);
    for (const Entry& one : entries) apply(run.state, {one, start_.feeds, terms_});
  }

  std::uint64_t mark(const Run& run) const {
    std::vector<Knowledge> knowers = {{{"A", run.a_head}, {"B", run.b_arrived}},
                                      {{"A", run.b_sees}, {"B", run.b_head}}};
    if (run.held) {
      knowers.push_back({{"A", run.held->seen[0].device_seq}, {"B", run.held->device_seq}});
    }
    return fingerprint(run.state, knowers, run.now_ms) + run.held_move * 0x9e3779b97f4a7c15ULL;
  }

  std::optional<std::string> judge(const Run& run, const std::vector<std::uint8_t>& path) {
    all_.resize(start_.facts.size());
    all_.insert(all_.end(), run.told.begin(), run.told.end());
    const Past past(all_, *past_of_start_);
    for (const Clearance& asked : scenario_.asked) {
      if (!outstanding(run.state, terms_, asked, run.now_ms).empty()) continue;
      if (auto rule = violated(past, asked, run.now_ms)) return spelled(*rule, path);
    }
    for (const Standing& one : standing(run.state, terms_, run.now_ms)) {
      if (one.lapsed) continue;
      if (auto rule = wrongly_standing(past, one.given)) return spelled(*rule, path);
    }
    if (auto rule = without_alarm(past, run.state)) return spelled(*rule, path);
    // Now and then: the state is that of a fold of everything from the beginning.
    if (++judged_ % 997 == 0 && !(fold(all_, terms_) == run.state)) {
      return spelled("the fold from the beginning differs", path);
    }
    return std::nullopt;
  }

  std::string spelled(std::string rule, const std::vector<std::uint8_t>& path) const {
    for (const std::uint8_t m : path) {
      const Move& move = scenario_.moves[m];
      static const char* const kinds[] = {"", "late ", "hold back ", "arrive", "sync", "wait", ""};
      rule += "; " + std::string(kinds[static_cast<int>(move.kind)]);
      if (!std::holds_alternative<facts::Unread>(move.body)) {
        rule += std::string(facts::kind_of(move.body).token) + "#" + std::to_string(m);
      }
    }
    return rule;
  }

  const Scenario& scenario_;
  const Terms& terms_;
  Start start_;
  std::vector<Fact> all_;
  std::optional<Past> past_of_start_;
  std::size_t judged_ = 0;
};

}  // namespace

Explored explore(const Scenario& scenario, const Terms& terms, int depth) {
  return Explorer(scenario, terms).to(depth);
}

}  // namespace steamworthy::closing
