#include "server/sheet_form.h"

#include <array>

#include "service/test_log.h"
#include "units/parse.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using wire::JsonObject;

// Traits aside, which are a list.
constexpr std::array<const char*, 11> names = {"rule",         "work",   "authority", "pick",
                                               "own_pressure", "reason", "ceiling",   "water",
                                               "metal",        "hold",   "heater"};

constexpr const char* examination = "examination";
constexpr const char* in_place_below = "safety_valves_in_place_below";

/// A pressure that was agreed on; nothing where nothing is said.
std::optional<facts::Measured<units::GaugePressure>> pressure(const service::Said& said,
                                                              const char* name,
                                                              std::vector<Problem>& problems) {
  const std::string written = service::value_of(said, name);
  if (written.empty()) return std::nullopt;
  auto parsed = units::parse_measure(units::Kind::GaugePressure, written);
  if (parsed) {
    return facts::Measured<units::GaugePressure>{units::GaugePressure::from_si(parsed.value->si),
                                                 written};
  }
  parsed.problem.field = name;
  problems.push_back(std::move(parsed.problem));
  return std::nullopt;
}

}  // namespace

service::Said said_in_query(const Call& call) {
  service::Said said;
  for (const char* name : names) said.emplace_back(name, call.asked(name).value_or(""));
  for (std::string& trait : service::between_commas(call.asked("trait").value_or(""))) {
    said.emplace_back("trait", std::move(trait));
  }
  return said;
}

service::Said said_in_form(const std::string& body) {
  service::Said said;
  read_form(body, [&](wire::ObjectReader& form) {
    const auto read = [&](const char* name) {
      std::string value;
      form.text(name, value);
      said.emplace_back(name, std::move(value));
    };
    for (const char* name : names) read(name);
    read(examination);
    read(in_place_below);
    std::vector<std::string> traits;
    form.texts("traits", traits);
    for (std::string& trait : traits) said.emplace_back("trait", std::move(trait));
  });
  return said;
}

Agreed agreed_of(const service::Said& said) {
  std::vector<Problem> problems;
  Agreed agreed;
  agreed.examination = pressure(said, examination, problems);
  agreed.safety_valves_in_place_below = pressure(said, in_place_below, problems);
  if (!problems.empty()) throw BadInput(std::move(problems));
  return agreed;
}

std::string figure_json(const working::Figure& figure, const words::Style& style) {
  JsonObject json;
  json.put("key", figure.key)
      .put("subject", figure.subject)
      .put("label", words::label(figure.key, style))
      .put("text", figure.is_known() ? words::text(*figure.value, style)
                                     : words::sentence(figure.cannot_tell, style))
      .put("is_known", figure.is_known())
      .put("line", words::render_figure(figure, style))
      .put("working_text", words::render_working(figure, style));
  if (figure.is_known()) {
    json.put("value" + std::string(units::info(figure.value->kind).suffix),
             units::at_border(*figure.value));
  }
  return json.text();
}

std::vector<std::string> sentences(const std::vector<working::Message>& messages,
                                   const words::Style& style) {
  std::vector<std::string> all;
  for (const working::Message& message : messages) all.push_back(words::sentence(message, style));
  return all;
}

std::string section_json(const working::Section& section, const words::Style& style) {
  std::vector<std::string> figures;
  for (const working::Figure& figure : section.figures) {
    figures.push_back(figure_json(figure, style));
  }
  return JsonObject()
      .put("key", section.key)
      .put("title", words::label(section.key, style))
      .list("figures", figures)
      .put("notes", sentences(section.notes, style))
      .put("cautions", sentences(section.cautions, style))
      .text();
}

std::string sheet_json(const sheet::Sheet& sheet, const words::Style& style) {
  std::vector<std::string> sections;
  for (const working::Section& section : sheet.sections) {
    sections.push_back(section_json(section, style));
  }
  return JsonObject()
      .put("ok", !sheet.is_refused())
      .raw("boiler",
           JsonObject().put("tag", sheet.boiler_tag).put("name", sheet.boiler_name).text())
      .raw("rule", JsonObject()
                       .put("id", sheet.rule_id)
                       .put("title", sheet.rule_title)
                       .put("edition", sheet.rule_edition)
                       .text())
      .put("missing", sentences(sheet.missing, style))
      .put("stops", sentences(sheet.stops, style))
      .list("sections", sections)
      .text();
}

}  // namespace steamworthy::server
