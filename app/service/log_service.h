// Use cases around a log: enter facts from lines, list them as sentences, check an export or a
// store.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "facts/fact.h"
#include "store/examine.h"
#include "store/fact_log.h"
#include "store/surroundings.h"
#include "wire/fact_draft.h"

namespace steamworthy::service {

/// A scope as people name it: "plant" or the UUID of a closing.
/// Throws   BadInput "service.no_closing" for anything else.
record::Scope scope_named(const std::string& name, const record::Scope& plant,
                          const std::string& option);

struct Entered {
  std::vector<store::Receipt> receipts;
  /// Names that lines gave to closings that began with them, and what they are called now.
  std::vector<std::pair<std::string, record::Scope>> begun;
};

/// Reads lines (wire/fact_draft.h), signs and stores all of them or none.
///
/// A line's closing is "plant", the UUID of a closing, "new" for one that begins here (the same for
/// all lines), or left out for `closing`. In a script any other name is a closing that begins here.
/// Throws   BadInput with the faults of all lines; what store::FactLog::append() throws.
Entered enter_facts(store::FactLog& log, store::Surroundings& surroundings, std::string_view text,
                    const std::string& file, const std::string& closing, wire::LogKeys log_keys);

/// The same of lines that were read; problems of reading them are thrown with the others.
Entered enter_facts(store::FactLog& log, store::Surroundings& surroundings, wire::FactDrafts read,
                    const std::string& file, const std::string& closing, wire::LogKeys log_keys);

/// A stored fact as the rest of core knows facts. Nothing for a node's countersign, which says
/// nothing of a boiler, and for bytes that cannot be read.
std::optional<facts::Fact> fact_of(const record::Envelope& envelope, std::string_view body);

struct Listed {
  std::int64_t intake_no = 0;
  record::Envelope envelope;
  std::string sentence;  ///< what it says, in words
};

/// Facts in causal order (record/chain.h), of one scope or of all.
std::vector<Listed> list_facts(const std::vector<store::StoredFact>& facts,
                               const std::optional<record::Scope>& scope);

/// Checks an export's bytes. Needs no network and no database.
store::Examination verify_export(std::string_view file, const std::vector<std::string>& known_keys);

/// Whether the bytes begin as an export does.
bool is_export(std::string_view start);

}  // namespace steamworthy::service
