// Checks service/closing_service.h and closing_book.h on a log in memory: what is kept in memory is
// what a book made anew says; clearances; alarms; the plant's feed.
#include "service/closing_service.h"

#include <gtest/gtest.h>

#include "closing/world_test.h"
#include "service/log_service.h"
#include "store/memory_fact_log_test.h"
#include "wire/fact_body.h"
#include "words/words.h"

namespace steamworthy::service {
namespace {

using namespace facts;
using closing::Clearance;
using closing::Story;

constexpr const char* description = "00";  ///< as the small plant's story pins it

class Node : public testing::Test {
 protected:
  Node() : signer_(store::seed_of(1)), log_(signer_, verifier_, world_), book_(make_book()) {
    plant_says(SiteLimitsSet{
        minutes(15), minutes(15), closing::measured(units::celsius(50)), {}, {}, {}, true, ""});
    for (const PersonEnrolled& one :
         {PersonEnrolled{"L", "Lead", {"lead_hand"}}, PersonEnrolled{"E", "Engineer", {"engineer"}},
          PersonEnrolled{"Q", "Second", {"hand"}}, PersonEnrolled{"W", "Watch", {"watch_engineer"}},
          PersonEnrolled{"P", "Hand", {"hand"}}}) {
      plant_says(one);
    }
  }

  static std::optional<Measured<units::Duration>> minutes(int n) {
    return Measured<units::Duration>{units::minutes(n), ""};
  }

  ClosingBook make_book() {
    return ClosingBook(log_.plant(), [](const std::string& sha256) {
      return sha256 == description ? std::make_shared<boiler::Boiler>(closing::small_boiler())
                                   : nullptr;
    });
  }

  void plant_says(const Body& body) {
    append(log_, book_, {draft_of(log_.plant(), "E", body, world_.now_ms(), 0)}, world_.now_ms());
  }

  void says(const std::string& person, const Body& body) {
    append(log_, book_, {draft_of(scope_, person, body, world_.now_ms(), 60)}, world_.now_ms());
  }

  /// The facts of a story, each by this node.
  void tell(const Story& story) {
    for (const Fact& fact : story.facts) {
      // The one device of the story is this one.
      const bool joins = std::holds_alternative<DeviceJoined>(fact.body);
      says(fact.person, joins ? Body(DeviceJoined{{hex(log_.device())}}) : fact.body);
    }
  }

  Clearing ask(StepName step, const std::string& subject = "", const std::string& person = "L",
               const std::string& second = "Q") {
    return give_clearance(log_, book_, scope_, {{step, subject, std::nullopt}, person, second, 60},
                          world_.now_ms());
  }

  const Ledger& ledger() const { return book_.ledger(scope_); }

  std::vector<std::string> kinds() const {
    std::vector<std::string> kinds;
    for (const wire::TakenIn& one : ledger().facts_after(0, 10'000)) {
      kinds.emplace_back(kind_of(one.fact->body).token);
    }
    return kinds;
  }

  std::string code_of(const std::function<void()>& what) {
    try {
      what();
    } catch (const BadInput& error) {
      return error.problems().front().code;
    }
    return "";
  }

  store::FakeSurroundings world_;
  store::Ed25519Signer signer_;
  store::Ed25519Verifier verifier_;
  store::MemoryFactLog log_;
  ClosingBook book_;
  record::Scope scope_ = store::test_closing();
};

Story opened() {
  Story story;
  tell_opened(story);
  return story;
}

TEST_F(Node, ABookMadeAnewSaysTheSameAsOneKeptUp) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  tell_closed(story);
  tell_filled(story);
  tell_ready_to_raise(story);
  tell(story);
  plant_says(SiteLimitsSet{minutes(30), minutes(30), {}, {}, {}, {}, false, "changed"});
  says("L", RemarkMade{"after that"});
  ClosingBook anew = make_book();
  anew.catch_up(log_);
  EXPECT_EQ(anew.ledger(scope_).state(), ledger().state());
  EXPECT_EQ(anew.ledger(scope_).view(0).since_ms, ledger().view(0).since_ms);
  EXPECT_EQ(anew.plant(), book_.plant());
  EXPECT_EQ(anew.intake_no(), book_.intake_no());
  EXPECT_EQ(ledger().terms().site().air_minutes, 30);
  EXPECT_EQ(ledger().view(0).utc_offset_min, 60);
  // And as folded at once from all that the log holds.
  std::vector<Fact> all;
  for (const wire::TakenIn& one : ledger().facts_after(0, 10'000)) all.push_back(*one.fact);
  EXPECT_EQ(closing::fold(all, ledger().terms()), ledger().state());
  EXPECT_GT(all.size(), story.facts.size());
}

TEST_F(Node, SinceIsWhenTheStageChangedLast) {
  tell(opened());
  const std::int64_t shut_down = ledger().view(0).since_ms;
  says("L", ClosureOpened{{"M1"}});
  const std::int64_t opened_at = ledger().facts_after(0, 10'000).back().fact->happened_at_ms;
  says("L", RemarkMade{"nothing"});
  EXPECT_GT(opened_at, shut_down);
  EXPECT_EQ(ledger().view(0).since_ms, opened_at);
  EXPECT_EQ(ledger().fold().stage(), closing::Stage::Opened);
}

TEST_F(Node, AClosingWhoseDescriptionIsNotToHandIsNotDescribed) {
  says("L", ClosingStarted{"B", "11"});
  EXPECT_FALSE(ledger().is_described());
  EXPECT_TRUE(ledger().terms().layout().spaces.empty());
  EXPECT_THROW(book_.ledger(store::test_closing(2)), NotFound);
}

TEST_F(Node, AClearanceIsRefusedWithWhatIsOutstandingAndNothingIsStored) {
  says("L", ClosingStarted{"B", description});
  const std::size_t before = kinds().size();
  const Clearing refused = ask(StepName::Open);
  EXPECT_FALSE(refused.is_given());
  EXPECT_EQ(refused.outstanding.front().check, closing::Check::S1Pressure);
  EXPECT_TRUE(refused.receipts.empty());
  EXPECT_EQ(kinds().size(), before);
}

TEST_F(Node, AClearanceIsAskedForAndGivenUnderTheNodesFeed) {
  tell(opened());
  const Clearing given = ask(StepName::Open);
  EXPECT_TRUE(given.is_given());
  ASSERT_EQ(given.receipts.size(), 2u);
  const auto all = kinds();
  EXPECT_EQ(all[all.size() - 2], "clearance.asked");
  EXPECT_EQ(all.back(), "clearance.given");
  EXPECT_TRUE(
      closing::stands(ledger().state(), ledger().terms(), StepName::Open, "", world_.now_ms()));
  EXPECT_EQ(ledger().state().given.back().second, "Q");
}

TEST_F(Node, AClearanceTakesTwoNamesTheRoleThePenAndItsSubject) {
  tell(opened());
  EXPECT_EQ(code_of([&] { ask(StepName::Open, "", "L", "L"); }), "service.two_names");
  EXPECT_EQ(code_of([&] { ask(StepName::Open, "", "L", "nobody"); }), "service.two_names");
  EXPECT_EQ(code_of([&] { ask(StepName::Open, "", "P", "Q"); }), "service.no_role");
  EXPECT_EQ(code_of([&] { ask(StepName::Enter); }), "service.no_subject");
  EXPECT_EQ(code_of([&] { ask(StepName::Enter, "M1"); }), "service.no_subject");
  EXPECT_EQ(code_of([&] { ask(StepName::Open, "SD"); }), "service.no_subject");
  EXPECT_EQ(code_of([&] { ask(StepName::BreakJoint, "SD"); }), "service.no_subject");
  EXPECT_EQ(code_of([&] { ask(StepName::RaisePressure); }), "service.no_pressure");
  says("L", PenHandedOn{"another"});
  EXPECT_EQ(code_of([&] { ask(StepName::Open); }), "service.no_pen");
}

TEST_F(Node, OneWhoLeftGivesNoClearanceAndWhatTheyGaveStands) {
  tell(opened());
  EXPECT_TRUE(ask(StepName::Open).is_given());
  plant_says(PersonLeft{"L"});
  EXPECT_EQ(code_of([&] { ask(StepName::Open); }), "service.no_role");
  EXPECT_TRUE(
      closing::stands(ledger().state(), ledger().terms(), StepName::Open, "", world_.now_ms()));
  EXPECT_TRUE(closing::alarms(ledger().state()).empty());
}

TEST_F(Node, AnAlarmIsWrittenDownOnceAndStaysUntilItIsTaken) {
  tell(opened());
  says("L", FillingStarted{});
  EXPECT_EQ(kinds().back(), "alarm.raised");
  const std::size_t told = kinds().size();
  says("L", RemarkMade{"still there"});
  EXPECT_EQ(kinds().size(), told + 1);
  ASSERT_EQ(closing::alarms(ledger().state()).size(), 1u);
  const std::string name = closing::alarms(ledger().state()).front().name;
  says("L", AlarmTaken{name, RoleName::LeadHand, "water stopped"});
  EXPECT_TRUE(closing::alarms(ledger().state()).empty());
  EXPECT_EQ(raise_alarms(log_, book_, world_.now_ms()), 0u);
  // The node's own entry names no person.
  EXPECT_EQ(words::sentence(facts::tell(*ledger().facts_after(0, 10'000)[told - 1].fact)),
            "Alarm: a step was done without its clearance (" + name + ").");
}

TEST_F(Node, WhoDoesNotHoldThePenWritesNoAlarm) {
  tell(opened());
  says("L", PenHandedOn{"another"});
  says("L", FillingStarted{});
  EXPECT_EQ(kinds().back(), "filling.started");
  EXPECT_EQ(closing::alarms(ledger().state()).size(), 1u);
}

/// A fact of a tablet that has seen nothing else of this closing.
record::SealedFact unaware(store::Tablet& tablet, const record::Scope& scope, const Body& body,
                           std::int64_t now_ms) {
  record::Envelope e;
  e.id = record::uuid7(now_ms, {});
  e.scope = scope;
  e.device = tablet.device();
  e.device_seq = 1;
  e.person = "P";
  e.kind = std::string(kind_of(body).token);
  e.kind_version = 1;
  e.happened_at_ms = e.recorded_at_ms = now_ms;
  record::SealedFact fact{encode(e, wire::body_json(body)), {}};
  fact.signature = tablet.signer().sign(fact.bytes);
  return fact;
}

TEST_F(Node, ACountOfATabletIsAnsweredOnce) {
  says("L", ClosingStarted{"B1", description});
  says("L", DeviceJoined{{hex(log_.device())}});
  store::Tablet tablet(7);
  log_.add_key(tablet.key());
  log_.receive(
      {unaware(tablet, scope_, SpaceCounted{"DR", "Q", 0, 0, true, true}, world_.now_ms())});
  EXPECT_EQ(raise_alarms(log_, book_, world_.now_ms()), 0u);
  EXPECT_EQ(kinds().back(), "device.reported");
  ASSERT_TRUE(ledger().state().spaces.at("DR").count);
  EXPECT_EQ(ledger().state().spaces.at("DR").count->heard.count(hex(log_.device())), 1u);
  const std::size_t told = kinds().size();
  raise_alarms(log_, book_, world_.now_ms());
  EXPECT_EQ(kinds().size(), told);
}

TEST_F(Node, ALateEntryOfATabletThatSpeaksAgainstAClearanceIsAnAlarm) {
  Story story;
  tell_opened(story);
  tell_inside(story);
  tell_closed(story);
  story.say(DrainShut{{"D1"}}).say(VentManned{"V1", "Q"});
  tell(story);
  ASSERT_TRUE(ask(StepName::Fill).is_given());
  store::Tablet tablet(7);
  log_.add_key(tablet.key());
  log_.receive({unaware(tablet, scope_, ClosureOpened{{"M1"}}, world_.now_ms())});
  EXPECT_GT(raise_alarms(log_, book_, world_.now_ms()), 0u);
  EXPECT_FALSE(
      closing::stands(ledger().state(), ledger().terms(), StepName::Fill, "", world_.now_ms()));
  EXPECT_EQ(kinds().back(), "alarm.raised");
  ClosingBook anew = make_book();
  anew.catch_up(log_);
  EXPECT_EQ(anew.ledger(scope_).state(), ledger().state());
}

}  // namespace
}  // namespace steamworthy::service
