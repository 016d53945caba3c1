#include "service/log_service.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "record/export_file.h"
#include "record/sha256.h"
#include "store/ed25519.h"
#include "wire/fact_body.h"
#include "words/words.h"

namespace steamworthy::service {
namespace {

[[noreturn]] void refuse(const std::string& code, const std::string& field,
                         const std::string& found, const std::string& accepted,
                         const std::string& message) {
  throw BadInput({{code, "", 0, field, found, accepted, message}});
}

std::uint32_t precision_ms(facts::Precision precision) {
  switch (precision) {
    case facts::Precision::Second:
      return 1000;
    case facts::Precision::Minute:
      return 60'000;
    case facts::Precision::Hour:
      return 3'600'000;
    case facts::Precision::Day:
      return 86'400'000;
  }
  return 60'000;
}

facts::Precision precision_of(std::uint32_t ms) {
  for (const auto precision :
       {facts::Precision::Second, facts::Precision::Minute, facts::Precision::Hour}) {
    if (ms <= precision_ms(precision)) return precision;
  }
  return facts::Precision::Day;
}

/// Which scope each line's closing is; makes those that begin.
class Closings {
 public:
  Closings(store::FactLog& log, store::Surroundings& surroundings, wire::LogKeys log_keys)
      : log_(log), surroundings_(surroundings), log_keys_(log_keys) {}

  std::optional<record::Scope> find(const std::string& name) {
    if (name == "plant") return log_.plant();
    if (const auto uuid = record::read_uuid(name); uuid && record::is_uuid7(*uuid)) {
      return record::Scope{record::ScopeKind::Closing, *uuid};
    }
    if (name.empty() || (name != "new" && log_keys_ == wire::LogKeys::Refuse)) return std::nullopt;
    for (const auto& [known, scope] : begun) {
      if (known == name) return scope;
    }
    record::RandomForUuid random;
    surroundings_.random(random);
    last_ = record::uuid7_after(last_, surroundings_.now_ms(), random);
    begun.emplace_back(name, record::Scope{record::ScopeKind::Closing, last_});
    return begun.back().second;
  }

  std::vector<std::pair<std::string, record::Scope>> begun;

 private:
  store::FactLog& log_;
  store::Surroundings& surroundings_;
  wire::LogKeys log_keys_;
  record::Uuid last_;
};

}  // namespace

record::Scope scope_named(const std::string& name, const record::Scope& plant,
                          const std::string& option) {
  if (name == "plant") return plant;
  const auto uuid = record::read_uuid(name);
  if (!uuid || !record::is_uuid7(*uuid)) {
    refuse("service.no_closing", option, name, "plant, or the id of a closing",
           "is not the name of a closing");
  }
  return {record::ScopeKind::Closing, *uuid};
}

Entered enter_facts(store::FactLog& log, store::Surroundings& surroundings, std::string_view text,
                    const std::string& file, const std::string& closing, wire::LogKeys log_keys) {
  return enter_facts(log, surroundings, wire::read_fact_drafts(text, file, log_keys), file, closing,
                     log_keys);
}

Entered enter_facts(store::FactLog& log, store::Surroundings& surroundings, wire::FactDrafts read,
                    const std::string& file, const std::string& closing, wire::LogKeys log_keys) {
  Closings closings(log, surroundings, log_keys);
  std::vector<store::Draft> drafts;
  for (const wire::FactDraft& line : read.drafts) {
    const std::string& name = line.closing.empty() ? closing : line.closing;
    const auto scope = closings.find(name);
    if (!scope) {
      read.problems.push_back({"service.no_closing", file, line.line, "closing", name,
                               "plant, new, or the id of a closing",
                               "is not the name of a closing"});
    }
    store::Draft draft;
    draft.scope = scope.value_or(record::Scope{});
    draft.person = line.person;
    draft.kind = line.kind;
    draft.kind_version = static_cast<std::uint16_t>(line.kind_version);
    draft.happened_at_ms = line.happened_at_ms.value_or(surroundings.now_ms());
    draft.happened_precision_ms = precision_ms(line.precision);
    draft.utc_offset_min = static_cast<std::int16_t>(line.utc_offset_min);
    draft.body = line.body;
    for (const std::string& photo : line.photos) {
      if (const auto hash = record::from_hex<record::Hash>(photo)) {
        draft.blobs.push_back(*hash);
      } else {
        read.problems.push_back({"service.no_hash", file, line.line, "body.photos", photo,
                                 "64 hexadecimal digits", "is not the SHA-256 of a photo"});
      }
    }
    drafts.push_back(std::move(draft));
  }
  if (!read.problems.empty()) {
    std::stable_sort(read.problems.begin(), read.problems.end(),
                     [](const Problem& a, const Problem& b) { return a.line < b.line; });
    throw BadInput(std::move(read.problems));
  }
  Entered entered{log.append(drafts), std::move(closings.begun)};
  return entered;
}

std::optional<facts::Fact> fact_of(const record::Envelope& envelope, std::string_view body) {
  if (envelope.kind == record::checkpoint_kind) return std::nullopt;
  facts::Fact fact;
  fact.id = text(envelope.id);
  fact.closing =
      envelope.scope.kind == record::ScopeKind::Plant ? "plant" : text(envelope.scope.id);
  fact.device = hex(envelope.device);
  fact.device_seq = static_cast<int>(envelope.device_seq);
  for (const record::Head& head : envelope.seen) {
    fact.seen.push_back({hex(head.device), static_cast<int>(head.device_seq)});
  }
  fact.person = envelope.person;
  fact.happened_at_ms = envelope.happened_at_ms;
  fact.precision = precision_of(envelope.happened_precision_ms);
  fact.recorded_at_ms = envelope.recorded_at_ms;
  fact.utc_offset_min = envelope.utc_offset_min;
  fact.version = envelope.kind_version;
  wire::ReadBody read =
      wire::read_body(envelope.kind, envelope.kind_version, body, wire::UnknownKeys::Allow);
  fact.body = std::move(read.body);
  fact.beside = std::move(read.beside);
  return fact;
}

std::vector<Listed> list_facts(const std::vector<store::StoredFact>& stored,
                               const std::optional<record::Scope>& scope) {
  std::vector<record::Link> links;
  std::vector<Listed> listed;
  for (const store::StoredFact& fact : stored) {
    const record::Parsed parsed = record::parse(fact.sealed.bytes);
    if (!parsed) continue;  // a store that holds such bytes is damaged: verify says so
    const record::Envelope& envelope = parsed.fact->envelope;
    if (scope && !(envelope.scope == *scope)) continue;
    links.push_back(link_of(envelope, record::sha256(fact.sealed.bytes)));
    const auto told = fact_of(envelope, parsed.fact->body);
    listed.push_back({fact.intake_no, envelope,
                      told ? words::sentence(facts::tell(*told))
                           : words::sentence({std::string(record::checkpoint_kind), {}})});
    if (told && !told->beside.note.empty()) listed.back().sentence += " " + told->beside.note;
  }
  std::vector<Listed> ordered;
  for (const std::size_t i : record::causal_order(links)) ordered.push_back(std::move(listed[i]));
  return ordered;
}

store::Examination verify_export(std::string_view file,
                                 const std::vector<std::string>& known_keys) {
  std::vector<record::PublicKey> keys;
  for (const std::string& text : known_keys) {
    const auto key = record::from_hex<record::PublicKey>(text);
    if (!key) {
      refuse("service.no_key", "--key", text, "64 hexadecimal digits", "is not a device's key");
    }
    keys.push_back(*key);
  }
  const store::Ed25519Verifier verifier;
  return {{}, record::verify_export(file, verifier, keys)};
}

bool is_export(std::string_view start) { return start.substr(0, 8) == "SWEXPORT"; }

}  // namespace steamworthy::service
