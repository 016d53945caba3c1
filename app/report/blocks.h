// Blocks: pieces that several papers have: cautions, boxes to write in, signatures.
#pragma once

#include <string>
#include <vector>

#include "report/context.h"

namespace steamworthy::report {

/// Room for a hand to write in, one line of it.
inline constexpr double writing_height = 8.0;

/// The word of a token of the description: "far_end" -> "far end of the pipe".
std::string kind(const Context& context, std::string_view token);

/// Cautions of those keys, each with its sign.
void cautions(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys);

/// Two by two: what is asked, and room to write the answer.
void fill_in(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys);

/// A table of that many empty rows under heads of those keys, the first and last as wide as said.
void blank_table(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys,
                 int rows, const std::vector<double>& widths = {});

/// Role, name, signature, date and time: a row a role.
void signatures(const Context& context, paper::Flow& flow, const std::vector<std::string>& roles);

/// What must be done, each with a box to tick, and room for who did it.
void tick_list(const Context& context, paper::Flow& flow, const std::vector<std::string>& what);

/// The head of a column with its unit: "pressure, bar gauge".
std::string head(const Context& context, const std::string& key, units::Kind kind);

}  // namespace steamworthy::report
