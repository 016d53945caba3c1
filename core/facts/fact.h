// Facts: something that happened or was seen, as somebody reported it.
//
// A fact is always accepted, in whatever order it arrives, and corrected only by a later one. This
// room holds what a fact may say; the room record holds how it is sealed, the room wire how a body
// is written. Start reading at struct Fact, then body.h for the kinds.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "facts/body.h"
#include "working/message.h"

namespace steamworthy::facts {

/// The last fact of another device's feed that the maker of a fact had seen.
struct Head {
  std::string device;
  int device_seq = 0;

  friend bool operator==(const Head&, const Head&) = default;
};

/// What every body may carry beside its own fields.
struct Beside {
  std::string note;
  std::vector<std::string> photos;  ///< SHA-256 of each, in hexadecimal

  friend bool operator==(const Beside&, const Beside&) = default;
};

struct Fact {
  std::string id;       ///< UUIDv7
  std::string closing;  ///< or "plant" for the plant's own feed
  std::string device;
  int device_seq = 0;      ///< from 1, without gaps, for each device in each closing
  std::vector<Head> seen;  ///< of the other devices
  std::string person;      ///< who says so
  std::int64_t happened_at_ms = 0;
  Precision precision = Precision::Minute;
  std::int64_t recorded_at_ms = 0;
  int utc_offset_min = 0;
  int version = 1;  ///< of the kind, as written
  Body body;
  Beside beside;

  friend bool operator==(const Fact&, const Fact&) = default;
};

/// The fact as a message that `words` turns into a sentence: the key is the kind's token, the
/// values are its fields by their names without unit, and `person`. The note stands beside, not in
/// it.
working::Message tell(const Fact& fact);

/// All of a fact spelled out, so that two that differ anywhere differ here: for an order among
/// facts that carry the same number and id though they should not.
std::string spell(const Fact& fact);

}  // namespace steamworthy::facts
