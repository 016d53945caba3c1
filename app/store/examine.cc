#include "store/examine.h"

#include <fmt/format.h>
#include <unistd.h>

#include "base/error.h"
#include "record/sha256.h"
#include "store/schema.h"
#include "store/sqlite.h"
#include "store/tables.h"
#include "words/words.h"

namespace steamworthy::store {
namespace {

using record::from_bytes;

/// Reads a store table by table; what one table hides must not hide the next.
class Examiner {
 public:
  Examiner(Database& database, const record::Verifier& verifier, Examination& into)
      : database_(database), inspection_(verifier), out_(into) {}

  void run() {
    attempt([this] { check_tables(database_); });
    attempt([this] { plant_of(database_); });
    attempt([this] { pages(); });
    attempt([this] { keys(); });
    attempt([this] { facts(); });
    attempt([this] { blobs(); });
    attempt([this] { quarantined(); });
    out_.report = inspection_.report();
  }

 private:
  template <class Step>
  void attempt(Step step) {
    try {
      step();
    } catch (const StoreError& error) {
      if (error.code() == "store.unknown_version" || error.code() == "store.old_version" ||
          error.code() == "store.not_a_store") {
        throw;
      }
      out_.damage.push_back(error.what());
    }
  }

  void pages() {
    Statement rows(database_, "PRAGMA integrity_check");
    while (rows.step()) {
      if (rows.blob(0) != "ok") out_.damage.push_back("database: " + std::string(rows.blob(0)));
    }
  }

  void keys() {
    Statement rows(database_, "SELECT device, key FROM device ORDER BY device");
    while (rows.step()) {
      const auto key = from_bytes<record::PublicKey>(rows.blob(1));
      if (key && record::device_of(*key).view() == rows.blob(0)) {
        inspection_.add_key(*key);
        continue;
      }
      record::Finding finding{record::Fault::KeyDamaged, {}, {}, "table device"};
      finding.text = record::hex(rows.blob(0));
      inspection_.add(finding);
    }
  }

  void facts() {
    Statement rows(
        database_,
        "SELECT intake_no, device_seq, hash, signature, bytes, scope_kind, scope_id, device"
        " FROM fact LEFT JOIN feed USING(feed) ORDER BY intake_no");
    std::int64_t expected = 1;
    while (rows.step()) {
      const std::int64_t intake_no = rows.whole(0);
      const std::string where = fmt::format("intake {}", intake_no);
      if (intake_no != expected) {
        out_.damage.push_back(fmt::format("the fact of intake {} is gone", expected));
      }
      expected = intake_no + 1;
      const auto hash = from_bytes<record::Hash>(rows.blob(2));
      const auto signature = from_bytes<record::Signature>(rows.blob(3));
      const auto scope_id = from_bytes<record::Uuid>(rows.blob(6));
      const auto device = from_bytes<record::DeviceId>(rows.blob(7));
      if (!hash || !signature || !scope_id || !device) {
        out_.damage.push_back(where + ": the row of a fact, or of its feed, is cut");
      }
      const record::Feed feed{
          {static_cast<record::ScopeKind>(rows.whole(5)), scope_id.value_or(record::Uuid{})},
          device.value_or(record::DeviceId{})};
      inspection_.add_stored_fact(rows.blob(4), signature.value_or(record::Signature{}), where,
                                  hash.value_or(record::Hash{}), feed,
                                  static_cast<std::uint64_t>(rows.whole(1)));
    }
  }

  void blobs() {
    Statement rows(database_, "SELECT hash, content FROM blob ORDER BY hash");
    while (rows.step()) {
      const auto name = from_bytes<record::Hash>(rows.blob(0));
      if (!name) out_.damage.push_back("the name of a blob is cut");
      inspection_.add_stored_blob(rows.blob(1), name.value_or(record::Hash{}));
    }
  }

  void quarantined() {
    for (const Tables::Place& place : Tables(database_).quarantined()) {
      inspection_.add_quarantined(place.fact.reason, fmt::format("place {}", place.place));
    }
  }

  Database& database_;
  record::Inspection inspection_;
  Examination& out_;
};

}  // namespace

std::string Examination::first_fault() const {
  if (!damage.empty()) return damage.front();
  for (const record::Finding& finding : report.findings) {
    if (weight_of(finding.what) == record::Weight::Fault) {
      return words::sentence(record::message(finding));
    }
  }
  return {};
}

Examination examine(const std::string& path, const record::Verifier& verifier,
                    const std::string& vfs) {
  if (vfs.empty() && ::access(path.c_str(), F_OK) != 0) {
    throw StoreError("store.missing", "there is no store " + path);
  }
  Examination examination;
  try {
    Database database(path, OpenMode::Read, vfs);
    version_of(database);
    Examiner(database, verifier, examination).run();
  } catch (const StoreError& error) {
    if (error.code() != "store.damaged" && error.code() != "store.io") throw;
    examination.damage.push_back(error.what());
  }
  return examination;
}

}  // namespace steamworthy::store
