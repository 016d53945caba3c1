// What is said of a test, in a query or a form: every value as people write it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "facts/kind.h"
#include "server/call.h"
#include "sheet/sheet.h"

namespace steamworthy::server {

/// By the names of the command line's options, with _ for -; several traits by
/// commas. A form says besides what Agreed holds.
using Said = std::map<std::string, std::string, std::less<>>;

/// What a query says of the test.
Said said_in_query(const Call& call);
/// What a form says of it. Throws   Refusal 400 as read_form().
Said said_in_form(const std::string& body);

/// Throws   BadInput "server.not_said" and those of units with every fault.
sheet::Request request_of(const Said& said);
/// What was agreed with the inspector, for the sheet that is issued.
struct Agreed {
  std::optional<facts::Measured<units::GaugePressure>> examination;
  std::optional<facts::Measured<units::GaugePressure>> safety_valves_in_place_below;
};
/// Throws   as request_of().
Agreed agreed_of(const Said& said);
/// One "name=value" a line, as papers carry it in their hash.
std::string text_of(const Said& said);

/// The sheet with its texts. Every number comes with its unit and its working.
std::string sheet_json(const sheet::Sheet& sheet, const words::Style& style);
std::string figure_json(const working::Figure& figure, const words::Style& style);
std::string section_json(const working::Section& section, const words::Style& style);
std::vector<std::string> sentences(const std::vector<working::Message>& messages,
                                   const words::Style& style);

}  // namespace steamworthy::server
