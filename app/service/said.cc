#include "service/said.h"

#include "base/error.h"
#include "units/parse.h"
#include "wire/object_reader.h"

namespace steamworthy::service {
namespace {

using units::Kind;

class Reader {
 public:
  explicit Reader(const Said& said) : said_(said) {}

  std::string text(const char* name) const { return value_of(said_, name); }

  template <class Quantity>
  void measure(const char* name, Kind kind, std::optional<Quantity>& into) {
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

  void wrong_word(const char* name, const std::string& found, const std::string& accepted) {
    problems.push_back({"service.not_said", "", 0, name, found, accepted,
                        "is not one of the words that may stand here"});
  }

  std::vector<Problem> problems;

 private:
  const Said& said_;
};

void read_trait(Reader& reader, const std::string& written, sheet::Request& request) {
  const std::size_t equals = written.find('=');
  const auto trait = rules::trait_of(written.substr(0, equals));
  const std::string answer = equals == std::string::npos ? "yes" : written.substr(equals + 1);
  if (!trait || (answer != "yes" && answer != "no")) {
    reader.wrong_word("trait", written, wire::listed(rules::trait_tokens()) + "; with =yes or =no");
    return;
  }
  request.traits[*trait] = answer == "yes";
}

}  // namespace

sheet::Request request_of(const Said& said) {
  Reader reader(said);
  sheet::Request request;
  if (const std::string rule = reader.text("rule"); !rule.empty()) request.rule_id = rule;
  if (const std::string work = reader.text("work"); !work.empty()) {
    request.work = rules::work_of(work);
    if (!request.work) reader.wrong_word("work", work, wire::listed(rules::work_tokens()));
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
  for (const auto& [name, value] : said) {
    if (name == "trait" && !value.empty()) read_trait(reader, value, request);
  }
  if (!reader.problems.empty()) throw BadInput(std::move(reader.problems));
  return request;
}

std::string value_of(const Said& said, const char* name) {
  std::string last;
  for (const auto& [known, value] : said) {
    if (known == name) last = value;
  }
  return last;
}

std::string text_of(const Said& said) {
  std::string text;
  for (const auto& [name, value] : said) {
    if (!value.empty()) text += name + "=" + value + "\n";
  }
  return text;
}

}  // namespace steamworthy::service
