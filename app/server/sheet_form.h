// What is said of a test, in a query or a form: every value as people write it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "facts/kind.h"
#include "server/call.h"
#include "service/said.h"

namespace steamworthy::server {

/// What a query says of the test; several traits stand there by commas.
service::Said said_in_query(const Call& call);
/// What a form says of it, and what Agreed holds. Throws   Refusal 400 as read_form().
service::Said said_in_form(const std::string& body);

/// What was agreed with the inspector, for the sheet that is issued.
struct Agreed {
  std::optional<facts::Measured<units::GaugePressure>> examination;
  std::optional<facts::Measured<units::GaugePressure>> safety_valves_in_place_below;
};
/// Throws   BadInput of units with every fault.
Agreed agreed_of(const service::Said& said);

/// The sheet with its texts. Every number comes with its unit and its working.
std::string sheet_json(const sheet::Sheet& sheet, const words::Style& style);
std::string figure_json(const working::Figure& figure, const words::Style& style);
std::string section_json(const working::Section& section, const words::Style& style);
std::vector<std::string> sentences(const std::vector<working::Message>& messages,
                                   const words::Style& style);

}  // namespace steamworthy::server
