// FactLog: where facts are kept. Facts are added and read; nothing is ever changed or taken out.
//
// A log belongs to one device, which signs what is appended here, and takes in what others have
// signed. It knows envelopes and bytes, and nothing of boilers. All functions may be called from
// any thread. What every log must do is in fact_log_contract_test.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record/chain.h"
#include "record/envelope.h"
#include "record/export_file.h"

namespace steamworthy::store {

/// A fact as it is reported; the log adds the rest of the envelope.
struct Draft {
  record::Scope scope;
  std::string person;
  std::string kind;
  std::uint16_t kind_version = 1;
  std::int64_t happened_at_ms = 0;
  std::uint32_t happened_precision_ms = 0;
  std::int16_t utc_offset_min = 0;
  std::vector<record::Hash> blobs;  ///< in any order
  std::string body;
};

/// A fact that is on the disk.
struct Receipt {
  std::int64_t intake_no = 0;
  record::Uuid id;
  record::FactName name;
  record::Hash hash;
};

/// What became of a fact that came from elsewhere.
enum class Intake {
  Stored,
  Known,        ///< it was there before
  Quarantined,  ///< kept aside and shown, not counted among the facts
};

struct Received {
  Intake how = Intake::Stored;
  std::int64_t intake_no = 0;  ///< of Stored and Known
  std::string reason = {};     ///< of Quarantined: "bad_signature", "no_key", "forked",
                               ///< "broken_chain", or a flaw such as "flaw.kind"
};

struct StoredFact {
  std::int64_t intake_no = 0;  ///< 1, 2, 3 ... without gaps, in the order of arrival here
  record::SealedFact sealed;
};

class FactLog {
 public:
  virtual ~FactLog() = default;

  /// The device that signs here.
  virtual record::DeviceId device() const = 0;
  /// The scope of the plant's own feeds.
  virtual record::Scope plant() const = 0;

  /// Signs and stores; returns once all of them are safe on the disk. All or none.
  /// Throws   OutOfRange "record.cannot_write" for a draft that no fact can hold; StoreError if the
  ///          disk or the database refused: then none of them counts.
  virtual std::vector<Receipt> append(const std::vector<Draft>& drafts) = 0;

  /// Takes in facts that others have signed, in any order; returns once they are safe on the disk.
  virtual std::vector<Received> receive(const std::vector<record::SealedFact>& facts) = 0;

  /// Makes a device's key known, and takes in the facts that were quarantined for want of it.
  virtual void add_key(const record::PublicKey& key) = 0;
  /// By rising device.
  virtual std::vector<record::PublicKey> keys() const = 0;

  /// At most `most` facts after an intake number, in the order of arrival.
  virtual std::vector<StoredFact> read(std::int64_t after_intake_no, std::size_t most) const = 0;

  /// The scopes of which there is a fact.
  virtual std::vector<record::Scope> scopes() const = 0;
  /// The last fact of each feed of a scope up to which none is missing; by rising device.
  virtual std::vector<record::Head> heads(const record::Scope& scope) const = 0;

  /// Stores a photo's or a trace's bytes; the same content is stored once.
  virtual record::Hash add_blob(std::string_view content) = 0;
  virtual std::optional<std::string> blob(const record::Hash& hash) const = 0;
  /// Rising.
  virtual std::vector<record::Hash> blobs() const = 0;

  /// In the order of arrival.
  virtual std::vector<record::QuarantinedFact> quarantined() const = 0;
};

/// The draft by which a node countersigns what it knows of a scope.
Draft checkpoint_draft(const record::Scope& scope, std::int64_t now_ms);

/// Largest blob that is stored.
inline constexpr std::size_t largest_blob = std::size_t{64} << 20;

}  // namespace steamworthy::store
