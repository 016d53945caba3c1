#include "server/plain_calls.h"

#include "assets/assets.h"
#include "wire/json_text.h"

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

}  // namespace steamworthy::server
