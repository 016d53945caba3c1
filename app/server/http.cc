#include "server/http.h"

#include "wire/json_text.h"

namespace steamworthy::server {

std::string problem_json(const Problem& problem) {
  return wire::JsonObject()
      .put("code", problem.code)
      .put("file", problem.file)
      .put("line", problem.line)
      .put("field", problem.field)
      .put("found", problem.found)
      .put("accepted", problem.accepted)
      .put("message", problem.message)
      .text();
}

std::string_view token(Method method) {
  switch (method) {
    case Method::Get:
      return "GET";
    case Method::Head:
      return "HEAD";
    case Method::Post:
      return "POST";
    case Method::Put:
      return "PUT";
    case Method::Delete:
      return "DELETE";
    case Method::Other:
      break;
  }
  return "-";
}

std::string_view Request::header(std::string_view name) const {
  for (const auto& [known, value] : headers) {
    if (known == name) return value;
  }
  return {};
}

Response answer(std::string json, int status) {
  Response response;
  response.status = status;
  response.body = std::make_shared<const std::string>(std::move(json));
  return response;
}

Response answer(std::string bytes, std::string type) {
  Response response;
  response.type = std::move(type);
  response.body = std::make_shared<const std::string>(std::move(bytes));
  return response;
}

Response no_content() {
  Response response;
  response.status = 204;
  response.type.clear();
  return response;
}

Response error_answer(int status, std::string_view code, std::string_view message,
                      const std::vector<Problem>& problems, const std::string& outstanding) {
  std::vector<std::string> list;
  for (const Problem& problem : problems) list.push_back(problem_json(problem));
  wire::JsonObject object;
  object.put("code", code).put("message", message).list("problems", list);
  if (!outstanding.empty()) object.raw("outstanding", outstanding);
  return answer(object.text(), status);
}

Response answer_of(const std::exception& error) {
  if (const auto* refusal = dynamic_cast<const Refusal*>(&error)) {
    return error_answer(refusal->status(), refusal->code(), refusal->what(), refusal->problems(),
                        refusal->outstanding());
  }
  if (const auto* input = dynamic_cast<const BadInput*>(&error)) {
    return error_answer(422, input->code(), input->what(), input->problems());
  }
  if (const auto* missing = dynamic_cast<const NotFound*>(&error)) {
    return error_answer(404, missing->code(), missing->what());
  }
  if (const auto* range = dynamic_cast<const OutOfRange*>(&error)) {
    return error_answer(422, range->code(), range->what());
  }
  if (const auto* store = dynamic_cast<const StoreError*>(&error)) {
    return error_answer(503, store->code(), "the store refused; what was sent was not kept");
  }
  return error_answer(500, "server.fault", "the program made a mistake; its log says which");
}

}  // namespace steamworthy::server
