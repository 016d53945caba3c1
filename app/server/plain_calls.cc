#include "server/plain_calls.h"

#include "assets/assets.h"
#include "rules/circumstances.h"
#include "rules/input_names.h"
#include "service/sheet_service.h"
#include "wire/fact_body.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {

Outcome health(House& house, const Call& call) {
  return answer(wire::JsonObject()
                    .put("status", house.stopping ? "stopping" : "ok")
                    .put("version", STEAMWORTHY_VERSION)
                    .put("intake_no", house.closings.newest())
                    .put("uptime_s", (call.now_ms - house.started_at_ms) / 1000)
                    .put("watching", house.hub.followers())
                    .text());
}

Outcome openapi(House&, const Call&) {
  return answer(std::string(assets::openapi().front().bytes), std::string("application/json"));
}

namespace {

/// Words that a request for a sheet may say, with what they mean.
std::vector<std::string> choices(const char* family, const std::vector<std::string_view>& tokens) {
  std::vector<std::string> list;
  for (const std::string_view token : tokens) {
    list.push_back(wire::JsonObject()
                       .put("token", token)
                       .put("text", words::label(rules::words_key(family, token), {}))
                       .text());
  }
  return list;
}

}  // namespace

Outcome rules_shipped(House&, const Call&) {
  std::vector<std::string> list;
  for (const rules::Rule& rule : service::shipped_rules()) {
    list.push_back(wire::JsonObject()
                       .put("id", rule.id)
                       .put("title", rule.title)
                       .put("jurisdiction", rule.jurisdiction)
                       .put("edition", rule.edition)
                       .put("source", rule.source.key)
                       .put("seen", rules::token(rule.source.seen))
                       .put("sha256", rule.content_hash)
                       .text());
  }
  return answer(wire::JsonObject()
                    .list("rules", list)
                    .list("works", choices("work", rules::work_tokens()))
                    .list("traits", choices("trait", rules::trait_tokens()))
                    .text());
}

Outcome site_limits(House& house, const Call&) {
  const auto plant = house.accounts.plant();
  return answer(wire::JsonObject()
                    .put("is_set", plant->limits.has_value())
                    .raw("limits", plant->limits ? wire::body_json(*plant->limits) : "{}")
                    .text());
}

Outcome set_site_limits(House& house, const Call& call) {
  const facts::Kind& kind = facts::SiteLimitsSet::kind;
  const wire::ReadBody read =
      wire::read_body(kind.token, kind.version, call.request.body, wire::UnknownKeys::Refuse);
  const auto* limits = std::get_if<facts::SiteLimitsSet>(&read.body);
  if (limits == nullptr || !read.problems.empty()) {
    throw Refusal(400, read.problems.empty() ? "wire.syntax" : read.problems.front().code,
                  read.problems.empty() ? "this cannot be read" : sentence(read.problems.front()),
                  read.problems);
  }
  const std::int64_t intake_no = house.accounts.set_limits(*limits, call.caller.person);
  return answer(wire::JsonObject().put("intake_no", intake_no).text());
}

}  // namespace steamworthy::server
