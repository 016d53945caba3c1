// closing_calls_test.cc: a closing over the API, by calls without a socket.
#include "server/closing_calls.h"

#include <gtest/gtest.h>

#include "server/house_test.h"
#include "testing/examples_test.h"

namespace steamworthy::server {
namespace {

std::string base64(std::string_view bytes) {
  constexpr std::string_view digits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    std::uint32_t held = 0;
    for (std::size_t j = 0; j < 3; ++j) {
      held = held << 8 | (i + j < bytes.size() ? static_cast<unsigned char>(bytes[i + j]) : 0u);
    }
    for (std::size_t j = 0; j < 4; ++j) {
      text += i + j <= bytes.size() ? digits[held >> (18 - 6 * j) & 63u] : '=';
    }
  }
  return text;
}

/// A plant with a boiler and a closing of it; ole is a hand on his own tablet.
struct Begun : Plant {
  Visitor ole{*this, 2};
  std::string closing;
  std::uint64_t seq = 0;
  record::Hash last;

  Begun() {
    closings->add_boiler("watertube.toml", testing::source_file("examples/watertube.toml"));
    let_in(ole, "ole", "hand");
    closing = text_of(json_of(mara.post("/api/closings", R"({"boiler": "B1"})")), "closing");
  }
  std::string address(const std::string& rest = "") const {
    return "/api/closings/" + closing + rest;
  }
  /// A fact by ole's tablet, as the API takes it.
  std::string sealed(const std::string& kind, const std::string& body) {
    record::Envelope e;
    record::RandomForUuid random{};
    random[9] = static_cast<std::uint8_t>(seq);
    e.id = record::uuid7(world.now, random);
    e.scope = scope_of(*record::read_uuid(closing));
    e.device = ole.device();
    e.device_seq = ++seq;
    e.prev_hash = last;
    e.person = "ole";
    e.kind = kind;
    e.happened_at_ms = e.recorded_at_ms = world.now;
    const std::string bytes = encode(e, body);
    last = record::sha256(bytes);
    const record::Signature signature = ole.signer().sign(bytes);
    return R"({"facts": [{"header_base64": ")" +
           base64(std::string_view(bytes).substr(0, bytes.size() - body.size() - 4)) +
           R"(", "body_base64": ")" + base64(body) + R"(", "signature_base64": ")" +
           base64(signature.view()) + "\"}]}";
  }
  Response report(const std::string& kind, const std::string& body) {
    return ole.post(address("/facts"), sealed(kind, body));
  }
};

TEST(Closing, IsBegunOnceOnABoiler) {
  Begun begun;
  ASSERT_EQ(begun.closing.size(), 36u);
  EXPECT_EQ(code_of(begun.mara.post("/api/closings", R"({"boiler": "B1"})")),
            "server.closing_open");
  EXPECT_EQ(code_of(begun.mara.post("/api/closings", R"({"boiler": "B9"})")), "server.no_boiler");
  const wire::Node plant = json_of(begun.mara.get("/api/plant"));
  const wire::Node& boiler = plant.find("boilers")->items[0];
  EXPECT_EQ(text_of(boiler, "boiler"), "B1");
  EXPECT_EQ(text_of(boiler.find("closings")->items[0], "closing"), begun.closing);
}

TEST(Closing, ShowsAFactThatWasReportedAtOnce) {
  Begun begun;
  const Response response = begun.report("remark.made", R"({"text": "a first look"})");
  ASSERT_EQ(response.status, 200) << *response.body;
  const wire::Node receipt = json_of(response).find("receipts")->items[0];
  EXPECT_EQ(text_of(receipt, "put_aside"), "");
  const wire::Node view = json_of(begun.mara.get(begun.address()));
  EXPECT_EQ(view.find("intake_no")->integer, receipt.find("intake_no")->integer);
  const wire::Node facts = json_of(begun.mara.get(begun.address("/facts?before=0&limit=1")));
  EXPECT_NE(text_of(facts.find("facts")->items[0], "sentence").find("a first look"),
            std::string::npos);
}

TEST(Closing, TellsFollowersOfAFactAndOfAnAlarm) {
  Begun begun;
  const record::Uuid id = *record::read_uuid(begun.closing);
  const auto following =
      begun.hub.follow(id, std::nullopt, begun.closings->newest(id), false, [] {});
  // S11: somebody goes in though nothing was cleared.
  EXPECT_EQ(begun.report("tally.in", R"({"space": "SP-SD", "who": "ole"})").status, 200);
  const std::string event = following->take().value_or("(none)");
  EXPECT_NE(event.find("event: facts"), std::string::npos) << event;
  EXPECT_EQ(following->take(), std::nullopt);
}

TEST(Clearance, IsRefusedWithReasonAndRemedyAndTheStepReportedAllTheSameIsStored) {
  Begun begun;
  const Response refused =
      begun.mara.post(begun.address("/clearances"),
                      R"({"step": "enter", "subject": "SP-SD", "secret": "274913", "second": "ole",
          "second_secret": "815302"})");
  EXPECT_EQ(refused.status, 409) << *refused.body;
  EXPECT_EQ(code_of(refused), "server.outstanding");
  const wire::Node said = json_of(refused);
  ASSERT_NE(said.find("outstanding"), nullptr);
  ASSERT_FALSE(said.find("outstanding")->items.empty());
  for (const wire::Node& one : said.find("outstanding")->items) {
    EXPECT_FALSE(text_of(one, "reason").empty());
    EXPECT_FALSE(text_of(one, "remedy").empty());
  }
  EXPECT_EQ(begun.report("tally.in", R"({"space": "SP-SD", "who": "ole"})").status, 200);
  const wire::Node view = json_of(begun.mara.get(begun.address()));
  bool inside = false;
  for (const wire::Node& space : view.find("spaces")->items) {
    inside = inside || (text_of(space, "tag") == "SP-SD" && !space.find("people")->items.empty());
  }
  EXPECT_TRUE(inside);
}

TEST(Clearance, NeedsTwoPeopleWithTheirSecrets) {
  Begun begun;
  const auto ask = [&](const std::string& second, const std::string& own,
                       const std::string& second_secret) {
    return begun.mara.post(begun.address("/clearances"),
                           R"({"step": "open", "secret": ")" + own + R"(", "second": ")" + second +
                               R"(", "second_secret": ")" + second_secret + "\"}");
  };
  EXPECT_EQ(code_of(ask("mara", "274913", "274913")), "server.two_names");
  EXPECT_EQ(code_of(ask("ole", "000000", "815302")), "server.wrong_secret");
  EXPECT_EQ(code_of(ask("ole", "274913", "000000")), "server.wrong_secret");
  EXPECT_EQ(code_of(ask("ghost", "274913", "815302")), "server.wrong_secret");
  EXPECT_EQ(code_of(begun.ole.post(begun.address("/clearances"), "{}")), "server.role");
}

TEST(Facts, OfAnotherDeviceOrPersonAreRefusedAndNothingIsStored) {
  Begun begun;
  const std::int64_t before = begun.closings->newest();
  const std::string fact = begun.sealed("remark.made", R"({"text": "x"})");
  EXPECT_EQ(code_of(begun.mara.post(begun.address("/facts"), fact)), "server.other_device");
  EXPECT_EQ(begun.closings->newest(), before);
  EXPECT_EQ(begun.ole.post(begun.address("/facts"), fact).status, 200);
  const wire::Node again = json_of(begun.ole.post(begun.address("/facts"), fact));
  EXPECT_EQ(text_of(again.find("receipts")->items[0], "doubled"), "true");
}

TEST(Events, AreFollowedFromWhereThePageStands) {
  Begun begun;
  Request request;
  request.path = begun.address("/events");
  request.headers = {
      {"last-event-id", "3"},
      {"cookie", "steamworthy_device=" + begun.mara.jar["steamworthy_device"] +
                     "; steamworthy_session=" + begun.mara.jar["steamworthy_session"]}};
  const Response response = begun.call(request);
  ASSERT_TRUE(response.follow.has_value()) << *response.body;
  EXPECT_EQ(response.follow->after, 3);
  EXPECT_EQ(response.follow->newest, begun.closings->newest(response.follow->closing));
}

}  // namespace
}  // namespace steamworthy::server
