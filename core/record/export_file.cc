#include "record/export_file.h"

#include <fmt/format.h>

#include <memory>

#include "base/utf8.h"
#include "record/octets.h"
#include "record/sha256.h"

namespace steamworthy::record {
namespace {

constexpr std::string_view magic = "SWEXPORT";
constexpr std::uint16_t format = 1;

std::string place(std::size_t at) { return fmt::format("byte {}", at); }

/// Reads one file from its start; what cannot be read becomes a finding.
class FileReader {
 public:
  explicit FileReader(std::string_view file) : file_(file), in_(file) {}

  ExportContents run() {
    const std::string_view start = in_.bytes(magic.size());
    const auto found = in_.whole<std::uint16_t>();
    if (start != magic || !in_.is_good()) {
      find(Fault::NoExport, 0);
      return std::move(out_);
    }
    if (found != format) {
      find(Fault::ExportFormat, magic.size());
      return std::move(out_);
    }
    while (!ended_ && in_.left() > 0) {
      if (!read_section()) return std::move(out_);
    }
    if (!ended_) find(Fault::CutShort, in_.at());
    if (ended_ && in_.left() > 0) find(Fault::Section, in_.at(), "after the end");
    return std::move(out_);
  }

 private:
  void find(Fault fault, std::size_t at, std::string text = {}) {
    Finding finding{fault, {}, {}, place(at)};
    finding.text = std::move(text);
    out_.findings.push_back(std::move(finding));
  }

  bool read_section() {
    const std::size_t at = in_.at();
    const std::string_view type = in_.bytes(4);
    const std::string_view payload = in_.bytes(in_.whole<std::uint64_t>());
    if (!in_.is_good()) {
      find(Fault::CutShort, at);
      return false;
    }
    if (!read_payload(type, payload, at)) {
      std::string shown;
      for (const char c : type) shown += c >= 'A' && c <= 'Z' ? c : '?';
      find(Fault::Section, at, shown);
    }
    return true;
  }

  bool read_payload(std::string_view type, std::string_view payload, std::size_t at) {
    OctetReader in(payload);
    if ((type == "HEAD") != (at == magic.size() + 2)) return false;
    if (type == "HEAD") return read_head(in);
    if (type == "DKEY") {
      const auto key = from_bytes<PublicKey>(payload);
      if (key) out_.keys.push_back(*key);
      return key.has_value();
    }
    if (type == "FACT") {
      ExportedFact fact;
      fact.intake_no = in.whole<std::uint64_t>();
      in.fixed(fact.signature);
      fact.bytes = in.bytes(in.left());
      if (in.is_good()) out_.facts.push_back(fact);
      return in.is_good();
    }
    if (type == "BLOB") {
      out_.blobs.push_back(payload);
      return true;
    }
    if (type == "QUAR") return read_quarantined(in);
    if (type == "DONE") return read_end(in, at);
    return false;
  }

  bool read_head(OctetReader& in) {
    ExportHead head;
    head.exported_at_ms = static_cast<std::int64_t>(in.whole<std::uint64_t>());
    head.program = in.bytes(in.whole<std::uint16_t>());
    const auto selection = in.whole<std::uint8_t>();
    Scope closing;
    in.fixed(closing.id);
    if (!in.is_good() || in.left() != 0 || line_of_bad_utf8(head.program)) return false;
    if (selection == 2) {
      head.closing = closing;
    } else if (selection != 0 || !closing.id.is_zero()) {
      return false;
    }
    out_.head = std::move(head);
    return true;
  }

  bool read_quarantined(OctetReader& in) {
    QuarantinedFact fact;
    fact.received_at_ms = static_cast<std::int64_t>(in.whole<std::uint64_t>());
    fact.reason = in.bytes(in.whole<std::uint16_t>());
    in.fixed(fact.signature);
    fact.bytes = in.bytes(in.left());
    if (!in.is_good() || line_of_bad_utf8(fact.reason)) return false;
    out_.quarantined.push_back(std::move(fact));
    return true;
  }

  bool read_end(OctetReader& in, std::size_t at) {
    const auto facts = in.whole<std::uint64_t>();
    const auto keys = in.whole<std::uint64_t>();
    const auto blobs = in.whole<std::uint64_t>();
    const auto quarantined = in.whole<std::uint64_t>();
    Hash hash;
    in.fixed(hash);
    if (!in.is_good() || in.left() != 0) return false;
    ended_ = true;
    if (facts != out_.facts.size() || keys != out_.keys.size() || blobs != out_.blobs.size() ||
        quarantined != out_.quarantined.size()) {
      find(Fault::FileCounts, at);
    }
    if (hash != sha256(file_.substr(0, at))) find(Fault::FileHash, at);
    return true;
  }

  std::string_view file_;
  OctetReader in_;
  ExportContents out_;
  bool ended_ = false;
};

}  // namespace

struct ExportWriter::Hasher {
  Sha256 hash;
};

ExportWriter::ExportWriter(Sink sink, const ExportHead& head)
    : sink_(std::move(sink)), hasher_(std::make_shared<Hasher>()) {
  OctetWriter start;
  start.bytes(magic);
  start.whole<std::uint16_t>(format);
  write(start.take());
  OctetWriter out;
  out.whole<std::uint64_t>(static_cast<std::uint64_t>(head.exported_at_ms));
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(head.program.size()));
  out.bytes(head.program);
  out.whole<std::uint8_t>(head.closing ? 2 : 0);
  out.fixed(head.closing ? head.closing->id : Uuid{});
  section("HEAD", out.take());
}

void ExportWriter::write(std::string_view bytes) {
  hasher_->hash.add(bytes);
  sink_(bytes);
}

void ExportWriter::section(std::string_view type, std::string_view payload) {
  OctetWriter out;
  out.bytes(type);
  out.whole<std::uint64_t>(payload.size());
  write(out.take());
  write(payload);
}

void ExportWriter::add_key(const PublicKey& key) {
  section("DKEY", key.view());
  ++keys_;
}

void ExportWriter::add_fact(std::uint64_t intake_no, const SealedFact& fact) {
  OctetWriter out;
  out.whole<std::uint64_t>(intake_no);
  out.fixed(fact.signature);
  out.bytes(fact.bytes);
  section("FACT", out.take());
  ++facts_;
}

void ExportWriter::add_blob(std::string_view content) {
  section("BLOB", content);
  ++blobs_;
}

void ExportWriter::add_quarantined(const QuarantinedFact& fact) {
  OctetWriter out;
  out.whole<std::uint64_t>(static_cast<std::uint64_t>(fact.received_at_ms));
  out.whole<std::uint16_t>(static_cast<std::uint16_t>(fact.reason.size()));
  out.bytes(fact.reason);
  out.fixed(fact.signature);
  out.bytes(fact.bytes);
  section("QUAR", out.take());
  ++quarantined_;
}

void ExportWriter::end() {
  OctetWriter out;
  out.whole<std::uint64_t>(facts_);
  out.whole<std::uint64_t>(keys_);
  out.whole<std::uint64_t>(blobs_);
  out.whole<std::uint64_t>(quarantined_);
  out.fixed(hasher_->hash.finish());
  OctetWriter start;
  start.bytes("DONE");
  const std::string payload = out.take();
  start.whole<std::uint64_t>(payload.size());
  sink_(start.take());
  sink_(payload);
}

ExportContents read_export(std::string_view file) { return FileReader(file).run(); }

Report verify_export(std::string_view file, const Verifier& verifier,
                     const std::vector<PublicKey>& known_keys) {
  const ExportContents contents = read_export(file);
  Inspection inspection(verifier);
  for (const Finding& finding : contents.findings) inspection.add(finding);
  for (const PublicKey& key : contents.keys) inspection.add_key(key);
  for (const PublicKey& key : known_keys) inspection.add_known_key(key);
  for (const ExportedFact& fact : contents.facts) {
    inspection.add_fact(fact.bytes, fact.signature, fmt::format("intake {}", fact.intake_no));
  }
  for (const std::string_view blob : contents.blobs) inspection.add_blob(blob);
  for (const QuarantinedFact& fact : contents.quarantined) {
    inspection.add_quarantined(fact.reason, fmt::format("received {}", fact.received_at_ms));
  }
  return inspection.report();
}

}  // namespace steamworthy::record
