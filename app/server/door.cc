#include "server/door.h"

#include <fmt/format.h>

#include <algorithm>

#include "server/account_calls.h"
#include "server/uri.h"
#include "store/fact_log.h"

namespace steamworthy::server {
namespace {

bool is_api(std::string_view path) { return path == "/api" || path.substr(0, 5) == "/api/"; }

/// Whether one of the words of a list with blanks between is this one.
bool is_among(std::string_view word, std::string_view words) {
  while (!words.empty()) {
    const std::size_t blank = words.find(' ');
    if (words.substr(0, blank) == word) return true;
    words = blank == std::string_view::npos ? std::string_view() : words.substr(blank + 1);
  }
  return false;
}

std::string lower(std::string_view text) {
  std::string low(text);
  for (char& c : low) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return low;
}

/// A browser tells where a call that changes something comes from: only from our own page.
void check_origin(const Request& request) {
  const std::string_view origin = request.header("origin");
  const std::string_view site = request.header("sec-fetch-site");
  const std::size_t slashes = origin.find("//");
  const bool other_host = !origin.empty() && (slashes == std::string_view::npos ||
                                              origin.substr(slashes + 2) != request.header("host"));
  if (other_host || site == "cross-site" || site == "same-site") {
    throw Refusal(403, "server.other_origin", "this call comes from a page of another place");
  }
}

void check_type(const Route& route, const Request& request) {
  if (route.content.empty()) return;
  std::string_view type = request.header("content-type");
  type = type.substr(0, type.find(';'));
  while (!type.empty() && type.back() == ' ') type.remove_suffix(1);
  if (!is_among(lower(type), route.content)) {
    throw Refusal(415, "server.wrong_type",
                  fmt::format("the body must be of type {}", std::string(route.content)));
  }
}

void check_caller(const House& house, const Route& route, const Caller& caller) {
  if (route.who == Who::Anybody) return;
  if (caller.revoked) {
    throw Refusal(401, "server.revoked", "this device was revoked; its entries are not accepted");
  }
  if (!caller.device) {
    throw Refusal(401, "server.not_enrolled", "this device is not enrolled; ask for a code");
  }
  if (route.who == Who::Device) return;
  if (caller.person.empty()) {
    throw Refusal(401, "server.not_signed_in", "nobody is signed in at this device");
  }
  if (route.who == Who::Person) return;
  if (!house.accounts.plant()->may(caller.person, leads)) {
    throw Refusal(403, "server.role",
                  fmt::format("this needs the role {}", std::string(words_of(route.who))));
  }
}

[[noreturn]] void refuse_method(const Match& found) {
  std::string accepted;
  for (const Method method : found.others) {
    accepted += (accepted.empty() ? "" : ", ") + std::string(token(method));
  }
  throw Refusal(405, "server.wrong_method", "accepted here: " + accepted);
}

Response answer_now(House& house, const Admitted& admitted) {
  Outcome outcome = admitted.route->handle(house, admitted.call);
  if (auto* taking = std::get_if<Taking>(&outcome)) {
    std::vector<store::Received> received;
    house.writer.run([&] { received = house.closings.take_in(taking->facts); });
    return taking->finish(received);
  }
  return std::get<Response>(std::move(outcome));
}

/// What is told of a refusal beside its answer: its code.
std::string code_of(const std::exception& error) {
  const auto* known = dynamic_cast<const Error*>(&error);
  return known == nullptr ? std::string("server.fault: ") + error.what() : known->code();
}

/// The way back of one call.
struct Back {
  Door::Reply reply;
  CallLog log;

  void say(Response response) {
    log.status = response.status;
    reply(std::move(response), log);
  }
  void say(const std::exception& error) {
    log.code = code_of(error);
    Response response = answer_of(error);
    // What went wrong inside stands in the log, not in the answer.
    if (dynamic_cast<const StoreError*>(&error) != nullptr) {
      log.code += fmt::format(": {}", error.what());
    }
    say(std::move(response));
  }
};

void run(House& house, const std::shared_ptr<const Admitted>& admitted,
         const std::shared_ptr<Back>& back) {
  try {
    Outcome outcome = admitted->route->handle(house, admitted->call);
    if (auto* response = std::get_if<Response>(&outcome)) {
      back->say(std::move(*response));
      return;
    }
    auto& taking = std::get<Taking>(outcome);
    auto finish = std::make_shared<decltype(taking.finish)>(std::move(taking.finish));
    const bool put = house.writer.put(
        std::move(taking.facts),
        [back, finish](const std::vector<store::Received>& received, const std::exception* error) {
          try {
            if (error != nullptr) {
              back->say(*error);
            } else {
              back->say((*finish)(received));
            }
          } catch (const std::exception& thrown) {
            back->say(thrown);
          }
        });
    if (!put) throw Refusal(503, "server.busy", "too much waits to be stored; try again");
  } catch (const std::exception& error) {
    back->say(error);
  }
}

}  // namespace

Admitted admit(House& house, Request request) {
  const auto path = path_parts(request.path);
  if (!path) throw Refusal(400, "server.bad_path", "the address cannot be read");
  const auto query = query_items(request.query);
  if (!query) throw Refusal(400, "server.bad_query", "what stands behind ? cannot be read");
  const Method method = request.method == Method::Head ? Method::Get : request.method;
  Match found = match(routes(), method, *path);
  if (found.route == nullptr) {
    if (!found.others.empty()) refuse_method(found);
    throw Refusal(404, "server.no_call", "there is no such call");
  }
  for (const auto& [name, value] : *query) {
    // A page may say with every call how it wants its texts.
    if (name != "units" && name != "language" && !is_among(name, found.route->query)) {
      throw Refusal(400, "server.unknown_query",
                    fmt::format("\"{}\" may not stand in the address of this call", name));
    }
  }
  if (method != Method::Get) check_origin(request);
  Admitted admitted;
  admitted.route = found.route;
  Call& call = admitted.call;
  call.caller = house.accounts.identify(cookie(request.header("cookie"), device_cookie),
                                        cookie(request.header("cookie"), session_cookie));
  check_caller(house, *found.route, call.caller);
  check_type(*found.route, request);
  call.parts = std::move(found.parts);
  for (const auto& [name, value] : *query) call.query[name] = value;
  call.request = std::move(request);
  call.now_ms = house.world.now_ms();
  return admitted;
}

Response answer_now(House& house, Request request) {
  try {
    if (!is_api(request.path)) return house.pages.answer(request);
    return answer_now(house, admit(house, std::move(request)));
  } catch (const std::exception& error) {
    return answer_of(error);
  }
}

Door::Door(House& house, Bench& reader, Bench& heavy)
    : house_(house), reader_(reader), heavy_(heavy) {}

std::size_t Door::largest_body(const Request& head) const {
  const auto path = path_parts(head.path);
  if (!path) return usual_body;
  const Match found = match(routes(), head.method, *path);
  return found.route == nullptr ? usual_body : std::max(usual_body, found.route->largest_body);
}

void Door::handle(Request request, Reply reply) {
  auto back = std::make_shared<Back>();
  back->reply = std::move(reply);
  back->log.method = token(request.method);
  back->log.path = request.path;
  try {
    if (!is_api(request.path)) {
      back->say(house_.pages.answer(request));
      return;
    }
    auto admitted = std::make_shared<Admitted>(admit(house_, std::move(request)));
    back->log.person = admitted->call.caller.person;
    if (admitted->call.caller.device) back->log.device = hex(*admitted->call.caller.device);
    const auto work = [this, admitted, back] { run(house_, admitted, back); };
    bool put = true;
    switch (admitted->route->where) {
      case Where::Loop:
        work();
        break;
      case Where::Reader:
        put = reader_.put(work);
        break;
      case Where::Heavy:
        put = heavy_.put(work);
        break;
    }
    if (!put) throw Refusal(429, "server.too_many", "too much is asked at once; try again");
  } catch (const std::exception& error) {
    back->say(error);
  }
}

}  // namespace steamworthy::server
