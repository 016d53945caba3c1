// Rules as TOML: one file a rule. The fields are listed in docs/reference/rules.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/rule.h"

namespace steamworthy::wire {

/// A rule file: its name as the user gave it, and its text.
struct RuleFile {
  std::string_view name;
  std::string_view text;
};

/// Reads one rule. Its content_hash is left empty: the caller has the bytes and a hash.
///
/// Throws    BadInput with every fault of the file, each with line, field, what was found and
///           what would be accepted. Codes: "rules.*", listed in docs/reference/rules.md.
/// Checked   wire/rule_faults_test.cc, wire/rules_shipped_test.cc, fuzz/rule_fuzz.cc.
rules::Rule read_rule(const RuleFile& file);

/// Reads many; also refuses two rules of one id.
/// Throws    BadInput with the faults of all files.
std::vector<rules::Rule> read_rules(const std::vector<RuleFile>& files);

/// Writes a rule so that read_rule() gives the same rule again (without its hash).
std::string write_rule(const rules::Rule& rule);

}  // namespace steamworthy::wire
