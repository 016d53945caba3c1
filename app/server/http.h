// HTTP as plain data: what came, what goes. No network library stands behind these; the door that
// has one is listener.h.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/error.h"
#include "record/envelope.h"

namespace steamworthy::server {

enum class Method { Get, Head, Post, Put, Delete, Other };
std::string_view token(Method method);

struct Request {
  Method method = Method::Get;
  std::string path = "/";  ///< as it came, up to the question mark
  std::string query;       ///< as it came, behind it
  /// Names in lower case, as they came; a name that came twice stands twice.
  std::vector<std::pair<std::string, std::string>> headers;
  std::string body;
  std::string address;  ///< of the other end
  bool secure = false;  ///< it came by TLS

  /// The first of that name (in lower case); empty if there is none.
  std::string_view header(std::string_view name) const;
};

/// The answer goes on: events of a closing as they happen.
struct Follow {
  record::Uuid closing;
  std::optional<std::int64_t> after;  ///< nothing: from now on
  std::int64_t newest = 0;            ///< last number of the closing
  bool us_units = false;
};

struct Response {
  int status = 200;
  std::string type = "application/json";
  std::shared_ptr<const std::string> body = std::make_shared<const std::string>();
  std::vector<std::pair<std::string, std::string>> headers = {};
  std::optional<Follow> follow = {};
};

Response answer(std::string json, int status = 200);
Response answer(std::string bytes, std::string type);
Response no_content();

/// What stops a call, with its status. Handlers throw it; the door makes the answer of it.
class Refusal : public Error {
 public:
  Refusal(int status, std::string code, const std::string& sentence,
          std::vector<Problem> problems = {}, std::string outstanding = {})
      : Error(std::move(code), sentence),
        status_(status),
        problems_(std::move(problems)),
        outstanding_(std::move(outstanding)) {}
  int status() const { return status_; }
  const std::vector<Problem>& problems() const { return problems_; }
  /// JSON: the list of what stands in a clearance's way; empty if it is not about one.
  const std::string& outstanding() const { return outstanding_; }

 private:
  int status_;
  std::vector<Problem> problems_;
  std::string outstanding_;
};

/// One fault in somebody's input as JSON: Problem of docs/formats/openapi.json.
std::string problem_json(const Problem& problem);

/// The one shape of an error.
Response error_answer(int status, std::string_view code, std::string_view message,
                      const std::vector<Problem>& problems = {},
                      const std::string& outstanding = {});

/// The answer of whatever was thrown by a handler. Nothing of what went wrong inside is told but
/// its code.
Response answer_of(const std::exception& error);

}  // namespace steamworthy::server
