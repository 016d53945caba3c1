// What a test file says, held against itself. Only files of `wire` include this header.
#pragma once

#include "trace/test_facts.h"
#include "wire/object_reader.h"

namespace steamworthy::wire {

/// Adds every fault of what was read: lengths of nothing, ranges upside down, the same said twice.
/// `name_of` tells how a field ("gauge[#1].resolution") is called in the file; null: just so.
void check_test_facts(const trace::TestFacts& facts, Reading& reading,
                      std::string (*name_of)(const std::string& field));

/// The key of a `.meta.json` for a field of the TOML form.
std::string meta_name(const std::string& field);

/// Reads a `.meta.json`; keys that are not known go to `unread`.
void read_meta(const Node& root, Reading& reading, trace::TestFacts& facts,
               std::vector<std::string>& unread);

}  // namespace steamworthy::wire
