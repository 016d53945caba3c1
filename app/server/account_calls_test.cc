// account_calls_test.cc: people, devices, codes, secrets and sessions, by calls without a socket.
#include "server/account_calls.h"

#include <gtest/gtest.h>

#include "server/house_test.h"
#include "wire/fact_body.h"

namespace steamworthy::server {
namespace {

TEST(Enrolment, TheFirstDeviceBringsItsPersonAndBothAreFactsOfThePlant) {
  TestHouse test;
  Visitor mara(test);
  EXPECT_EQ(text_of(json_of(mara.get("/api/me")), "is_new_plant"), "true");
  const Response enrolled = mara.enrol_first();
  ASSERT_EQ(enrolled.status, 201) << *enrolled.body;
  EXPECT_EQ(text_of(json_of(enrolled), "device"), hex(mara.device()));
  EXPECT_EQ(mara.sign_in("mara", "274913").status, 201);
  const wire::Node me = json_of(mara.get("/api/me"));
  EXPECT_EQ(text_of(*me.find("person"), "name"), "Mara Lind");
  EXPECT_EQ(text_of(*me.find("device"), "name"), "tablet");
  EXPECT_EQ(text_of(me, "is_new_plant"), "false");
  // Made anew of the log, as after a restart.
  service::ClosingBook book(test.store->log().plant(), [](const auto&) { return nullptr; });
  book.catch_up(test.store->log());
  const service::Plant& again = book.plant();
  EXPECT_EQ(again.people.at("mara").name, "Mara Lind");
  EXPECT_EQ(again.devices.count(mara.device()), 1u);
}

TEST(Enrolment, NoSecretStandsInTheRecord) {
  Plant plant;
  for (const store::StoredFact& fact : plant.store->log().read(0, 100)) {
    EXPECT_EQ(fact.sealed.bytes.find("274913"), std::string::npos);
    EXPECT_EQ(fact.sealed.bytes.find("argon2"), std::string::npos);
  }
}

TEST(Enrolment, CookiesAreOutOfReachOfScriptsAndOfOtherSites) {
  TestHouse test;
  Visitor mara(test);
  const Response enrolled = mara.enrol_first();
  ASSERT_EQ(enrolled.headers.size(), 1u);
  EXPECT_NE(enrolled.headers[0].second.find("; HttpOnly; SameSite=Strict"), std::string::npos);
  EXPECT_EQ(enrolled.headers[0].second.find("Secure"), std::string::npos);  // plain HTTP here
}

TEST(Enrolment, RefusesCodesThatAreWrongUsedOrTooOld) {
  Plant plant;
  Visitor ole(plant, 2);
  EXPECT_EQ(code_of(ole.post("/api/enrolments", ole.enrolment("AAAAAAAA"))), "server.wrong_code");
  const std::string code = plant.accounts->make_code("mara", code_ms);
  plant.world.now += code_ms;
  EXPECT_EQ(code_of(ole.post("/api/enrolments", ole.enrolment(code))), "server.expired_code");
  const std::string fresh = plant.accounts->make_code("mara", code_ms);
  EXPECT_EQ(ole.post("/api/enrolments", ole.enrolment(fresh)).status, 201);
  Visitor third(plant, 3);
  const Response used = third.post("/api/enrolments", third.enrolment(fresh));
  EXPECT_EQ(used.status, 403);
  EXPECT_EQ(code_of(used), "server.used_code");
  EXPECT_EQ(code_of(ole.enrol()), "server.known_device");
}

TEST(Enrolment, RefusesAKeyThatTheDeviceDoesNotHold) {
  Plant plant;
  Visitor ole(plant, 2);
  const std::string code = plant.accounts->make_code("mara", code_ms);
  std::string body = ole.enrolment(code);
  const std::string other = hex(store::Ed25519Signer(store::seed_of(9)).public_key());
  body.replace(body.find(hex(ole.signer().public_key())), other.size(), other);
  EXPECT_EQ(code_of(ole.post("/api/enrolments", body)), "server.bad_proof");
  EXPECT_EQ(ole.post("/api/enrolments", ole.enrolment(code)).status, 201) << "the code was spent";
}

TEST(Enrolment, OnlyANewPlantTakesAFirstPersonAndItNeedsOne) {
  TestHouse test;
  Visitor first(test);
  EXPECT_EQ(code_of(first.post("/api/enrolments",
                               first.enrolment(test.accounts->make_code("", code_ms)))),
            "server.needs_person");
  EXPECT_EQ(first.enrol_first().status, 201);
  Visitor second(test, 2);
  EXPECT_EQ(code_of(second.enrol_first()), "server.not_first");
}

TEST(SignIn, NeedsAnEnrolledDeviceAndTheRightSecret) {
  Plant plant;
  Visitor stranger(plant, 2);
  EXPECT_EQ(code_of(stranger.sign_in("mara", "274913")), "server.not_enrolled");
  EXPECT_EQ(stranger.enrol().status, 201);
  const Response wrong = stranger.sign_in("mara", "274914");
  EXPECT_EQ(wrong.status, 401);
  EXPECT_EQ(code_of(wrong), "server.wrong_secret");
  EXPECT_EQ(code_of(stranger.sign_in("nobody", "274913")), "server.wrong_secret");
  EXPECT_EQ(code_of(stranger.get("/api/devices")), "server.not_signed_in");
  EXPECT_EQ(stranger.sign_in("mara", "274913").status, 201);
  EXPECT_EQ(stranger.get("/api/devices").status, 200);
}

TEST(SignIn, LocksAPersonOutAfterFiveWrongSecretsAndForLongerEachTime) {
  Plant plant;
  for (int i = 0; i < 5; ++i) {
    EXPECT_EQ(code_of(plant.mara.sign_in("mara", "000001")), "server.wrong_secret");
  }
  const Response locked = plant.mara.sign_in("mara", "274913");
  EXPECT_EQ(locked.status, 423);
  EXPECT_EQ(code_of(locked), "server.locked");
  plant.world.now += minute_ms + 1;
  EXPECT_EQ(code_of(plant.mara.sign_in("mara", "000001")), "server.wrong_secret");
  plant.world.now += minute_ms + 1;  // this time it is two minutes
  EXPECT_EQ(code_of(plant.mara.sign_in("mara", "274913")), "server.locked");
  plant.world.now += minute_ms;
  EXPECT_EQ(plant.mara.sign_in("mara", "274913").status, 201);
  EXPECT_EQ(code_of(plant.mara.sign_in("mara", "000001")), "server.wrong_secret");
  EXPECT_EQ(plant.mara.sign_in("mara", "274913").status, 201)
      << "one right one counts the rest out";
}

TEST(Session, EndsWithTheShiftBySigningOutAndByALead) {
  Plant plant;
  Visitor ole(plant, 2);
  plant.let_in(ole, "ole", "hand");
  const wire::Node list = json_of(plant.mara.get("/api/sessions"));
  ASSERT_EQ(list.find("sessions")->items.size(), 2u);
  EXPECT_EQ(code_of(ole.get("/api/sessions")), "server.role");
  const wire::Node& first = list.find("sessions")->items[0];
  const wire::Node& second = list.find("sessions")->items[1];
  const std::string id = text_of(text_of(first, "who") == "ole" ? first : second, "session");
  EXPECT_EQ(plant.mara.remove("/api/sessions/" + id).status, 204);
  EXPECT_EQ(code_of(ole.get("/api/devices")), "server.not_signed_in");
  EXPECT_EQ(code_of(plant.mara.remove("/api/sessions/" + id)), "server.no_session");
  EXPECT_EQ(ole.sign_in("ole", "815302").status, 201);
  EXPECT_EQ(ole.remove("/api/sessions").status, 204);
  EXPECT_EQ(ole.jar["steamworthy_session"], "");
  EXPECT_EQ(ole.sign_in("ole", "815302").status, 201);
  plant.world.now += session_ms;
  EXPECT_EQ(code_of(ole.get("/api/devices")), "server.not_signed_in");
}

TEST(Session, IsWorthNothingOnAnotherDevice) {
  Plant plant;
  Visitor ole(plant, 2);
  EXPECT_EQ(ole.enrol().status, 201);
  ole.jar["steamworthy_session"] = plant.mara.jar["steamworthy_session"];
  EXPECT_EQ(code_of(ole.get("/api/devices")), "server.not_signed_in");
  ole.jar["steamworthy_device"] = "0";
  EXPECT_EQ(code_of(ole.get("/api/devices")), "server.not_enrolled");
}

TEST(Person, WhoIsEnrolledByAnEntryFromElsewhereIsKnownAtOnce) {
  // The accounts once read the plant's feed for themselves, and at a start alone.
  Plant plant;
  store::Draft draft;
  draft.scope = plant.store->log().plant();
  draft.person = "mara";
  draft.kind = facts::PersonEnrolled::kind.token;
  draft.happened_at_ms = plant.world.now;
  draft.happened_precision_ms = 1000;
  draft.body = wire::body_json(facts::PersonEnrolled{"kai", "Kai Berg", {"hand"}});
  plant.store->log().append({draft});
  plant.closings->caught_up();
  EXPECT_NE(plant.mara.get("/api/people").body->find("Kai Berg"), std::string::npos);
}

TEST(Session, OutlivesTheProgram) {
  Plant plant;
  Accounts again(
      plant.store->log(), plant.book, plant.world, {}, [&] { return plant.closings->plant(); },
      cheap);
  const Caller caller =
      again.identify(plant.mara.jar["steamworthy_device"], plant.mara.jar["steamworthy_session"]);
  EXPECT_EQ(caller.person, "mara");
  EXPECT_TRUE(again.was_here(plant.mara.device(), "mara"));
  EXPECT_FALSE(again.was_here(plant.mara.device(), "ole"));
}

TEST(Device, ThatIsRevokedIsToldSoAndRefused) {
  Plant plant;
  Visitor ole(plant, 2);
  plant.let_in(ole, "ole", "hand");
  EXPECT_EQ(code_of(ole.remove("/api/devices/" + hex(plant.mara.device()))), "server.role");
  EXPECT_EQ(plant.mara.remove("/api/devices/" + hex(ole.device())).status, 200);
  for (const Response& response : {ole.get("/api/devices"), ole.sign_in("ole", "815302")}) {
    EXPECT_EQ(response.status, 401);
    EXPECT_EQ(code_of(response), "server.revoked");
  }
  EXPECT_EQ(code_of(plant.mara.remove("/api/devices/" + hex(ole.device()))),
            "server.revoked_before");
  EXPECT_EQ(code_of(plant.mara.remove("/api/devices/" + hex(plant.accounts->node()))),
            "server.is_node");
  EXPECT_EQ(code_of(plant.mara.remove("/api/devices/00")), "server.no_device");
}

TEST(Person, WhoLeavesIsSignedOutAndTheLastLeadStays) {
  Plant plant;
  Visitor ole(plant, 2);
  plant.let_in(ole, "ole", "hand");
  EXPECT_EQ(code_of(plant.mara.remove("/api/people/mara")), "server.last_lead");
  EXPECT_EQ(code_of(plant.mara.remove("/api/people/nobody")), "server.no_person");
  EXPECT_EQ(plant.mara.remove("/api/people/ole").status, 200);
  EXPECT_EQ(code_of(ole.get("/api/devices")), "server.not_signed_in");
  EXPECT_EQ(code_of(ole.sign_in("ole", "815302")), "server.wrong_secret");
}

TEST(Person, SetsTheirOwnSecretAndALeadAnothers) {
  Plant plant;
  Visitor ole(plant, 2);
  plant.let_in(ole, "ole", "hand");
  const auto set = [](Visitor& by, const std::string& who, const std::string& secret,
                      const std::string& kind, const std::string& own) {
    return by.call(Method::Put, "/api/people/" + who + "/secrets",
                   R"({"kind": ")" + kind + R"(", "secret": ")" + secret + R"(", "own_secret": ")" +
                       own + "\"}");
  };
  EXPECT_EQ(set(ole, "ole", "495817", "pin", "815302").status, 204);
  EXPECT_EQ(code_of(ole.sign_in("ole", "815302")), "server.wrong_secret");
  EXPECT_EQ(ole.sign_in("ole", "495817").status, 201);
  EXPECT_EQ(code_of(set(ole, "mara", "495817", "pin", "495817")), "server.role");
  EXPECT_EQ(code_of(set(ole, "ole", "582136", "pin", "000000")), "server.wrong_secret");
  EXPECT_EQ(code_of(set(ole, "ole", "123456", "pin", "495817")), "server.bad_secret");
  EXPECT_EQ(set(plant.mara, "ole", "badge 0042", "badge", "274913").status, 204);
  EXPECT_EQ(
      ole.post("/api/sessions", R"({"person": "ole", "secret": "badge 0042", "kind": "badge"})")
          .status,
      201);
  EXPECT_EQ(ole.sign_in("ole", "495817").status, 201) << "the PIN is good beside the badge";
}

TEST(Code, LeadsToThePageWithItsQrCode) {
  Plant plant;
  const wire::Node code = json_of(plant.mara.post("/api/enrolment-codes", ""));
  EXPECT_EQ(text_of(code, "link"), "http://localhost:8080/enrol#" + text_of(code, "code"));
  EXPECT_NE(text_of(code, "qr_svg").find("<svg"), std::string::npos);
}

}  // namespace
}  // namespace steamworthy::server
