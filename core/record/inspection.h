// Inspection: everything that can be said of a record from its own bytes.
//
// Facts, keys and blobs are handed in one by one, from a store or from an export; report() then
// says what is wrong, what is missing, and what the whole proves. Nothing is corrected.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "record/chain.h"
#include "record/finding.h"
#include "record/keys.h"

namespace steamworthy::record {

struct Report {
  std::uint64_t facts = 0;     ///< handed in, readable or not
  std::uint64_t verified = 0;  ///< with a signature that holds
  std::uint64_t keys = 0;
  std::uint64_t blobs = 0;
  std::uint64_t quarantined = 0;
  std::vector<FeedReport> feeds;
  std::vector<DeviceId> devices;        ///< that signed a fact, rising
  std::vector<DeviceId> known_devices;  ///< of them, those whose key the caller knew beforehand
  std::vector<Finding> findings;        ///< the gravest first

  std::size_t count(Weight weight) const;
  /// Nothing is wrong; something may be missing.
  bool is_sound() const { return count(Weight::Fault) == 0; }
  /// Nothing is wrong and nothing is missing.
  bool is_whole() const { return is_sound() && count(Weight::Missing) == 0; }
};

class Inspection {
 public:
  explicit Inspection(const Verifier& verifier) : verifier_(verifier) {}

  void add_key(const PublicKey& key);
  /// A key that the caller has from elsewhere: from the device itself, from paper.
  void add_known_key(const PublicKey& key);
  /// Returns the fact if it can be read. `where` is its place, for findings.
  Parsed add_fact(std::string_view bytes, const Signature& signature, const std::string& where);
  /// A fact that is stored with its hash and its place beside it; both are checked.
  void add_stored_fact(std::string_view bytes, const Signature& signature, const std::string& where,
                       const Hash& hash, const Feed& feed, std::uint64_t device_seq);
  /// Returns the hash of the content.
  Hash add_blob(std::string_view content);
  void add_stored_blob(std::string_view content, const Hash& name);
  void add_quarantined(const std::string& reason, const std::string& where);
  void add(Finding finding) { report_.findings.push_back(std::move(finding)); }

  /// Closes the inspection. Keys may be added after the facts that need them.
  Report report();

 private:
  struct Pending {
    DeviceId device;
    FactName name;
    std::string bytes;
    Signature signature;
    std::string where;
  };

  void check_signature(const PublicKey& key, std::string_view bytes, const Signature& signature,
                       const FactName& name, const std::string& where);

  const Verifier& verifier_;
  std::map<DeviceId, PublicKey> keys_;
  std::set<DeviceId> known_;
  std::set<DeviceId> signed_;
  std::vector<Link> links_;
  std::vector<Pending> pending_;  // facts that came before their key
  std::map<Hash, FactName> named_blobs_;
  std::set<Hash> blobs_;
  Report report_;
};

/// What a report proves and what not, in the order in which a reader should learn it: messages with
/// keys record.proves.* and record.not_proved.*. A record that is not sound proves nothing.
struct Meaning {
  std::vector<working::Message> proves;
  std::vector<working::Message> not_proved;
};
Meaning meaning(const Report& report);

}  // namespace steamworthy::record
