#include "record/inspection.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/sha256.h"

namespace steamworthy::record {

std::size_t Report::count(Weight weight) const {
  return static_cast<std::size_t>(std::count_if(
      findings.begin(), findings.end(),
      [weight](const Finding& finding) { return weight_of(finding.what) == weight; }));
}

void Inspection::add_key(const PublicKey& key) {
  keys_[device_of(key)] = key;
  ++report_.keys;
}

void Inspection::add_known_key(const PublicKey& key) {
  keys_[device_of(key)] = key;
  known_.insert(device_of(key));
}

void Inspection::check_signature(const PublicKey& key, std::string_view bytes,
                                 const Signature& signature, const FactName& name,
                                 const std::string& where) {
  if (verifier_.verify(key, bytes, signature)) {
    ++report_.verified;
    signed_.insert(name.feed.device);
  } else {
    add({Fault::BadSignature, name, {}, where});
  }
}

Parsed Inspection::add_fact(std::string_view bytes, const Signature& signature,
                            const std::string& where) {
  ++report_.facts;
  Parsed parsed = parse(bytes);
  if (!parsed) {
    Finding finding{Fault::Unreadable, {}, {}, where};
    finding.flaw = parsed.flaw;
    add(finding);
    return parsed;
  }
  const Envelope& envelope = parsed.fact->envelope;
  links_.push_back(link_of(envelope, sha256(bytes)));
  for (const Hash& blob : envelope.blobs) named_blobs_.try_emplace(blob, links_.back().name());
  const auto key = keys_.find(envelope.device);
  if (key == keys_.end()) {
    pending_.push_back(
        {envelope.device, links_.back().name(), std::string(bytes), signature, where});
  } else {
    check_signature(key->second, bytes, signature, links_.back().name(), where);
  }
  return parsed;
}

void Inspection::add_stored_fact(std::string_view bytes, const Signature& signature,
                                 const std::string& where, const Hash& hash, const Feed& feed,
                                 std::uint64_t device_seq) {
  if (!add_fact(bytes, signature, where)) return;
  const Link& link = links_.back();
  if (link.hash != hash) add({Fault::HashDiffers, link.name(), {}, where});
  if (!(link.feed == feed) || link.device_seq != device_seq) {
    add({Fault::PlaceDiffers, link.name(), {feed, device_seq}, where});
  }
}

Hash Inspection::add_blob(std::string_view content) {
  ++report_.blobs;
  const Hash hash = sha256(content);
  blobs_.insert(hash);
  return hash;
}

void Inspection::add_stored_blob(std::string_view content, const Hash& name) {
  ++report_.blobs;
  blobs_.insert(name);
  if (sha256(content) == name) return;
  Finding finding{Fault::BlobDamaged};
  finding.hash = name;
  add(finding);
}

void Inspection::add_quarantined(const std::string& reason, const std::string& where) {
  ++report_.quarantined;
  Finding finding{Fault::Quarantined, {}, {}, where};
  finding.text = reason;
  add(finding);
}

Report Inspection::report() {
  for (const Pending& fact : pending_) {
    const auto key = keys_.find(fact.device);
    if (key == keys_.end()) {
      add({Fault::NoKey, fact.name, {}, fact.where});
    } else {
      check_signature(key->second, fact.bytes, fact.signature, fact.name, fact.where);
    }
  }
  ChainReport chain = check_chain(links_);
  report_.feeds = std::move(chain.feeds);
  for (Finding& finding : chain.findings) add(std::move(finding));
  for (const auto& [hash, name] : named_blobs_) {
    if (blobs_.count(hash) != 0) continue;
    Finding finding{Fault::BlobMissing, name};
    finding.hash = hash;
    add(finding);
  }
  for (const Hash& hash : blobs_) {
    if (named_blobs_.count(hash) != 0) continue;
    Finding finding{Fault::BlobUnused};
    finding.hash = hash;
    add(finding);
  }
  report_.devices.assign(signed_.begin(), signed_.end());
  for (const DeviceId& device : signed_) {
    if (known_.count(device) != 0) report_.known_devices.push_back(device);
  }
  std::stable_sort(
      report_.findings.begin(), report_.findings.end(),
      [](const Finding& a, const Finding& b) { return weight_of(a.what) < weight_of(b.what); });
  return std::move(report_);
}

namespace {

std::string number(std::uint64_t value) { return fmt::format("{}", value); }

std::string scope_text(const Scope& scope) {
  return (scope.kind == ScopeKind::Plant ? "plant " : "closing ") + text(scope.id);
}

working::Message about(const char* key, const FeedReport& feed, std::uint64_t seq,
                       const DeviceId& by) {
  working::Message message{key, {}};
  message.values = {{"scope", scope_text(feed.feed.scope)},
                    {"device", hex(feed.feed.device)},
                    {"number", number(seq)},
                    {"last", number(feed.last)}};
  if (!by.is_zero()) message.values.emplace_back("by", hex(by));
  return message;
}

}  // namespace

Meaning meaning(const Report& report) {
  Meaning meaning;
  auto& proves = meaning.proves;
  auto& open = meaning.not_proved;
  if (!report.is_sound()) {
    open.push_back({"record.not_proved.not_sound", {}});
    return meaning;
  }
  if (report.facts == 0) {
    open.push_back({"record.not_proved.empty", {}});
    return meaning;
  }
  proves.push_back({"record.proves.signed", {{"facts", number(report.facts)}}});
  proves.push_back({report.is_whole() ? "record.proves.whole" : "record.proves.order", {}});
  for (const FeedReport& feed : report.feeds) {
    if (feed.checkpoint != 0) {
      proves.push_back(
          about("record.proves.checkpoint", feed, feed.checkpoint, feed.checkpoint_by));
    } else if (feed.vouched != 0) {
      proves.push_back(about("record.proves.vouched", feed, feed.vouched, feed.voucher));
    }
    if (feed.last > std::max(feed.vouched, feed.checkpoint)) {
      open.push_back(about("record.not_proved.end_of_feed", feed,
                           std::max(feed.vouched, feed.checkpoint), {}));
    }
  }
  if (!report.is_whole()) open.push_back({"record.not_proved.missing", {}});
  for (const DeviceId& device : report.devices) {
    const bool known = std::find(report.known_devices.begin(), report.known_devices.end(),
                                 device) != report.known_devices.end();
    (known ? proves : open)
        .push_back({known ? "record.proves.known_key" : "record.not_proved.whose_key",
                    {{"device", hex(device)}}});
  }
  open.push_back({"record.not_proved.truth", {}});
  open.push_back({"record.not_proved.times", {}});
  open.push_back({"record.not_proved.person", {}});
  return meaning;
}

}  // namespace steamworthy::record
