// door_test.cc: who gets through the door, which pages it has, and that the description of the API
// has exactly the calls that there are.
#include "server/door.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "server/house_test.h"

namespace steamworthy::server {
namespace {

Request request_of(Method method, const std::string& address) {
  Request request;
  request.method = method;
  const std::size_t mark = address.find('?');
  request.path = address.substr(0, mark);
  if (mark != std::string::npos) request.query = address.substr(mark + 1);
  return request;
}

TEST(Door, RefusesWhatIsNoCall) {
  Plant plant;
  const auto refused = [&](Method method, const char* address) {
    const Response response = plant.call(request_of(method, address));
    return std::to_string(response.status) + " " + code_of(response);
  };
  EXPECT_EQ(refused(Method::Get, "/api/nothing"), "404 server.no_call");
  EXPECT_EQ(refused(Method::Get, "/api"), "404 server.no_call");
  EXPECT_EQ(refused(Method::Put, "/api/health"), "405 server.wrong_method");
  EXPECT_EQ(refused(Method::Other, "/api/health"), "405 server.wrong_method");
  EXPECT_EQ(refused(Method::Get, "/api/health?a=%"), "400 server.bad_query");
  EXPECT_EQ(refused(Method::Get, "/api/health?x=1"), "400 server.unknown_query");
  EXPECT_EQ(refused(Method::Get, "/api//health"), "400 server.bad_path");
  EXPECT_EQ(refused(Method::Get, "/api/devices"), "401 server.not_enrolled");
}

TEST(Door, RefusesCallsFromPagesOfOtherPlaces) {
  Plant plant;
  for (const auto& [name, value] :
       std::vector<std::pair<std::string, std::string>>{{"origin", "https://elsewhere"},
                                                        {"origin", "null"},
                                                        {"sec-fetch-site", "cross-site"},
                                                        {"sec-fetch-site", "same-site"}}) {
    Request request = request_of(Method::Post, "/api/enrolments");
    request.headers = {
        {"host", "localhost:8080"}, {"content-type", "application/json"}, {name, value}};
    EXPECT_EQ(code_of(plant.call(request)), "server.other_origin") << name << value;
  }
  Request own = request_of(Method::Post, "/api/enrolments");
  own.headers = {{"host", "localhost:8080"},
                 {"content-type", "application/json"},
                 {"origin", "http://localhost:8080"},
                 {"sec-fetch-site", "same-origin"}};
  own.body = "{}";
  EXPECT_EQ(plant.call(own).status, 400);
}

TEST(Door, WantsTheTypeOfBodyThatTheCallTakes) {
  Plant plant;
  Request request = request_of(Method::Post, "/api/enrolments");
  request.body = "{}";
  EXPECT_EQ(code_of(plant.call(request)), "server.wrong_type");
  request.headers = {{"content-type", "text/plain"}};
  EXPECT_EQ(code_of(plant.call(request)), "server.wrong_type");
  request.headers = {{"content-type", "Application/JSON; charset=utf-8"}};
  EXPECT_EQ(code_of(plant.call(request)), "wire.missing");
}

TEST(Door, TellsEveryFaultOfABodyAtOnce) {
  Plant plant;
  const Response response =
      plant.mara.post("/api/people", R"({"who": 7, "roles": ["king"], "extra": 1})");
  EXPECT_EQ(response.status, 400);
  const wire::Node json = json_of(response);
  std::set<std::string> fields;
  for (const wire::Node& problem : json.find("problems")->items)
    fields.insert(text_of(problem, "field"));
  EXPECT_EQ(fields, (std::set<std::string>{"who", "name", "roles", "extra"}));
  EXPECT_EQ(code_of(plant.mara.post("/api/people", "{")), "wire.syntax");
  EXPECT_EQ(plant.mara.post("/api/people", "[]").status, 400);
}

TEST(Door, AnswersAHeadAsItWouldTheWhole) {
  Plant plant;
  EXPECT_EQ(plant.call(request_of(Method::Head, "/api/health")).status, 200);
}

TEST(Pages, HaveTheirTypeTheirTagAndTheirLifetime) {
  TestHouse test;
  const Response page = test.call(request_of(Method::Get, "/"));
  EXPECT_EQ(page.status, 200);
  EXPECT_EQ(page.type, "text/html; charset=utf-8");
  EXPECT_EQ(test.call(request_of(Method::Get, "/core.wasm")).type, "application/wasm");
  const Response script = test.call(request_of(Method::Get, "/assets/index-4f2a.js"));
  EXPECT_EQ(script.type, "text/javascript; charset=utf-8");
  EXPECT_EQ(script.headers[1].second, "public, max-age=31536000, immutable");
  EXPECT_EQ(page.headers[1].second, "no-cache");
  Request again = request_of(Method::Get, "/");
  again.headers = {{"if-none-match", page.headers[0].second}};
  EXPECT_EQ(test.call(again).status, 304);
  EXPECT_TRUE(test.call(again).body->empty());
}

TEST(Pages, SendAddressesOfThePageToItAndNothingElse) {
  TestHouse test;
  EXPECT_EQ(test.call(request_of(Method::Get, "/closings/7/test")).status, 200);
  EXPECT_EQ(test.call(request_of(Method::Get, "/assets/gone.js")).status, 404);
  EXPECT_EQ(test.call(request_of(Method::Get, "/../rules/x.toml")).status, 404);
  EXPECT_EQ(test.call(request_of(Method::Get, "/rules/x.toml")).status, 404);
  EXPECT_EQ(test.call(request_of(Method::Post, "/")).status, 405);
}

TEST(Pages, GoCompressedToWhoTakesThat) {
  constexpr std::array<assets::Asset, 3> files = {{{"web/dist/index.html", "<!doctype html>"},
                                                   {"web/dist/a.js", "export {}"},
                                                   {"web/dist/a.js.gz", "compressed"}}};
  const Pages pages{std::span<const assets::Asset>(files), "web/dist/"};
  const auto answer = [&](const char* accepted) {
    Request request = request_of(Method::Get, "/a.js");
    request.headers = {{"accept-encoding", accepted}};
    return pages.answer(request);
  };
  for (const char* accepted : {"gzip", "gzip, deflate, br", "br, gzip;q=0.5"}) {
    EXPECT_EQ(*answer(accepted).body, "compressed") << accepted;
    EXPECT_EQ(answer(accepted).type, "text/javascript; charset=utf-8");
  }
  for (const char* accepted : {"", "br", "gzip;q=0", "gzip;q=0, br"}) {
    EXPECT_EQ(*answer(accepted).body, "export {}") << accepted;
  }
  EXPECT_THROW(pages.answer(request_of(Method::Get, "/a.js.gz")), Refusal);
}

TEST(Pages, OfAFolderNeedTheirIndex) {
  store::TemporaryFolder folder;
  EXPECT_THROW(Pages{folder.file("none")}, NotFound);
  EXPECT_THROW(Pages{folder.file("")}, NotFound);
}

TEST(Guards, LetNoScriptInThatIsNotOurs) {
  for (const auto& [name, value] : guards(true)) {
    EXPECT_EQ(value.find("unsafe-inline"), std::string::npos);
    EXPECT_EQ(value.find("'unsafe-eval'"), std::string::npos);
  }
  EXPECT_EQ(guards(true).size(), guards(false).size() + 1);
}

/// "get /api/health health [anybody] query types": a call as text, for both sides.
std::set<std::string> described() {
  const wire::Node doc = wire::read_json(assets::openapi().front().bytes, "").root;
  std::set<std::string> calls;
  for (const wire::Member& path : doc.find("paths")->members) {
    for (const wire::Member& method : path.node.members) {
      const wire::Node& call = method.node;
      std::set<std::string> query;
      if (const wire::Node* parameters = call.find("parameters")) {
        for (const wire::Node& one : parameters->items) {
          if (text_of(one, "in") == "query") query.insert(text_of(one, "name"));
        }
      }
      std::string text = method.name + " " + path.name + " " + text_of(call, "operationId") + " [" +
                         text_of(call, "x-who") + "]";
      for (const std::string& name : query) text += " " + name;
      if (const wire::Node* body = call.find("requestBody")) {
        std::set<std::string> types;
        for (const wire::Member& type : body->find("content")->members) types.insert(type.name);
        for (const std::string& type : types) text += " " + type;
      }
      calls.insert(text);
    }
  }
  return calls;
}

std::set<std::string> words(std::string_view text) {
  std::set<std::string> all;
  while (!text.empty()) {
    const std::size_t blank = text.find(' ');
    if (blank != 0) all.emplace(text.substr(0, blank));
    text = blank == std::string_view::npos ? std::string_view() : text.substr(blank + 1);
  }
  return all;
}

std::set<std::string> routed() {
  std::set<std::string> calls;
  for (const Route& route : routes()) {
    std::string text(token(route.method));
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return static_cast<char>(std::tolower(c)); });
    text += " " + std::string(route.pattern) + " " + std::string(route.operation) + " [" +
            std::string(words_of(route.who)) + "]";
    for (const std::string& name : words(route.query)) text += " " + name;
    for (const std::string& type : words(route.content)) text += " " + type;
    calls.insert(text);
  }
  return calls;
}

TEST(OpenApi, HasExactlyTheCallsThatThereAre) { EXPECT_EQ(described(), routed()); }

TEST(OpenApi, IsServed) {
  TestHouse test;
  const Response response = test.call(request_of(Method::Get, "/api/openapi.json"));
  EXPECT_EQ(text_of(json_of(response), "openapi"), "3.1.0");
}

}  // namespace
}  // namespace steamworthy::server
