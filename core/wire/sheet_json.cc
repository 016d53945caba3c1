#include "wire/sheet_json.h"

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

Json messages_json(const std::vector<working::Message>& messages) {
  Json list = Json::array();
  for (const working::Message& message : messages) list.push_back(message_json(message));
  return list;
}

}  // namespace

std::string sheet_json(const sheet::Sheet& sheet, bool with_working) {
  Json sections = Json::array();
  for (const sheet::Section& section : sheet.sections) {
    Json figures = Json::array();
    for (const working::Figure& figure : section.figures) {
      figures.push_back(figure_json(figure, with_working));
    }
    sections.push_back(Json{{"key", section.key},
                            {"figures", std::move(figures)},
                            {"notes", messages_json(section.notes)},
                            {"cautions", messages_json(section.cautions)}});
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
