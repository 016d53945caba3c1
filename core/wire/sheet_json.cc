#include "wire/sheet_json.h"

#include "wire/json.h"

namespace steamworthy::wire {

std::string sheet_json(const sheet::Sheet& sheet, bool with_working) {
  Json sections = Json::array();
  for (const sheet::Section& section : sheet.sections) {
    sections.push_back(section_json(section, with_working));
  }
  return text(
      Json{{"ok", !sheet.is_refused()},
           {"boiler", {{"tag", sheet.boiler_tag}, {"name", sheet.boiler_name}}},
           {"rule",
            {{"id", sheet.rule_id}, {"title", sheet.rule_title}, {"edition", sheet.rule_edition}}},
           {"missing", messages_json(sheet.missing)},
           {"stops", messages_json(sheet.stops)},
           {"sections", std::move(sections)}});
}

std::string error_json(const std::string& code, const std::string& sentence,
                       const std::vector<Problem>& problems) {
  Json list = Json::array();
  for (const Problem& one : problems) {
    list.push_back(Json{{"code", one.code},
                        {"file", one.file},
                        {"line", one.line},
                        {"field", one.field},
                        {"found", one.found},
                        {"accepted", one.accepted},
                        {"message", one.message}});
  }
  return text(
      Json{{"ok", false}, {"code", code}, {"error", sentence}, {"problems", std::move(list)}});
}

}  // namespace steamworthy::wire
