// For tests: a house on a store of its own, tablets that enrol and sign, calls without a socket.
#pragma once

#include <gtest/gtest.h>

#include <array>
#include <map>
#include <memory>
#include <string>

#include "record/sha256.h"
#include "server/account_calls.h"
#include "server/door.h"
#include "store/fake_surroundings_test.h"
#include "store/store.h"
#include "wire/json_text.h"
#include "wire/node.h"

namespace steamworthy::server {

/// A clock that a test sets.
class SetClock : public store::FakeSurroundings {
 public:
  std::int64_t now_ms() override { return now; }
  std::int64_t now = 1764072000000;
};

inline constexpr store::SecretCost cheap{std::size_t{8} << 10, 1};

inline constexpr std::array<assets::Asset, 4> test_pages = {{
    {"web/dist/index.html", "<!doctype html><title>t</title>"},
    {"web/dist/assets/index-4f2a.js", "export {}"},
    {"web/dist/core.wasm", "\0asm"},
    {"rules/x.toml", "not a page"},
}};

struct TestHouse {
  store::TemporaryFolder folder;
  SetClock world;
  std::unique_ptr<store::Store> store;
  store::AccountBook book{folder.file("x.accounts")};
  Hub hub;
  Pages pages{std::span<const assets::Asset>(test_pages), "web/dist/"};
  std::unique_ptr<Closings> closings;
  std::unique_ptr<Writer> writer;
  std::unique_ptr<Accounts> accounts;
  std::unique_ptr<House> house;

  TestHouse() {
    const std::string path = folder.file("x.steamworthy");
    store::create_store(path, world);
    store = std::make_unique<store::Store>(path, world);
    closings = std::make_unique<Closings>(store->log(), hub, world);
    closings->caught_up();
    writer = std::make_unique<Writer>(
        [this](const auto& facts) { return closings->take_in(facts); }, 100);
    accounts = std::make_unique<Accounts>(
        store->log(), book, world,
        [this](const std::vector<store::Draft>& drafts) {
          std::vector<store::Receipt> receipts;
          writer->run([&] {
            receipts = store->log().append(drafts);
            closings->caught_up();
          });
          return receipts;
        },
        [this] { return closings->plant(); }, cheap);
    house.reset(new House{store->log(), world, *accounts, *closings, hub, *writer, pages, path});
    house->origin = "http://localhost:8080";
    house->started_at_ms = world.now;
    house->node_key = store->log().keys().front();
  }

  Response call(Request request) { return answer_now(*house, std::move(request)); }
};

/// What an answer's JSON says; an empty node where it is none.
inline wire::Node json_of(const Response& response) {
  return wire::read_json(*response.body, "").root;
}
inline std::string text_of(const wire::Node& node, std::string_view key) {
  const wire::Node* found = node.find(key);
  return found == nullptr ? "(none)" : found->text;
}
inline std::string code_of(const Response& response) { return text_of(json_of(response), "code"); }

/// Somebody at a page: keeps cookies and a key.
class Visitor {
 public:
  explicit Visitor(TestHouse& test, int number = 1)
      : test_(test), signer_(store::seed_of(number)) {}

  Response call(Method method, const std::string& address, const std::string& body = "") {
    Request request;
    request.method = method;
    const std::size_t mark = address.find('?');
    request.path = address.substr(0, mark);
    if (mark != std::string::npos) request.query = address.substr(mark + 1);
    request.body = body;
    request.headers.emplace_back("host", "localhost:8080");
    if (!body.empty()) request.headers.emplace_back("content-type", "application/json");
    std::string cookies;
    for (const auto& [name, value] : jar)
      cookies += (cookies.empty() ? "" : "; ") + name + "=" + value;
    if (!cookies.empty()) request.headers.emplace_back("cookie", cookies);
    Response response = test_.call(std::move(request));
    for (const auto& [name, value] : response.headers) {
      if (name != "Set-Cookie") continue;
      const std::size_t equals = value.find('=');
      jar[value.substr(0, equals)] = value.substr(equals + 1, value.find(';') - equals - 1);
    }
    return response;
  }
  Response get(const std::string& address) { return call(Method::Get, address); }
  Response post(const std::string& address, const std::string& body = "{}") {
    return call(Method::Post, address, body);
  }
  Response remove(const std::string& address) { return call(Method::Delete, address); }

  std::string enrolment(const std::string& code, const std::string& more = "") {
    return R"({"code": ")" + code + R"(", "device_name": "tablet", "public_key": ")" +
           hex(signer_.public_key()) + R"(", "signature": ")" +
           hex(signer_.sign(enrolment_bytes(code))) + "\"" + more + "}";
  }
  /// The first device of a new plant, with its first person.
  Response enrol_first() {
    return post("/api/enrolments",
                enrolment(test_.accounts->make_code("", code_ms),
                          R"(, "first_person": {"who": "mara", "name": "Mara Lind",
                              "roles": ["lead_hand"], "secret": "274913"})"));
  }
  Response enrol() {
    return post("/api/enrolments", enrolment(test_.accounts->make_code("mara", code_ms)));
  }
  Response sign_in(const std::string& who, const std::string& secret) {
    return post("/api/sessions", R"({"person": ")" + who + R"(", "secret": ")" + secret + "\"}");
  }
  record::DeviceId device() const { return record::device_of(signer_.public_key()); }
  store::Ed25519Signer& signer() { return signer_; }

  std::map<std::string, std::string> jar;

 private:
  TestHouse& test_;
  store::Ed25519Signer signer_;
};

/// A plant with its first device and person, signed in.
struct Plant : TestHouse {
  Visitor mara{*this, 1};
  Plant() {
    EXPECT_EQ(mara.enrol_first().status, 201);
    EXPECT_EQ(mara.sign_in("mara", "274913").status, 201);
  }
  /// Another person on another device, signed in.
  void let_in(Visitor& visitor, const std::string& who, const std::string& role,
              const std::string& secret = "815302") {
    EXPECT_EQ(mara.post("/api/people", R"({"who": ")" + who + R"(", "name": "N. N.", "roles": [")" +
                                           role + R"("], "secret": ")" + secret + "\"}")
                  .status,
              201);
    EXPECT_EQ(visitor.enrol().status, 201);
    EXPECT_EQ(visitor.sign_in(who, secret).status, 201);
  }
};

}  // namespace steamworthy::server
