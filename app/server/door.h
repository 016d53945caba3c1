// Door: from a request to its answer. Finds the route, tells who calls, refuses who may not, and
// has the handler run where it belongs.
//
// handle() is for the listener's loop and never waits; answer_now() does the same at once, for
// tests and fuzzing, without a socket or a thread.
#pragma once

#include <functional>
#include <string>

#include "server/crew.h"
#include "server/house.h"
#include "server/routes.h"

namespace steamworthy::server {

/// One line of the log for each call: no query, no body, no cookie.
struct CallLog {
  std::string method;
  std::string path;
  int status = 0;
  std::string code;  ///< of an error
  std::string person;
  std::string device;
};

class Door {
 public:
  using Reply = std::function<void(Response, const CallLog&)>;

  Door(House& house, Bench& reader, Bench& heavy);

  /// Calls `reply` once, from whatever thread.
  void handle(Request request, Reply reply);

  /// Largest body that is read for a request with this head.
  std::size_t largest_body(const Request& head) const;

  House& house() { return house_; }

 private:
  House& house_;
  Bench& reader_;
  Bench& heavy_;
};

/// What a request is about, found and allowed.
/// Throws   Refusal 400 server.bad_path, server.bad_query, server.unknown_query; 401
///          server.not_enrolled, server.revoked, server.not_signed_in; 403 server.role,
///          server.other_origin; 404 server.no_call; 405 server.wrong_method; 415
///          server.wrong_type.
struct Admitted {
  const Route* route = nullptr;
  Call call;
};
Admitted admit(House& house, Request request);

/// The whole of it on this thread.
Response answer_now(House& house, Request request);

}  // namespace steamworthy::server
