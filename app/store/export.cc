#include "store/export.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <set>

#include "base/error.h"
#include "store/backup.h"

namespace steamworthy::store {
namespace {

constexpr std::size_t batch = 1000;

struct Closer {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

/// Whether all that the last fact of this device knew is still all that there is.
bool needs_checkpoint(const FactLog& log, const record::Scope& scope,
                      const std::vector<record::Head>& signed_heads) {
  std::vector<record::Head> heads = log.heads(scope);
  heads.erase(std::remove_if(heads.begin(), heads.end(),
                             [&](const record::Head& h) { return h.device == log.device(); }),
              heads.end());
  return heads != signed_heads;
}

/// What this device's checkpoints of each scope have named last.
std::map<record::Scope, std::vector<record::Head>> checkpoints_of(const FactLog& log) {
  std::map<record::Scope, std::vector<record::Head>> last;
  std::int64_t after = 0;
  for (;;) {
    const auto facts = log.read(after, batch);
    if (facts.empty()) return last;
    for (const StoredFact& fact : facts) {
      const record::Parsed parsed = record::parse(fact.sealed.bytes);
      if (!parsed) continue;
      const record::Envelope& e = parsed.fact->envelope;
      if (e.device == log.device() && e.kind == record::checkpoint_kind) last[e.scope] = e.seen;
    }
    after = facts.back().intake_no;
  }
}

class Exporter {
 public:
  Exporter(FactLog& log, std::optional<record::Scope> closing) : log_(log), closing_(closing) {}

  void countersign(std::int64_t now_ms) {
    auto last = checkpoints_of(log_);
    std::vector<Draft> drafts;
    for (const record::Scope& scope : log_.scopes()) {
      if (is_wanted(scope) && needs_checkpoint(log_, scope, last[scope])) {
        drafts.push_back(checkpoint_draft(scope, now_ms));
      }
    }
    log_.append(drafts);
  }

  Exported write(record::ExportWriter& writer) {
    std::set<record::DeviceId> devices;
    std::set<record::Hash> blobs;
    each_fact([&](const StoredFact&, const record::Envelope& envelope) {
      devices.insert(envelope.device);
      blobs.insert(envelope.blobs.begin(), envelope.blobs.end());
    });
    for (const record::PublicKey& key : log_.keys()) {
      if (devices.count(device_of(key)) != 0) writer.add_key(key);
    }
    Exported exported;
    each_fact([&](const StoredFact& fact, const record::Envelope&) {
      writer.add_fact(static_cast<std::uint64_t>(fact.intake_no), fact.sealed);
      ++exported.facts;
    });
    for (const record::Hash& hash : blobs) {
      if (const auto content = log_.blob(hash)) {
        writer.add_blob(*content);
        ++exported.blobs;
      } else {
        exported.missing_blobs.push_back(hash);
      }
    }
    for (const record::QuarantinedFact& fact : log_.quarantined()) writer.add_quarantined(fact);
    return exported;
  }

 private:
  bool is_wanted(const record::Scope& scope) const {
    return !closing_ || scope == *closing_ || scope == log_.plant();
  }

  template <class Use>
  void each_fact(Use use) const {
    std::int64_t after = 0;
    for (;;) {
      const auto facts = log_.read(after, batch);
      if (facts.empty()) return;
      for (const StoredFact& fact : facts) {
        const record::Parsed parsed = record::parse(fact.sealed.bytes);
        if (parsed && is_wanted(parsed.fact->envelope.scope)) use(fact, parsed.fact->envelope);
      }
      after = facts.back().intake_no;
    }
  }

  FactLog& log_;
  std::optional<record::Scope> closing_;
};

}  // namespace

Exported export_log(FactLog& log, const std::string& path, std::optional<record::Scope> closing,
                    std::int64_t now_ms) {
  if (closing) {
    const auto scopes = log.scopes();
    if (std::find(scopes.begin(), scopes.end(), *closing) == scopes.end()) {
      throw NotFound("store.unknown_closing",
                     "there is no fact of the closing " + text(closing->id));
    }
  }
  if (::access(path.c_str(), F_OK) == 0) {
    throw StoreError("store.exists",
                     "there is a file " + path + " already; it is not written over");
  }
  Exporter exporter(log, closing);
  exporter.countersign(now_ms);
  const std::string unfinished = path + ".unfinished";
  std::unique_ptr<std::FILE, Closer> file(std::fopen(unfinished.c_str(), "wb"));
  if (!file) throw StoreError("store.cannot_open", unfinished + ": " + std::strerror(errno));
  bool good = true;
  record::ExportWriter writer(
      [&](std::string_view bytes) {
        good = good && std::fwrite(bytes.data(), 1, bytes.size(), file.get()) == bytes.size();
      },
      {now_ms, "steamworthy " STEAMWORTHY_VERSION, closing});
  const Exported exported = exporter.write(writer);
  writer.end();
  good = good && std::fflush(file.get()) == 0;
  const std::string why = std::strerror(errno);
  file.reset();
  if (!good) {
    std::remove(unfinished.c_str());
    throw StoreError("store.io", unfinished + ": " + why);
  }
  rename_synced(unfinished, path);
  return exported;
}

}  // namespace steamworthy::store
