#include "wire/record_json.h"

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

const char* token(record::Weight weight) {
  switch (weight) {
    case record::Weight::Fault:
      return "fault";
    case record::Weight::Missing:
      return "missing";
    case record::Weight::Remark:
      return "remark";
  }
  return "fault";
}

Json feed_json(const record::FeedReport& feed) {
  Json json{{"scope", feed.feed.scope.kind == record::ScopeKind::Plant ? "plant" : "closing"},
            {"scope_id", text(feed.feed.scope.id)},
            {"device", hex(feed.feed.device)},
            {"facts", feed.facts},
            {"first", feed.first},
            {"last", feed.last},
            {"last_hash", hex(feed.last_hash)},
            {"vouched", feed.vouched},
            {"checkpoint", feed.checkpoint}};
  if (feed.vouched != 0) json["vouched_by"] = hex(feed.voucher);
  if (feed.checkpoint != 0) json["checkpoint_by"] = hex(feed.checkpoint_by);
  return json;
}

}  // namespace

std::string report_json(const record::Report& report, const std::vector<std::string>& damage) {
  Json findings = Json::array();
  for (const record::Finding& finding : report.findings) {
    findings.push_back({{"fault", record::token(finding.what)},
                        {"weight", token(weight_of(finding.what))},
                        {"message", message_json(message(finding))}});
  }
  Json feeds = Json::array();
  for (const record::FeedReport& feed : report.feeds) feeds.push_back(feed_json(feed));
  const record::Meaning meaning = damage.empty()
                                      ? record::meaning(report)
                                      : record::Meaning{{}, {{"record.not_proved.not_sound", {}}}};
  return text(Json{{"ok", damage.empty() && report.is_sound()},
                   {"whole", damage.empty() && report.is_whole()},
                   {"facts", report.facts},
                   {"verified", report.verified},
                   {"keys", report.keys},
                   {"blobs", report.blobs},
                   {"quarantined", report.quarantined},
                   {"damage", damage},
                   {"findings", std::move(findings)},
                   {"feeds", std::move(feeds)},
                   {"proves", messages_json(meaning.proves)},
                   {"not_proved", messages_json(meaning.not_proved)}});
}

}  // namespace steamworthy::wire
