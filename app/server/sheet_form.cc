#include "server/sheet_form.h"

#include <array>

#include "units/parse.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using wire::JsonObject;

constexpr std::array<const char*, 12> names = {"rule",         "work",   "authority", "pick",
                                               "own_pressure", "reason", "ceiling",   "water",
                                               "metal",        "hold",   "heater",    "trait"};

constexpr const char* examination = "examination";
constexpr const char* in_place_below = "safety_valves_in_place_below";

class Reader {
 public:
  explicit Reader(const Said& said) : said_(said) {}

  std::string text(const char* name) const {
    const auto found = said_.find(name);
    return found == said_.end() ? std::string() : found->second;
  }
  template <class Quantity>
  void measure(const char* name, units::Kind kind, std::optional<Quantity>& into) {
    const std::string written = text(name);
    if (written.empty()) return;
    const auto parsed = units::parse_measure(kind, written);
    if (parsed) {
      into = Quantity::from_si(parsed.value->si);
      return;
    }
    Problem problem = parsed.problem;
    problem.field = name;
    problems.push_back(std::move(problem));
  }
  void measure(const char* name, std::optional<facts::Measured<units::GaugePressure>>& into) {
    std::optional<units::GaugePressure> value;
    measure(name, units::Kind::GaugePressure, value);
    if (value) into = facts::Measured<units::GaugePressure>{*value, text(name)};
  }
  void wrong_word(const char* name, const std::string& found,
                  const std::vector<std::string_view>& accepted) {
    problems.push_back({"server.not_said", "", 0, name, found, wire::listed(accepted),
                        "is not one of the words that may stand here"});
  }

  std::vector<Problem> problems;

 private:
  const Said& said_;
};

void read_trait(Reader& reader, std::string_view written, sheet::Request& request) {
  const std::size_t equals = written.find('=');
  const auto trait = rules::trait_of(std::string(written.substr(0, equals)));
  const std::string_view word =
      equals == std::string_view::npos ? "yes" : written.substr(equals + 1);
  if (!trait || (word != "yes" && word != "no")) {
    reader.wrong_word("trait", std::string(written), rules::trait_tokens());
    return;
  }
  request.traits[*trait] = word == "yes";
}

}  // namespace

Said said_in_query(const Call& call) {
  Said said;
  for (const char* name : names) {
    if (const auto value = call.asked(name)) said[name] = *value;
  }
  return said;
}

Said said_in_form(const std::string& body) {
  Said said;
  read_form(body, [&](wire::ObjectReader& form) {
    const auto read = [&](const char* name) {
      std::string value;
      form.text(name, value);
      if (!value.empty()) said[name] = value;
    };
    for (const char* name : names) {
      if (std::string_view(name) != "trait") read(name);
    }
    read(examination);
    read(in_place_below);
    std::vector<std::string> traits;
    form.texts("traits", traits);
    std::string joined;
    for (const std::string& trait : traits) joined += (joined.empty() ? "" : ",") + trait;
    if (!joined.empty()) said["trait"] = joined;
  });
  return said;
}

sheet::Request request_of(const Said& said) {
  using units::Kind;
  Reader reader(said);
  sheet::Request request;
  if (const std::string rule = reader.text("rule"); !rule.empty()) request.rule_id = rule;
  if (const std::string work = reader.text("work"); !work.empty()) {
    request.work = rules::work_of(work);
    if (!request.work) reader.wrong_word("work", work, rules::work_tokens());
  }
  request.authority = reader.text("authority");
  reader.measure("pick", Kind::GaugePressure, request.picked);
  reader.measure("ceiling", Kind::GaugePressure, request.stated_ceiling);
  reader.measure("water", Kind::Temperature, request.water);
  reader.measure("metal", Kind::Temperature, request.metal);
  reader.measure("hold", Kind::Duration, request.hold);
  reader.measure("heater", Kind::Power, request.heater);
  std::optional<units::GaugePressure> own;
  reader.measure("own_pressure", Kind::GaugePressure, own);
  if (own) request.own_pressure = rules::OwnPressure{*own, reader.text("reason")};
  const std::string traits = reader.text("trait");
  for (std::size_t at = 0; at < traits.size();) {
    const std::size_t end = std::min(traits.find(',', at), traits.size());
    read_trait(reader, std::string_view(traits).substr(at, end - at), request);
    at = end + 1;
  }
  if (!reader.problems.empty()) throw BadInput(std::move(reader.problems));
  return request;
}

Agreed agreed_of(const Said& said) {
  Reader reader(said);
  Agreed agreed;
  reader.measure(examination, agreed.examination);
  reader.measure(in_place_below, agreed.safety_valves_in_place_below);
  if (!reader.problems.empty()) throw BadInput(std::move(reader.problems));
  return agreed;
}

std::string text_of(const Said& said) {
  std::string text;
  for (const auto& [name, value] : said) text += name + "=" + value + "\n";
  return text;
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
