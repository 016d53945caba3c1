#include "record/finding.h"

#include <fmt/format.h>

#include <array>

namespace steamworthy::record {
namespace {

struct Row {
  Fault fault;
  Weight weight;
  std::string_view key;
};

constexpr std::string_view prefix = "record.fault.";

// One row a fault, in the order of the enumeration.
constexpr std::array<Row, 26> rows = {{
    {Fault::Unreadable, Weight::Fault, "record.fault.unreadable"},
    {Fault::NoKey, Weight::Fault, "record.fault.no_key"},
    {Fault::BadSignature, Weight::Fault, "record.fault.bad_signature"},
    {Fault::BrokenChain, Weight::Fault, "record.fault.broken_chain"},
    {Fault::Forked, Weight::Fault, "record.fault.forked"},
    {Fault::SameId, Weight::Fault, "record.fault.same_id"},
    {Fault::SeenDiffers, Weight::Fault, "record.fault.seen_differs"},
    {Fault::SeenShrank, Weight::Fault, "record.fault.seen_shrank"},
    {Fault::HashDiffers, Weight::Fault, "record.fault.hash_differs"},
    {Fault::PlaceDiffers, Weight::Fault, "record.fault.place_differs"},
    {Fault::BlobDamaged, Weight::Fault, "record.fault.blob_damaged"},
    {Fault::KeyDamaged, Weight::Fault, "record.fault.key_damaged"},
    {Fault::Gap, Weight::Missing, "record.fault.gap"},
    {Fault::SeenMissing, Weight::Missing, "record.fault.seen_missing"},
    {Fault::BlobMissing, Weight::Missing, "record.fault.blob_missing"},
    {Fault::Doubled, Weight::Remark, "record.fault.doubled"},
    {Fault::BlobUnused, Weight::Remark, "record.fault.blob_unused"},
    {Fault::ClockBack, Weight::Remark, "record.fault.clock_back"},
    {Fault::ClockBehindSeen, Weight::Remark, "record.fault.clock_behind_seen"},
    {Fault::Quarantined, Weight::Remark, "record.fault.quarantined"},
    {Fault::NoExport, Weight::Fault, "record.fault.no_export"},
    {Fault::ExportFormat, Weight::Fault, "record.fault.export_format"},
    {Fault::CutShort, Weight::Fault, "record.fault.cut_short"},
    {Fault::FileHash, Weight::Fault, "record.fault.file_hash"},
    {Fault::FileCounts, Weight::Fault, "record.fault.file_counts"},
    {Fault::Section, Weight::Fault, "record.fault.section"},
}};

constexpr bool rows_are_in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].fault != static_cast<Fault>(i)) return false;
  }
  return rows.size() == static_cast<std::size_t>(Fault::Section) + 1;
}
static_assert(rows_are_in_order());

const Row& row_of(Fault fault) { return rows[static_cast<std::size_t>(fault)]; }

}  // namespace

Weight weight_of(Fault fault) { return row_of(fault).weight; }

std::string_view token(Fault fault) { return row_of(fault).key.substr(prefix.size()); }

std::string text(const FactName& name) {
  return fmt::format("fact {} of device {} ({} {})", name.device_seq, hex(name.feed.device),
                     name.feed.scope.kind == ScopeKind::Plant ? "plant" : "closing",
                     text(name.feed.scope.id));
}

working::Message message(const Finding& finding) {
  working::Message message{std::string(row_of(finding.what).key), {}};
  auto& values = message.values;
  if (finding.fact.device_seq != 0) values.emplace_back("fact", text(finding.fact));
  if (finding.other.device_seq != 0) values.emplace_back("other", text(finding.other));
  if (!finding.where.empty()) values.emplace_back("where", finding.where);
  if (finding.what == Fault::Unreadable) {
    values.emplace_back("flaw", working::Term{std::string(key(finding.flaw))});
  }
  if (!finding.hash.is_zero()) values.emplace_back("blob", hex(finding.hash));
  if (finding.until != 0) values.emplace_back("until", fmt::format("{}", finding.until));
  if (finding.times > 1) values.emplace_back("times", fmt::format("{}", finding.times));
  if (finding.by_ms != 0) {
    values.emplace_back(
        "by", units::Measure{units::Kind::Duration, static_cast<double>(finding.by_ms) / 1000.0});
  }
  if (!finding.text.empty()) values.emplace_back("text", finding.text);
  return message;
}

}  // namespace steamworthy::record
