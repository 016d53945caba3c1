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

/// "SV-1, safety valve of the drum".
std::string named(const std::string& tag, const std::string& name);

/// Cautions of those keys, each with its sign.
void cautions(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys);

/// Two by two: what is asked, and room to write the answer.
void fill_in(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys);

/// The same with answers that are known; an empty one leaves its room.
struct Asked {
  std::string key;
  std::string answer;
};
void answered(const Context& context, paper::Flow& flow, const std::vector<Asked>& asked);

/// A table of that many empty rows under heads of those keys, the first and last as wide as said.
void blank_table(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys,
                 int rows, const std::vector<double>& widths = {});

/// Role, name, signature, date and time: a row a role.
void signatures(const Context& context, paper::Flow& flow, const std::vector<std::string>& roles);

/// The same; where a log entry stands for the signature, its maker, number and time are there.
struct Signed {
  std::string key;
  const facts::Fact* entry = nullptr;
  std::string name = {};  ///< if it is another than the maker of the entry
  std::string what = {};  ///< what was signed, if the paper is not all of it
};
void signed_by(const Context& context, paper::Flow& flow, const std::vector<Signed>& rows);

/// A row to write in, of that many cells.
paper::Row empty_row(std::size_t columns, double height = writing_height);
/// Rows to write in under those that are filled: of a blank paper as many as said, of one of a
/// closing that is not yet taken over at least two, else none.
int spare_rows(const Context& context, std::size_t filled, int blank);

/// "✓", or an empty cell.
paper::Cell tick(bool done);
/// Who and when, if there is such a fact and what it says still holds.
paper::Cell done(bool holds, const facts::Fact* fact);

/// What must be done, each with a box to tick, and room for who did it.
void tick_list(const Context& context, paper::Flow& flow, const std::vector<std::string>& what);

/// The head of a column with its unit: "pressure, bar gauge".
std::string head(const Context& context, const std::string& key, units::Kind kind);

}  // namespace steamworthy::report
