#include "cli/sheet_text.h"

#include <fmt/format.h>

#include "cli/section_text.h"

namespace steamworthy::cli {
std::string sheet_text(const sheet::Sheet& sheet, const words::Style& style, bool with_working) {
  std::string text = fmt::format("Test sheet: {}, {}\n", sheet.boiler_tag, sheet.boiler_name);
  if (!sheet.rule_id.empty()) {
    text += fmt::format("Rule: {} [{}], {}\n", sheet.rule_title, sheet.rule_id, sheet.rule_edition);
  }
  for (const auto& stop : sheet.stops) text += "STOP: " + words::sentence(stop, style) + "\n";
  for (const auto& one : sheet.missing) text += "Missing: " + words::sentence(one, style) + "\n";
  if (!sheet.missing.empty()) {
    text += "What is known is said by --rule, --work, --ceiling, --hold, --heater.\n";
  }
  for (const sheet::Section& section : sheet.sections) {
    text += section_text(section, style, with_working);
  }
  return text;
}

}  // namespace steamworthy::cli
