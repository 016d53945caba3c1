// The export file: facts, keys and blobs in one file that can be checked without this program.
//
// Its layout is docs/formats/record.md, "The export file".
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "record/inspection.h"

namespace steamworthy::record {

/// Says what an export holds.
struct ExportHead {
  std::int64_t exported_at_ms = 0;
  std::string program;           ///< "steamworthy 0.1.0"
  std::optional<Scope> closing;  ///< one closing and its plant; everything if there is none
};

/// Bytes that were refused when they came, and kept.
struct QuarantinedFact {
  std::int64_t received_at_ms = 0;
  std::string reason;  ///< token of a fault
  std::string bytes;
  Signature signature;
};

/// Writes an export piece by piece into a sink: head first, end() last.
class ExportWriter {
 public:
  using Sink = std::function<void(std::string_view)>;
  ExportWriter(Sink sink, const ExportHead& head);

  void add_key(const PublicKey& key);
  void add_fact(std::uint64_t intake_no, const SealedFact& fact);
  void add_blob(std::string_view content);
  void add_quarantined(const QuarantinedFact& fact);
  void end();

 private:
  void write(std::string_view bytes);
  void section(std::string_view type, std::string_view payload);

  struct Hasher;
  Sink sink_;
  std::shared_ptr<Hasher> hasher_;
  std::uint64_t facts_ = 0, keys_ = 0, blobs_ = 0, quarantined_ = 0;
};

struct ExportedFact {
  std::uint64_t intake_no = 0;
  std::string_view bytes;
  Signature signature;
};

/// What a file holds; views point into it. Only what could be read is there.
struct ExportContents {
  std::optional<ExportHead> head;
  std::vector<PublicKey> keys;
  std::vector<ExportedFact> facts;
  std::vector<std::string_view> blobs;
  std::vector<QuarantinedFact> quarantined;
  std::vector<Finding> findings;  ///< of the file itself, not of what is in it
};
ExportContents read_export(std::string_view file);

/// Reads a file and inspects all that is in it; `known_keys` are those that the caller has from
/// elsewhere.
Report verify_export(std::string_view file, const Verifier& verifier,
                     const std::vector<PublicKey>& known_keys = {});

}  // namespace steamworthy::record
