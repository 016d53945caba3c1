// Finding: what an inspection of a record found, and the keys by which words tell it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "record/envelope.h"
#include "working/message.h"

namespace steamworthy::record {

/// What may be found. The comment says how grave it is, see weight_of().
enum class Fault {
  Unreadable,       ///< fault: bytes that are no fact
  NoKey,            ///< fault: signed by a device whose key is not there
  BadSignature,     ///< fault
  BrokenChain,      ///< fault: prev_hash is not the hash of the fact before
  Forked,           ///< fault: two facts of one number
  SameId,           ///< fault: two facts of one id
  SeenDiffers,      ///< fault: another fact saw this number with another hash
  SeenShrank,       ///< fault: a later fact has seen less than an earlier one
  HashDiffers,      ///< fault: stored under a hash that its bytes do not have
  PlaceDiffers,     ///< fault: stored under a feed or number that it does not say itself
  BlobDamaged,      ///< fault: stored under a hash that its content does not have
  KeyDamaged,       ///< fault: stored under a device's name that it does not give
  Gap,              ///< missing: numbers below one that is there
  SeenMissing,      ///< missing: another fact saw it, and it is not there
  BlobMissing,      ///< missing: a fact names it
  Doubled,          ///< remark: the same fact twice
  BlobUnused,       ///< remark: no fact names it
  ClockBack,        ///< remark: recorded before the fact before it
  ClockBehindSeen,  ///< remark: recorded before a fact that it has seen
  Quarantined,      ///< remark: bytes that were refused when they came, and kept
  NoExport,         ///< fault: a file that is no export
  ExportFormat,     ///< fault: an export of a format that this program does not know
  CutShort,         ///< fault: the file ends before its end mark
  FileHash,         ///< fault: the file's bytes do not have the hash at its end
  FileCounts,       ///< fault: the file holds other numbers of things than its end says
  Section,          ///< fault: a section that cannot be read
};

enum class Weight {
  Fault,    ///< something is wrong
  Missing,  ///< something is not there; it may still be under way
  Remark,   ///< worth knowing
};
Weight weight_of(Fault fault);

/// Names a fact. `device_seq` 0: no fact is meant.
struct FactName {
  Feed feed;
  std::uint64_t device_seq = 0;
};

struct Finding {
  Fault what = Fault::Unreadable;
  FactName fact = {};       ///< the fact that it is about
  FactName other = {};      ///< the fact that shows it
  std::string where = {};   ///< place in a store or a file: "intake 17", "byte 1200"
  Flaw flaw = {};           ///< of Unreadable
  Hash hash = {};           ///< of a blob
  std::uint64_t until = 0;  ///< Gap: the last number that is missing
  std::uint64_t times = 1;  ///< how often the same was found
  std::int64_t by_ms = 0;   ///< clocks: the most by which one was back
  std::string text = {};    ///< Quarantined: its reason; Section: its type
};

/// "record.fault.broken_chain" and its values.
working::Message message(const Finding& finding);

/// The token of a fault: "broken_chain".
std::string_view token(Fault fault);

/// "fact 17 of device 3fa2...": for the places of messages.
std::string text(const FactName& name);

}  // namespace steamworthy::record
